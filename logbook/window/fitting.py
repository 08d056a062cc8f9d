"""Columns that give way: a table in a narrow place shows those that are needed most."""

import tkinter as tk
from collections.abc import Callable, Sequence

from logbook.window.look import Look
from logbook.window.styles import TWO_LINES
from logbook.window.table import Column, Table
from logbook.window.table_columns import EDGES


class FittingColumns:
    """Shows as many columns of ``table`` as its width holds whole, those first in ``need`` first; they keep their order.

    With room for fewer than ``least`` of them it shows ``instead``, whose cells have two lines of text and need no heading.
    """

    def __init__(self, table: Table, need: Sequence[str], least: int = 1, instead: str = "") -> None:
        self._table, self._need, self._least, self._instead = table, need, least, instead
        self._shown: tuple[str, ...] = ()
        table.tree.bind("<Configure>", lambda _: self._fit(), add="+")
        table.look.when_changed(table, self._fit)

    def need(self, need: Sequence[str]) -> None:
        """Others are needed from now on, those first first; what is not among them is not shown."""
        if tuple(need) != tuple(self._need):
            self._need = need
            self._fit()

    def _fit(self) -> None:
        tree = self._table.tree
        room = tree.winfo_width() - EDGES
        if room <= 0:
            return
        fitting: list[str] = []
        for key in self._need:
            room -= int(tree.column(key, "minwidth"))
            if room < 0:
                break
            fitting.append(key)
        if len(fitting) < self._least:
            fitting = [self._instead or self._need[0]]
        shown = tuple(column.key for column in self._table.columns if column.key in fitting)
        if shown != self._shown:
            self._shown = shown
            two_lines = self._instead in shown
            style = TWO_LINES if two_lines else "Treeview"
            tree.configure(displaycolumns=shown, style=style, show="" if two_lines else "headings")
        self._table.spread()


def fitting_table(
    look: Look,
    columns: Sequence[Column],
    select: Callable[[tuple[str, ...]], object],
    need: Sequence[str],
    least: int,
    instead: str,
) -> Callable[[tk.Misc], Table]:
    """Makes a table whose columns give way, in the place it is given."""

    def make(place: tk.Misc) -> Table:
        table = Table(place, look, columns, select)
        FittingColumns(table, need, least, instead)
        return table

    return make
