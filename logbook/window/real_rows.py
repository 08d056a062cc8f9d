"""Of very many rows those that are in sight and near it are real; the widget scrolls as if all were."""

from collections.abc import Callable, Iterable, Sequence
from tkinter import ttk

from logbook.window.table_rows import Row

REAL = 200
"""Rows that are real at once: a few screens."""
NEAR = 50
"""With fewer real rows than these left above or below what is in sight, others become real."""
ODD = "odd"


class RealRows:
    """``rows_of`` makes the rows of keys; ``on_others`` is called when other rows have become real,
    ``on_scrolled`` when others are in sight."""

    def __init__(
        self,
        tree: ttk.Treeview,
        rows_of: Callable[[Sequence[str]], Iterable[Row]],
        on_others: Callable[[], object],
        on_scrolled: Callable[[], object],
    ) -> None:
        self._tree, self._rows_of, self._on_others, self._on_scrolled = tree, rows_of, on_others, on_scrolled
        self.keys: Sequence[str] = ()
        self.start = 0
        self.real: dict[str, Row] = {}
        self._odd: set[str] = set()
        self._waits = ""
        self._to_see = -1
        tree.bind("<Configure>", lambda _: self._tree.after_idle(self._drawn) if self._to_see >= 0 else None, add="+")
        tree.bind("<Destroy>", lambda _: self._stop(), add="+")

    def show(self, keys: Sequence[str], place: int = 0) -> None:
        """Shows the rows of these keys, those round ``place`` real."""
        self.keys = keys
        self._fill(place)

    def forget(self) -> None:
        """All rows are made anew when they are next shown."""
        self._tree.tk.call(str(self._tree), "delete", tuple(self.real))
        self.real.clear()
        self._odd.clear()

    def replace(self, row: Row) -> None:
        """Other cells for a row, if it is real."""
        if row.key in self.real:
            self.real[row.key] = row
            self._tree.item(row.key, values=row.cells)

    def in_sight(self) -> range:
        """The places of the rows that are wholly in sight; of a table that was never drawn, of all real ones."""
        first, last = self._tree.yview()
        many = min(REAL, len(self.keys))
        return range(self.start + round(first * many), self.start + round(last * many))

    def see(self, place: int) -> None:
        """Scrolls as little as it takes to have the row at ``place`` in sight; when it is drawn, if it was not yet."""
        self._to_see = place if self._tree.winfo_height() <= 1 else -1
        if self._to_see >= 0:
            return  # Tk takes no row to be in sight, and would scroll it out at the top
        before = self.in_sight()
        if not before:  # a place without room for a row, in which Tk would scroll past it
            self._go_to(place)
        elif self.start <= place < self.start + len(self.real):
            self._tree.see(self.keys[place])
        else:
            self._go_to(place if place < before.start else place - len(before) + 1)

    def _drawn(self) -> None:
        if 0 <= self._to_see < len(self.keys):
            self.see(self._to_see)

    def scroll(self, *how: str) -> None:
        """As the scroll bar says."""
        if how[0] == "moveto" and len(self.keys) > REAL:
            self._go_to(round(float(how[1]) * len(self.keys)))
        else:
            self._tree.yview(*how)

    def shares(self) -> tuple[float, float]:
        """From where to where the rows in sight go, in shares of all rows; brings others where few real ones are left."""
        first, last = self._tree.yview()
        many, real = len(self.keys), len(self.real)
        if many <= REAL:
            return first, last
        few_left = (first * real < NEAR and self.start > 0) or ((1 - last) * real < NEAR and self.start + real < many)
        if few_left and not self._waits:
            self._waits = self._tree.after_idle(self._shift)
        return (self.start + first * real) / many, (self.start + last * real) / many

    def _shift(self) -> None:
        """The rows in sight stay where they are, and as many before and after them are real."""
        self._waits = ""
        self._go_to(self.in_sight().start)

    def _go_to(self, top: int) -> None:
        """Has the row at ``top`` as the first in sight."""
        visible = len(self.in_sight())
        top = max(0, min(top, len(self.keys) - visible))
        self._fill(top + visible // 2)
        self._tree.yview_moveto((top - self.start) / max(1, len(self.real)))
        self._on_scrolled()  # of which Tk says nothing where the share of the real rows is as before

    def _fill(self, place: int) -> None:
        """The rows round ``place`` are real, and no others."""
        call, tree = self._tree.tk.call, str(self._tree)
        self.start = max(0, min(place - REAL // 2, len(self.keys) - REAL))
        wanted = self.keys[self.start : self.start + REAL]
        there = set(wanted)
        gone = tuple(key for key in self.real if key not in there)
        call(tree, "delete", gone)
        for key in gone:
            del self.real[key]
        self._odd.difference_update(gone)
        new = {row.key: row for row in self._rows_of([key for key in wanted if key not in self.real])}
        for key, row in new.items():
            call(tree, "insert", "", "end", "-id", key, "-values", row.cells)  # three times as quick as Treeview.insert
        self.real |= new
        wanted = [key for key in wanted if key in self.real]
        call(tree, "children", "", tuple(wanted))
        self._stripe(wanted)
        self._on_others()

    def _stripe(self, wanted: Sequence[str]) -> None:
        """Every other row, with as few changes as that takes."""
        odd = {key for place, key in enumerate(wanted, self.start) if place % 2}
        self._tree.tk.call(str(self._tree), "tag", "remove", ODD, tuple(self._odd - odd))
        self._tree.tk.call(str(self._tree), "tag", "add", ODD, tuple(odd - self._odd))
        self._odd = odd

    def _stop(self) -> None:
        if self._waits:
            self._tree.after_cancel(self._waits)
