"""What would mend a join that does not fit: the least change of a measure with which its trouble is gone.

How an edge answers to its measure is tried out, since a shoulder becomes wider as the neck becomes narrower; from there the
measures near the one that should fit are tried, whole steps of the edge first.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from logbook.craft.garments.body import GarmentSize, SizeMeasures
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import in_turn, made_piece
from logbook.craft.garments.joins import Joined, JoinVerdict, joined
from logbook.craft.garments.plan import GarmentPiece, GarmentPlan
from logbook.craft.garments.shaped_piece import Edge, ShapedPiece
from logbook.craft.garments.shapes import TAPERED
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.numbers import half_up
from logbook.errors import RefusedError

_NEAR = 5
"""So many steps on either side of the measure that should fit are tried."""
_TYPED_MM = 0.02
"""A measure that is typed in inches may come out so much off."""


@dataclass(frozen=True, slots=True)
class JoinRemedy:
    """The least change that makes a join fit: ``measure`` of ``piece`` as ``mm``, so many units ``more`` (fewer: negative).

    ``more`` is 0 where not the length of the edge changes but how it is shaped.
    """

    piece: str
    measure: str
    mm: float
    more: int
    along: str


@dataclass(frozen=True, slots=True)
class _Trial:
    """A join worked out again with other measures."""

    plan: GarmentPlan
    size: GarmentSize
    cloths: Mapping[str, Cloth]
    trouble: Joined

    def with_measure(self, piece: str, measure: str, mm: float) -> tuple[Joined, Mapping[str, ShapedPiece]] | None:
        """The join and its pieces; None if they can't be."""
        measures = SizeMeasures(self.plan, with_measure(self.size, piece, measure, mm))
        done: dict[str, ShapedPiece] = {}
        try:
            for planned in _needed_for(self.plan, self.trouble):
                done[planned.name] = made_piece(self.plan, planned, measures, self.cloths[planned.name], done, several=False)
            return joined(self.trouble.planned, done), done
        except RefusedError:
            return None

    def edge_of(self, piece: str) -> str:
        """Which edge of a piece the join is at."""
        return self.trouble.planned.edge if piece == self.trouble.planned.of else self.trouble.planned.at

    def mends(self, new: Joined) -> bool:
        """Whether that trouble is gone; another may be left, which has a remedy of its own."""
        kind = self.trouble.trouble.kind if self.trouble.trouble else ""
        if new.trouble is None:
            return new.verdict is JoinVerdict.FITS or kind == "inset"  # the lengths were eased in before, and may stay so
        return new.trouble.kind != kind


def remedy_for(plan: GarmentPlan, size: GarmentSize, cloths: Mapping[str, Cloth], trouble: Joined) -> JoinRemedy | None:
    """The smallest change with which that trouble of the join is gone; None if none was found near.

    The piece that is joined is changed, else those that it is joined to.
    """
    trial = _Trial(plan, size, cloths, trouble)
    for name, measure in dict.fromkeys(_measures(plan, trouble)):
        piece = plan.piece(name)
        wanted = None if piece is None else _wanted(plan, size, piece, measure)
        if piece is not None and wanted is not None:
            remedy = _inset_remedy(trial, piece) if measure in ("straight", "inset") else _found(trial, piece, measure, wanted)
            if remedy is not None:
                return remedy
    return None


def with_measure(size: GarmentSize, piece: str, measure: str, mm: float) -> GarmentSize:
    """The size with one measure of a piece said otherwise."""
    own = {**size.pieces.get(piece, {}), measure: f"{mm:.3f} mm"}
    return replace(size, pieces={**size.pieces, piece: own})


def _measures(plan: GarmentPlan, join: Joined) -> Iterator[tuple[str, str]]:
    """Pieces and their measures that may mend a join, the likeliest first."""
    if join.trouble is not None and join.trouble.kind == "inset":
        of = plan.piece(join.planned.of)
        yield (
            (join.planned.of, "straight")
            if of is not None and of.shape == TAPERED
            else (str(join.trouble.figures["piece"]), "inset")
        )
        return
    yield join.planned.of, join.a.measure
    for name in join.planned.to:
        yield name, join.b_measure
    if "shoulder" in (join.planned.edge, join.planned.at):
        yield from ((name, "width") for name in (join.planned.of, *join.planned.to))


