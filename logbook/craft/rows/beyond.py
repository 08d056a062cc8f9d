"""Rows above one that is not understood: laid on the count that it prints, as far as they depend on nothing else of it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from logbook.craft.rows.finding import Finder, RowTrouble
from logbook.craft.rows.instructions import WrittenPattern, WrittenRow
from logbook.craft.rows.laying import CHAINS_COUNT, Laid, Ways, lay
from logbook.craft.rows.places import HEIGHTS, Row, from_other_side, new_place, spaces, stitches
from logbook.craft.rows.report import CLAIM, Linear, RowCount, RowProblem
from logbook.craft.rows.sentences import Speaker

_OF_STITCHES = ("short", "over", "last", "rest")
"""Troubles of a row that come from the number of stitches below it alone."""


@dataclass(slots=True)
class Beyond:
    """What the rows above one not understood come to; ``problems``: counts and stitches that do not agree with it."""

    rows: list[RowCount] = field(default_factory=list)
    problems: list[RowProblem] = field(default_factory=list)


def beyond(pattern: WrittenPattern, faulty: Sequence[bool], ways: Ways, speaker: Speaker) -> Beyond:
    """``faulty``: which rows of the pattern hold something not understood. Where a row's trouble may come from what is not known
    of the row below it (its kinds of stitches, its spaces), nothing is said.
    """
    found = Beyond()
    places: Row | None = None
    for at, row in enumerate(pattern.rows):
        if faulty[at]:
            places = _as_printed(row)
        elif row.onto or row.and_onto:
            places = None
        elif places is not None:
            places = _laid(row, places, ways, speaker, found)
        if places is not None and at + 1 < len(pattern.rows) and (row.turn_after or pattern.rows[at + 1].turn_before):
            places = from_other_side(places, row.joined)
    return found


def _as_printed(row: WrittenRow) -> Row | None:
    """As many stitches as the row prints; None if it prints spaces too, or no one count."""
    if len(row.counts) != 1 or len(row.counts[0].numbers) != 1:
        return None
    count = row.counts[0]
    return (new_place(count.wanted.kind),) * count.numbers[0] if count.wanted.kind in ("st", *HEIGHTS) else None


def _laid(row: WrittenRow, below: Row, ways: Ways, speaker: Speaker, found: Beyond) -> Row | None:
    opening = row.opening
    if opening is not None and len(opening.options) > 1 and not opening.settled and opening.key not in ways:
        return None
    laid = lay(row, below, ways)
    if laid.trouble is not None:
        if laid.trouble.sort in _OF_STITCHES and _asks_stitches(laid.trouble):
            says = speaker.trouble(row.name, laid.trouble, "")
            found.problems.append(RowProblem(row.number, says, laid.trouble.span))
        return None
    found.rows.append(RowCount(row.number, row.name, row.span, Linear(0, stitches(laid.row)), Linear(0, spaces(laid.row))))
    found.problems += _wrong_counts(row, laid, bool(ways.get(CHAINS_COUNT)), speaker)
    return laid.row


def _asks_stitches(trouble: RowTrouble) -> bool:
    return trouble.wanted is None or trouble.wanted.kind == "st"


def _wrong_counts(row: WrittenRow, laid: Laid, chains_count: bool, speaker: Speaker) -> Iterator[RowProblem]:
    for printed in row.counts:
        held = Finder(laid.row, chains_count).left(0, printed.wanted)
        if printed.numbers != (held,) and len(printed.numbers) == 1:
            says = f"{row.name} says {speaker.quoted(printed.span)}, but holds {held}."
            yield RowProblem(row.number, says, printed.span, kind=CLAIM)
