"""The joins that pieces of such shapes usually get; the maker may change them."""

from collections.abc import Iterator, Sequence

from logbook.craft.garments.plan import GarmentJoin, GarmentPiece, GarmentPlan
from logbook.craft.garments.shapes import DOWN, HALF_FRONT, PANEL, ROUND, SIDEWAYS, TAPERED, YOKES


def usual_joins(plan: GarmentPlan) -> tuple[GarmentJoin, ...]:
    """Shoulders and sides of fronts to the back, sleeves to armholes, body and sleeves to a yoke."""
    yoke = next((piece for piece in plan.pieces if piece.shape in YOKES), None)
    bodies = [piece for piece in plan.pieces if piece.shape in (PANEL, HALF_FRONT)]
    sleeves = [piece for piece in plan.pieces if piece.shape == TAPERED and piece.alike == 2]
    if yoke is not None:
        return tuple(_to_yoke(yoke, bodies, sleeves))
    return tuple(_sewn(bodies, sleeves))


def _to_yoke(yoke: GarmentPiece, bodies: Sequence[GarmentPiece], sleeves: Sequence[GarmentPiece]) -> Iterator[GarmentJoin]:
    for piece in bodies:
        if piece.worked == ROUND:
            yield GarmentJoin(of=piece.name, edge="start", to=(yoke.name,), at="end")
    for piece in sleeves:
        yield GarmentJoin(of=piece.name, edge=_top_of(piece), to=(yoke.name,), at="armhole")


def _sewn(bodies: Sequence[GarmentPiece], sleeves: Sequence[GarmentPiece]) -> Iterator[GarmentJoin]:
    panels = [piece for piece in bodies if piece.shape == PANEL and piece.worked != ROUND]
    if not panels:
        return
    back = next((piece for piece in panels if piece.name.casefold() == "back"), panels[0])
    others = [
        piece
        for piece in bodies
        if piece is not back and piece.worked != ROUND and piece.measures.keys() & {"armhole", "neck width"}
    ]
    if not others and back.alike > 1:
        others = [back]
    for edge in ("shoulder", "side"):
        for piece in others:
            if edge == "side" or {"neck width"} <= piece.measures.keys() & back.measures.keys():
                yield GarmentJoin(of=piece.name, edge=edge, to=(back.name,), at=edge)
    with_armhole = [piece.name for piece in (back, *(o for o in others if o is not back)) if "armhole" in piece.measures]
    for piece in sleeves if with_armhole else ():
        yield GarmentJoin(of=piece.name, edge=_top_of(piece), to=tuple(with_armhole[:2]), at="armhole")


def _top_of(sleeve: GarmentPiece) -> str:
    """The edge at the upper arm: worked down or in the round a sleeve begins there."""
    return "start" if sleeve.worked in (DOWN, ROUND, SIDEWAYS) else "end"
