"""A garment worked out: every piece in every size, the joins between them, and what it takes."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.garments.body import GarmentSize, NamedError, SizeMeasures
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.crowns import crown_and_tube, triangle
from logbook.craft.garments.edgings import edging
from logbook.craft.garments.joins import Joined, joined
from logbook.craft.garments.making import Making, joined_edges
from logbook.craft.garments.panels import panel
from logbook.craft.garments.plan import GarmentPiece, GarmentPlan
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import CROWN, EDGING, HALF_FRONT, PANEL, RAGLAN, ROUND_YOKE, TAPERED, TRIANGLE, YOKES
from logbook.craft.garments.tapers import tapered_panel
from logbook.craft.garments.together import YarnOf, cost, time_of, yarns
from logbook.craft.garments.yokes import raglan_yoke, round_yoke
from logbook.craft.pieces.time_and_money import Price, TimeNeeded, price_of
from logbook.errors import RefusedError

MAKERS: Mapping[str, Callable[[Making], ShapedPiece]] = {
    PANEL: panel,
    HALF_FRONT: panel,
    TAPERED: tapered_panel,
    RAGLAN: raglan_yoke,
    ROUND_YOKE: round_yoke,
    CROWN: crown_and_tube,
    TRIANGLE: triangle,
    EDGING: edging,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentInSize:
    """All of a garment in one size. ``cost`` is that of the balls, with its currency, ``price`` the whole as the maker counts it
    at ``rate`` an hour; None where something is not known.
    """

    size: GarmentSize
    pieces: tuple[ShapedPiece, ...]
    joins: tuple[Joined, ...]
    yarn: tuple[YarnOf, ...]
    time: TimeNeeded | None
    cost: tuple[float, str] | None
    other_costs: float = 0.0
    rate: float | None = None

    @property
    def hours(self) -> float | None:
        """How long it takes."""
        return self.time.hours if self.time else None

    @property
    def price(self) -> Price:
        """What it costs its maker."""
        yarn, currency = self.cost or (None, "")
        return price_of(yarn, currency, self.time, self.rate or 0.0, self.other_costs)

    @property
    def name(self) -> str:
        """The size's name."""
        return self.size.name

    def piece(self, name: str) -> ShapedPiece:
        """The piece of that name."""
        return next(piece for piece in self.pieces if piece.name == name)


def work_out_garment(plan: GarmentPlan, sizes: Sequence[GarmentSize], cloths: Mapping[str, Cloth]) -> tuple[GarmentInSize, ...]:
    """The garment in every size; ``cloths`` by the names of the pieces.

    Raises RefusedError, in one sentence that names piece and size, if one can't be.
    """
    return tuple(_in_size(plan, size, cloths, several=len(sizes) > 1) for size in sizes)


@dataclass(frozen=True, slots=True)
class Possible:
    """What can be worked out of a garment in one size, and why not: of a piece by its name, of a join by its place."""

    garment: GarmentInSize
    pieces: Mapping[str, str]
    joins: Mapping[int, str]


def work_out_possible(plan: GarmentPlan, size: GarmentSize, cloths: Mapping[str, Cloth]) -> Possible:
    """As much of the garment in one size as can be worked out; pieces without a cloth are passed over."""
    pieces: dict[str, str] = {}
    joins: dict[int, str] = {}

    def refused(place: str | int, error: RefusedError) -> None:
        if isinstance(place, int):
            joins[place] = str(error)
        else:
            pieces[place] = str(error)

    return Possible(_in_size(plan, size, cloths, several=False, refused=refused), pieces, joins)


def in_turn(plan: GarmentPlan) -> Sequence[GarmentPiece]:
    """All pieces, each after those it needs: yokes, what is worked on from them, edgings."""
    return sorted(plan.pieces, key=lambda piece: (piece.shape == EDGING, piece.shape not in YOKES))


def _raised(place: str | int, error: RefusedError) -> None:
    raise error


def _in_size(
    plan: GarmentPlan,
    size: GarmentSize,
    cloths: Mapping[str, Cloth],
    *,
    several: bool,
    refused: Callable[[str | int, RefusedError], None] = _raised,
) -> GarmentInSize:
    """``refused`` hears of every piece, by its name, and every join, by its place, that can't be."""
    measures = SizeMeasures(plan, size)
    done: dict[str, ShapedPiece] = {}
    for planned in in_turn(plan):
        if refused is _raised or planned.name in cloths:
            try:
                done[planned.name] = made_piece(plan, planned, measures, cloths[planned.name], done, several=several)
            except RefusedError as error:
                refused(planned.name, error)
    joins = []
    for place, join in enumerate(plan.joins):
        if refused is _raised or done.keys() >= {join.of, *join.to}:
            try:
                joins.append(joined(join, done))
            except RefusedError as error:
                refused(place, error)
    pieces = tuple(done[planned.name] for planned in plan.pieces if planned.name in done)
    needed = yarns(pieces, cloths, joins)
    rates = (cloth.gauges.assumptions.hourly_rate for cloth in cloths.values())
    return GarmentInSize(
        size=size,
        pieces=pieces,
        joins=tuple(joins),
        yarn=needed,
        time=time_of(pieces, cloths),
        cost=cost(needed, cloths),
        other_costs=plan.other_costs or 0.0,
        rate=next(rates, None),
    )


def made_piece(
    plan: GarmentPlan,
    planned: GarmentPiece,
    measures: SizeMeasures,
    cloth: Cloth,
    done: Mapping[str, ShapedPiece],
    *,
    several: bool,
) -> ShapedPiece:
    """One piece, after those it needs. Raises RefusedError, in one sentence that names the piece (of ``several`` sizes the size
    too), if it can't be."""
    sewn, goes_on = joined_edges(plan, planned.name), plan.worked_on_from(planned.name)
    making = Making(planned, cloth.gauges, measures, sewn, dict(done), goes_on)
    before = f"Size {measures.size.name}: " if several else ""
    try:
        if planned.kind.plain and (cloth.gauges.pattern.multiple or 1) > 1:
            raise RefusedError(f"A {planned.shape} needs a plain stitch: choose a swatch without repeats.")
        return MAKERS[planned.shape](making)
    except NamedError:
        raise
    except RefusedError as refused:
        raise NamedError(f"{before}“{planned.name}”: {refused}") from refused
