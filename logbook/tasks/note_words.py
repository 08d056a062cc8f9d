"""Notes made into sentences."""

import math
from collections.abc import Iterable, Iterator, Sequence

from logbook.craft.gauges.hanging import Growth
from logbook.craft.gauges.over_length import counted_over, number_over, over_length
from logbook.craft.gauges.washing import FinishedGauge, Washing
from logbook.craft.pieces.edge_stitches import EdgeStitch
from logbook.craft.pieces.fit import ADULT_HEAD_MM, BodyOpening, Fit, FitVerdict
from logbook.craft.pieces.notes import (
    AllAlike,
    CantTellApart,
    Clip,
    EdgeRows,
    EdgesOf,
    EdgesPart,
    HookParts,
    NotAllowed,
    Note,
    OddRib,
    Plain,
    PlusNotUsed,
    TheirWidth,
    TimeTaken,
    TooSmall,
    Unusual,
    Washed,
    WholePiece,
    YarnUsed,
)
from logbook.craft.pieces.starting_chain import ChainRule
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted, listed
from logbook.craft.words.lengths import Units, show_length
from logbook.craft.words.numbers import in_mark, show_number, show_percent
from logbook.tasks.drift_words import time_taken_words, together_words, whole_piece_words, yarn_used_words
from logbook.tasks.money_words import HANDS_CAUTION

_PLAIN = {
    Plain.CHILDRENS_WEAR: (
        "Babies' and children's wear: no cords or drawstrings at the neck, no small parts that can come off, small gaps only in "
        "blankets, nothing loose in a cot. If you sell it, follow the product-safety and flammability rules of your own country."
    ),
    Plain.NOT_AS_WIDE: "No chain gives a width that fits what you asked for.",
    Plain.WIDER_THAN_ASKED: "Even the fewest repeats are wider than you asked for.",
    Plain.ONE_REPEAT_TOO_WIDE: (
        "Even one repeat is wider than you asked for: another stitch pattern, or plain stitches, would come nearer."
    ),
    Plain.RING: "The chain is joined into a ring first, so it has as many chains as base stitches.",
    Plain.SWATCH_FLAT: (
        "The swatch was worked flat: in the round the same hands often work to another gauge. Try one in the round."
    ),
    Plain.SWATCH_ROUND: "The swatch was worked in the round: worked flat the same hands often work to another gauge.",
    Plain.FOUNDATION_STITCHES: (
        "Foundation stitches make chain and row one at once: one for each base stitch, no extra chains."
    ),
    Plain.ROWS_OPEN: (
        "No rows of the swatch were measured, so the rows are left open: work to the length, or measure how far some whole rows "
        "reach."
    ),
    Plain.NOT_WEIGHED: (
        "The swatch was not weighed, or its stitches and rows not counted: weigh and count it to know the yarn needed."
    ),
    Plain.HALF_REPEATS_PART: "Half repeats, which the pattern allows, would make them differ.",
    Plain.LONG_HOURS: HANDS_CAUTION,
}  # fmt: skip
CHILDREN_CAUTION = _PLAIN[Plain.CHILDRENS_WEAR]
_VERDICTS = {FitVerdict.TOO_TIGHT: "It is too tight on that body.", FitVerdict.DOES_NOT_GO_ON: "It does not go on that body."}


def said(notes: Iterable[Note], units: Units = Units.CM) -> tuple[str, ...]:
    """The sentences of ``notes``, each once; lengths in ``units``."""
    return tuple(dict.fromkeys(sentence for note in notes for sentence in _sentences(note, units)))


def in_all_sizes(sentences: Sequence[tuple[str, Sequence[str]]]) -> tuple[str, ...]:
    """Sentences of all sizes, each once with the sizes it is said of; what is said of all, without."""
    return tuple(f"{', '.join(names)}: {text}" if names else text for text, names in _of_sizes(sentences).items())


