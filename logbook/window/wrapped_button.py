"""A button whose words go on in another line where there is too little room, as a label's do."""

import tkinter as tk
from tkinter import ttk
from typing import Any


class WrappedButton(ttk.Button):
    """Has a row of its parent to itself. ttk wraps the words of labels only, so the lines are broken here."""

    def __init__(self, parent: tk.Misc, text: str = "", **options: Any) -> None:
        super().__init__(parent, text=text, **options)
        self._words = text
        self._room = 0
        parent.bind("<Configure>", lambda event: self._wrap(event.width), add="+")

    def say(self, text: str, underline: int = -1) -> None:
        """Other words, and the place of the letter that is underlined."""
        self._words = text
        self.configure(text=text, underline=underline)
        if self._room:
            self._wrap(self._room)

    def _wrap(self, room: int) -> None:
        self._room = room
        shown = str(self.cget("text"))
        if shown == self._words and self.winfo_reqwidth() <= room:
            return
        edges = self.winfo_reqwidth() - max(map(self._measure, shown.split("\n")))
        wrapped = broken(self._words, [self._measure(word) for word in self._words.split(" ")], self._measure(" "), room - edges)
        if wrapped != shown:
            self.configure(text=wrapped)

    def _measure(self, text: str) -> int:
        """Pixels."""
        font = ttk.Style(self).lookup(str(self.cget("style")), "font")
        return int(self.tk.call("font", "measure", font, "-displayof", self, text))


def broken(text: str, widths: list[int], space: int, room: int) -> str:
    """``text`` with a line's end for a space wherever its words, ``widths`` wide, would reach beyond ``room``; all in pixels.

    >>> broken("one two three", [30, 30, 50], 5, 70)
    'one two\\nthree'
    """
    lines: list[str] = []
    taken = 0
    for word, width in zip(text.split(" "), widths, strict=True):
        if lines and taken + space + width <= room:
            lines[-1] += f" {word}"
            taken += space + width
        else:
            lines.append(word)
            taken = width
    return "\n".join(lines)
