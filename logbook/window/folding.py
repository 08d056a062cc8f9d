"""A section that can be folded away, with a header that is a button."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.keys import split_mnemonic
from logbook.window.styles import styled
from logbook.window.wrapped_button import WrappedButton


class Folding(ttk.Frame):
    """Fill ``inside``. ``on_fold`` is told True when the user opens the section, False when they close it."""

    def __init__(self, parent: tk.Misc, title: str, is_open: bool, on_fold: Callable[[bool], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self._title, self._underline = split_mnemonic(title)
        self._on_fold = on_fold
        self.header = WrappedButton(self, style=styled(parent, "Fold.TButton"), command=self._toggle)
        self.header.grid(row=0, column=0, sticky="ew")
        self.inside = ttk.Frame(self, style=styled(parent, "TFrame"))
        self.columnconfigure(0, weight=1)
        self.show(is_open)

    def show(self, is_open: bool) -> None:
        self.is_open = is_open
        sign = "▾ " if is_open else "▸ "
        underline = self._underline + len(sign) if self._underline >= 0 else -1
        self.header.say(sign + self._title, underline)
        if is_open:
            self.inside.grid(row=1, column=0, sticky="ew")
        else:
            self.inside.grid_remove()

    def _toggle(self) -> None:
        self.show(not self.is_open)
        self._on_fold(self.is_open)
