"""What is to be said beside the numbers of a piece: how it fits, what does not go on, what is still to be tried."""

import re
from collections.abc import Iterator

from logbook.craft.pieces.chain_notes import gauge_notes, rule_notes
from logbook.craft.pieces.edge_stitches import rows_taller
from logbook.craft.pieces.fit import BodyOpening, FitVerdict
from logbook.craft.pieces.notes import Clip, EdgeRows, EdgesOf, Note, OddRib, Plain, TimeTaken, TooSmall, WholePiece, YarnUsed
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import chain_rule
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.swatch import Swatch


def warnings_on(plan: PiecePlan, gauges: PieceGauges, numbers: PieceNumbers) -> Iterator[Note]:
    """What must not be overlooked: rows left open, what does not go on, and a rib whose edges don't match."""
    give = gauges.give(plan.round_body)
    if plan.length_mm is not None and numbers.length is None:
        yield Plain.ROWS_OPEN
    for opening in _openings(plan, numbers):
        if opening.too_small:
            yield TooSmall(opening, give.share if give else None)
    is_rib = re.search(r"rib(bed|bing)?\b", gauges.pattern.name, re.IGNORECASE)
    if plan.sideways and is_rib and numbers.rows is not None and numbers.last_row_is_right_side:
        yield OddRib(numbers.rows)
    if numbers.fit is not None and numbers.fit.verdict in (FitVerdict.TOO_TIGHT, FitVerdict.DOES_NOT_GO_ON):
        yield numbers.fit.verdict


def remarks_on(gauges: PieceGauges, numbers: PieceNumbers) -> Iterator[Note]:
    """What else is to be said of its numbers."""
    if numbers.fit is not None:
        yield numbers.fit
    if numbers.edge_stitches and gauges.edge is not None:
        yield EdgesOf(numbers.edge_stitches, gauges.edge)
        if gauges.rows is not None:
            taller = rows_taller(gauges.edge, gauges.pitch(Direction.ROWS), gauges.rows.give_or_take)
            if taller is not None:
                yield EdgeRows(taller)
    if numbers.growth is not None:
        yield numbers.growth
    if numbers.clip_grams is not None:
        yield Clip(numbers.clip_grams)
    if numbers.yarn is None and numbers.rows is not None:
        yield Plain.NOT_WEIGHED
    if numbers.time is not None:
        yield Plain.LONG_HOURS


def gauge_remarks(swatch: Swatch, plan: PiecePlan, gauges: PieceGauges, *, rows: bool) -> Iterator[Note]:
    """What is to be said of the gauges a piece is reckoned with, whatever its numbers; ``rows``: whether it has any."""
    yield from gauge_notes(gauges.stitches, Direction.STITCHES)
    if rows and gauges.rows is not None:
        yield from gauge_notes(gauges.rows, Direction.ROWS)
    yield from rule_notes(swatch, chain_rule(plan, gauges))
    yield WholePiece(gauges.drift.stitches, gauges.stitches)
    if rows and gauges.rows is not None:
        yield WholePiece(gauges.drift.rows, gauges.rows)
    if rows and gauges.weight is not None and gauges.drift.grams.pieces:
        yield YarnUsed(gauges.drift.grams)
    if rows and gauges.minutes_a_stitch is not None and gauges.drift.minutes.pieces:
        yield TimeTaken(gauges.drift.minutes)


def _openings(plan: PiecePlan, numbers: PieceNumbers) -> Iterator[BodyOpening]:
    """Neck and armholes lie on front and back, so they are twice as far round as they are wide or deep."""
    if plan.head_mm is not None and numbers.neck:
        yield BodyOpening(name="neck", part="head", round_mm=2 * numbers.neck.begins.true_mm, needs_mm=plan.head_mm)
    if plan.upper_arm_mm is not None and numbers.armhole:
        yield BodyOpening(name="armhole", part="upper arm", round_mm=2 * numbers.armhole.true_mm, needs_mm=plan.upper_arm_mm)
    if plan.hip_mm is not None and numbers.fit is not None and numbers.slit is None:
        yield BodyOpening(name="hem", part="hip", round_mm=numbers.fit.around_mm, needs_mm=plan.hip_mm)
