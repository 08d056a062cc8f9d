"""What there is: the find field, the filters and the list of swatches."""

import tkinter as tk
from collections.abc import Callable, Sequence
from functools import partial
from tkinter import ttk
from typing import NamedTuple

from logbook.pages.swatches.swatch_list import (
    CLASS_CHOICES,
    CONDITION_CHOICES,
    FindTexts,
    SwatchList,
    cells,
    sort_keys,
    two_lines,
)
from logbook.tasks.browsing import SwatchLine
from logbook.tasks.logging_swatches import Known
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.ellipsis import cut
from logbook.window.field import Field, LabelledField
from logbook.window.folding import Folding
from logbook.window.keys import split_mnemonic
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table
from logbook.window.wrapped_button import WrappedButton

COLUMNS = (
    Column("swatch", "Swatch", 8, grow=True, summary=True),
    Column("tag", "Tag", 7),
    Column("yarn", "Yarn", 15, grow=True),
    Column("stitch", "Stitch pattern", 14, grow=True),
    Column("hook", "Hook", 7, "right"),
    Column("date", "Date", 10),
    Column("colour", "Colour", 10),
)
SORTS = {
    "Newest first": None,
    "By yarn": "yarn",
    "By stitch pattern": "stitch",
    "By hook": "hook",
    "By tag": "tag",
    "By colour": "colour",
}
"""What the list can be sorted by."""
ROW_MORE = 2.2
"""Units of space in a row of two lines."""
ROOM_BESIDE = 8
"""Units that the edges of a row take."""
LINES_LEFT = 8
"""Of text for the list beside opened filters; where there are not twice as many, each gets half."""


class FindActions(NamedTuple):
    """What the page does when something is chosen here."""

    select: Callable[[tuple[str, ...]], object]
    take: Callable[[], object]
    open: Callable[[], object]
    delete: Callable[[], object]
    open_sample: Callable[[], object] | None
    fold: Callable[[bool], object]


