"""Text in grey that a field holds beside what is typed in it."""

import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look


class InField(ttk.Label):
    """Stands in ``entry``, and a click goes through to it; what it says and where, a kind of it decides in ``_stand``."""

    def __init__(self, entry: ttk.Entry, variable: tk.StringVar, look: Look) -> None:
        super().__init__(entry, style="Example.TLabel")
        self._entry, self._variable, self._look = entry, variable, look
        self.bind("<Button-1>", lambda _: entry.focus_set())
        variable.trace_add("write", lambda *_: self.follow())
        entry.bind("<Configure>", lambda _: self.follow(), add="+")
        look.when_changed(self, self.follow)

    def follow(self) -> None:
        """As the field is now."""
        if not self.winfo_exists():
            return
        edge = self._look.pixels(2)
        room = self._entry.winfo_width() - 2 * edge  # its own border stays in sight
        if room <= 0 or not self._stand(self._variable.get(), edge, room):
            self.place_forget()

    def _stand(self, typed: str, edge: int, room: int) -> bool:
        """Puts itself into ``room`` pixels between edges of ``edge`` beside what is typed; False if it has nothing to say."""
        raise NotImplementedError
