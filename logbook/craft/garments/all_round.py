"""How much a garment measures all round at the bust: what is sewn side to side, with a band that closes a front counted once."""

import math
from dataclasses import dataclass

from logbook.craft.garments.body import SizeMeasures
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import HALF_FRONT, PANEL, ROUND, SIDEWAYS, YOKES
from logbook.errors import RefusedError

_SIDES = ("side", "left side", "right side")


@dataclass(frozen=True, slots=True)
class AllRound:
    """Finished, in mm, as it comes out and as it was ``wanted``; ``band_mm`` of it is a band at the front edges, closed.

    ``repeat_mm`` is the widest repeat that goes round (a single stitch where there is none).
    """

    mm: float
    wanted_mm: float
    band_mm: float
    repeat_mm: float


def all_round(plan: GarmentPlan, size: GarmentInSize) -> AllRound | None:
    """Of a garment in one size; None where nothing goes round the body."""
    yoke = next((piece for piece in size.pieces if piece.planned.shape in YOKES), None)
    if yoke is not None:
        return AllRound(yoke.edges["end"].mm, yoke.wanted["body round"], 0.0, yoke.stitch_mm)
    sewn = [join for join in plan.joins if join.edge in _SIDES and join.at in _SIDES]
    names = {name for join in sewn for name in (join.of, *join.to)}
    pieces = [piece for piece in size.pieces if piece.planned.shape in (PANEL, HALF_FRONT) and piece.planned.worked != SIDEWAYS]
    pieces = [piece for piece in pieces if piece.name in names or piece.planned.worked == ROUND]
    if not pieces or not any(piece.edges.keys() & {"armhole", "neck"} for piece in pieces):
        return None
    measures, band = SizeMeasures(plan, size.size), _band_mm(size, pieces)
    try:
        wanted = [measures.need(piece.planned, "width") for piece in pieces]
    except RefusedError:
        return None
    seams = [piece.wanted["width"] - asked for piece, asked in zip(pieces, wanted, strict=True)]
    made = [max(piece.widths) - seam for piece, seam in zip(pieces, seams, strict=True)]
    return AllRound(
        math.fsum(mm * piece.planned.alike for mm, piece in zip(made, pieces, strict=True)) + band,
        math.fsum(mm * piece.planned.alike for mm, piece in zip(wanted, pieces, strict=True)) + band,
        band,
        max(piece.edges["start"].step_mm for piece in pieces),
    )


def _band_mm(size: GarmentInSize, around: list[ShapedPiece]) -> float:
    """How deep the band along the front edges is: its two halves lie on one another."""
    names = {piece.name for piece in around if piece.planned.shape == HALF_FRONT}
    deep = [
        piece.rows * piece.row_mm for piece in size.pieces if any(e.piece in names and e.edge == "front" for e in piece.picked)
    ]
    return max(deep, default=0.0)
