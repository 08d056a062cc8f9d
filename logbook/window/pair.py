"""Two things side by side where there is room, else one under the other."""

import tkinter as tk
from collections.abc import Sequence
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.styles import styled


class Pair(ttk.Frame):
    """Make both in it, then ``arrange`` them: each gets half of the width."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look = look
        self._two: Sequence[ttk.Widget] = ()

    def arrange(self, two: Sequence[ttk.Widget]) -> None:
        """Lays them out now and whenever the width changes."""
        self._two = tuple(two)
        self.look.when_changed(self, self._lay_out)
        self.bind("<Configure>", lambda _: self._lay_out(), add="+")

    def _lay_out(self) -> None:
        gap = self.look.pixels(3)
        beside = max(one.winfo_reqwidth() for one in self._two) * 2 + gap <= self.winfo_width()
        for place, one in enumerate(self._two):
            row, column = (0, place) if beside else (place, 0)
            one.grid(row=row, column=column, sticky="new", padx=(gap if column else 0, 0), pady=(gap if row else 0, 0))
        self.columnconfigure(0, weight=1, uniform="half" if beside else "")
        self.columnconfigure(1, weight=int(beside), uniform="half" if beside else "")
