"""A dialog whose content may be longer than the screen: it scrolls, its buttons stay."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.dialog import Dialog
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled


class LongDialog(Dialog):
    """Fill ``body`` instead of ``inside``. ``letters`` is how wide it wants to be."""

    def __init__(self, parent: tk.Misc, look: Look, title: str, on_escape: Callable[[], object], letters: int) -> None:
        super().__init__(parent, look, title, on_escape)
        self._scrolled = Scrolled(self.inside, look, letters)
        self._scrolled.grid(row=0, column=0, sticky="nsew")
        self.inside.rowconfigure(0, weight=1)
        self.body: ttk.Frame = self._scrolled.inside
        self.body.columnconfigure(0, weight=1)

    def open(self, focus: tk.Widget) -> None:
        """As high as its content, or the screen."""
        most_wide = int(self.winfo_screenwidth() * 0.9)
        width = min(int(self._scrolled.canvas.cget("width")), most_wide)
        self._scrolled.canvas.configure(width=width)
        self._scrolled.canvas.itemconfigure("all", width=width)
        # Sentences and drawings know their height once they know their width.
        for _ in range(3):
            self.update_idletasks()
        self._scrolled.canvas.configure(height=self.body.winfo_reqheight())
        super().open(focus)
