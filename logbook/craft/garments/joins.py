"""What is joined to what: both lengths as finished, whether they fit, and how to sew it.

It *fits* within 2 % or half the larger step of the two edges (a stitch, a row, a repeat where stitches go by repeats); up to 5 %
it is *eased in*; more is *trouble*. Side to side and shoulder to shoulder in the same stitch the counts must be equal.
An armhole named on one piece is its depth twice; several pieces are the sum.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from logbook.craft.garments.plan import GarmentJoin
from logbook.craft.garments.rates import small_ratio
from logbook.craft.garments.shaped_piece import Edge, PieceTrouble, ShapedPiece
from logbook.errors import RefusedError

FITS, EASES = 0.02, 0.05


class JoinVerdict(StrEnum):
    """Whether two edges go together."""

    FITS = "fits"
    EASE_IN = "ease in"
    TROUBLE = "trouble"


@dataclass(frozen=True, slots=True, kw_only=True)
class Joined:
    """A join worked out. ``b_measure`` governs the other edge; ``rate``: so many stitches or rows of the first edge to so many
    of the other; ``trouble``: why not;
    ``goes_on``: no seam, the first piece is worked on from the other."""

    planned: GarmentJoin
    a: Edge
    b_mm: float
    b_count: int
    b_along: str
    b_measure: str
    verdict: JoinVerdict
    rate: tuple[int, int]
    trouble: PieceTrouble | None = None
    goes_on: bool = False

    @property
    def difference_mm(self) -> float:
        """How much longer the first edge is than the other."""
        return self.a.mm - self.b_mm


def joined(planned: GarmentJoin, pieces: Mapping[str, ShapedPiece]) -> Joined:
    """A join of pieces that are worked out. Raises RefusedError if one has no such edge."""
    of, others = pieces[planned.of], [pieces[name] for name in planned.to]
    a, edges = _edge(of, planned.edge), [_edge(other, planned.at) for other in others]
    twice = 2 if len(edges) == 1 and planned.at == "armhole" == edges[0].measure else 1
    b_mm, b_count = twice * sum(edge.mm for edge in edges), twice * sum(edge.count for edge in edges)
    if not b_mm > 0 or not a.mm > 0:
        raise RefusedError(f"“{planned.of}” can't be joined to {_named(planned.to)}: the edge has no length.")
    verdict, trouble = _verdict(a, b_mm, b_count, edges, counts_must_agree(planned, of, others))
    met = _inset(planned, of, others)
    return Joined(
        planned=planned,
        a=a,
        b_mm=b_mm,
        b_count=b_count,
        b_along=edges[0].along.value,
        b_measure=edges[0].measure,
        verdict=JoinVerdict.TROUBLE if met else verdict,
        rate=small_ratio(a.count, b_count),
        trouble=met or trouble,
        goes_on=of.on is not None and (of.on.piece,) == planned.to and of.on.edge == planned.at and planned.edge == "start",
    )


def _edge(piece: ShapedPiece, name: str) -> Edge:
    if name not in piece.edges:
        has = ", ".join(piece.edges)
        raise RefusedError(f"“{piece.name}” has no edge “{name}” to join: it has {has}.")
    return piece.edges[name]


def counts_must_agree(planned: GarmentJoin, of: ShapedPiece, others: Sequence[ShapedPiece]) -> bool:
    """Whether the counts must be equal: side to side or shoulder to shoulder, in the same stitch."""
    sides = ("side", "left side", "right side")
    same_edge = (planned.edge in sides and planned.at in sides) or planned.edge == planned.at == "shoulder"
    return same_edge and len(others) == 1 and others[0].planned.swatch == of.planned.swatch


def _verdict(a: Edge, b_mm: float, b_count: int, edges: Sequence[Edge], alike: bool) -> tuple[JoinVerdict, PieceTrouble | None]:
    if alike and a.along is edges[0].along:
        if a.count == b_count:
            return JoinVerdict.FITS, None
        return JoinVerdict.TROUBLE, PieceTrouble("counts differ", {"a": a.count, "b": b_count, "along": a.along.value})
    off = abs(a.mm - b_mm)
    if off <= max(FITS * b_mm, max(a.step_mm, *(edge.step_mm for edge in edges)) / 2) + 1e-9:
        return JoinVerdict.FITS, None
    if off <= EASES * b_mm + 1e-9:
        return JoinVerdict.EASE_IN, None
    return JoinVerdict.TROUBLE, PieceTrouble("lengths differ", {"a": a.mm, "b": b_mm})


def _inset(planned: GarmentJoin, of: ShapedPiece, others: Sequence[ShapedPiece]) -> PieceTrouble | None:
    """Trouble if the sleeve's straight rows do not meet the inset of an armhole."""
    if planned.at != "armhole":
        return None
    for other in others:
        inset = next((count for place, _, count in other.left if place == "armhole"), 0)
        has, needs = of.parts.get("even", 0) * of.row_mm, inset * other.stitch_mm
        if inset and abs(has - needs) > max(FITS * needs, of.row_mm / 2, other.stitch_mm / 2) + 1e-9:
            return PieceTrouble("inset", {"has": has, "needs": needs, "piece": other.name})
    return None


def _named(names: Sequence[str]) -> str:
    return " and ".join(f"“{name}”" for name in names)
