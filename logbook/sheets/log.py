"""What a sheet or a workbook of the whole log is made of."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Protocol

from logbook.craft.gauges.drift import HandsDrift
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.swatch import Swatch
from logbook.sheets.columns import Cell, LogColumn


class LoggedSwatches(Protocol):
    """All swatches of a log, which may be too many to hold at once: each way through them begins anew."""

    @property
    def columns(self) -> Sequence[LogColumn]:
        """The columns that a sheet of them has."""

    @property
    def readings(self) -> int:
        """How many readings they have together."""

    def __len__(self) -> int: ...

    def __iter__(self) -> Iterator[Swatch]:
        """Whole swatches in the order they were logged."""

    def rows(self) -> Iterator[Sequence[Cell]]:
        """In the same order a cell for each column."""

    def by_yarn(self) -> Iterator[Sequence[Swatch]]:
        """Whole swatches, those of one yarn together; those without any in as many parts as it takes."""

    def newest_first(self) -> Sequence[str]:
        """Their uids, the youngest date first, and of one date the last logged."""


@dataclass(frozen=True, slots=True)
class PieceLine:
    """What a planned piece comes to in one size ("": it has none), lengths in mm; ``trouble`` says why it can't be worked out."""

    piece: str
    size: str = ""
    swatch: str = ""
    body_mm: float | None = None
    chain: int | None = None
    stitches: int | None = None
    rows: int | None = None
    width_mm: float | None = None
    length_mm: float | None = None
    give_or_take_mm: float | None = None
    grams: float | None = None
    hours: float | None = None
    published: bool = False
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """A whole logbook in plain records; ``lines``: what its pieces come to; ``kept``: all that is no swatch as plain rows;
    ``tags``: those of the swatches that made pieces name, by uid."""

    swatches: LoggedSwatches
    assumptions: Assumptions = field(default_factory=Assumptions)
    drift: HandsDrift = field(default_factory=HandsDrift)
    pieces: Sequence[PlannedPiece] = ()
    lines: Sequence[PieceLine] = ()
    made: Sequence[MadePiece] = ()
    tags: Mapping[str, str] = field(default_factory=dict)
    kept: Mapping[str, Sequence[Mapping[str, Any]]] = field(default_factory=dict)
