"""A section that can be folded away, with a header that is a button."""

import tkinter as tk
from collections.abc import Callable
from tkinter import font, ttk

from logbook.window.ellipsis import cut
from logbook.window.flow import Flow
from logbook.window.keys import split_mnemonic
from logbook.window.styles import styled
from logbook.window.wrapped_button import WrappedButton

LEAST = 6
"""Letters beside the title that are worth saying."""


class Folding(ttk.Frame):
    """Fill ``inside``. ``on_fold`` is told True when the user opens the section, False when they close it.

    Its header may stand in a ``row`` with others.
    """

    def __init__(
        self, parent: tk.Misc, title: str, is_open: bool, on_fold: Callable[[bool], object], row: Flow | None = None
    ) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self._title, self._underline = split_mnemonic(title)
        self._on_fold = on_fold
        self.header = WrappedButton(row or self, style=styled(parent, "Fold.TButton"), command=self._toggle)
        if row is None:
            self.header.grid(row=0, column=0, sticky="w")
        else:
            row.add(self.header)
            self.configure(height=1)
        self.inside = ttk.Frame(self, style=styled(parent, "TFrame"))
        self.columnconfigure(1, weight=1)
        self._holds = ""
        self._beside: ttk.Label | None = None
        self.show(is_open)

    def show(self, is_open: bool) -> None:
        self.is_open = is_open
        sign = "▾ " if is_open else "▸ "
        underline = self._underline + len(sign) if self._underline >= 0 else -1
        self.header.say(sign + self._title, underline)
        if is_open:
            self.inside.grid(row=1, column=0, columnspan=2, sticky="ew")
        else:
            self.inside.grid_remove()
        self._show_beside()

    def say_beside(self, text: str) -> None:
        """What is inside, in a few words beside the title while it is folded away."""
        if text != self._holds:
            self._holds = text
            self._show_beside()

    def _show_beside(self) -> None:
        """As much as fits beside the title."""
        if self._beside is None:
            if not self._holds:
                return
            self._beside = ttk.Label(self, style=styled(self, "Muted.TLabel"), width=1)
            self._beside.grid(row=0, column=1, sticky="ew")
            self.bind("<Configure>", lambda _: self._show_beside(), add="+")
        measure = font.nametofont("TkDefaultFont", self).measure
        room = self.winfo_width() - self.header.winfo_reqwidth() - 2 * measure("0")
        self._beside.configure(text="" if self.is_open or room < LEAST * measure("0") else cut(self._holds, room, measure))

    def _toggle(self) -> None:
        self.show(not self.is_open)
        self._on_fold(self.is_open)
        if self.is_open and self.header.master is not self:  # what Tab comes to next would be the header beside it
            self.update_idletasks()
            first = self.inside.tk_focusNext()
            if str(first).startswith(f"{self.inside}.") and first is not None:
                first.focus_set()
