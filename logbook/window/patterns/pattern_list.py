"""The list of stitch patterns, and its find field."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.pages.patterns.page import StitchPatterns
from logbook.window.field import Field
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.styles import styled
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("name", "Stitch pattern", 19, grow=True),
    Column("multiple", "Multiple", 8),
    Column("swatches", "Swatches", 4, "right"),
)


class PatternList(ttk.Frame):
    """``on_chosen`` gets the uid of the pattern the user goes to."""

    def __init__(self, parent: tk.Misc, look: Look, page: StitchPatterns, on_chosen: Callable[[str], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self._page, self._on_chosen = page, on_chosen
        self.find = Field(self, look, "&Find", label_width=5, grow=True)
        self.table = Table(self, look, COLUMNS, self._selected)
        FittingColumns(self.table, ("name", "multiple", "swatches"))
        self.find.grid(row=0, column=0, sticky="ew")
        self.table.grid(row=1, column=0, sticky="nsew")
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self.find.variable.trace_add("write", lambda *_: self._show_found())
        self.find.input.bind("<Escape>", lambda _: self._clear())
        self.find.input.bind("<Down>", lambda _: self._enter_table())

    def show(self) -> None:
        """Reads the list anew and marks the pattern in hand."""
        rows = [
            Row(line.uid, (line.name, line.in_short, str(line.swatches)), (line.name.casefold(), line.multiple, line.swatches))
            for line in self._page.lines
        ]
        self.table.set_rows(rows)
        self._show_found()
        self.mark()

    def mark(self) -> None:
        """Marks the pattern in hand."""
        self.table.select([self._page.saved.uid])

    def _show_found(self) -> None:
        words = self.find.text
        self.table.show_only(self._page.matching(words) if words.strip() else None)
        self.find.show_message(self._page.number_found(words), "hint")

    def _clear(self) -> str:
        self.find.text = ""
        return "break"

    def _enter_table(self) -> str:
        """Down goes to the pattern in hand, or to the first found."""
        tree = self.table.tree
        tree.focus_set()
        if self.table.shown and self._page.saved.uid not in self.table.shown:
            tree.focus(self.table.shown[0])
            tree.selection_set(self.table.shown[:1])
        return "break"

    def _selected(self, uids: tuple[str, ...]) -> None:
        if uids and self._page.saved.uid not in uids:
            self._on_chosen(uids[0])
