"""What the making of one piece goes by: its plan, its gauges, its measures in one size, and what is joined of it."""

from collections.abc import Mapping
from dataclasses import dataclass

from logbook.craft.garments.body import SizeMeasures
from logbook.craft.garments.plan import GarmentJoin, GarmentPiece, GarmentPlan
from logbook.craft.garments.shaped_piece import Edge, ShapedPiece, WorkedOn
from logbook.craft.garments.shapes import HALF_FRONT, ROUND, SIDEWAYS
from logbook.craft.gauges.drift import combined
from logbook.craft.pieces.options import Option, Pitch, recommended
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.seams import SEAMS, seam_if_named
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.lengths import read_length
from logbook.craft.words.numbers import half_up
from logbook.errors import LogbookError, RefusedError


@dataclass(frozen=True, slots=True)
class Making:
    """One piece in one size. ``joined``: its edges that are sewn, a ``side`` as both; ``done``: the pieces worked out before;
    ``goes_on``: the join by which it is worked on from one of them."""

    planned: GarmentPiece
    gauges: PieceGauges
    measures: SizeMeasures
    joined: frozenset[str]
    done: Mapping[str, ShapedPiece]
    goes_on: GarmentJoin | None = None

    @property
    def p(self) -> float:
        """The stitch pitch in mm."""
        return self.gauges.pitch(Direction.STITCHES)

    @property
    def q(self) -> float:
        """The row pitch in mm. Raises RefusedError if the rows were not measured."""
        return self.gauges.pitch(Direction.ROWS)

    @property
    def step(self) -> float:
        """What one stitch, or one repeat where stitches go by repeats, changes in width."""
        return self.p * (self.gauges.pattern.multiple or 1)

    @property
    def seam_mm(self) -> float:
        """What a seam takes from each joined edge. Raises RefusedError if what was typed is neither a length nor a seam."""
        text = self.planned.seam.strip()
        if not text:
            return 0.0
        known = seam_if_named(text)
        if known is not None:
            return known.allowance_mm(self.p)
        try:
            return max(read_length(text, what="what a seam takes"), 0.0)
        except LogbookError as error:
            seams = ", ".join(seam.name for seam in SEAMS)
            raise RefusedError(f"The seam of “{self.planned.name}”: {error} Or name one of {seams}.") from error

    def seams(self, *edges: str) -> float:
        """What seams take at those edges together."""
        return self.seam_mm * len(self.joined.intersection(edges))

    @property
    def across_mm(self) -> float:
        """What seams take of the width: at each side that is joined; a half front has one side, and in the round there is none.

        The sides of a panel worked sideways are its first and last row.
        """
        if self.planned.worked == ROUND:
            return 0.0
        ends = (
            (("left side", "start"), ("right side", "end"))
            if self.planned.worked == SIDEWAYS
            else (("left side",), ("right side",))
        )
        sides = sum(not self.joined.isdisjoint(names) for names in ends)
        return self.seam_mm * (min(sides, 1) if self.planned.shape == HALF_FRONT else sides)

    def with_seams(self, measure: str) -> float | None:
        """A measure with what seams take of it, None where it is not wanted."""
        mm, shoulder = self.get(measure), self.seams("shoulder")
        if mm is None:
            return None
        along = 0.0 if self.planned.worked == SIDEWAYS else self.seams("start", "end")
        more = {"length": along + shoulder, "armhole": shoulder, "neck depth": shoulder}
        more |= dict.fromkeys(("width", "start width", "end width"), self.across_mm)
        return mm + more.get(measure, 0.0)

    def need(self, measure: str) -> float:
        """A measure in mm. Raises RefusedError, naming it, if it is not there."""
        return self.measures.need(self.planned, measure)

    def get(self, measure: str) -> float | None:
        """A measure in mm, None where it is not wanted."""
        return self.measures.get(self.planned, measure)

    def chain(self, width_mm: float, rule: ChainRule) -> Option:
        """The chain for a width. Raises RefusedError as ``starting_chains``."""
        return recommended(starting_chains(width_mm, Pitch.of(self.gauges.stitches, self.gauges.drift.stitches, 0.0), rule))

    @property
    def on(self) -> WorkedOn | None:
        """What the piece is worked on from; None if it begins by itself. Raises RefusedError if that is not worked out."""
        if self.goes_on is None:
            return None
        yoke = self.done.get(self.goes_on.to[0])
        if yoke is None:
            raise RefusedError(f"It is worked on from “{self.goes_on.to[0]}”, which can't be worked out yet.")
        stitches = yoke.edges[self.goes_on.at].count
        return WorkedOn(piece=yoke.name, edge=self.goes_on.at, stitches=stitches, added=yoke.parts["underarm"])

    def first_stitches(self, own: int) -> int:
        """How many stitches it begins with: ``own`` by its width; in plain stitches those it is worked on from, if they are near.

        Near: within 5 %, or two stitches, as a yoke reaches its counts in steps of so many.
        """
        on = self.on
        if on is None or (self.gauges.pattern.multiple or 1) > 1 or self.across_mm:
            return own
        same = self.done[on.piece].stitch_mm == self.p
        return on.stitches if same and abs(own - on.stitches) <= max(0.05 * on.stitches, 2) else own

    def give_or_take(self, width_mm: float) -> float | None:
        """The half-width of a whole piece that is so wide; None if the gauge's is not known."""
        own = self.gauges.stitches.give_or_take
        return combined(None if own is None else own * width_mm, self.gauges.drift.stitches.give_or_take * width_mm)

    def along_stitches(self, count: int, measure: str, mm: float | None = None) -> Edge:
        """An edge of so many stitches."""
        return Edge(
            mm=count * self.p if mm is None else mm, count=count, along=Direction.STITCHES, step_mm=self.step, measure=measure
        )

    def along_rows(self, count: int, measure: str, mm: float | None = None) -> Edge:
        """An edge of so many row ends."""
        return Edge(mm=count * self.q if mm is None else mm, count=count, along=Direction.ROWS, step_mm=self.q, measure=measure)

    def piece(self, foundation: int, counts: tuple[int, ...], **rest: object) -> ShapedPiece:
        """The piece with every row as wide as its stitches, unless ``widths`` says otherwise."""
        pitch = self.p
        widths = rest.pop("widths", None) or tuple(count * pitch for count in (foundation, *counts))
        return ShapedPiece(
            planned=self.planned,
            foundation=foundation,
            counts=counts,
            stitch_mm=self.p,
            row_mm=self.q,
            on=self.on,
            wanted={name: mm for name in self.planned.kind.measures if (mm := self.with_seams(name)) is not None},
            widths=widths,  # type: ignore[arg-type]
            give_or_take_mm=self.give_or_take(widths[-1]),  # type: ignore[index]
            **rest,  # type: ignore[arg-type]
        )


def joined_edges(plan: GarmentPlan, piece: str) -> frozenset[str]:
    """The edges of a piece that are sewn to others."""
    seams = [join for join in plan.joins if not plan.is_worked_on(join)]
    edges = {join.edge for join in seams if join.of == piece} | {join.at for join in seams if piece in join.to}
    return frozenset(edges | ({"left side", "right side"} if "side" in edges else set()))


def nearest_with_parity(exact: float, like: int) -> int:
    """The count nearest to ``exact`` that is odd or even as ``like`` is; halfway the larger."""
    return like % 2 + 2 * half_up((exact - like % 2) / 2)
