"""First chains of which the text does not say what they count as: how they are read, and what it must say."""

from collections.abc import Iterator

from logbook.craft.rows.courses import Courses
from logbook.craft.rows.instructions import Counts, Opening, WrittenRow
from logbook.craft.rows.laying import opening_counts
from logbook.craft.rows.report import ASKED, RowProblem
from logbook.craft.rows.sentences import Speaker
from logbook.craft.rows.ways import Tried


def read_as(tried: Tried, speaker: Speaker) -> Iterator[str]:
    """The chains of which only one reading fits, with that reading."""
    for key in tried.decided:
        row, opening = _with_opening(tried.best, key)
        taken = _option(opening_counts(row, tried.best.ways), speaker)
        verb = "are" if opening.at_hook else "is"
        yield f"{row.name}: {_chains_of(opening)} {verb} read as “{taken}”: only so do the rows fit."


def questions(tried: Tried, speaker: Speaker) -> Iterator[RowProblem]:
    """What the text must say because the rows fit both ways."""
    asked: set[str] = set()
    for other in tried.also:
        asked |= {key for key, way in other.ways.items() if tried.best.ways.get(key) != way}
    for key in sorted(asked):
        row, opening = _with_opening(tried.best, key)
        choices = tuple(f"({_option(option, speaker)})" for option in opening.options)
        options = [f"“{choice}”" for choice in choices]
        verb = "count" if opening.at_hook else "counts"
        says = f"{row.name} does not say whether {_chains_of(opening)} {verb} as a stitch, and the rows fit either way."
        yield RowProblem(row.number, says, opening.span, f"Write {' or '.join(options)} behind it.", ASKED, choices)


def _option(counts: Counts, speaker: Speaker) -> str:
    if not counts.stitch and counts.chains:
        return f"counts as ch {counts.chains}"
    if not counts.stitch:
        return "does not count"
    chains = f" and ch {counts.chains}" if counts.chains else ""
    skipped = f" and {counts.over} skipped ch" if counts.over and not counts.chains else ""
    return f"counts as {speaker.stitch(counts.stitch)}{chains}{skipped}"


def _with_opening(courses: Courses, key: str) -> tuple[WrittenRow, Opening]:
    for course in courses.rows:
        opening = course.row.opening
        if opening is not None and opening.key == key and len(opening.options) > 1:
            return course.row, opening
    raise KeyError(key)


def _chains_of(opening: Opening) -> str:
    return f"the {opening.chains} skipped chains" if opening.at_hook else f"its ch {opening.chains}"
