"""What a workbook of the whole log is made of."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from logbook.craft.gauges.drift import HandsDrift
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.swatch import Swatch


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
    published: bool = False
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Log:
    """A whole logbook in plain records; ``lines``: what its pieces come to; ``kept``: all that is no swatch as plain rows."""

    swatches: Sequence[Swatch]
    assumptions: Assumptions = field(default_factory=Assumptions)
    drift: HandsDrift = field(default_factory=HandsDrift)
    pieces: Sequence[PlannedPiece] = ()
    lines: Sequence[PieceLine] = ()
    made: Sequence[MadePiece] = ()
    kept: Mapping[str, Sequence[Mapping[str, Any]]] = field(default_factory=dict)
