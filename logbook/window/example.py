"""What stands in an empty field, in grey: how a text is written, or what holds where none is."""

import tkinter as tk
from tkinter import ttk

from logbook.window.ellipsis import cut
from logbook.window.look import Look


class Example(ttk.Label):
    """Stands in ``entry`` while nothing is typed; a click goes through to it."""

    def __init__(self, entry: ttk.Entry, variable: tk.StringVar, look: Look, text: str) -> None:
        super().__init__(entry, style="Example.TLabel")
        self._entry, self._variable, self._look, self._text = entry, variable, look, text
        self.bind("<Button-1>", lambda _: entry.focus_set())
        variable.trace_add("write", lambda *_: self._follow())
        entry.bind("<Configure>", lambda _: self._follow(), add="+")
        look.when_changed(self, self._follow)

    def say(self, text: str) -> None:
        """Another text."""
        self._text = text
        self._follow()

    def _follow(self) -> None:
        if not self.winfo_exists():
            return
        edge = self._look.pixels(2)
        room = self._entry.winfo_width() - 2 * edge  # its own border stays in sight
        if self._variable.get() or not self._text or room <= 0:
            self.place_forget()
        else:
            measure = self._look.base.measure
            text = self._text if measure(self._text) <= room else self._text.removeprefix("e.g. ")
            self.configure(text=cut(text, room, measure))
            self.place(x=edge, rely=0.5, anchor="w")
