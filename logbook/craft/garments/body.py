"""What the measures of pieces come to in one size: the size's body, its ease, and the formulas of the plan."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from logbook.craft.garments.formulas import measure_of
from logbook.craft.garments.plan import GarmentPiece, GarmentPlan, TypedSize
from logbook.craft.garments.shapes import MAY_BE_NOUGHT
from logbook.craft.sizes.body_chart import MEASURES, BodyChart
from logbook.craft.words.lengths import NO_EASE, Ease, read_ease
from logbook.craft.words.numbers import fixed
from logbook.errors import LogbookError, RefusedError

ONE_SIZE = "one size"


@dataclass(frozen=True, slots=True, kw_only=True)
class GarmentSize:
    """One size: ``body`` in mm by measure, its ease, and what it wants of a piece otherwise than the plan (formulas)."""

    name: str
    body: Mapping[str, float] = field(default_factory=dict)
    ease: Ease = NO_EASE
    pieces: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


def sizes_of(plan: GarmentPlan, chart: BodyChart | None) -> tuple[GarmentSize, ...]:
    """The sizes of a plan, smallest first as the chart has them; without any the garment has one size.

    Raises a LogbookError, in one sentence, for a size that the chart does not have or a measure that is none.
    """
    planned, ease = plan.sizes, _ease(plan.ease, "the garment")
    typed = {size.name: size for size in planned.typed}
    if chart is None:
        return tuple(_typed(size, {}, ease) for size in planned.typed) or (GarmentSize(name=ONE_SIZE, ease=ease),)
    known = [size.name for size in chart.sizes]
    missing = next((name for name in planned.only if name not in known and name not in typed), None)
    if missing is not None:
        raise RefusedError(f"The chart “{chart.name}” has no size {missing}: it has {', '.join(known)}.")
    found = []
    for size in chart.sizes:
        if not planned.only or size.name in planned.only:
            body = {name: mm for name in size.ranges if (mm := size.measure(name, planned.end)) is not None}
            found.append(_typed(typed.get(size.name, TypedSize(name=size.name)), body, ease))
    return (*found, *(_typed(size, {}, ease) for name, size in typed.items() if name not in known))


def _typed(size: TypedSize, body: Mapping[str, float], ease: Ease) -> GarmentSize:
    own: dict[str, float] = {}
    for name, text in size.measures.items():
        try:
            own[name] = measure_of(text, (), own.__getitem__)
        except LogbookError as error:
            raise RefusedError(f"The {name} of size {size.name}: {error}") from error
    wanted = ease if size.ease is None else _ease(size.ease, f"size {size.name}")
    return GarmentSize(name=size.name, body={**body, **own}, ease=wanted, pieces=size.pieces)


def _ease(text: str, of: str) -> Ease:
    try:
        return read_ease(text) if text.strip() else NO_EASE
    except LogbookError as error:
        raise RefusedError(f"The ease of {of}: {error}") from error


class SizeMeasures:
    """The measures of all pieces in one size, each worked out when it is asked for."""

    def __init__(self, plan: GarmentPlan, size: GarmentSize) -> None:
        self._plan, self._size = plan, size
        self._names = measure_names(plan.pieces)
        self._known: dict[tuple[str, str], float | None] = {}
        self._asked: list[tuple[str, str]] = []

    @property
    def size(self) -> GarmentSize:
        """The size that is measured."""
        return self._size

    def get(self, piece: GarmentPiece, measure: str) -> float | None:
        """A measure of a piece in mm, as wanted; None if neither size nor plan says. Raises RefusedError, naming both."""
        place = (piece.name, measure)
        if place not in self._known:
            self._known[place] = self._reckoned(piece, measure)
        return self._known[place]

    def need(self, piece: GarmentPiece, measure: str) -> float:
        """A measure that the shape can't do without. Raises RefusedError, naming it, if it is not there or not above nought."""
        mm = self.get(piece, measure)
        if mm is None:
            raise NamedError(f"“{piece.name}” has no {measure}: give it among its measures.")
        return mm

    def _reckoned(self, piece: GarmentPiece, measure: str) -> float | None:
        text = self._size.pieces.get(piece.name, {}).get(measure) or piece.measures.get(measure, "")
        if not text.strip():
            return None
        place = (piece.name, measure)
        if place in self._asked:
            round_about = " → ".join(f"{m} of {p}" for p, m in (*self._asked[self._asked.index(place) :], place))
            raise NamedError(f"These measures go round in a circle: {round_about}. Type one of them.")
        self._asked.append(place)
        try:
            mm = measure_of(text, self._names, self._value)
        except NamedError:
            raise
        except LogbookError as error:
            raise NamedError(f"The {measure} of “{piece.name}”: {error}") from error
        finally:
            self._asked.pop()
        if mm <= 0 and measure not in MAY_BE_NOUGHT:
            where = "" if self._size.name == ONE_SIZE else f" in size {self._size.name}"
            raise NamedError(f"The {measure} of “{piece.name}” comes to {fixed(mm / 10, 1)} cm{where}: it must be more than 0.")
        return max(mm, 0.0)

    def _value(self, name: str) -> float | Ease:
        if name == "ease":
            return self._size.ease
        if " of " in name:
            measure, piece = measure_named(name, self._plan.pieces)
            mm = self.get(piece, measure)
            if mm is None:
                raise NamedError(f"“{piece.name}” has no {measure}: give it among its measures.")
            return mm
        body = "bust" if name == "chest" else name
        if body not in self._size.body:
            if self._size.name == ONE_SIZE:
                raise NamedError(f"There is no {body}, as no sizes are chosen: choose a chart, or type the measure itself.")
            raise NamedError(f"Size {self._size.name} has no {body}: fill it in, or type the measure itself.")
        return self._size.body[body]


class NamedError(RefusedError):
    """A refusal that names already which measure it is about."""


def measure_names(pieces: Sequence[GarmentPiece]) -> tuple[str, ...]:
    """What a formula may name: the measures of a body, the ease, and the measures of the pieces (``width of back``)."""
    return (*MEASURES, "chest", "ease", *(f"{m} of {p.name}" for p in pieces for m in p.kind.measures))


def measure_named(name: str, pieces: Sequence[GarmentPiece]) -> tuple[str, GarmentPiece]:
    """The measure and the piece that ``width of back`` names."""
    return next((m, p) for p in pieces for m in p.kind.measures if name == f"{m} of {p.name}")
