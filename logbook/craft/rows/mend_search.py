"""Looks for the change of one number after which a row that fails would fit, the likeliest first."""

from collections.abc import Callable, Iterator, Sequence
from itertools import islice

from logbook.craft.rows.courses import Courses, fit_at_one_width, lay_all
from logbook.craft.rows.every_width import reach_of
from logbook.craft.rows.instructions import Span, WrittenRow
from logbook.craft.rows.mending import MendedRow, changes
from logbook.craft.rows.sentences import Speaker

FURTHEST_CHANGE = 2  # a number this much larger or smaller is still a near change
MOST_TRIED = 60  # numbers of a row, those nearest to its trouble
MOST_WORK = 30_000  # places that may be worked for it
MOST_OFFERED = 6  # changes that are worth proving the whole text for


def likely_mends(
    rows: Sequence[WrittenRow], courses: Courses, speaker: Speaker, leads_back: Callable[[Courses], bool]
) -> Iterator[MendedRow]:
    """Changes in the row at fault or in the one below it after which it fits: what mends most first, then its own."""
    failing = len(courses.rows)
    below = lay_all(rows[: failing - 1], courses.ways) if failing > 1 else None
    trouble = courses.misfit.trouble.span if courses.misfit else rows[failing].span
    for size in range(1, FURTHEST_CHANGE + 1):
        found = []
        for index in (failing, failing - 1):
            if index < 0:
                continue
            done = courses if index == failing else below
            for change in nearest(rows[index], size, trouble, speaker):
                score = _mends(rows, courses, done, index, change, leads_back)
                if score:
                    found.append((score, change))
        found.sort(key=lambda each: each[0], reverse=True)
        yield from (change for _, change in found[:MOST_OFFERED])


def mended(text: str, change: MendedRow) -> str:
    """The text with the change made."""
    return text[: change.span.start] + change.instead + text[change.span.end :]


def nearest(row: WrittenRow, size: int, trouble: Span, speaker: Speaker) -> Iterator[MendedRow]:
    """The row with one of its numbers so much larger or smaller; of many those nearest to the trouble, fewer in a long row."""
    found = [change for by in (size, -size) for change in changes(row, by, speaker)]
    most = max(4, min(MOST_TRIED, MOST_WORK // (reach_of(row.body, 1) + 1)))
    if len(found) > most:
        found.sort(key=lambda change: abs(change.span.start - trouble.start))
    return islice(found, most)


def _mends(
    rows: Sequence[WrittenRow],
    courses: Courses,
    below: Courses | None,
    index: int,
    change: MendedRow,
    leads_back: Callable[[Courses], bool],
) -> tuple[int, ...]:
    """How many rows fit with this change, whether the multiple stays, and whether they lead back; () if it mends nothing."""
    above = rows[index + 1 :]
    further = (change.row, *above[: len(courses.rows) - (len(below.rows) if below else 0)])
    if courses.multiple > 1 and not fit_at_one_width(below, further, courses):
        return ()  # it could fit only with another multiple
    laid = lay_all((change.row, *above), courses.ways, below)
    if not laid.fits:
        return ()
    return len(laid.rows), laid.multiple == courses.multiple, leads_back(laid), all(row.now_and_then == 1 for row in laid.rows)
