"""What stands in an empty field, in grey: how a text is written, or what holds where none is."""

import tkinter as tk
from tkinter import ttk

from logbook.window.ellipsis import cut
from logbook.window.in_field import InField
from logbook.window.look import Look


class Example(InField):
    """Stands in ``entry`` while nothing is typed."""

    def __init__(self, entry: ttk.Entry, variable: tk.StringVar, look: Look, text: str) -> None:
        super().__init__(entry, variable, look)
        self._text = text

    def say(self, text: str) -> None:
        """Another text."""
        self._text = text
        self.follow()

    def _stand(self, typed: str, edge: int, room: int) -> bool:
        if typed or not self._text:
            return False
        measure = self._look.base.measure
        text = self._text if measure(self._text) <= room else self._text.removeprefix("e.g. ")
        self.configure(text=cut(text, room, measure))
        self.place(x=edge, rely=0.5, anchor="w")
        return True
