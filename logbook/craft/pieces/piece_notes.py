"""What is to be said beside the numbers of a piece: how it fits, what does not go on, what is still to be tried."""

import re
from collections.abc import Iterator

from logbook.craft.gauges.hanging import weight_sentence
from logbook.craft.pieces.edge_stitches import row_warning
from logbook.craft.pieces.fit import Opening, Verdict, fit_sentences, openings_too_small
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_length


def notes_on(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units) -> Iterator[str]:
    """The sentences, warnings first."""
    yield from warnings_on(plan, gauges, numbers, units)
    if numbers.fit is not None:
        yield from fit_sentences(numbers.fit, units)
    yield from _edges(gauges, numbers)
    yield from _hanging(numbers, units)
    if numbers.yarn is None and numbers.rows is not None:
        yield "The swatch was not weighed, or its stitches and rows not counted: weigh and count it to know the yarn needed."


def warnings_on(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers, units: Units) -> Iterator[str]:
    """What does not go on, and a rib whose edges don't match."""
    yield from openings_too_small(tuple(_openings(plan, numbers)), gauges.give(plan.round_body), units)
    yield from _rib(plan, gauges, numbers)
    fit = numbers.fit
    if fit is not None and fit.verdict in (Verdict.TOO_TIGHT, Verdict.DOES_NOT_GO_ON):
        yield "It does not go on that body." if fit.verdict is Verdict.DOES_NOT_GO_ON else "It is too tight on that body."


def _openings(plan: PiecePlan, numbers: PieceNumbers) -> Iterator[Opening]:
    """Neck and armholes lie on front and back, so they are twice as far round as they are wide or deep."""
    if plan.head_mm is not None and numbers.neck:
        yield Opening(name="neck", part="head", round_mm=2 * numbers.neck.begins.true_mm, needs_mm=plan.head_mm)
    if plan.upper_arm_mm is not None and numbers.armhole:
        yield Opening(name="armhole", part="upper arm", round_mm=2 * numbers.armhole.true_mm, needs_mm=plan.upper_arm_mm)
    if plan.hip_mm is not None and numbers.fit is not None and numbers.slit is None:
        yield Opening(name="hem", part="hip", round_mm=numbers.fit.around_mm, needs_mm=plan.hip_mm)


def _rib(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers) -> Iterator[str]:
    is_rib = re.search(r"rib(bed|bing)?\b", gauges.pattern.name, re.IGNORECASE)
    if plan.sideways and is_rib and numbers.last_row_is_right_side:
        yield f"A rib worked sideways wants an even number of rows, so that its edges match; {numbers.rows} is odd: ask for even."


def _edges(gauges: PieceGauges, numbers: PieceNumbers) -> Iterator[str]:
    if not numbers.edge_stitches or gauges.edge is None:
        return
    each = counted(numbers.edge_stitches, "plain stitch")
    if gauges.edge.tag:
        yield f"{each} at each side, as wide as on swatch {gauges.edge.tag}; the chain starts as for them."
    elif not gauges.edge.by_hand:
        yield f"{each} at each side, taken to be as wide as the pattern's own: no plain swatch of this yarn and hook says better."
    if gauges.rows is not None:
        warning = row_warning(gauges.edge, gauges.pitch(Direction.ROWS), gauges.rows.give_or_take)
        if warning:
            yield warning


def _hanging(numbers: PieceNumbers, units: Units) -> Iterator[str]:
    growth = numbers.growth
    if growth is not None:
        sure = "" if growth.give_or_take_mm is None else f", give or take {show_length(growth.give_or_take_mm, units)}"
        if growth.near:
            yield f"Worn, its own weight makes it {show_length(growth.mm, units)} longer{sure}."
        else:
            longer = f"Worn, its own weight may make it {show_length(growth.mm, units)} longer"
            yield f"{longer}; but the trial's load was far from the real one."
    if numbers.clip_grams is not None:
        yield f"To see how much longer it hangs: {weight_sentence(numbers.clip_grams)}"
