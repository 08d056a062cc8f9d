"""The parts of a page side by side, parted by bars that can be dragged; where they do not all fit, two of them at a time."""

import tkinter as tk
from collections.abc import Callable, Sequence
from tkinter import ttk
from typing import Any

from logbook.window.look import Look
from logbook.window.scrolled import Scrolled

SASH = 8
"""Pixels of a bar."""
LEAST = (32, 46, 46)
"""Letters that the list, the form and what follows from it want at least."""
Shares = tuple[float, float]
"""Of the width: where the first bar is, and where the second."""


class Panes(ttk.Frame):
    """List, form and what follows. ``on_drag`` gets the shares that the user gave them.

    Where there is no room for three, the form has either the list or what follows beside it; a button names the hidden one and
    brings it. It stands at the end of the row of tabs, if they leave room, since rows are scarce where text is large.
    """

    def __init__(self, parent: tk.Misc, look: Look, names: Sequence[str], on_drag: Callable[[Shares], object]) -> None:
        super().__init__(parent)
        self.look, self._names, self._on_drag = look, names, on_drag
        self._shares: Shares = (0.31, 0.65)
        self._hidden: int | None = None
        self._laid = (0, 0)
        self.bar: Any = tk.PanedWindow(self, sashwidth=SASH, borderwidth=0, sashpad=0, width=2, height=2)
        self._tabs = _tabs_above(parent)
        self.switch = ttk.Button(self if self._tabs is None else self._tabs.master, command=self._other)
        self.bar.grid(row=1, column=0, sticky="nsew")
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self.holders = tuple(ttk.Frame(self.bar, width=1, height=1) for _ in names)
        for holder in self.holders:
            holder.grid_propagate(False)
            holder.columnconfigure(0, weight=1)
            holder.rowconfigure(0, weight=1)
            self.bar.add(holder, stretch="last")
        self.bar.bind("<Configure>", lambda _: self._lay_out())
        self.bar.bind("<ButtonRelease-1>", lambda _: self._dragged())
        for event in ("<Map>", "<Unmap>", "<Configure>"):
            self.bind(event, lambda _: self._place_switch())
        self.bind("<Destroy>", lambda event: self.switch.destroy() if event.widget is self else None)
        look.when_changed(self, self._follow_look)

    def put(self, view: tk.Widget, column: int) -> None:
        """A part of the page fills its pane."""
        view.grid(in_=self.holders[column], row=0, column=0, sticky="nsew")

    def share(self, shares: Shares) -> None:
        """Where the bars are."""
        self._shares = shares
        self._laid = (0, 0)
        self._lay_out()

    def bring(self, column: int) -> None:
        """Shows this part if it is the hidden one."""
        if column == self._hidden:
            self._hide(2 - column)

    @property
    def hidden(self) -> int | None:
        """The place of the part for which there is no room; None: all are shown."""
        return self._hidden

    def _least(self) -> list[int]:
        letter = self.look.letter
        return [letters * letter for letters in LEAST]

    def _follow_look(self) -> None:
        self.bar.configure(background=self.look.palette.page)
        self._laid = (0, 0)
        self._lay_out()

    def _lay_out(self) -> None:
        """Hides a part or shows all, and puts the bars where they belong in this width."""
        width = self.bar.winfo_width()
        if width <= 1 or self._laid == (width, self.look.percent):
            return
        self._laid = (width, self.look.percent)
        narrow = width < sum(self._least()) + 2 * SASH
        if narrow:
            self._hide(self._hidden if self._hidden is not None else self._least_wanted())
        else:
            self._hide(None)

    def _least_wanted(self) -> int:
        """What is hidden first: what follows, unless the keyboard is there."""
        return 0 if self._holding(self.tk.call("focus")) == 2 else 2

    def _hide(self, column: int | None) -> None:
        self._hidden = column
        for place, holder in enumerate(self.holders):
            self.bar.paneconfigure(holder, hide=place == column)
        if column is not None:
            self.switch.configure(text=f"◂ {self._names[0]}" if column == 0 else f"{self._names[2]} ▸")
        self._place_switch()
        self._place_bars()

    def _place_switch(self) -> None:
        """While its page is shown and a part of it hidden: at the end of the row of tabs, or above the parts."""
        if not self.winfo_exists():
            return
        self.switch.grid_forget()
        self.switch.place_forget()
        if self._hidden is None or not self.winfo_viewable():
            return
        tabs, room = self._tabs, self.switch.winfo_reqwidth()
        if tabs is not None and not tabs.identify(tabs.winfo_width() - room, self.switch.winfo_reqheight() // 2):
            self.switch.place(in_=tabs, relx=1.0, x=-self.look.pixels(1), y=0, anchor="ne")
            self.switch.lift()
        else:
            side = "w" if self._hidden == 0 else "e"
            self.switch.grid(in_=self, row=0, column=0, sticky=side, pady=(0, self.look.pixels(1)))
            self.switch.lift()

    def _other(self) -> None:
        assert self._hidden is not None
        brought = self._hidden
        self._hide(2 - brought)
        self.update_idletasks()
        for view in self.holders[brought].grid_slaves():
            following = view.tk_focusNext()
            if following is not None:
                place: tk.Misc | None = following
                while place is not None and place is not view:
                    if isinstance(place, Scrolled):
                        place.show_top(following)
                    place = place.master
                following.focus_set()

    def _place_bars(self) -> None:
        """Each part gets its share, and none less than it needs; where that is too much, all give way alike."""
        width, least = self.bar.winfo_width(), self._least()
        shown = [place for place in range(3) if place != self._hidden]
        needed = sum(least[place] for place in shown)
        room = width - SASH * (len(shown) - 1)
        least = [pixels * min(room, needed) // needed for pixels in least]
        first, second = self._shares
        parts = [first, second - first, 1 - second]
        whole = sum(parts[place] for place in shown) or 1.0
        left = width
        for place in shown:
            later = sum(least[other] + SASH for other in shown if other > place)
            room = left - later
            wide = left if place == shown[-1] else min(max(round(width * parts[place] / whole), least[place]), room)
            self.bar.paneconfigure(self.holders[place], width=max(1, wide), minsize=min(least[place], max(1, wide)))
            left -= wide + SASH

    def _dragged(self) -> None:
        """What the user gave each part, never less than it needs."""
        width = self.bar.winfo_width()
        where = [self.bar.sash_coord(at)[0] / width for at in range(1 if self._hidden is not None else 2)]
        first, second = self._shares
        if self._hidden == 0:
            shares = (first, first + (1 - first) * where[0])
        elif self._hidden == 2:
            shares = (second * where[0], second)
        else:
            shares = (where[0], where[1])
        if max(abs(now - before) for now, before in zip(shares, self._shares, strict=True)) > 1 / width:
            self._shares = shares
            self._place_bars()
            self._on_drag(shares)

    def _holding(self, path: object) -> int | None:
        """The place of the part that holds a widget."""
        for place, holder in enumerate(self.holders):
            for view in holder.grid_slaves():
                if str(path) == str(view) or str(path).startswith(f"{view}."):
                    return place
        return None


def _tabs_above(widget: tk.Misc) -> ttk.Notebook | None:
    """The notebook on a page of which the widget stands."""
    place: tk.Misc | None = widget
    while place is not None and not isinstance(place, ttk.Notebook):
        place = place.master
    return place
