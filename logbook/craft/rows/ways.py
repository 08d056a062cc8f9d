"""Tries all ways in which the rows can be read where they do not say what their turning chains count as."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, product

from logbook.craft.rows.courses import Courses, lay_all
from logbook.craft.rows.instructions import Counts, Repeat, Times, WrittenPattern, WrittenRow
from logbook.craft.rows.laying import CHAINS_COUNT, TIMES_IN_ALL, Ways, opening_counts
from logbook.craft.rows.places import spaces, stitches
from logbook.craft.rows.printed_counts import wrong_counts
from logbook.craft.rows.sentences import Speaker

MOST_WAYS = 32


@dataclass(frozen=True, slots=True)
class Tried:
    """``best``: the way in which the rows fit, or get furthest. ``also``: others that fit as well, with other numbers.

    ``decided``: the unsaid turning chains of which only one reading fits. ``with_chains``: no way fits, but one would if chains
    counted as stitches, which the text does not say.
    """

    best: Courses
    also: tuple[Courses, ...]
    decided: tuple[str, ...]
    with_chains: bool = False


def try_ways(pattern: WrittenPattern, rows: Sequence[WrittenRow], speaker: Speaker) -> Tried:
    """Lays the rows in every way; "rep from * N times" as N in all only if N more do not fit."""
    always: dict[str, int] = {CHAINS_COUNT: 1} if pattern.chains_count else {}
    tried = [lay_all(rows, ways) for ways in islice(_ways(rows, always), MOST_WAYS)]
    fitting = [each for each in tried if _holds(pattern, each, speaker)]
    if not fitting and any(_two_ways_to_repeat(row.body) for row in rows):
        fitting = _fitting(pattern, rows, {**always, TIMES_IN_ALL: 1}, speaker)
    if not fitting:
        unsaid = pattern.chains_count is None and any(each.met_chains for each in tried)
        with_chains = unsaid and bool(_fitting(pattern, rows, {CHAINS_COUNT: 1}, speaker))
        return Tried(max(tried, key=lambda each: (len(each.rows), each.fits)), (), (), with_chains)
    seen = {_numbers(fitting[0])}
    also = []
    for each in fitting[1:]:
        if _numbers(each) not in seen:
            seen.add(_numbers(each))
            also.append(each)
    single = {key for key in fitting[0].ways if len({each.ways.get(key) for each in fitting}) == 1}
    decided = tuple(sorted(key for key in single if any(row.opening and row.opening.key == key for row in rows)))
    return Tried(fitting[0], tuple(also), decided)


def _fitting(pattern: WrittenPattern, rows: Sequence[WrittenRow], always: dict[str, int], speaker: Speaker) -> list[Courses]:
    tried = [lay_all(rows, ways) for ways in islice(_ways(rows, always), MOST_WAYS)]
    return [each for each in tried if _holds(pattern, each, speaker)]


def _holds(pattern: WrittenPattern, courses: Courses, speaker: Speaker) -> bool:
    return courses.fits and next(wrong_counts(pattern, courses, speaker), None) is None


def _ways(rows: Sequence[WrittenRow], always: dict[str, int]) -> Iterator[Ways]:
    options: dict[str, int] = {}
    for row in rows:
        if row.opening is not None and len(row.opening.options) > 1:
            options[row.opening.key] = max(len(row.opening.options), options.get(row.opening.key, 0))
    for chosen in product(*(range(count) for count in options.values())):
        yield {**dict(zip(options, chosen, strict=True)), **always}


def _two_ways_to_repeat(body: Sequence[object]) -> bool:
    return any(
        isinstance(item, Repeat)
        and ((isinstance(item.until, Times) and item.until.or_else > 0) or _two_ways_to_repeat(item.body))
        for item in body
    )


def _numbers(courses: Courses) -> tuple[object, ...]:
    """All that the maker would see differ."""
    counts = []
    for course in courses.rows:
        for step in (0, 1):
            row = course.made.at(step)
            counts.append((stitches(row), spaces(row)))
    first = opening_counts(courses.rows[0].row, courses.ways) if courses.rows and courses.rows[0].row.opening else Counts()
    hook = bool(courses.rows and courses.rows[0].row.opening and courses.rows[0].row.opening.at_hook)
    return courses.multiple, courses.smallest, tuple(counts), (bool(first.stitch), first.over) if hook else ()
