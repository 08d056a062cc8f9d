"""What a whole garment takes: yarn by yarn and colour, hours, cost."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.joins import Joined
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.pieces.seams import seam_if_named
from logbook.craft.pieces.time_and_money import TimeNeeded, time_needed, time_together, yarn_cost
from logbook.craft.pieces.yarn_needed import YarnNeeded, together, yarn_needed


@dataclass(frozen=True, slots=True)
class YarnOf:
    """One yarn in one colour, for all pieces made of it with their edgings and seams."""

    yarn: str
    colour: str
    needed: YarnNeeded


def yarn_of_piece(piece: ShapedPiece, cloth: Cloth, joins: Sequence[Joined] = ()) -> YarnNeeded | None:
    """For all pieces alike and the seams sewn with its yarn; None if its swatch was not weighed."""
    gauges, alike = cloth.gauges, piece.planned.alike
    if gauges.weight is None:
        return None
    seam = seam_if_named(piece.planned.seam)
    own = [joined for joined in joins if joined.planned.of == piece.name and not joined.goes_on]
    thread = 0.0 if seam is None else alike * math.fsum(seam.thread_mm(joined.a.mm) for joined in own)
    area = ((float(piece.stitches_worked * alike), 1.0),)
    return yarn_needed(gauges.weight, area, thread, gauges.yarn, gauges.drift.grams, gauges.assumptions.reserve)


def yarns(pieces: Sequence[ShapedPiece], cloths: Mapping[str, Cloth], joins: Sequence[Joined]) -> tuple[YarnOf, ...]:
    """What each yarn and colour comes to, of the pieces whose swatch was weighed."""
    found: dict[tuple[str, str], list[tuple[YarnNeeded, Cloth]]] = {}
    for piece in pieces:
        cloth = cloths[piece.name]
        needed = yarn_of_piece(piece, cloth, joins)
        if needed is not None:
            found.setdefault((cloth.gauges.yarn.name, cloth.colour), []).append((needed, cloth))
    return tuple(
        YarnOf(
            yarn,
            colour,
            together((need for need, _ in of), of[0][1].gauges.yarn, of[0][1].gauges.assumptions.reserve),
        )
        for (yarn, colour), of in found.items()
    )


def time_of(pieces: Sequence[ShapedPiece], cloths: Mapping[str, Cloth]) -> TimeNeeded | None:
    """The time of all pieces; None if the minutes of a swatch are not known."""
    gauges = {piece.name: cloths[piece.name].gauges for piece in pieces}
    return time_together(
        time_needed(
            gauges[piece.name].minutes_a_stitch, piece.stitches_worked * piece.planned.alike, gauges[piece.name].drift.minutes
        )
        for piece in pieces
    )


def cost(of: Sequence[YarnOf], cloths: Mapping[str, Cloth]) -> tuple[float, str] | None:
    """The price of all balls and its currency; None if a price is not known or currencies differ."""
    known = {(cloth.gauges.yarn.name, cloth.colour): cloth.gauges.yarn for cloth in cloths.values()}
    yarns_used = [(known[(need.yarn, need.colour)], need.needed.balls) for need in of]
    prices = [yarn_cost(yarn, balls) for yarn, balls in yarns_used]
    currencies = {yarn.currency for yarn, _ in yarns_used}
    if not prices or None in prices or len(currencies) != 1:
        return None
    return math.fsum(price or 0.0 for price in prices), currencies.pop()
