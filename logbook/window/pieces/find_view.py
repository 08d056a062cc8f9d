"""What there is: the find field and the list of planned pieces."""

import tkinter as tk
from collections.abc import Iterator

from logbook.pages.pieces.piece_list import PieceList, cells, sort_keys
from logbook.window.find_list import FindActions, FindRecords
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


def find_view(parent: tk.Misc, look: Look, pieces: PieceList, actions: FindActions) -> FindRecords:
    """The list on the page."""

    def rows() -> Iterator[Row]:
        return (Row(line.uid, cells(line), sort_keys(line)) for line in pieces.lines)

    table = fitting_table(look, COLUMNS, actions.select, NEED, LEAST, "piece")
    return FindRecords(parent, look, table, EMPTY, actions, rows, pieces.find)
