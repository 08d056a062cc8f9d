"""What is to be said beside a starting chain: where its washing comes from, what is uncertain, what was left out."""

from collections.abc import Iterator, Sequence

from logbook.craft.gauges.drift import Drifts
from logbook.craft.gauges.washing import FinishedGauge
from logbook.craft.pieces.notes import CantTellApart, Note, Plain, PlusNotUsed, Unusual, Washed, WholePiece
from logbook.craft.pieces.options import Choose, Option, recommended
from logbook.craft.pieces.starting_chain import ChainRule
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.swatch import Swatch

FINEST_MM, LARGEST_MM = 0.8, 100.0
"""A stitch or row: of sewing thread, and of the thickest yarn worked over the arm."""


def notes_on_chain(
    swatch: Swatch,
    finished: FinishedGauge,
    row_gauge: FinishedGauge | None,
    drift: Drifts,
    rule: ChainRule,
    target_mm: float,
    options: Sequence[Option],
) -> Iterator[Note]:
    """The notes, the weightiest first."""
    yield from gauge_notes(finished, Direction.STITCHES)
    if row_gauge is not None:
        yield from gauge_notes(row_gauge, Direction.ROWS)
    yield from _option_notes(rule, target_mm, options)
    yield from rule_notes(swatch, rule)
    yield WholePiece(drift.stitches, finished)
    if row_gauge is not None:
        yield WholePiece(drift.rows, row_gauge)


def gauge_notes(gauge: FinishedGauge, direction: Direction) -> Iterator[Note]:
    """Whether a gauge can be, and where its washing comes from."""
    if not FINEST_MM <= gauge.pitch_mm <= LARGEST_MM:
        yield Unusual(gauge.pitch_mm, direction)
    yield Washed(gauge, direction)


def _option_notes(rule: ChainRule, target_mm: float, options: Sequence[Option]) -> Iterator[Note]:
    best = recommended(options)
    if rule.choose is Choose.AT_LEAST and best.mm < target_mm - 1e-6:
        yield Plain.NOT_AS_WIDE
    if rule.choose is Choose.AT_MOST and best.mm > target_mm + 1e-6:
        yield Plain.WIDER_THAN_ASKED
    elif options[0].mm > target_mm and best is options[0]:
        yield Plain.ONE_REPEAT_TOO_WIDE
    give = best.gauge_give_or_take_mm
    if rule.multiple == 1 and give is not None and len(options) > 1 and options[1].mm - options[0].mm < give:
        yield CantTellApart(options[1].count - options[0].count)


def rule_notes(swatch: Swatch, rule: ChainRule) -> Iterator[Note]:
    """What the way of working asks one to know: in the round or flat, foundation stitches."""
    if rule.in_round:
        if rule.plus:
            yield PlusNotUsed(rule.plus)
        if not rule.joined_after_row_1:
            yield Plain.RING
        if swatch.worked == "flat":
            yield Plain.SWATCH_FLAT
    elif swatch.worked == "round":
        yield Plain.SWATCH_ROUND
    if rule.foundation_stitches:
        yield Plain.FOUNDATION_STITCHES
