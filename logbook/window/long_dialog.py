"""A dialog whose content may be longer than the screen: it scrolls, its buttons stay."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.dialog import ABOVE_AND_BELOW, Dialog
from logbook.window.keyboard import take_keyboard
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled


class LongDialog(Dialog):
    """Fill ``body`` instead of ``inside``. ``letters`` is how wide it wants to be."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        title: str,
        on_escape: Callable[[], object],
        letters: int,
        stays: Callable[[], bool] = lambda: False,
    ) -> None:
        super().__init__(parent, look, title, on_escape, stays)
        self._scrolled = Scrolled(self.inside, look, letters)
        self._scrolled.grid(row=0, column=0, sticky="nsew")
        self.inside.rowconfigure(0, weight=1)
        self.body: ttk.Frame = self._scrolled.inside
        self.body.columnconfigure(0, weight=1)

    def open(self, focus: tk.Misc) -> None:
        """As high as its content, or the screen."""
        canvas = self._scrolled.canvas
        canvas.configure(width=min(int(canvas.cget("width")), int(self.winfo_screenwidth() * 0.9)))
        super().open(self)
        # Sentences and drawings know their height only once they are shown at their width. Growing, the window stays under
        # the pointer, which may be all that gives it the keyboard.
        self.update_idletasks()
        most = self.winfo_screenheight() - ABOVE_AND_BELOW
        height = min(self.wanted_height, most)
        y = max(0, min(self.winfo_y() - (height - self.winfo_height()) // 3, most - height))
        self.geometry(f"{self.winfo_width()}x{height}+{self.winfo_x()}+{y}")
        self.update_idletasks()  # what takes the keyboard is brought into view, and would be too early in the window as it was
        take_keyboard(focus)

    @property
    def wanted_height(self) -> int:
        """With all of ``body`` in sight."""
        return self.winfo_height() - self._scrolled.canvas.winfo_height() + self.body.winfo_reqheight()