def grouped_by_sizes(sentences: Sequence[tuple[str, Sequence[str]]]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The same as groups: the sizes, "" for all of them, and what is said of them; those of all come first."""
    groups: dict[tuple[str, ...], list[str]] = {}
    for text, names in _of_sizes(sentences).items():
        groups.setdefault(names, []).append(text)
    return tuple((", ".join(names), tuple(texts)) for names, texts in sorted(groups.items(), key=lambda group: bool(group[0])))


def _of_sizes(sentences: Sequence[tuple[str, Sequence[str]]]) -> dict[str, tuple[str, ...]]:
    """The sizes that each sentence is said of; empty: all."""
    of: dict[str, list[str]] = {}
    for name, own in sentences:
        for sentence in own:
            of.setdefault(sentence, []).append(name)
    return {text: () if len(names) == len(sentences) else tuple(names) for text, names in of.items()}


def _sentences(note: Note, units: Units) -> Iterator[str]:
    match note:
        case Fit():
            yield from _fit(note, units)
        case Washed(gauge, direction):
            yield from _washing(gauge, direction)
        case EdgesOf(each, edge):
            yield from _edges(each, edge)
        case WholePiece(drift, gauge):
            yield whole_piece_words(drift)
            yield from together_words(drift, gauge)
        case _:
            yield _sentence(note, units)


def _sentence(
    note: Plain | PlusNotUsed | NotAllowed | TheirWidth
    | CantTellApart | Unusual | YarnUsed | TimeTaken | TooSmall | OddRib | FitVerdict | EdgeRows | Growth | Clip
    | AllAlike | EdgesPart | HookParts,
    units: Units,
) -> str:  # fmt: skip
    match note:
        case Plain():
            return _PLAIN[note]
        case FitVerdict():
            return _VERDICTS[note]
        case PlusNotUsed(plus):
            return f"Worked in the round, the plus of {plus} is not used."
        case NotAllowed(chain, rule, others, stitches):
            asked = "" if stitches is None else f"{counted(stitches, 'stitch')}: chain {chain}. "
            return asked + _not_allowed(chain, rule, others)
        case TheirWidth(count, one, gauge, mm, chains):
            many = counted(count, one) if chains is None else f"{counted(chains, 'chain')} ({counted(count, one)})"
            return f"At their gauge, {gauge.text}, {many} make {show_length(mm, units)}."
        case CantTellApart(stitches):
            step = "a stitch" if stitches == 1 else "two stitches"
            return f"Chains {step} apart differ by less than the give or take: either may come nearer."
        case Unusual(pitch, direction):
            return f"That gauge is {counted_over(pitch, direction, None, units)}, which is hardly crocheted: check the readings."
        case YarnUsed(drift):
            return yarn_used_words(drift)
        case TimeTaken(drift):
            return time_taken_words(drift)
        case TooSmall(opening, give):
            return _too_small(opening, give, units)
        case OddRib(rows):
            return f"A rib worked sideways needs an even number of rows, so that its edges match; {rows} is odd: choose even."
        case EdgeRows(taller):
            return _edge_rows(taller)
        case Growth():
            return _growth(note, units)
        case Clip(grams):
            return f"To see how much longer it hangs: {_clip(grams)}"
        case _:
            return _run_sentence(note, units)


def _not_allowed(chain: int, rule: ChainRule, others: Sequence[int]) -> str:
    near = " or ".join(map(str, others))
    beside = rule.stitches_beside + (rule.chains_beside or 0)
    if others[0] > chain:
        return f"{chain} chains are too few for one repeat: it takes at least {others[0]}."
    if rule.multiple == 1:
        return f"A chain of {chain} does not give an {rule.parity.value} count of stitches: {near} would."
    plus = f" plus {beside}" if beside else ""
    half = ", nor does it end on half a repeat" if rule.half_plus is not None and not rule.in_round else ""
    return f"{chain} is not a multiple of {rule.multiple}{plus}{half}: {near} would be."


def _run_sentence(note: AllAlike | EdgesPart | HookParts, units: Units) -> str:
    match note:
        case AllAlike(names):
            return f"{listed(names)} come out the same."
        case EdgesPart(None):
            return "Plain edge stitches, as many as each size needs at each side, would make them differ."
        case EdgesPart(each):
            return f"{counted(each or 0, 'plain edge stitch')} at each side, in all sizes, would make them differ."
        case HookParts(size, direction, wanted, now):
            hook = "thicker" if wanted > now else "thinner"
            over = over_length(units)[1]
            instead = f"{number_over(wanted, units)} {direction.value} in {over} instead of {number_over(now, units)}"
            return f"Take a {hook} hook for {size} alone: with {instead} it would have a width of its own."


def _washing(finished: FinishedGauge, direction: Direction) -> Iterator[str]:
    if finished.washing is Washing.UNKNOWN:
        yield (
            "Washing is unknown: no swatch of this yarn was measured before and after, so these are sizes before washing "
            "and no give or take can be said. Wash the swatch and measure it again."
        )
    if finished.washing is Washing.BORROWED:
        change = finished.change or 0.0
        yield (
            f"Washing taken from {counted(len(finished.lenders), 'swatch')} of this yarn ({', '.join(finished.lenders)}): "
            f"{show_percent(abs(change))} {direction.than(1 + change)}."
        )
    if finished.gauge.too_coarse:
        yield (
            "Counted too coarsely to tell the accuracy: measure how far some whole repeats reach, "
            f"for example “4 repeats = {in_mark('15.1')} cm”."
        )


def _fit(fit: Fit, units: Units) -> Iterator[str]:
    ease, girth = show_length(abs(fit.ease_mm), units), show_length(fit.around_mm, units)
    if fit.stretch_needed is None:
        yield f"It measures {girth} all round, {ease} more than the body."
        return
    wears = f"in wear it stretches by {show_percent(fit.stretch_needed)}"
    yield f"It measures {girth} all round, {ease} less than the body: {wears}."
    if fit.verdict is None or fit.share is None:
        yield "No swatch of it was pulled that way yet: pull one to a comfortable limit and measure, to see whether it will."
    elif math.isinf(fit.share):
        yield "The swatch did not stretch at all when pulled that way: it does not go on."
    else:
        could = f"; within the give or take it could be {' or '.join(fit.could_be)}" if fit.could_be else ""
        yield f"That is {show_percent(fit.share)} of what the swatch stretched: {fit.verdict}{could}."
        if fit.length_change is not None and abs(fit.length_change) >= 0.0005:
            longer = "shorter" if fit.length_change < 0 else "longer"
            yield f"Worn, it gets {show_percent(abs(fit.length_change))} {longer}."


def part_measures(part: str, mm: float, units: Units) -> str:
    """``the upper arm measures 31.0 cm``; a head that is as large as one is taken to be where none is given is told as that."""
    if part == "head" and abs(mm - ADULT_HEAD_MM) < 0.5:
        return f"an adult’s head usually measures {show_length(mm, units)}"
    return f"the {part} measures {show_length(mm, units)}"


def _too_small(opening: BodyOpening, give: float | None, units: Units) -> str:
    measures = part_measures(opening.part, opening.needs_mm, units)
    what = f"The {opening.name} is {show_length(opening.round_mm, units)} round, but {measures}"
    if give is None:
        return f"{what}: make it larger, or leave an opening."
    if opening.stretch <= give:
        return f"{what}: it only goes on stretched by {show_percent(opening.stretch)}."
    return f"{what}, more than the fabric stretches: make it larger, or leave an opening."


def _edges(each: int, edge: EdgeStitch) -> Iterator[str]:
    what = f"{counted(each, 'plain stitch')} at each side"
    if edge.tag:
        yield f"{what}, as wide as on swatch {edge.tag}; the chain starts as for them."
    elif not edge.by_hand:
        yield f"{what}, taken to be as wide as the pattern's own stitches: no plain swatch of this yarn and hook tells."


def _edge_rows(taller: float) -> str:
    how, so = Direction.ROWS.than(1 + taller), "flare" if taller > 0 else "draw in"
    return (
        f"The edge stitches' rows are {show_percent(abs(taller))} {how} than the pattern's: the edges will {so}. "
        "Take a stitch of the pattern's row height there."
    )


def _growth(growth: Growth, units: Units) -> str:
    longer = f"{show_length(abs(growth.mm), units)} {'shorter' if growth.mm < 0 else 'longer'}"
    if not growth.near:
        return f"Worn, its own weight may make it {longer}; but the weight hung on the swatch was far from the garment's."
    sure = "" if growth.give_or_take_mm is None else f", give or take {show_length(growth.give_or_take_mm, units)}"
    return f"Worn, its own weight makes it {longer}{sure}."


def _clip(grams: float) -> str:
    if grams < 0.5:
        return "Hang the swatch up by itself overnight and measure it hanging: its own weight is enough."
    return f"Clip {show_number(grams, 0)} g to the swatch, hang it up overnight and measure it hanging."
