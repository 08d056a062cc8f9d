"""A table of records: sorted, filtered, walked through and copied with keys as with the mouse.

Rows are put into the widget once; filtering and sorting only rearrange them, so that 100,000 rows stay quick, and
nothing is ever read back from the widget.
"""

import sys
import tkinter as tk
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property, partial
from itertools import islice
from tkinter import ttk
from typing import Literal, NamedTuple

from logbook.window.keys import SHIFT, accelerator, bind_keys, on_macos, split_mnemonic
from logbook.window.look import Look
from logbook.window.scroll_bar import show_bar
from logbook.window.styles import styled

COPY_KEYS, ALL_KEYS = "Mod-c", "Mod-a"
SCREENFUL = 100
"""Rows that are there at once: more than a screen shows."""
AT_ONCE = 250
"""Rows that follow at one go, so few that nobody waits."""
DRAWN_FIRST_MS = 300
"""Until the others follow."""
EDGES = 4
"""Pixels of its width that the border of a table takes."""
Entry = tuple[str, str, Callable[[], object]] | None
"""The words of a menu's entry with the letter underlined, ``"&Save"``, its keys and what it does; None is a line between."""
_NO_RANKS: Mapping[str, int] = {}
SortKey = str | float | None
"""Of one kind in a column; None stands for an empty cell, which comes last either way."""


class Column(NamedTuple):
    """``width`` is in letters; numbers belong at the ``"right"``; a column may ``grow`` into width that is over.

    One that grows may also shrink to ``least`` letters, if there are any, where the table is narrower than it wants to be.
    A ``summary`` says again what other columns say, for a narrow place: it is neither copied nor sorted by.
    """

    key: str
    heading: str
    width: int
    align: Literal["left", "right"] = "left"
    grow: bool = False
    summary: bool = False
    least: int = 0


class Row(NamedTuple):
    """A record's key, its cells as shown, and for each cell what it is sorted by."""

    key: str
    cells: tuple[str, ...]
    sort_keys: tuple[SortKey, ...]


