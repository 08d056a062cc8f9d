"""A box to tick."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.styles import styled


class TickBox(ttk.Checkbutton):
    """``command`` follows every tick the user sets or takes away. The text wraps where ``parent`` is too narrow for it."""

    def __init__(self, parent: tk.Misc, look: Look, text: str, variable: tk.BooleanVar, command: Callable[[], object]) -> None:
        look.need_check_signs()
        super().__init__(parent, text=text, variable=variable, command=command, style=styled(parent, "TCheckbutton"))
        self._look, self._words = look, text
        parent.bind("<Configure>", lambda event: self._wrap(event.width), add="+")

    def _wrap(self, width: int) -> None:
        """ttk wraps the text of labels alone."""
        if not self.winfo_exists():
            return
        measure, shown = self._look.base.measure, str(self.cget("text"))
        beside = self.winfo_reqwidth() - max(map(measure, shown.split("\n"))) + (self.winfo_x() if self.winfo_manager() else 0)
        lines = [""]
        for word in self._words.split():
            longer = f"{lines[-1]} {word}".strip()
            lines[-1:] = [longer] if not lines[-1] or measure(longer) <= width - beside else [lines[-1], word]
        if lines != shown.split("\n"):
            self.configure(text="\n".join(lines))
