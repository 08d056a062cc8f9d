"""Texts of a table that are wider than their column end in an ellipsis; Tk by itself cuts through a letter."""

from collections.abc import Mapping, Sequence
from tkinter import ttk

from logbook.window.ellipsis import cut
from logbook.window.look import Look
from logbook.window.styles import CELL_PADDING
from logbook.window.table_columns import Column
from logbook.window.table_rows import Row

EDGE = 4
"""Pixels at either side of a cell that Tk leaves besides."""


def cell_edges(look: Look) -> int:
    """Pixels of a column that its words do not get."""
    return 2 * (look.pixels(CELL_PADDING) + EDGE)


class CutCells:
    """Of the columns of text that are shown, line by line; numbers have their room."""

    def __init__(self, tree: ttk.Treeview, look: Look, columns: Sequence[Column]) -> None:
        self._tree, self._look = tree, look
        self._columns = [(place, one) for place, one in enumerate(columns) if one.align == "left"]
        self._widths: dict[str, int] = {}

    def forget(self) -> None:
        """The text is of another size."""
        self._widths.clear()

    def show(self, rows: Mapping[str, Row], keys: Sequence[str], *, summaries: bool) -> None:
        """Has the rows of these keys, as far as they are real, show what there is room for, ``summaries`` too."""
        if self._tree.winfo_width() <= 1:
            return
        displayed = self._tree.cget("displaycolumns")
        for place, column in self._columns:
            if (column.key not in displayed and "#all" not in displayed) or (column.summary and not summaries):
                continue
            room = int(self._tree.column(column.key, "width")) - cell_edges(self._look)
            for key in keys:
                if key in rows:
                    lines = rows[key].cells[place].split("\n")
                    self._set(key, column.key, "\n".join(cut(line, room, self._measure) for line in lines))

    def _set(self, key: str, column: str, text: str) -> None:
        if self._tree.tk.call(str(self._tree), "set", key, column) != text:
            self._tree.set(key, column, text)

    def _measure(self, text: str) -> int:
        if text not in self._widths:
            self._widths[text] = self._look.base.measure(text)
        return self._widths[text]