class Table(ttk.Frame):
    """``on_select`` gets the keys of the selected rows in their shown order, whenever the user selects others.

    ``on_view`` is told the keys of the rows that are in sight whenever others are; ``entries`` gives what the right button offers
    before the table's own.
    """

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        columns: Sequence[Column],
        on_select: Callable[[tuple[str, ...]], object] = lambda keys: None,
    ) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look, self.columns, self._on_select = look, tuple(columns), on_select
        self._rows: dict[str, Row] = {}
        self._order: list[str] = []
        self._odd: set[str] = set()
        self._wanted: set[str] | None = None
        self._ranks = _NO_RANKS
        self._chosen: tuple[str, ...] = ()
        self._settled: tuple[str, ...] = ()
        self._sorted: tuple[int, bool] | None = None
        self._anchor = 0
        self._coming: Iterator[Row] = iter(())
        self._timer = ""
        self.shown: list[str] = []
        self.on_view: Callable[[Sequence[str]], object] | None = None
        self.entries: Callable[[], Sequence[Entry]] = tuple
        self._telling = ""
        names = [c.key for c in columns]
        self.tree = ttk.Treeview(self, columns=names, show="headings", selectmode="extended", height=4)
        self.mark, *self.edges = (tk.Frame(self.tree, borderwidth=0, highlightthickness=0) for _ in range(3))
        self._arrange()
        self._bind_tree()
        look.when_changed(self, self._follow_look)
        self.bind("<Destroy>", lambda _: self._stop_coming(), add="+")

    def set_rows(self, rows: Iterable[Row]) -> None:
        """Puts all records in, takes the filter off, keeps the sorting; unsorted they stand in this order."""
        call, tree = self.tk.call, str(self.tree)
        self.tree.selection_set(())
        call(tree, "delete", tuple(self._rows))
        self._rows, self._order, self._odd, self._wanted = {}, [], set(), None
        self._coming = iter(rows)
        # A screenful is there at once and the others follow, unless their place or the selection hangs on all of them.
        self._take(None if self._sorted is not None or self._chosen else SCREENFUL)
        self._sort()
        self._go_on_soon()

    def show_only(self, keys: Iterable[str] | None, ranks: Mapping[str, int] = _NO_RANKS) -> None:
        """Shows the rows with these keys alone, or all for None; the selection stays, hidden or not. Those of a lesser rank come
        first, and within a rank the sorting holds.
        """
        if keys is not None:
            self._take(None)
        self._wanted, self._ranks = None if keys is None else set(keys), ranks
        before, self.shown = self.shown, self._asked_for()
        if self.shown != before:
            self._rearrange()

    def sort_by(self, column: str) -> None:
        """Sorts by this column, upwards first, then downwards, then in the order of ``set_rows`` again."""
        index = [c.key for c in self.columns].index(column)
        again = self._sorted is not None and self._sorted[0] == index
        self._sorted = (index, False) if not again else (index, True) if self._sorted == (index, False) else None
        self._take(None)
        self._sort()

    def sort(self, column: str | None) -> None:
        """Sorts by this column, upwards; None: in the order of ``set_rows``."""
        self._sorted = None if column is None else ([c.key for c in self.columns].index(column), False)
        self._take(None)
        self._sort()

    @property
    def count(self) -> int:
        """How many rows there are so far, shown or not."""
        return len(self._rows)

    def cells(self, key: str) -> tuple[str, ...]:
        """A row's cells as they were put in."""
        return self._rows[key].cells

    def tell_view(self) -> None:
        """Tells which rows are in sight, when the table has come to rest."""
        if self.on_view is not None and not self._telling:
            self._telling = self.after_idle(self._tell_view)

    def _tell_view(self) -> None:
        self._telling = ""
        first, last = self.tree.yview()
        count = len(self.shown)
        if self.on_view is not None and count:
            self.on_view(self.shown[int(first * count) : int(last * count) + 2])

    def select(self, keys: Sequence[str]) -> None:
        """Selects these rows, without telling ``on_select``, and shows the first of them."""
        if not self._rows.keys() >= set(keys):
            self._take(None)
        self._chosen = tuple(key for key in keys if key in self._rows)
        self._set_selection([key for key in self._chosen if self._wanted is None or key in self._wanted])

    def replace_row(self, row: Row) -> None:
        """Other cells for a row that is there."""
        self._rows[row.key] = row
        self.tree.item(row.key, values=row.cells)

    def on_select_now(self) -> None:
        """Tells ``on_select`` what is selected, as if the user had just chosen it."""
        self._on_select(self._chosen)

    def walk(self, by: int) -> None:
        """Selects the row so many rows further down (negative: up), as the arrow keys do, from a place outside the table."""
        if self.shown:
            self._go_to(max(0, self._here() + by), extend=False)

    @property
    def selected(self) -> tuple[str, ...]:
        """The keys of the rows selected last that are still there, also of those that the filter hides now."""
        return self._chosen

    def copied(self) -> str:
        """The selected rows as shown, tab-separated under the headings."""
        places = [place for place, column in enumerate(self.columns) if not column.summary]
        lines = [[self.columns[place].heading for place in places]]
        lines += [[self._rows[key].cells[place] for place in places] for key in self._settled]
        return "\n".join("\t".join(" ".join(cell.split()) for cell in line) for line in lines) + "\n"

    def copy(self) -> None:
        self.clipboard_clear()
        self.clipboard_append(self.copied())

    def _arrange(self) -> None:
        self.down = ttk.Scrollbar(self, orient="vertical", command=self.tree.yview, takefocus=False)
        self.down.configure(style=styled(self, "Vertical.TScrollbar"))
        self.across = ttk.Scrollbar(self, orient="horizontal", command=self.tree.xview, takefocus=False)
        self.tree.configure(xscrollcommand=self._show_across)

        def scrolled(first: float, last: float) -> None:
            show_bar(self.down, first, last)
            self._place_mark()
            self.tell_view()

        self.tree.configure(yscrollcommand=scrolled)
        self.tree.grid(row=0, column=0, sticky="nsew")
        self.down.grid(row=0, column=1, sticky="ns")
        self.across.grid(row=1, column=0, sticky="ew")
        self.rowconfigure(0, weight=1)
        self.columnconfigure(0, weight=1)
        bind_keys(self.tree, COPY_KEYS, self.copy)
        bind_keys(self.tree, ALL_KEYS, self._select_all)

    @cached_property
    def menu(self) -> tk.Menu:
        """What can be done with the rows, made when it is first opened."""
        menu = tk.Menu(self, tearoff=False)
        for column in (column for column in self.columns if not column.summary):
            menu.add_command(label=f"Sort by {column.heading}", command=partial(self.sort_by, column.key))
        menu.add_separator()
        menu.add_command(label="Copy rows", accelerator=accelerator(self, COPY_KEYS), command=self.copy)
        menu.add_command(label="Select all", accelerator=accelerator(self, ALL_KEYS), command=self._select_all)
        return menu

    def _bind_tree(self) -> None:
        bind = self.tree.bind
        bind("<<TreeviewSelect>>", lambda _: self._changed())
        bind("<Configure>", lambda _: self.spread())
        bind("<Configure>", lambda _: self.after_idle(self._place_mark), add="+")
        bind("<Map>", lambda _: self._go_on_soon())
        for event in ("<FocusIn>", "<FocusOut>"):
            bind(event, lambda _: self._place_edges(), add="+")
        for key, step in {"Up": -1, "Down": 1}.items():
            bind(f"<{key}>", partial(self._step, step))
        bind("<Home>", lambda event: self._walk(event, 0))
        bind("<End>", lambda event: self._walk(event, sys.maxsize))
        bind("<Prior>", lambda event: self._walk(event, self._here() - self._page()))
        bind("<Next>", lambda event: self._walk(event, self._here() + self._page()))
        bind("<Button-1>", self._remember_anchor, add="+")
        for key in ("<Shift-F10>", "<Menu>" if self.tk.call("tk", "windowingsystem") == "x11" else "<App>"):
            bind(key, self._open_menu_at_row)
        for button in ("<Button-3>", "<Control-Button-1>", "<Button-2>")[: 3 if on_macos(self) else 1]:
            bind(button, self._open_menu)

    def _show_across(self, first: float, last: float) -> None:
        show_bar(self.across, first, last)
        self._place_edges()

    def _place_edges(self) -> None:
        """Where columns reach beyond the border at the left or right Tk draws them over it, and so over the ring of the focus."""
        palette, focused = self.look.palette, self.tree.instate(["focus"])
        first, last = (float(share) for share in self.tree.xview())
        for edge, side, over in zip(self.edges, (0.0, 1.0), (first > 0, last < 1), strict=True):
            edge.configure(background=palette.focus if focused else palette.line)
            if over:
                edge.place(relx=side, anchor="ne" if side else "nw", width=2 if focused else 1, relheight=1)
            else:
                edge.place_forget()

    def _follow_look(self) -> None:
        letter = self.look.base.measure("0")
        self.tree.tag_configure("odd", background=self.look.palette.stripe)
        self.mark.configure(background=self.look.palette.accent)
        self._place_edges()
        self.columnconfigure(1, minsize=self.down.winfo_reqwidth())
        for column in self.columns:
            heading = self.look.bold.measure(f"{column.heading} ▲")
            width, least = (max(letter * letters, heading) for letters in (column.width, column.least or column.width))
            self.tree.column(
                column.key,
                width=width + self.look.pixels(4),
                minwidth=least + self.look.pixels(4),
                stretch=column.grow,
                anchor="e" if column.align == "right" else "w",
            )
        self.spread()
        self._show_headings()
        self.after_idle(self._place_mark)

    def spread(self) -> None:
        """Gives the columns that grow alike what is left above their least width; Tk does so only while a table becomes wider."""
        shown = self.tree.cget("displaycolumns")
        columns = [column for column in self.columns if column.key in shown or "#all" in shown]
        least = {column.key: int(self.tree.column(column.key, "minwidth")) for column in columns}
        growing = [column.key for column in columns if column.grow]
        if self.tree.winfo_width() > 1 and growing:
            more = max(0, self.tree.winfo_width() - EDGES - sum(least.values()))
            for key in growing:
                self.tree.column(key, width=least[key] + more // len(growing))

    def _show_headings(self) -> None:
        for index, column in enumerate(self.columns):
            sign = "" if self._sorted is None or self._sorted[0] != index else "▼" if self._sorted[1] else "▲"
            right = column.align == "right"
            text = f"{sign} {column.heading}" if right else f"{column.heading} {sign}"
            self.tree.heading(
                column.key,
                text=text.strip(),
                anchor="e" if right else "w",
                command=partial(self.sort_by, column.key),
            )

    def _take(self, count: int | None) -> None:
        """Puts in the next ``count`` of the rows that are coming, or all of them; unsorted and unfiltered they go to the end."""
        call, tree = self.tk.call, str(self.tree)
        # Three times as quick as Treeview.insert, which matters from 10,000 rows on.
        for row in islice(self._coming, count):
            odd = len(self._order) % 2 == 1
            call(tree, "insert", "", "end", "-id", row.key, "-values", row.cells, "-tags", ("odd",) if odd else ())
            if odd:
                self._odd.add(row.key)
            self._rows[row.key] = row
            self._order.append(row.key)

    def _go_on_soon(self) -> None:
        """The rows that are not there yet follow when those that are have been drawn."""
        self._stop_coming()
        self._timer = self.after(DRAWN_FIRST_MS, self._take_more) if self.tree.winfo_viewable() else ""

    def _take_more(self) -> None:
        """Goes on putting rows in whenever the window has nothing else to do."""
        before = len(self._rows)
        self._take(AT_ONCE)
        self._timer = self.after(1, self._take_more) if len(self._rows) > before else ""

    def _stop_coming(self) -> None:
        if self._timer:
            self.after_cancel(self._timer)

    def _sort(self) -> None:
        self._order = list(self._rows)
        if self._sorted is not None:
            index, down = self._sorted
            keys = {key: row.sort_keys[index] for key, row in self._rows.items()}
            empty = [key for key in self._order if keys[key] is None]
            full = [key for key in self._order if keys[key] is not None]
            self._order = sorted(full, key=keys.__getitem__, reverse=down) + empty  # type: ignore[arg-type]
        self._show_headings()
        self._rearrange()

    def _asked_for(self) -> list[str]:
        wanted = self._wanted
        if wanted is None:
            return self._order
        shown = [key for key in self._order if key in wanted]
        return sorted(shown, key=lambda key: self._ranks.get(key, len(self._ranks))) if self._ranks else shown

    def _rearrange(self) -> None:
        self.shown = self._asked_for()
        self.tell_view()
        call, tree = self.tk.call, str(self.tree)
        # A row keeps its selection while it is hidden: without this, two would come back selected.
        self.tree.selection_set(())
        call(tree, "children", "", tuple(self.shown))
        self._stripe()
        visible = set(self.shown)
        self._chosen = tuple(key for key in self._chosen if key in self._rows)
        self._set_selection([key for key in self._chosen if key in visible])

    def _stripe(self) -> None:
        """Every other row, with as few changes as that takes; what is hidden stays as it is until it is shown."""
        even = [key for key in self.shown[::2] if key in self._odd]
        odd = [key for key in self.shown[1::2] if key not in self._odd]
        self.tk.call(str(self.tree), "tag", "remove", "odd", even)
        self.tk.call(str(self.tree), "tag", "add", "odd", odd)
        self._odd.difference_update(even)
        self._odd.update(odd)

    def _set_selection(self, keys: Sequence[str]) -> None:
        self._settled = tuple(keys)
        self.tree.selection_set(self._settled)
        if keys:
            self.tree.focus(keys[0])
            self.tree.see(keys[0])
        self._place_mark()

    def _changed(self) -> None:
        now = tuple(str(key) for key in self.tree.selection())
        self._place_mark()
        if set(now) != set(self._settled):
            self._settled = self._chosen = now
            self._on_select(now)

    def _select_all(self) -> None:
        self._take(None)
        self.tree.selection_set(self.shown)
        self._changed()

    def _here(self) -> int:
        focus = str(self.tree.focus())
        return self.shown.index(focus) if focus in self._rows and focus in self.shown else -1

    def _page(self) -> int:
        return max(1, (self.tree.winfo_height() - self.look.line) // (self.look.line + self.look.pixels(2)) - 1)

    def _walk(self, event: "tk.Event[ttk.Treeview]", index: int) -> str:
        """Moves to the row at ``index`` or the nearest there is; Shift selects from where the walk began."""
        self._take(None)
        if self.shown:
            self._go_to(index, extend=bool(int(event.state) & SHIFT))
        return "break"

    def _go_to(self, index: int, *, extend: bool) -> None:
        index = min(max(index, 0), len(self.shown) - 1)
        first, last = sorted((self._anchor if extend else index, index))
        if not extend:
            self._anchor = index
        self.tree.focus(self.shown[index])
        self.tree.selection_set(self.shown[first : last + 1])
        self.tree.see(self.shown[index])
        self._changed()

    def _step(self, step: int, event: "tk.Event[ttk.Treeview]") -> str:
        return self._walk(event, self._here() + step)

    def _remember_anchor(self, event: "tk.Event[ttk.Treeview]") -> None:
        row = self.tree.identify_row(event.y)
        if row and not int(event.state) & SHIFT:
            self._anchor = self.shown.index(row)

    def _open_menu(self, event: "tk.Event[ttk.Treeview]") -> None:
        """The menu of the row under the pointer, which is selected with it."""
        row = self.tree.identify_row(event.y)
        if row and row not in self.tree.selection():
            self.tree.focus(row)
            self.tree.selection_set(row)
            self._changed()
        self._pop_up(event.x_root, event.y_root)

    def _pop_up(self, x: int, y: int) -> None:
        entries = [*self.entries()]
        if not entries:
            self.menu.tk_popup(x, y)
            return
        self._with_entries.delete(0, "end")
        add_entries(self._with_entries, entries)
        self._with_entries.add_separator()
        self._with_entries.add_cascade(label="List", menu=self.menu)
        self._with_entries.tk_popup(x, y)

    @cached_property
    def _with_entries(self) -> tk.Menu:
        return tk.Menu(self, tearoff=False)

    def _open_menu_at_row(self, _: object) -> str:
        box = self.tree.bbox(self.tree.focus()) if self.tree.focus() else ""
        x, y = (box[0], box[1] + box[3]) if box else (0, self.look.line * 2)
        self._pop_up(self.tree.winfo_rootx() + x, self.tree.winfo_rooty() + y)
        return "break"

    def _place_mark(self) -> None:
        """A bar at the left of the row in hand, since the colour of a selected row alone is too faint a sign."""
        focus = str(self.tree.focus())
        box = self.tree.bbox(focus) if focus in self._settled and self.tree.exists(focus) else ""
        if box:
            self.mark.place(x=1, y=box[1], width=self.look.pixels(0.8), height=box[3])
        else:
            self.mark.place_forget()


def add_entries(menu: tk.Menu, entries: Sequence[Entry]) -> None:
    """Puts entries into a menu."""
    for entry in entries:
        if entry is None:
            menu.add_separator()
            continue
        words, underline = split_mnemonic(entry[0])
        shown = accelerator(menu, entry[1]) if entry[1] else ""
        menu.add_command(label=words, underline=underline, command=entry[2], accelerator=shown)
