"""The list of made pieces, under that of the planned ones; it follows the same find field."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.craft.words.lengths import Units
from logbook.pages.pieces.made_list import MadeList, cells, sort_keys
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("both", "", 8, grow=True, summary=True),
    Column("made", "Made", 20, grow=True),
    Column("date", "Date", 10),
    Column("chain", "Chain", 5, "right"),
    Column("rows", "Rows", 5, "right"),
    Column("width", "Width", 7, "right"),
)
NEED = ("made", "chain", "rows", "date", "width")
LEAST = 2
"""With room for fewer columns a line says name and chain in two lines of text."""


class MadeView(ttk.Frame):
    """Return or a double click opens one; ``take`` gets its uid. It takes no room while nothing was made."""

    def __init__(
        self, parent: tk.Misc, look: Look, made: MadeList, units: Callable[[], Units], take: Callable[[str], object]
    ) -> None:
        super().__init__(parent)
        self._look, self._made, self._units, self._take = look, made, units, take
        self.columnconfigure(0, weight=1)
        self.table = Table(self, look, COLUMNS, lambda _: None)
        FittingColumns(self.table, NEED, LEAST, "both")
        look.when_changed(self, self._fit)
        self.table.grid(row=0, column=0, sticky="ew")
        self.table.tree.bind("<Return>", lambda _: self._open())
        self.table.on_double_click(self._open)

    def reload(self, words: str) -> None:
        """Shows those that are made now and found by these words."""
        units = self._units()
        pieces = self._made.pieces
        self.table.set_rows(Row(uid, cells(made, units), sort_keys(made)) for uid, made in pieces.items())
        self._fit()
        self.look_up(words)
        if pieces:
            self.grid()
        else:
            self.grid_remove()

    def look_up(self, words: str) -> None:
        """Shows those found by these words."""
        self.table.show_only(self._made.find(words))

    def _fit(self) -> None:
        """Large text takes no more of the height than small."""
        self.table.tree.configure(height=max(1, min(600 // self._look.percent, len(self._made.pieces))))

    def _open(self) -> str:
        if self.table.selected:
            self._take(self.table.selected[0])
        return "break"
