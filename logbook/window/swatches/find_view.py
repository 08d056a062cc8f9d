"""What there is: the find field, the filters and the list of swatches."""

import math
import time
import tkinter as tk
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from tkinter import ttk
from typing import NamedTuple

from logbook.errors import LogbookError
from logbook.pages.swatches.swatch_list import (
    CLASS_CHOICES,
    CONDITION_CHOICES,
    FindTexts,
    FoundSwatches,
    SwatchList,
    cells,
    sort_key,
    sort_keys,
    two_lines,
)
from logbook.tasks.logging_swatches import Known
from logbook.window.at_rest import AtRest
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.ellipsis import cut
from logbook.window.field import Field, LabelledField
from logbook.window.find_list import FindActions, FindList
from logbook.window.folding import Folding
from logbook.window.keys import split_mnemonic
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.styles import TWO_LINES
from logbook.window.table import Column, Row, Table
from logbook.window.table_rows import in_order
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
ROOM_BESIDE = 8
"""Units that the edges of a row take."""
EMPTY = (
    "No swatch is logged yet.",
    "Fill in yarn or stitch, hook and one reading in the form beside this. Once saved, it is listed here.",
)
SCREENFUL = 60
"""Swatches, more than are seen at once."""
AT_ONCE_S = 0.02
"""Seconds that a search may take at one go."""
READ_AFTER_MS, READ_EVERY_MS = 600, 30
"""When what is looked in is read, a part every so often."""
LINES_LEFT = 8
"""Of text for the list beside opened filters; where there are not twice as many, each gets half."""


class SwatchActions(NamedTuple):
    """What the page does with a double click, with the sample, when the filters are folded and when another order is chosen."""

    open: Callable[[], object]
    open_sample: Callable[[], object] | None
    fold: Callable[[bool], object]
    sorted: Callable[[str], object] = lambda words: None


class ListedSwatches:
    """The list for its table, which reads the lines of those that come into sight."""

    def __init__(self, swatches: SwatchList) -> None:
        self._swatches = swatches

    @property
    def keys(self) -> Sequence[str]:
        """All uids, newest first."""
        return self._swatches.uids

    def sorted_by(self, column: int, down: bool) -> list[str]:
        """All uids in the order of a column."""
        return in_order(((line.uid, sort_key(line, column)) for line in self._swatches.lines), down)

    def rows(self, keys: Sequence[str]) -> list[Row]:
        """The rows of these uids."""
        return [Row(line.uid, cells(line), sort_keys(line)) for line in self._swatches.lines_of(keys)]

    def __contains__(self, key: object) -> bool:
        return key in self._swatches


