"""What a stitch pattern means: its chains and rows, and the swatches that use it."""

import tkinter as tk
from collections.abc import Sequence

from logbook.craft.words.numbers import show_number
from logbook.pages.patterns.meaning import MOST, Meaning
from logbook.tasks.at_home import name_key
from logbook.tasks.browsing import SwatchLine
from logbook.window.card import Card
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

CHAIN_COLUMNS = (
    Column("repeats", "Repeats", 7, "right", grow=True),
    Column("chain", "Chain", 6, "right", grow=True),
    Column("stitches", "Base sts", 6, "right", grow=True),
    Column("ring", "In a ring", 6, "right", grow=True),
)
CHAIN_NEED = tuple(column.key for column in CHAIN_COLUMNS)
SWATCH_COLUMNS = (
    Column("tag", "Swatch", 8),
    Column("yarn", "Yarn", 14, grow=True),
    Column("hook", "Hook mm", 5, "right"),
)
LINES_OF_SWATCHES = 5


class MeaningView(Card):
    """Shows a ``Meaning`` and the swatches of a pattern."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, look, fills=True)
        self.look = look
        self.rowconfigure(1, weight=1)
        Sentence(self, "What it means", "Title.TLabel").grid(row=0, column=0, sticky="ew")
        scrolled = Scrolled(self, look, 20)
        scrolled.grid(row=1, column=0, sticky="nsew")
        self._inside = scrolled.inside
        self._inside.columnconfigure(0, weight=1)
        self._line = 0
        self.chain_rule = self._heading("Starting chain")
        self.chains, self._chain_columns = self._table(CHAIN_COLUMNS, MOST)
        self.chain_notes = self._notes()
        self.row_rule = self._heading("Rows")
        self.row_notes = self._notes()
        self._section("Swatches that use it")
        self.no_swatches = Sentence(self._inside, "None yet.", "Muted.TLabel")
        self._add(self.no_swatches)
        self.swatches, _ = self._table(SWATCH_COLUMNS, LINES_OF_SWATCHES)

    def show(self, meaning: Meaning) -> None:
        """Shows chains and rows."""
        self.chain_rule.configure(text=meaning.chain_rule)
        self.chain_notes.configure(text="\n".join(meaning.chain_notes))
        self.row_rule.configure(text=meaning.row_rule)
        self.row_notes.configure(text="\n".join(meaning.row_notes))
        self._chain_columns.need(CHAIN_NEED[1:] if meaning.is_plain else CHAIN_NEED)
        rows = []
        for place, line in enumerate(meaning.chains):
            ring = "" if line.ring is None else str(line.ring)
            cells = (line.repeats, str(line.chain), str(line.stitches), ring)
            rows.append(Row(line.repeats, cells, (place, line.chain, line.stitches, line.ring)))
        self.chains.set_rows(rows)
        self.chains.grid() if rows else self.chains.grid_remove()

    def show_swatches(self, lines: Sequence[SwatchLine]) -> None:
        """Lists the swatches that use the pattern."""
        self.no_swatches.grid() if not lines else self.no_swatches.grid_remove()
        self.swatches.grid() if lines else self.swatches.grid_remove()
        rows = []
        for line in lines:
            hook = "" if line.hook_mm is None else show_number(line.hook_mm)
            rows.append(Row(line.uid, (line.tag, line.yarn, hook), (name_key(line.tag), name_key(line.yarn), line.hook_mm)))
        self.swatches.set_rows(rows)

    def _heading(self, title: str) -> Sentence:
        self._section(title)
        rule = Sentence(self._inside, "—", "Result.TLabel")
        self._add(rule)
        return rule

    def _notes(self) -> Sentence:
        notes = Sentence(self._inside, "", "Muted.TLabel")
        self._add(notes, above=0.5)
        return notes

    def _section(self, title: str) -> None:
        self._add(Sentence(self._inside, title, "Section.TLabel"), above=3)

    def _table(self, columns: Sequence[Column], lines: int) -> tuple[Table, FittingColumns]:
        table = Table(self._inside, self.look, columns, lambda _: None)
        table.tree.configure(height=lines)
        fitting = FittingColumns(table, tuple(column.key for column in columns))
        self._add(table, above=1)
        return table, fitting

    def _add(self, widget: tk.Widget, above: float = 0) -> None:
        self.look.grid(widget, row=self._line, column=0, sticky="ew", padx=(0, 2), pady=(above, 0))
        self._line += 1
