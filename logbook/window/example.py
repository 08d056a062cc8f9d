"""What stands in an empty field, in grey: how a text is written, or what holds where none is."""

import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look


class Example(ttk.Label):
    """Stands in ``entry`` while nothing is typed; a click goes through to it."""

    def __init__(self, entry: ttk.Entry, variable: tk.StringVar, look: Look, text: str) -> None:
        super().__init__(entry, text=text, style="Example.TLabel")
        self._entry, self._variable, self._look = entry, variable, look
        self.bind("<Button-1>", lambda _: entry.focus_set())
        variable.trace_add("write", lambda *_: self._follow())
        look.when_changed(self, self._follow)

    def say(self, text: str) -> None:
        """Another text."""
        self.configure(text=text)
        self._follow()

    def _follow(self) -> None:
        if not self.winfo_exists():
            return
        if self._variable.get() or not self.cget("text"):
            self.place_forget()
        else:
            edge = self._look.pixels(2)
            self.place(x=edge, rely=0.5, anchor="w", relwidth=1, width=-2 * edge)  # its own border stays in sight