def _wanted(plan: GarmentPlan, size: GarmentSize, piece: GarmentPiece, measure: str) -> float | None:
    try:
        wanted = SizeMeasures(plan, size).get(piece, measure)
    except RefusedError:
        return None
    return 0.0 if wanted is None and measure in ("straight", "inset") else wanted


def _inset_remedy(trial: _Trial, piece: GarmentPiece) -> JoinRemedy | None:
    """The straight rows of a sleeve as long as the inset, or the inset as wide as they are long."""
    figures = trial.trouble.trouble.figures if trial.trouble.trouble else {}
    measure, figure = ("straight", "needs") if piece.shape == TAPERED else ("inset", "has")
    mm = round(float(figures[figure]), 1)
    new = trial.with_measure(piece.name, measure, mm)
    return JoinRemedy(piece.name, measure, mm, 0, "rows") if new is not None and trial.mends(new[0]) else None


def _found(trial: _Trial, piece: GarmentPiece, measure: str, wanted: float) -> JoinRemedy | None:
    trouble, edge = trial.trouble, _edge_of(trial, piece.name, wanted, measure)
    if edge is None:
        return None
    step, first = _step(trial, piece, measure, wanted, edge), piece.name == trouble.planned.of
    gap = -trouble.difference_mm if first else trouble.difference_mm / _pieces_alike(trouble)
    slope = _slope(trial, piece.name, measure, wanted, step)
    if not slope:
        return None
    near = half_up(gap / slope / step)
    goes_on = trouble.goes_on
    whole = sorted({near + k for k in range(-_NEAR, _NEAR + 1)} - {0}, key=lambda steps: abs(steps - near if goes_on else steps))
    halves = [near + k + 0.5 for k in (-1, 0, -2, 1)]  # for a measure that lies just between two counts
    for steps in (*whole, *halves):
        mm = round(wanted + steps * step, 1)
        if mm > 0 and (more := _mending(trial, piece.name, measure, mm, edge)) is not None:
            return JoinRemedy(piece.name, measure, mm, more, edge.along.value)
    return None


def _step(trial: _Trial, piece: GarmentPiece, measure: str, wanted: float, edge: Edge) -> float:
    """What the measure moves the edge by: a neck gives and takes single stitches of a shoulder, whatever the width goes by."""
    now = trial.with_measure(piece.name, measure, wanted)
    single = measure == "neck width" and trial.edge_of(piece.name) == "shoulder" and edge.along is Direction.STITCHES
    return now[1][piece.name].stitch_mm if single and now is not None else edge.step_mm


def _pieces_alike(join: Joined) -> int:
    """How often the edge of a piece that is joined to counts."""
    return 2 if len(join.planned.to) == 1 and join.planned.at == "armhole" and join.b_measure == "armhole" else 1


def _edge_of(trial: _Trial, name: str, wanted: float, measure: str) -> Edge | None:
    now = trial.with_measure(name, measure, wanted)
    return None if now is None else now[1][name].edges.get(trial.edge_of(name))


def _slope(trial: _Trial, name: str, measure: str, wanted: float, step: float) -> float:
    """By how many mm the edge changes where the measure changes by one."""
    edge = trial.edge_of(name)
    found: list[tuple[float, float]] = []
    for by in (0.0, 8 * step, -8 * step, 3 * step, -3 * step):
        if wanted + by > 0 and (new := trial.with_measure(name, measure, wanted + by)) is not None and edge in new[1][name].edges:
            found.append((by, new[1][name].edges[edge].mm))
        if len(found) == 2:
            (a, before), (b, after) = found
            return (after - before) / (b - a)
    return 0.0


def _mending(trial: _Trial, name: str, measure: str, mm: float, edge: Edge) -> int | None:
    """By how many units the edge changes with that measure, if it mends the join, however it is typed."""
    more = None
    for typed in (mm, mm - _TYPED_MM, mm + _TYPED_MM):
        new = trial.with_measure(name, measure, typed)
        if new is None or not trial.mends(new[0]):
            return None
        more = more if more is not None else new[1][name].edges[trial.edge_of(name)].count - edge.count
    return more


def _needed_for(plan: GarmentPlan, join: Joined) -> Sequence[GarmentPiece]:
    """The pieces that are joined, after those that an edging among them lies along, and those that they are worked on from."""
    names = {join.planned.of, *join.planned.to}
    names |= {name for piece in plan.pieces if piece.name in names for name, _ in piece.choice("along")}
    names |= {on.to[0] for name in names if (on := plan.worked_on_from(name)) is not None}
    return [piece for piece in in_turn(plan) if piece.name in names]
