"""A piece of a garment worked out: its rows and their counts, its edges, and what is shaped where."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from logbook.craft.garments.plan import GarmentPiece
from logbook.craft.garments.shapes import FROM_TOP, ROUND
from logbook.craft.swatches.conditions import Direction


@dataclass(frozen=True, slots=True)
class Level:
    """A row and how many stitches are in it (of both sides of a neck together); row 0 is the foundation."""

    row: int
    stitches: int
    width_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """One edge: how long it is when finished, and of how many stitches or rows it is made.

    ``step_mm`` is what one stitch, row or repeat changes. ``measure`` is the measure of the piece that governs it. ``mixed``:
    counted are stitches and row ends together, as round a neck.
    """

    mm: float
    count: int
    along: Direction
    step_mm: float
    measure: str
    mixed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaping:
    """Stitches gained (negative: lost) at ``place`` in the rows ``at``, one at each of ``edges`` edges each time.

    ``rows`` rows from ``first`` on are those over which it is spread.
    """

    place: str
    at: tuple[int, ...]
    by: int
    edges: int
    first: int
    rows: int


@dataclass(frozen=True, slots=True)
class PieceTrouble:
    """What stands in the way: its kind, and the figures that its sentence holds."""

    kind: str
    figures: Mapping[str, float | str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class PickedUp:
    """Stitches of an edging picked up along one edge, ``mm`` long: at the ``rate`` (stitches, to rows or stitches), and ``over``
    besides.
    """

    piece: str
    edge: str
    mm: float
    stitches: int
    along: Direction
    rate: tuple[int, int]
    over: int
    mixed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedOn:
    """A piece that goes on from the ``edge`` of another, whose ``stitches`` there are on the hook already, ``added`` among them
    under each arm."""

    piece: str
    edge: str
    stitches: int
    added: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapedPiece:
    """The numbers of one piece in one size. Lengths in mm, finished.

    ``chain``: extra chains included; None where the piece does not begin with one. ``counts[r − 1]`` are the stitches of row r.
    ``wanted``: its measures as they were asked for, with what seams take of them. ``off_line_mm``: how far the outline strays
    from the line wanted. ``parts``: what is told beside the levels, by name (of a yoke: back, front, sleeve and so on). ``on``:
    what it is worked on from (None: it begins by itself). ``picked``: of an edging. ``left`` are stitches left unworked: (place,
    row, stitches at each edge).
    """

    planned: GarmentPiece
    chain: int | None
    foundation: int
    counts: tuple[int, ...]
    stitch_mm: float
    row_mm: float
    widths: tuple[float, ...]
    give_or_take_mm: float | None
    edges: Mapping[str, Edge]
    shapings: tuple[Shaping, ...] = ()
    left: tuple[tuple[str, int, int], ...] = ()
    off_line_mm: float = 0.0
    parts: Mapping[str, int] = field(default_factory=dict)
    on: WorkedOn | None = None
    picked: tuple[PickedUp, ...] = ()
    troubles: tuple[PieceTrouble, ...] = ()
    wanted: Mapping[str, float] = field(default_factory=dict)

    @property
    def in_round(self) -> bool:
        """Whether it is worked in rounds."""
        return self.planned.worked == ROUND or self.planned.shape in FROM_TOP

    @property
    def name(self) -> str:
        """What the piece is called."""
        return self.planned.name

    @property
    def rows(self) -> int:
        """How many rows or rounds it has."""
        return len(self.counts)

    @property
    def stitches_worked(self) -> int:
        """All stitches of all rows of one such piece."""
        return sum(self.counts)

    @property
    def levels(self) -> tuple[Level, ...]:
        """Row 0, every row in which the count changes, and the last."""
        every = (self.foundation, *self.counts)
        changes = [0, *(row for row, (before, now) in enumerate(pairwise(every), 1) if now != before)]
        rows = changes if changes[-1] == self.rows else [*changes, self.rows]
        return tuple(Level(row, every[row], self.widths[row]) for row in rows)


def counts_from(foundation: int, rows: int, changes: Sequence[tuple[int, int]]) -> tuple[int, ...]:
    """The stitches of every row, from changes (row, by how many) in any order."""
    by_row = [0] * (rows + 1)
    for row, by in changes:
        by_row[row] += by
    counts, now = [], foundation
    for by in by_row[1:]:
        now += by
        counts.append(now)
    return tuple(counts)
