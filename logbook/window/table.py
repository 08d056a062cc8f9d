"""A table of records: sorted, filtered, walked through and copied with keys as with the mouse.

What is selected is told by the keys of records, never by rows: of very many only those in sight and near are real
(``real_rows``), and nothing is ever read back from the widget but where the user clicked.
"""

import sys
import tkinter as tk
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from functools import cached_property, partial
from tkinter import ttk

from logbook.window.cut_cells import CutCells
from logbook.window.keys import CONTROL, SHIFT, accelerator, bind_keys, on_macos
from logbook.window.look import Look
from logbook.window.menu_entries import Entry as Entry
from logbook.window.menu_entries import add_entries
from logbook.window.real_rows import ODD, RealRows
from logbook.window.scroll_bar import show_bar
from logbook.window.styles import styled
from logbook.window.table_columns import Column as Column
from logbook.window.table_columns import set_widths, show_headings, spread
from logbook.window.table_marks import TableMarks
from logbook.window.table_order import NO_RANKS, TableOrder
from logbook.window.table_rows import KeptRows, Listed
from logbook.window.table_rows import Row as Row

COPY_KEYS, ALL_KEYS = "Mod-c", "Mod-a"


class Table(ttk.Frame):
    """``on_select`` gets the keys of the selected rows in their shown order, whenever the user selects others.

    ``on_view`` is told the keys of the rows that are in sight whenever others are, and sees to their summaries; ``entries`` gives
    what the right button offers before the table's own.
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
        self._order = TableOrder()
        self._chosen: tuple[str, ...] = ()
        self._focus = ""
        self._anchor = 0
        self.on_view: Callable[[Sequence[str]], object] | None = None
        self.entries: Callable[[], Sequence[Entry]] = tuple
        self._telling = self._marking = ""
        names = [c.key for c in columns]
        self.tree = ttk.Treeview(self, columns=names, show="headings", selectmode="extended", height=4)
        self._real = RealRows(self.tree, lambda keys: self._order.listed.rows(keys), self._mark_selected, self._scrolled)
        self.marks = TableMarks(self.tree, look)
        self._cut = CutCells(self.tree, look, self.columns)
        self._arrange()
        self._bind_tree()
        self.tree.bind("<Destroy>", lambda _: self._gone(), add="+")
        look.when_changed(self, self._follow_look)

    @property
    def shown(self) -> Sequence[str]:
        """The keys of the rows that are shown, from top to bottom, in sight or not."""
        return self._real.keys

    @property
    def count(self) -> int:
        """How many rows there are, shown or not."""
        return self._order.count

    @property
    def selected(self) -> tuple[str, ...]:
        """The keys of the rows selected last that are still there, also of those that the filter hides now."""
        return self._chosen

    def set_rows(self, rows: Iterable[Row]) -> None:
        """Puts all records in, takes the filter off, keeps the sorting; unsorted they stand in this order."""
        self.show_list(KeptRows(rows))

    def show_list(self, listed: Listed) -> None:
        """The same with rows that are made when they come into sight."""
        self.tree.selection_set(())
        self._real.forget()
        self._order.take(listed)
        self._chosen = tuple(key for key in self._chosen if key in listed)
        self._reordered()

    def replace_row(self, row: Row) -> None:
        """Other cells for a row that is there."""
        assert isinstance(self._order.listed, KeptRows)
        self._order.listed.replace(row)
        self._real.replace(row)
        self.tell_view()

    def show_only(self, keys: Collection[str] | None, ranks: Mapping[str, int] = NO_RANKS, *, as_listed: bool = False) -> None:
        """Shows the rows with these keys alone, or all for None; the selection stays, hidden or not. Those of a lesser rank come
        first, and within a rank the sorting holds. ``as_listed``: the keys come in the order of the list.
        """
        self._order.show_only(keys, ranks, as_listed=as_listed)
        shown = self._order.shown()
        if shown != self.shown:
            self._rearrange(shown)

    def sort_by(self, column: str) -> None:
        """Sorts by this column, upwards first, then downwards, then in the order of ``set_rows`` again."""
        self._order.sort_next(self._place_of(column))
        self._reordered()

    def sort(self, column: str | None) -> None:
        """Sorts by this column, upwards; None: in the order of ``set_rows``."""
        self._order.sort(None if column is None else self._place_of(column))
        self._reordered()

    def cells(self, key: str) -> tuple[str, ...]:
        """A row's cells as they were put in."""
        return next(iter(self._order.listed.rows([key]))).cells

    def select(self, keys: Sequence[str]) -> None:
        """Selects these rows, without telling ``on_select``, and shows the first of them."""
        self._chosen = tuple(key for key in keys if key in self._order.listed)
        place = self._first_chosen()
        if place >= 0:
            self._see_chosen(place)
        self._mark_selected()

    def on_select_now(self) -> None:
        """Tells ``on_select`` what is selected, as if the user had just chosen it."""
        self._on_select(self._chosen)

    def walk(self, by: int) -> None:
        """Selects the row so many rows further down (negative: up), as the arrow keys do, from a place outside the table."""
        if self.shown:
            self._go_to(max(0, self._here() + by), extend=False)

    def copied(self) -> str:
        """The selected rows as shown, tab-separated under the headings."""
        places = [place for place, column in enumerate(self.columns) if not column.summary]
        lines = [[self.columns[place].heading for place in places]]
        chosen = self._chosen_in_order()
        rows = {row.key: row for row in self._order.listed.rows(chosen)}
        lines += [[rows[key].cells[place] for place in places] for key in chosen if key in rows]
        return "\n".join("\t".join(" ".join(cell.split()) for cell in line) for line in lines) + "\n"

    def copy(self) -> None:
        self.clipboard_clear()
        self.clipboard_append(self.copied())

    def tell_view(self) -> None:
        """Tells which rows are in sight, and cuts their texts to their columns, when the table has come to rest."""
        if not self._telling:
            self._telling = self.after_idle(self._tell_view)

    def spread(self) -> None:
        """The columns that grow share the width there is."""
        spread(self.tree, self.columns)
        self.tell_view()

    def _tell_view(self) -> None:
        self._telling = ""
        there = self._real.in_sight()
        keys = self.shown[there.start : there.stop + 2]
        self._cut.show(self._real.real, keys, summaries=self.on_view is None)
        if self.on_view is not None and there:
            self.on_view(keys)

    def _gone(self) -> None:
        for waiting in filter(None, (self._telling, self._marking)):
            self.after_cancel(waiting)

    def _arrange(self) -> None:
        self.down = ttk.Scrollbar(self, orient="vertical", command=self._real.scroll, takefocus=False)
        self.down.configure(style=styled(self, "Vertical.TScrollbar"))
        self.across = ttk.Scrollbar(self, orient="horizontal", command=self.tree.xview, takefocus=False)
        self.tree.configure(xscrollcommand=self._show_across)
        self.tree.configure(yscrollcommand=lambda *_: self._scrolled())
        self.tree.grid(row=0, column=0, sticky="nsew")
        self.down.grid(row=0, column=1, sticky="ns")
        self.across.grid(row=1, column=0, sticky="ew")
        self.rowconfigure(0, weight=1)
        self.columnconfigure(0, weight=1)
        bind_keys(self.tree, COPY_KEYS, self.copy)
        bind_keys(self.tree, ALL_KEYS, self._select_all)

    def _scrolled(self) -> None:
        show_bar(self.down, *self._real.shares())
        self._place_mark()
        self.tell_view()

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
        bind("<Configure>", lambda _: self.spread(), add="+")
        bind("<Configure>", lambda _: self._mark_soon(), add="+")
        for event in ("<FocusIn>", "<FocusOut>"):
            bind(event, lambda _: self.marks.place_edges(), add="+")
        for key, step in {"Up": -1, "Down": 1}.items():
            bind(f"<{key}>", partial(self._step, step))
        bind("<Home>", lambda event: self._walk(event, 0))
        bind("<End>", lambda event: self._walk(event, sys.maxsize))
        bind("<Prior>", lambda event: self._walk(event, self._here() - self._page()))
        bind("<Next>", lambda event: self._walk(event, self._here() + self._page()))
        bind("<Button-1>", self._click)
        bind("<ButtonRelease-1>", lambda _: self.tell_view(), add="+")  # a column may be wider now
        for key in ("<Shift-F10>", "<Menu>" if self.tk.call("tk", "windowingsystem") == "x11" else "<App>"):
            bind(key, self._open_menu_at_row)
        for button in ("<Button-3>", "<Control-Button-1>", "<Button-2>")[: 3 if on_macos(self) else 1]:
            bind(button, self._open_menu)

    def _show_across(self, first: float, last: float) -> None:
        show_bar(self.across, first, last)
        self.marks.place_edges()

    def _follow_look(self) -> None:
        self.tree.tag_configure(ODD, background=self.look.palette.stripe)
        self.marks.follow_look()
        self.columnconfigure(1, minsize=self.down.winfo_reqwidth())
        set_widths(self.tree, self.look, self.columns)
        self._cut.forget()
        self.spread()
        self._show_headings()
        self._mark_soon()

    def _show_headings(self) -> None:
        show_headings(self.tree, self.columns, self._order.sorted_by, self.sort_by)

    def _place_of(self, column: str) -> int:
        return [c.key for c in self.columns].index(column)

    def _reordered(self) -> None:
        self._show_headings()
        self._rearrange(self._order.shown())

    def _rearrange(self, shown: Sequence[str]) -> None:
        """Shows these; the first that is selected is in sight, or the top."""
        # A row keeps its selection while it is hidden: without this, two would come back selected.
        self.tree.selection_set(())
        self._real.keys = shown
        place = self._first_chosen()
        self._real.show(shown, max(place, 0))
        self._see_chosen(place)
        self.tell_view()

    def _first_chosen(self) -> int:
        """The place of the first of the selected rows that are shown; -1: none is."""
        chosen = set(self._chosen)
        return next((place for place, key in enumerate(self.shown) if key in chosen), -1) if chosen else -1

    def _see_chosen(self, place: int) -> None:
        if place >= 0:
            self._focus = self.shown[place]
            self._real.see(place)
        else:
            self.tree.yview_moveto(0)
        self._mark_selected()

    def _chosen_in_order(self) -> Sequence[str]:
        """The selected rows that are shown, from top to bottom."""
        chosen = set(self._chosen)
        return [key for key in self.shown if key in chosen] if chosen else ()

    def _mark_selected(self) -> None:
        """Of the real rows those that are selected."""
        chosen = set(self._chosen)
        self.tree.selection_set([key for key in self._real.real if key in chosen])
        if self._focus in self._real.real:
            self.tree.focus(self._focus)
        self._place_mark()

    def _changed(self) -> None:
        """The user has chosen with the mouse: of the real rows one, and nothing else."""
        now = tuple(str(key) for key in self.tree.selection())
        self._place_mark()
        if now and set(now) != self._real.real.keys() & set(self._chosen):
            self._focus = str(self.tree.focus())
            self._choose(now)

    def _choose(self, keys: Sequence[str]) -> None:
        """The user has chosen these rows."""
        before, self._chosen = self._chosen, tuple(keys)
        self._mark_selected()
        if set(before) != set(self._chosen):
            self._on_select(self._chosen)

    def _select_all(self) -> None:
        self._choose(self.shown)

    def _here(self) -> int:
        return self.shown.index(self._focus) if self._focus in self.shown else -1

    def _page(self) -> int:
        return max(1, len(self._real.in_sight()) - 1)

    def _walk(self, event: "tk.Event[ttk.Treeview]", index: int) -> str:
        """Moves to the row at ``index`` or the nearest there is; Shift selects from where the walk began."""
        if self.shown:
            self._go_to(index, extend=bool(int(event.state) & SHIFT))
        return "break"

    def _go_to(self, index: int, *, extend: bool) -> None:
        index = min(max(index, 0), len(self.shown) - 1)
        first, last = sorted((self._anchor if extend else index, index))
        if not extend:
            self._anchor = index
        self._focus = self.shown[index]
        self._real.see(index)
        self._choose(self.shown[first : last + 1])

    def _step(self, step: int, event: "tk.Event[ttk.Treeview]") -> str:
        return self._walk(event, self._here() + step)

    def _click(self, event: "tk.Event[ttk.Treeview]") -> str | None:
        """With Shift a stretch is chosen, with Ctrl a row more or less, wherever the rows chosen before are."""
        row = str(self.tree.identify_row(event.y))
        if not row or self.tree.identify_region(event.x, event.y) == "heading":
            return None
        index, keys = self.shown.index(row), int(event.state)
        several = str(self.tree.cget("selectmode")) == "extended"
        if several and keys & SHIFT:
            self._go_to(index, extend=True)
        elif several and keys & CONTROL:
            self._anchor, self._focus = index, row
            self._choose([key for key in self._chosen if key != row] if row in self._chosen else [*self._chosen, row])
        else:
            self._anchor = index
            return None
        self.tree.focus_set()
        return "break"

    def on_double_click(self, action: Callable[[], object]) -> None:
        """From now on a double click on a row calls it, which finds that row selected."""

        def clicked(event: "tk.Event[ttk.Treeview]") -> str | None:
            if not self.tree.identify_row(event.y):
                return None
            self._changed()  # in a hurry Tk tells what the first click chose after the second
            action()
            return "break"

        self.tree.bind("<Double-Button-1>", clicked)

    def _open_menu(self, event: "tk.Event[ttk.Treeview]") -> None:
        """The menu of the row under the pointer, which is selected with it."""
        row = str(self.tree.identify_row(event.y))
        if row and row not in self._chosen:
            self._focus = row
            self._choose([row])
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
        box = self.tree.bbox(self._focus) if self._focus in self._real.real else ""
        x, y = (box[0], box[1] + box[3]) if box else (0, self.look.line * 2)
        self._pop_up(self.tree.winfo_rootx() + x, self.tree.winfo_rooty() + y)
        return "break"

    def _mark_soon(self) -> None:
        """When the rows have their new places."""
        if self._marking:
            self.after_cancel(self._marking)
        self._marking = self.after_idle(self._mark_now)

    def _mark_now(self) -> None:
        self._marking = ""
        self._place_mark()

    def _place_mark(self) -> None:
        there = self._focus in self._real.real and self._focus in self._chosen
        self.marks.place_mark(self._focus if there else "")