class FindView(ttk.Frame):
    """Typing filters at once; Down and Up walk through the list from the find field, Return goes on to the chain."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        swatches: SwatchList,
        known: Callable[[], Known],
        actions: FindActions,
        filters_open: bool,
    ) -> None:
        super().__init__(parent, width=1, height=1)
        self.look, self._swatches, self._known, self._actions = look, swatches, known, actions
        self.grid_propagate(False)
        self.columnconfigure(0, weight=1)
        self.rowconfigure(3, weight=1)
        self.find = Field(self, look, "&Find", label_width=5, grow=True)
        self.find.grid(row=0, column=0, sticky="ew")
        self._sorting = tk.StringVar(self, next(iter(SORTS)))
        self.sort = ttk.Menubutton(self, textvariable=self._sorting, style="List.TMenubutton")
        self.sort.configure(menu=self._sort_menu())
        look.grid(self.sort, row=0, column=1, sticky="ne", padx=(1, 0))
        self.filters = Folding(self, "Filter by yarn, hook…", filters_open, self._fold)
        self.filters.grid(row=1, column=0, columnspan=2, sticky="ew")
        self._fields: dict[str, LabelledField] = {}
        self._scrolled: Scrolled | None = None
        self.table = Table(self, look, COLUMNS, actions.select)
        self.table.tree.configure(displaycolumns=("swatch",), style="TwoLines.Treeview", show="")
        self.table.on_view = self._show_in_sight
        self._in_sight: dict[str, str] = {}
        self._width = 0
        self.table.tree.bind("<Configure>", self._follow_width, add="+")
        look.when_changed(self, self._follow_look)
        look.grid(self.table, row=3, column=0, columnspan=2, sticky="nsew", pady=(1, 0))
        self._empty = self._empty_place(actions)
        self._bind_keys()
        self.bind("<Configure>", lambda _: self._limit_filters(), add="+")
        if filters_open:
            self._build_filters()
        self.find.variable.trace_add("write", lambda *_: self.look_up())
        self.reload()

    def reload(self) -> None:
        """Shows the lines of the list as they are now; the find text goes on holding."""
        self._in_sight.clear()
        self.table.set_rows(_row(line) for line in self._swatches.lines)
        if self._swatches.count:
            self._empty.grid_remove()
            self.filters.grid()
            self.table.grid()
        else:
            self.filters.grid_remove()
            self.table.grid_remove()
            self._empty.grid()
        self.look_up()

    def look_up(self) -> None:
        """Shows what the texts find, and how many that is."""
        found = self._swatches.find(self.texts())
        self.table.show_only(found.uids, found.ranks)
        all_gone = found.uids == [] and bool(self._swatches.count)
        self.find.show_message(f"{found.count}. Esc shows all again." if all_gone else found.count, "hint")
        for name, field in self._fields.items():
            field.show_message(found.errors.get(name))

    def _sort_menu(self) -> tk.Menu:
        menu = tk.Menu(self.sort, tearoff=False)
        for words, column in SORTS.items():
            sort = partial(self.table_sort, column)
            menu.add_radiobutton(label=words, variable=self._sorting, value=words, command=sort)
        return menu

    def table_sort(self, column: str | None) -> None:
        """Sorts by what was chosen."""
        self.table.sort(column)

    def _follow_look(self) -> None:
        look = self.look
        look.style.configure("TwoLines.Treeview", rowheight=2 * look.line + look.pixels(ROW_MORE))
        self._in_sight.clear()
        self.table.tell_view()

    def _follow_width(self, event: "tk.Event[tk.Misc]") -> None:
        if event.width != self._width:
            self._width = event.width
            self._in_sight.clear()
            self.table.tell_view()

    def _show_in_sight(self, keys: Sequence[str]) -> None:
        """The rows in sight with their gauge, each line cut where the list ends; the others are not reckoned."""
        new = [key for key in keys if key not in self._in_sight]
        room = self.table.tree.winfo_width() - self.look.pixels(ROOM_BESIDE)
        if not new or room <= 0:
            return
        gauges = self._swatches.gauges(new)
        for key in new:
            text = two_lines(self.table.cells(key)[1:], gauges.get(key, ""))
            self._in_sight[key] = "\n".join(cut(line, room, self.look.base.measure) for line in text.split("\n"))
            self.table.tree.set(key, "swatch", self._in_sight[key])

    def reveal(self, uid: str) -> None:
        """Asks for nothing any more if what is asked for hides this swatch."""
        uids = self._swatches.find(self.texts()).uids
        if uids is not None and uid not in uids:
            self.clear()

    def texts(self) -> FindTexts:
        """What is asked for."""
        return FindTexts(words=self.find.text, **{name: field.text for name, field in self._fields.items()})

    def clear(self) -> None:
        """Asks for nothing any more."""
        for name, field in self._fields.items():
            field.text = CLASS_CHOICES[0] if name in ("yarn_class", "condition") else ""
        self.find.text = ""

    def start(self) -> None:
        """Puts the keyboard into the find field, its text marked."""
        self.find.input.focus_set()
        self.find.input.event_generate("<<SelectAll>>")

    def _fold(self, is_open: bool) -> None:
        if is_open:
            self._build_filters()
        self._limit_filters()
        self._actions.fold(is_open)

    def _build_filters(self) -> None:
        if self._scrolled is not None:
            return
        self._scrolled = Scrolled(self.filters.inside, self.look, 10)
        self._scrolled.grid(row=0, column=0, sticky="nsew")
        self.filters.inside.columnconfigure(0, weight=1)
        place, look = self._scrolled.inside, self.look
        place.columnconfigure(0, weight=1)
        known = self._known
        self._fields = {
            "yarn": SuggestionField(place, look, "Yarn", lambda: known().yarns, label_width=10, grow=True, width=8),
            "stitch": SuggestionField(place, look, "Stitch", lambda: known().patterns, label_width=10, grow=True, width=8),
            "hook": Field(place, look, "Hook", width=8, label_width=10, unit="mm"),
            "yarn_class": ChoiceField(place, look, "Yarn class", CLASS_CHOICES, width=18, label_width=10),
            "condition": ChoiceField(place, look, "Measured", CONDITION_CHOICES, width=18, label_width=10),
        }
        for row, field in enumerate(self._fields.values()):
            field.grid(row=row, column=0, sticky="ew")
            field.variable.trace_add("write", lambda *_: self.look_up())
            field.input.bind("<Escape>", lambda _: self.clear())
        place.bind("<Configure>", lambda _: self._limit_filters(), add="+")

    def _limit_filters(self) -> None:
        if self._scrolled is not None:
            wanted = self._scrolled.inside.winfo_reqheight()
            room = self.winfo_height() - self.filters.winfo_y() - self.filters.header.winfo_height()
            most = max(room // 2, room - LINES_LEFT * self.look.line)
            self._scrolled.canvas.configure(height=max(1, min(wanted, most)))

    def _empty_place(self, actions: FindActions) -> ttk.Frame:
        """What stands where the list will be, while there is nothing to list."""
        place = ttk.Frame(self)
        place.columnconfigure(0, weight=1)
        says = (
            "No swatch is logged yet.",
            "Fill in yarn or stitch, hook and one reading in the form beside this. Once saved, it is listed here.",
        )
        for row, sentence in enumerate(says):
            style = "Section.TLabel" if row == 0 else "TLabel"
            self.look.grid(Sentence(place, sentence, style), row=row, column=0, sticky="ew", pady=(0, 2))
        if actions.open_sample is not None:
            words, underline = split_mnemonic("Open an e&xample")
            self.sample = WrappedButton(place, text=words, underline=underline, command=actions.open_sample)
            self.sample.grid(row=2, column=0, sticky="w")
        self.look.grid(place, row=3, column=0, columnspan=2, sticky="new", pady=(3, 0))
        return place

    def _bind_keys(self) -> None:
        entry = self.find.input
        for key, step in {"Down": 1, "Up": -1, "Next": 10, "Prior": -10}.items():
            entry.bind(f"<{key}>", lambda _, step=step: self._walk(step))  # type: ignore[misc]
        entry.bind("<Escape>", lambda _: self.clear())
        for widget in (entry, self.table.tree):
            widget.bind("<Return>", lambda _: self._take())
        self.table.tree.bind("<Double-Button-1>", self._open)
        self.table.tree.bind("<Delete>", lambda _: self._actions.delete())
        self.table.tree.bind("<Escape>", lambda _: self.clear())

    def _walk(self, step: int) -> str:
        self.table.walk(step)
        return "break"

    def _open(self, event: "tk.Event[ttk.Treeview]") -> str | None:
        if not self.table.tree.identify_row(event.y):
            return None
        self._actions.open()
        return "break"

    def _take(self) -> str:
        """With the swatch in hand hidden by the find text, the first that is found is taken."""
        if self.table.shown and not set(self.table.selected) & set(self.table.shown):
            self.table.walk(1)
        self._actions.take()
        return "break"


def _row(line: SwatchLine) -> Row:
    return Row(line.uid, cells(line), sort_keys(line))