class FindView(FindList):
    """Swatches by words and by filters, of any number: what is found of very many comes in slices, and no key waits for it."""

    rows_above = 3

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        swatches: SwatchList,
        known: Callable[[], Known],
        actions: FindActions,
        more: SwatchActions,
        filters_open: bool,
    ) -> None:
        self._swatches, self._known, self._more = swatches, known, more
        self._fields: dict[str, LabelledField] = {}
        self._scrolled: Scrolled | None = None
        self._in_sight: dict[str, str] = {}
        self._width = 0
        self._coming: Iterator[FoundSwatches] = iter(())
        self._timer = ""
        self._filters_open = filters_open
        super().__init__(parent, look, self._table, EMPTY, actions)
        self.table.on_view = self._show_in_sight
        self.table.tree.bind("<Configure>", self._follow_width, add="+")
        self.table.on_double_click(more.open)
        look.when_changed(self, self._follow_look)
        self.bind("<Configure>", lambda _: self._limit_filters(), add="+")
        self.bind("<Destroy>", lambda _: self._stop_looking(), add="+")
        self._reading = AtRest(self, self._read_on, after_ms=READ_AFTER_MS, every_ms=READ_EVERY_MS)
        if filters_open:
            self._build_filters()
        self.reload()

    def reload(self) -> None:
        """Shows the list as it is now; the find text goes on holding."""
        self._in_sight.clear()
        self.table.show_list(ListedSwatches(self._swatches))
        self.show_table(bool(self._swatches.count))
        if self._swatches.count:
            self.filters.grid()
        else:
            self.filters.grid_remove()
        self.look_up()
        self._reading.soon()

    def look_up(self) -> None:
        """Shows what the texts find: of very many the first screenful at once, and all of them, with how many, soon after."""
        self._stop_looking()
        self._coming = self._swatches.found(self.texts())
        found = self._look_on(enough=SCREENFUL)
        self._show_found(found)
        for name, field in self._fields.items():
            field.show_message(found.errors.get(name))

    def _look_on(self, enough: float = math.inf) -> FoundSwatches:
        """Looks through slice after slice, for as long as nobody notices or until ``enough`` are found."""
        until = time.perf_counter() + AT_ONCE_S
        while True:
            found = next(self._coming)
            if not found.still_looking:
                return found
            if len(found.uids or ()) >= enough or time.perf_counter() > until:
                self._timer = self.after(1, self._go_on)
                return found

    def _go_on(self) -> None:
        self._timer = ""
        found = self._look_on()
        if not found.still_looking or len(self.table.shown) < SCREENFUL:
            self._show_found(found)

    def _stop_looking(self) -> None:
        if self._timer:
            self.after_cancel(self._timer)
        self._timer = ""

    def _read_on(self) -> bool:
        """What is looked in is read while nobody types, so that the first key need not wait for it."""
        try:
            return self._swatches.read_on()
        except LogbookError:  # nobody asked for this; whoever looks for something is told
            return False

    def _show_found(self, found: FoundSwatches) -> None:
        self.table.show_only(found.uids, found.ranks, as_listed=True)
        self.say_found(found.count, nothing=not found.still_looking and bool(self._swatches.count) and not self.table.shown)

    def _table(self, place: tk.Misc) -> Table:
        table = Table(place, self.look, COLUMNS, self._actions.select)
        table.tree.configure(displaycolumns=("swatch",), style=TWO_LINES, show="")
        return table

    def _above(self) -> None:
        """The order of the list beside the find field, and the filters below it."""
        self._sorting = tk.StringVar(self, next(iter(SORTS)))
        self.sort = ttk.Menubutton(self, textvariable=self._sorting, style="List.TMenubutton")
        self.sort.configure(menu=self._sort_menu())
        self.bind("<Configure>", lambda event: self._place_sort(event.width), add="+")
        self.filters = Folding(self, "Filter by yarn, hook…", self._filters_open, self._fold)
        self.filters.grid(row=2, column=0, columnspan=2, sticky="ew")

    def _place_sort(self, width: int) -> None:
        """Beside the find field where that keeps its label at its side, else beneath it."""
        gap = self.look.pixels(1)
        beside = self.find.width_in_line() + gap + self.sort.winfo_reqwidth() <= width
        self.find.grid(columnspan=1 if beside else 2)
        row, column = (0, 1) if beside else (1, 0)
        self.sort.grid(row=row, column=column, sticky="ne" if beside else "w", padx=(gap, 0) if beside else 0)

    def _sort_menu(self) -> tk.Menu:
        menu = tk.Menu(self.sort, tearoff=False)
        for words in SORTS:
            sort = partial(self.table_sort, words)
            menu.add_radiobutton(label=words, variable=self._sorting, value=words, command=sort)
        return menu

    def table_sort(self, words: str) -> None:
        """Sorts by what was chosen."""
        self.sort_as(words)
        self._more.sorted(words)

    def sort_as(self, words: str) -> None:
        """Sorts so, if it is one of the orders there are."""
        if words in SORTS:
            self._sorting.set(words)
            self.table.sort(SORTS[words])

    def _follow_look(self) -> None:
        self._in_sight.clear()
        self.table.tell_view()
        self._place_sort(self.winfo_width())

    def _follow_width(self, event: "tk.Event[tk.Misc]") -> None:
        if event.width != self._width:
            self._width = event.width
            self._in_sight.clear()
            self.table.tell_view()

    def _show_in_sight(self, keys: Sequence[str]) -> None:
        """The rows in sight with their gauge, each line cut where the list ends; the others are not reckoned."""
        room = self.table.tree.winfo_width() - self.look.pixels(ROOM_BESIDE)
        if room <= 0:
            return
        new = [key for key in keys if key not in self._in_sight]
        gauges = self._swatches.gauges(new) if new else {}
        for key in new:
            text = two_lines(self.table.cells(key)[1:], gauges.get(key, ""))
            self._in_sight[key] = "\n".join(cut(line, room, self.look.base.measure) for line in text.split("\n"))
        for key in keys:
            if self.table.tree.set(key, "swatch") != self._in_sight[key]:  # a row that was away meanwhile is made anew
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

    def _fold(self, is_open: bool) -> None:
        if is_open:
            self._build_filters()
        self._limit_filters()
        self._more.fold(is_open)

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
            look.grid(field, row=row, column=0, sticky="ew", pady=(0, 0.5))
            field.variable.trace_add("write", lambda *_: self.look_up())
            field.input.bind("<Escape>", lambda _: self.clear())
        place.bind("<Configure>", lambda _: self._limit_filters(), add="+")

    def _limit_filters(self) -> None:
        if self._scrolled is not None:
            wanted = self._scrolled.inside.winfo_reqheight()
            room = self.winfo_height() - self.filters.winfo_y() - self.filters.header.winfo_height()
            most = max(room // 2, room - LINES_LEFT * self.look.line)
            self._scrolled.canvas.configure(height=max(1, min(wanted, most)))

    def _say_empty(self, place: ttk.Frame, says: Sequence[str]) -> None:
        """With a button to the sample where there is one to open."""
        super()._say_empty(place, says)
        if self._more.open_sample is not None:
            words, underline = split_mnemonic("Open an e&xample")
            self.sample = WrappedButton(place, text=words, underline=underline, command=self._more.open_sample)
            self.sample.grid(row=len(says), column=0, sticky="w")
