"""One line of a garment's live numbers, and those that several shapes have."""

from collections.abc import Callable
from typing import NamedTuple

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.sheets.cells import TENTHS, WHOLE
from logbook.sheets.rounding import halves_down, nearest


class NumberLine(NamedTuple):
    """One number of a piece: its label, its formula with other keys in braces ("": it is typed), what it is in a piece, how it
    shows. ``of`` None: it is not there."""

    key: str
    label: str
    formula: str
    of: Callable[[ShapedPiece], float | None]
    numbers: str = WHOLE


def width_line(key: str, label: str, stitches: str, of: Callable[[ShapedPiece], float]) -> NumberLine:
    """A width of so many stitches."""
    return NumberLine(key, label, f"{stitches}*{{p}}/10", lambda piece: of(piece) / 10, TENTHS)


def long_line() -> NumberLine:
    """The length of all rows."""
    return NumberLine("long", "length, cm", "{rows}*{q}/10", lambda piece: piece.rows * piece.row_mm / 10, TENTHS)


def part_line(name: str, label: str, formula: str) -> NumberLine:
    """What a shape tells beside its levels, by its name there."""
    return NumberLine(name, label, formula, lambda piece: piece.parts[name])


def whole_rows(exact: str, begun: int) -> str:
    """The rows nearest to so many; ``begun``: some of them are worked once."""
    return halves_down(exact) if begun else f"MAX(1,{nearest(exact)})"
