"""What is wanted of a garment: its pieces, sizes and joins, every length as the text that was typed."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from logbook.craft.garments.shapes import HALF_FRONT, PANEL, SIDEWAYS, TAPERED, UP, USUAL, YOKES, Shape, shape_called
from logbook.craft.sizes.body_chart import End


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentPiece:
    """One piece. ``swatch`` is a tag, or the columns of a swatch given in place.

    ``measures`` are formulas by name; ``choices`` what else the shape may be told, read already. ``seam`` is what a seam takes
    from each joined edge, as typed, or the name of a seam.
    """

    name: str
    shape: str
    swatch: str | Mapping[str, Any] = ""
    edge_swatch: str = ""
    alike: int = 1
    worked: str = UP
    seam: str = ""
    measures: Mapping[str, str] = field(default_factory=dict)
    choices: Mapping[str, Any] = field(default_factory=dict)
    says: str = ""

    @property
    def kind(self) -> Shape:
        """What its shape wants."""
        return shape_called(self.shape)

    def choice(self, name: str) -> Any:
        """What is said of ``name``, else what is usual."""
        return self.choices[name] if name in self.choices else USUAL[name]


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentJoin:
    """The edge of one piece joined to the edge ``at`` of others."""

    of: str
    edge: str
    to: tuple[str, ...]
    at: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedSize:
    """A size with its own measures as typed; ``pieces`` holds what it wants of a piece otherwise than the plan."""

    name: str
    measures: Mapping[str, str] = field(default_factory=dict)
    ease: str | None = None
    pieces: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentSizes:
    """The sizes: those of a chart (``only``: some of them; none: all), or typed ones, which go over those of a chart."""

    chart: str = ""
    only: tuple[str, ...] = ()
    end: End = End.MIDDLE
    typed: tuple[TypedSize, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentPlan:
    """A garment as it is wanted. ``says`` is the maker's own text about it; ``other_costs`` what it takes beside yarn and work,
    in the yarn's currency.
    """

    name: str
    ease: str = ""
    sizes: GarmentSizes = field(default_factory=GarmentSizes)
    pieces: tuple[GarmentPiece, ...] = ()
    joins: tuple[GarmentJoin, ...] = ()
    says: str = ""
    other_costs: float | None = None

    def piece(self, name: str) -> GarmentPiece | None:
        """The piece of that name."""
        return next((piece for piece in self.pieces if piece.name == name), None)

    def is_worked_on(self, join: GarmentJoin) -> bool:
        """Whether the join is no seam: a panel or sleeve that starts at the last round of a yoke is worked on from it."""
        of, to = self.piece(join.of), self.piece(join.to[0])
        return (
            of is not None
            and to is not None
            and len(join.to) == 1
            and of.shape in (PANEL, TAPERED)
            and of.worked != SIDEWAYS
            and join.edge == "start"
            and to.shape in YOKES
            and join.at in ("end", "armhole")
        )

    def worked_on_from(self, piece: str) -> GarmentJoin | None:
        """The join by which a piece is worked on from a yoke; None if it begins by itself."""
        return next((join for join in self.joins if join.of == piece and self.is_worked_on(join)), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Garment:
    """A garment as it is kept. ``published`` is what was marked as published, as JSON text; None: nothing yet."""

    uid: str = ""
    plan: GarmentPlan
    published: str | None = None
    notes: str = ""

    @property
    def name(self) -> str:
        """What it is called."""
        return self.plan.name


def usual_alike(shape: str) -> int:
    """How many of a piece are made if nothing is said: half fronts come in pairs."""
    return 2 if shape == HALF_FRONT else 1
