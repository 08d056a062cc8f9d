"""One line of a garment's live numbers, and those that several shapes have."""

from collections.abc import Callable
from typing import NamedTuple

from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.garments.shapes import EDGING, HALF_FRONT, PANEL, ROUND, TAPERED
from logbook.craft.pieces.length import RowRule
from logbook.craft.pieces.options import Choose
from logbook.sheets.cells import TENTHS, WHOLE
from logbook.sheets.rounding import halves_down, in_steps, nearest


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


def by_repeats(piece: ShapedPiece) -> bool:
    """Whether the stitches of such a piece go by the multiple of its pattern, and its rows by groups."""
    return piece.planned.shape in (PANEL, HALF_FRONT, TAPERED, EDGING)


def whole_stitches(exact: str, piece: ShapedPiece) -> str:
    """The stitches of whole repeats nearest to so many; in the round there is no plus."""
    plus = "0" if piece.planned.worked == ROUND else "{b}"
    return in_steps(exact, f"({{m}}+{plus})", "{m}", Choose.NEAREST)


def whole_rows(exact: str, rule: RowRule, *, straight: bool = False) -> str:
    """The rows of whole groups nearest to so many; halves are rounded up only where there are no groups and the piece is not
    ``straight``."""
    if rule.in_repeat > 1:
        return in_steps(exact, "({beside}+{group})", "{group}", Choose.NEAREST)
    return halves_down(exact) if straight or rule.set_up + rule.closing else f"MAX(1,{nearest(exact)})"
