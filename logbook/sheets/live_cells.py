"""Sizes whose numbers are live in a sheet, and where each number stands in it."""

from typing import NamedTuple

from logbook.craft.pieces.piece import PieceNumbers, PiecePlan


class LiveSize(NamedTuple):
    """One size: its name, its own plan, and what came of it."""

    name: str
    plan: PiecePlan
    numbers: PieceNumbers


class Cells:
    """The rows of inputs and numbers by their keys: inputs stand in column B, a size's numbers in a column of its own."""

    def __init__(self) -> None:
        self.rows: dict[str, int] = {}

    def __contains__(self, key: str) -> bool:
        return key in self.rows

    def b(self, key: str) -> str:
        """An input."""
        return f"$B${self.rows.get(key, 1)}"

    def c(self, key: str, letter: str) -> str:
        """A number of the size in that column."""
        return f"{letter}{self.rows.get(key, 1)}"
