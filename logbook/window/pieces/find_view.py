"""What there is: the find field and the list of planned pieces."""

import tkinter as tk
from collections.abc import Iterator

from logbook.pages.pieces.piece_list import PieceList, cells, sort_keys
from logbook.window.find_list import FindActions, FindList
from logbook.window.fitting import fitting_table
from logbook.window.look import Look
from logbook.window.table import Column, Row

COLUMNS = (
    Column("piece", "Piece", 8, grow=True, summary=True),
    Column("name", "Piece", 16, grow=True),
    Column("tag", "Swatch", 7),
    Column("stitch", "Stitch pattern", 13, grow=True),
    Column("yarn", "Yarn", 13, grow=True),
)
NEED = ("name", "tag", "stitch", "yarn")
LEAST = 2
"""With room for fewer columns a line says name, swatch and stitch pattern in two lines of text."""
EMPTY = (
    "No piece is planned yet.",
    "Name one in the form beside this, choose the swatch it is worked from, and type a width. Once saved, it is listed here. "
    "The sample (Logbook → Open the sample) holds some.",
)


class FindView(FindList):
    """Planned pieces by name, swatch, stitch pattern and yarn."""

    def __init__(self, parent: tk.Misc, look: Look, pieces: PieceList, actions: FindActions) -> None:
        self._pieces = pieces
        super().__init__(parent, look, fitting_table(look, COLUMNS, actions.select, NEED, LEAST, "piece"), EMPTY, actions)
        self.reload()

    def rows(self) -> Iterator[Row]:
        """All rows as they are now."""
        return (Row(line.uid, cells(line), sort_keys(line)) for line in self._pieces.lines)

    def found(self) -> tuple[list[str] | None, str]:
        """Which pieces the words find, and how many that is."""
        return self._pieces.find(self.find.text)
