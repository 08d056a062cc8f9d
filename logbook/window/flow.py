"""Buttons side by side that go on in another line where room is short."""

import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.styles import styled


class Flow(ttk.Frame):
    """Make things in it and ``add`` them, in reading order."""

    def __init__(self, parent: tk.Misc, look: Look, gap: float = 1) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"), width=2, height=2)
        self.look, self._gap = look, gap
        self._things: list[tk.Widget] = []
        self._followed: set[tk.Widget] = set()
        self._waits = False
        self.bind("<Configure>", lambda _: self._lay_out())
        look.when_changed(self, self._soon)

    def add(self, thing: tk.Widget) -> None:
        """The next one."""
        self._things.append(thing)
        if thing not in self._followed:
            self._followed.add(thing)
            thing.bind("<Configure>", lambda _: self._soon(), add="+")
        if self.winfo_width() > 2:
            self._soon()

    @property
    def things(self) -> list[tk.Widget]:
        """What is in it."""
        return list(self._things)

    def clear(self) -> None:
        """Takes everything out; what was added is still there."""
        for thing in self._things:
            thing.place_forget()
        self._things = []

    def _soon(self) -> None:
        """Once for all that change together."""
        if not self._waits:
            self._waits = True
            self.after_idle(self._lay_out)

    def _lay_out(self) -> None:
        self._waits = False
        if not self.winfo_exists():
            return
        room, gap = self.winfo_width(), self.look.pixels(self._gap)
        x = y = line = 0
        for thing in [thing for thing in self._things if thing.winfo_exists()]:
            wide, high = thing.winfo_reqwidth(), thing.winfo_reqheight()
            if x and x + wide > room:
                x, y, line = 0, y + line, 0
            thing.place(x=x, y=y)
            x, line = x + wide + gap, max(line, high)
        if y + line and self.winfo_reqheight() != y + line:
            self.configure(height=y + line)
