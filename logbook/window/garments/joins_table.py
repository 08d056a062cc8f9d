"""The joins of a garment in one size: which edges, both lengths, whether they fit."""

import tkinter as tk
from collections.abc import Callable, Sequence

from logbook.pages.garments.joins_words import BETWEEN, JoinLine
from logbook.window.cut_cells import cell_edges
from logbook.window.ellipsis import cut
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.styles import TWO_LINES
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("letter", "", 1),
    Column("join", "Join", 14, grow=True, least=8),
    Column("one", "First", 6, "right"),
    Column("other", "Second", 6, "right"),
    Column("verdict", "", 10),
)


class JoinsTable(Table):
    """The other columns are as wide as what stands in them, and a join's name gets the rest: in two lines where one is too
    short for it.
    """

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, look, COLUMNS, lambda _: None)
        self._lines: Sequence[JoinLine] = ()
        self._said: object = None
        FittingColumns(self, ("join", "verdict", "letter", "one", "other"))
        self.tree.bind("<Configure>", lambda _: self._fit(), add="+")
        look.when_changed(self, self._fit)

    def show(self, lines: Sequence[JoinLine]) -> None:
        """Other joins."""
        self._lines = lines
        self.tree.configure(height=max(1, len(lines)))
        self._fit()

    def _fit(self) -> None:
        room = self._give_room(self._lines)
        shown = list(self._lines)
        if self.tree.winfo_width() > 1 and any(self.look.base.measure(line.words) > room for line in self._lines):
            shown = [line._replace(verdict=line.verdict.replace(", ", ",\n", 1)) for line in self._lines]
            room = self._give_room(shown)
            shown = [line._replace(words=_in_two(line.words, room, self.look.base.measure)) for line in shown]
        if (said := (shown, self._lines)) == self._said:
            return
        self._said = said
        self.tree.configure(style="Treeview" if shown == list(self._lines) else TWO_LINES)
        self.set_rows(Row(line.letter, tuple(cells), tuple(line)) for line, cells in zip(self._lines, shown, strict=True))

    def _give_room(self, lines: Sequence[JoinLine]) -> int:
        """Makes the columns as wide as these lines want; the pixels that a join's name has."""
        edges = cell_edges(self.look)
        for place, column in enumerate(COLUMNS):
            if not column.grow:
                texts = [part for line in lines for part in line[place].split("\n")]
                heading = self.look.bold.measure(column.heading)
                width = max([heading, *map(self.look.base.measure, texts)]) + edges
                self.tree.column(column.key, width=width, minwidth=width)
        self.spread()
        return int(self.tree.column("join", "width")) - edges


def _in_two(words: str, room: int, measure: Callable[[str], int]) -> str:
    """In one line if there is room for that, else parted between the two edges, or where the first line is full."""
    if measure(words) <= room:
        return words
    one, between, other = words.partition(BETWEEN)
    parts = [f"{one}{BETWEEN.rstrip()}", other]
    if not between or max(map(measure, parts)) > room:
        first, *rest = words.split()
        while rest and measure(f"{first} {rest[0]}") <= room:
            first += f" {rest.pop(0)}"
        parts = [first, " ".join(rest)]
    return "\n".join(cut(part, room, measure) for part in parts if part)
