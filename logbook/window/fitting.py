"""Columns that give way: a table in a narrow place shows those that are needed most."""

from collections.abc import Sequence

from logbook.window.table import Table


class FittingColumns:
    """Shows as many columns of ``table`` as its width holds whole, those first in ``need`` first; they keep their order."""

    def __init__(self, table: Table, need: Sequence[str]) -> None:
        self._table, self._need = table, need
        self._shown: tuple[str, ...] = ()
        table.tree.bind("<Configure>", lambda _: self._fit(), add="+")
        table.look.when_changed(table, self._fit)

    def _fit(self) -> None:
        tree = self._table.tree
        room = tree.winfo_width()
        if room <= 1:
            return
        fitting: list[str] = []
        for key in self._need:
            room -= int(tree.column(key, "minwidth"))
            if room < 0 and fitting:
                break
            fitting.append(key)
        shown = tuple(column.key for column in self._table.columns if column.key in fitting)
        if shown != self._shown:
            self._shown = shown
            tree.configure(displaycolumns=shown)
