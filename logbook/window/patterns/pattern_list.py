"""The list of stitch patterns, and its find field."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.pages.patterns.page import PatternLine, StitchPatterns
from logbook.window.field import Field
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.styles import styled
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("pattern", "", 8, grow=True, summary=True),
    Column("name", "Stitch pattern", 19, grow=True),
    Column("multiple", "Multiple", 8),
    Column("swatches", "Swatches", 4, "right"),
)
NEED = ("name", "multiple", "swatches")
LEAST = 2
"""With room for fewer columns a line says all of them in two lines of text."""
EMPTY = (
    "No stitch pattern is known yet.",
    "Write one down in the form beside this, or log a swatch: its stitch pattern is listed here too. "
    "The sample (Logbook → Open the sample) holds some.",
)


class PatternList(ttk.Frame):
    """``on_chosen`` gets the uid of the pattern the user goes to."""

    def __init__(self, parent: tk.Misc, look: Look, page: StitchPatterns, on_chosen: Callable[[str], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self._page, self._on_chosen = page, on_chosen
        self.find = Field(self, look, "&Find", label_width=5, grow=True)
        self.table = Table(self, look, COLUMNS, self._selected)
        FittingColumns(self.table, NEED, LEAST, "pattern")
        self.find.grid(row=0, column=0, sticky="ew")
        look.grid(self.table, row=1, column=0, sticky="nsew", pady=(1, 0))
        self._empty = ttk.Frame(self, style=styled(self, "TFrame"))
        self._empty.columnconfigure(0, weight=1)
        for row, sentence in enumerate(EMPTY):
            style = "Section.TLabel" if row == 0 else "TLabel"
            look.grid(Sentence(self._empty, sentence, style), row=row, column=0, sticky="ew", pady=(0, 2))
        look.grid(self._empty, row=1, column=0, sticky="new", pady=(3, 0))
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self.find.variable.trace_add("write", lambda *_: self._show_found())
        self.find.input.bind("<Escape>", lambda _: self._clear())
        self.find.input.bind("<Down>", lambda _: self._enter_table())

    def show(self) -> None:
        """Reads the list anew and marks the pattern in hand."""
        self.table.set_rows(_row(line) for line in self._page.lines)
        shown, hidden = (self.table, self._empty) if self._page.lines else (self._empty, self.table)
        hidden.grid_remove()
        shown.grid()
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


def _row(line: PatternLine) -> Row:
    used = f"{line.swatches} swatch{'es' * (line.swatches != 1)}"
    both = f"{line.name}\n{' · '.join(part for part in (line.in_short, used) if part)}"
    name = line.name.casefold()
    return Row(line.uid, (both, line.name, line.in_short, str(line.swatches)), (name, name, line.multiple, line.swatches))
