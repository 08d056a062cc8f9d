"""What there is on a page: the find field, and the list below it."""

import tkinter as tk
from abc import abstractmethod
from collections.abc import Callable, Collection, Iterable, Sequence
from functools import partial
from tkinter import ttk
from typing import NamedTuple

from logbook.window.field import Field
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Row, Table


class FindActions(NamedTuple):
    """What the page does when rows are selected here, when Return is pressed on one, and to delete."""

    select: Callable[[tuple[str, ...]], object]
    take: Callable[[], object]
    delete: Callable[[], object]


class FindList(ttk.Frame):
    """Typing filters at once; Down and Up walk through the list from the find field, Return goes on to what the page takes.

    ``table`` makes its table; ``empty`` is a heading and a sentence, shown where the list will be while there is nothing to list.
    A list of a kind fills it, and says which rows the words find.
    """

    rows_above = 0
    """How many rows of other things a list of a kind puts between the find field and the table."""

    def __init__(
        self, parent: tk.Misc, look: Look, table: Callable[[tk.Misc], Table], empty: Sequence[str], actions: FindActions
    ):
        super().__init__(parent, width=1, height=1)
        self.look, self._actions = look, actions
        self.grid_propagate(False)
        self.columnconfigure(0, weight=1)
        place = 1 + self.rows_above
        self.rowconfigure(place, weight=1)
        self.find = Field(self, look, "&Find", label_width=5, grow=True)
        self.find.grid(row=0, column=0, sticky="ew")
        self._above()
        self.table = table(self)
        look.grid(self.table, row=place, column=0, columnspan=2, sticky="nsew", pady=(1, 0))
        self.empty = Scrolled(self, look, 10)
        self._say_empty(self.empty.inside, empty)
        look.grid(self.empty, row=place, column=0, columnspan=2, sticky="nsew", pady=(3, 0))
        self._bind_keys()
        self.find.variable.trace_add("write", lambda *_: self.look_up())

    @abstractmethod
    def reload(self) -> None:
        """Shows the rows as they are now; the find text goes on holding."""

    @abstractmethod
    def look_up(self) -> None:
        """Shows what the words find, and how many that is."""

    def say_found(self, count: str, nothing: bool) -> None:
        """How many were found, and if that is ``nothing``, what shows all again."""
        self.find.show_message(f"{count}. Esc shows all again." if nothing else count, "hint")

    def show_table(self, there: bool) -> None:
        """The table, or what is said while there is nothing to list."""
        shown, hidden = (self.table, self.empty) if there else (self.empty, self.table)
        hidden.grid_remove()
        shown.grid()

    def clear(self) -> None:
        """Asks for nothing any more."""
        self.find.text = ""

    def start(self) -> None:
        """Puts the keyboard into the find field, its text marked."""
        self.find.input.focus_set()
        self.find.input.event_generate("<<SelectAll>>")

    def _above(self) -> None:
        """Makes what stands between the find field and the table."""

    def _say_empty(self, place: ttk.Frame, says: Sequence[str]) -> None:
        """Fills what stands where the list will be."""
        place.columnconfigure(0, weight=1)
        for row, sentence in enumerate(says):
            style = "Section.TLabel" if row == 0 else "TLabel"
            self.look.grid(Sentence(place, sentence, style), row=row, column=0, sticky="ew", pady=(0, 2))

    def _bind_keys(self) -> None:
        entry, tree = self.find.input, self.table.tree
        for key, step in {"Down": 1, "Up": -1, "Next": 10, "Prior": -10}.items():
            entry.bind(f"<{key}>", partial(self._walk, step))
        for widget in (entry, tree):
            widget.bind("<Return>", lambda _: self._take())
            widget.bind("<Escape>", lambda _: self.clear())
        tree.bind("<Delete>", lambda _: self._actions.delete())

    def _walk(self, step: int, _: object) -> str:
        self.table.walk(step)
        return "break"

    def _take(self) -> str:
        """With the record in hand hidden by the find text, the first that is found is taken."""
        if self.table.shown and not set(self.table.selected) & set(self.table.shown):
            self.table.walk(1)
        self._actions.take()
        return "break"


class FindRecords(FindList):
    """The find list of a few hundred records: ``rows`` gives all of them as they are now, ``found`` the keys of those in which
    words are found (None: nothing is asked for), and how many that is in words."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        table: Callable[[tk.Misc], Table],
        empty: Sequence[str],
        actions: FindActions,
        rows: Callable[[], Iterable[Row]],
        found: Callable[[str], tuple[Collection[str] | None, str]],
    ) -> None:
        self._rows, self._found = rows, found
        super().__init__(parent, look, table, empty, actions)
        self.reload()

    def reload(self) -> None:
        """Shows the rows as they are now; the find text goes on holding."""
        self.table.set_rows(self._rows())
        self.show_table(bool(self.table.count))
        self.look_up()

    def look_up(self) -> None:
        """Shows what the words find, and how many that is."""
        keys, count = self._found(self.find.text)
        self.table.show_only(keys)
        self.say_found(count, nothing=bool(self.table.count) and not self.table.shown)
