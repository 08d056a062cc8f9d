"""The numbers of a garment in one size: its pieces, and every row of the piece chosen."""

import tkinter as tk

from logbook.craft.words.lengths import Units
from logbook.pages.garments.garment_card import GarmentCard
from logbook.pages.garments.number_rows import PIECE_HEADINGS, piece_rows, row_heading, row_rows
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

MOST_PIECES = 7
LEAST_ROWS = 5
"""Of the rows of a piece so many are in view at least."""
PIECES = (
    Column("piece", PIECE_HEADINGS[0], 10, grow=True, least=7),
    Column("chain", PIECE_HEADINGS[1], 5, "right"),
    Column("stitches", PIECE_HEADINGS[2], 9, "right"),
    Column("rows", PIECE_HEADINGS[3], 5, "right"),
    Column("width", PIECE_HEADINGS[4], 8, "right"),
    Column("sure", PIECE_HEADINGS[5], 7, "right"),
    Column("length", PIECE_HEADINGS[6], 8, "right"),
    Column("grams", PIECE_HEADINGS[7], 6, "right"),
)
WIDTHS = {column.heading: column.width for column in PIECES}
GIVE_OR_TAKE = PIECE_HEADINGS[5]
"""The first column that goes where there is no room for all."""
ROWS = (
    Column("stitches", "Stitches", 7, "right", grow=True),
    Column("change", "Change", 6, "right", grow=True),
    Column("width", "Width", 7, "right", grow=True),
)


class NumbersView(Scrolled):
    """The table of rows fills what the pieces leave; where that is next to nothing, all of it scrolls."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, look, 10)
        self.inside.columnconfigure(0, weight=1)
        self.pieces = Table(self.inside, look, PIECES, lambda _: None)
        FittingColumns(self.pieces, ("piece", "chain", "stitches", "rows", "width", "length", "grams", "sure"))
        self.words = Sentence(self.inside, style="Section.TLabel")
        self.pieces.grid(row=0, column=0, sticky="ew")
        look.grid(self.words, row=1, column=0, sticky="ew", pady=(1.5, 0.5))
        self.rows = self._rows_table("Row")
        self.canvas.bind("<Configure>", lambda _: self._fit_rows(), add="+")

    def show(self, card: GarmentCard, units: Units) -> None:
        """Those of this moment."""
        pieces = piece_rows(card, units)
        self.pieces.set_rows(Row(cells[0], cells, (number,) * len(cells)) for number, cells in enumerate(pieces))
        self.pieces.tree.configure(height=max(2, min(len(pieces), MOST_PIECES)))
        words, every = row_rows(card, units)
        self.words.configure(text=words)
        self.words.grid() if words else self.words.grid_remove()
        if (heading := row_heading(card)) != self.rows.columns[0].heading:
            self.rows.destroy()
            self.rows = self._rows_table(heading)
        self.rows.set_rows(Row(cells[0], cells, (number,) * len(cells)) for number, cells in enumerate(every))
        self.rows.grid() if every else self.rows.grid_remove()

    def _rows_table(self, heading: str) -> Table:
        table = Table(self.inside, self.look, (Column("row", heading, 5, "right"), *ROWS), lambda _: None)
        FittingColumns(table, ("row", "stitches", "change", "width"))
        table.grid(row=2, column=0, sticky="ew")
        table.bind("<Configure>", lambda _: self._fit_rows(), add="+")  # what is above takes its height after it
        return table

    def _fit_rows(self) -> None:
        tree, line = self.rows.tree, int(self.look.style.lookup("Treeview", "rowheight"))
        heading = tree.winfo_reqheight() - int(tree.cget("height")) * line
        lines = (self.canvas.winfo_height() - self.rows.winfo_y() - heading) // line
        tree.configure(height=max(LEAST_ROWS, lines))
