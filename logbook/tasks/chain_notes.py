"""What is to be said beside a starting chain: where its washing comes from, what is uncertain, what was left out."""

from collections.abc import Iterator, Sequence

from logbook.craft.gauges.drift import Drift
from logbook.craft.gauges.washing import FinishedGauge, Washing
from logbook.craft.pieces.options import Choose, Option, recommended
from logbook.craft.pieces.starting_chain import ChainRule
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import counted
from logbook.craft.words.numbers import show_percent

_ASSUMED = "an assumption, until made pieces teach better"


def notes_on(
    swatch: Swatch,
    pattern: StitchPattern,
    finished: FinishedGauge,
    row_gauge: FinishedGauge | None,
    drift: Drift,
    rule: ChainRule,
    target_mm: float,
    options: Sequence[Option],
) -> Iterator[str]:
    """The sentences, the weightiest first."""
    yield from washing_notes(finished, "narrower", "wider")
    if row_gauge is not None:
        yield from washing_notes(row_gauge, "shorter", "longer")
    yield from _option_notes(rule, target_mm, options)
    yield from rule_notes(swatch, pattern, rule)
    yield drift_note(drift)


def washing_notes(finished: FinishedGauge, less: str, more: str) -> Iterator[str]:
    """Whether the washing was measured, borrowed or is unknown, and whether a count is too coarse."""
    if finished.washing is Washing.UNKNOWN:
        yield (
            "Washing is unknown: no swatch of this yarn was measured before and after, so these are sizes before washing "
            "and no give or take can be said. Wash the swatch and measure it again."
        )
    if finished.washing is Washing.BORROWED:
        change = finished.change or 0.0
        yield (
            f"Washing taken from {counted(len(finished.lenders), 'swatch')} of this yarn ({', '.join(finished.lenders)}): "
            f"{show_percent(abs(change))} {less if change < 0 else more}."
        )
    if finished.gauge.too_coarse:
        yield (
            "A count this coarse states no give or take: measure how far some whole repeats reach, "
            "for example “4 repeats = 15.1 cm”."
        )


def drift_note(drift: Drift) -> str:
    """Where the whole piece's own part of the give or take comes from."""
    learnt = f"learnt from {counted(drift.pieces, 'made piece')}" if drift.pieces else _ASSUMED
    return f"A whole piece strays from its swatch by up to {show_percent(drift.give_or_take)} besides that: {learnt}."


def _option_notes(rule: ChainRule, target_mm: float, options: Sequence[Option]) -> Iterator[str]:
    best = recommended(options)
    if rule.choose is Choose.AT_LEAST and best.mm < target_mm - 1e-6:
        yield "No option is as wide as asked."
    if rule.choose is Choose.AT_MOST and best.mm > target_mm + 1e-6:
        yield "Even the least number of repeats is wider than asked."
    elif options[0].mm > target_mm and best is options[0]:
        yield "Even one repeat is wider than asked: another stitch pattern, or plain stitches, would come nearer."
    give = best.gauge_give_or_take_mm
    if rule.multiple == 1 and give is not None and len(options) > 1:
        apart = options[1].mm - options[0].mm
        if apart < give:
            step = "a stitch" if options[1].count - options[0].count == 1 else "two stitches"
            yield f"Options {step} apart lie within the give or take: the swatch can't tell them apart."


def rule_notes(swatch: Swatch, pattern: StitchPattern, rule: ChainRule) -> Iterator[str]:
    """What the way of working asks one to know: in the round or flat, foundation stitches, extra chains that nobody stated."""
    if rule.in_round:
        if rule.plus:
            yield f"In the round the flat plus of {rule.plus} is not used."
        if not rule.joined_after_row_1:
            yield "The chain is joined into a ring first, so it has as many chains as base stitches."
        if swatch.worked == "flat":
            yield "The swatch was worked flat: in the round the same hands often work to another gauge. Try one in the round."
    elif swatch.worked == "round":
        yield "The swatch was worked in the round: worked flat the same hands often work to another gauge."
    if rule.foundation_stitches:
        yield "Foundation stitches make chain and row one at once: one for each base stitch, no extra chains."
    elif rule.chains_beside == 0 and pattern.extra() is None and not rule.in_round:
        yield (
            "No extra chains are said for this stitch pattern, so none are added: give those that lift the first stitch "
            "(for single crochet 1, half double 2, double 2 or 3)."
        )
