"""A label that wraps to the width it gets instead of asking for more."""

import re
import tkinter as tk
from tkinter import ttk
from typing import Any

from logbook.window.styles import styled

NARROWEST = 100
"""Pixels; a long text wrapped to a label that has no width yet would be higher than a screen can hold."""
UNBROKEN = "\N{NO-BREAK SPACE}"
_BEFORE_UNIT = re.compile(r"(?<=\d) (?=(?:mm|cm|in|m|g)\b|%)|(?<=±) |(?<=\d) (?=\d/\d)")


class Sentence(ttk.Label):
    """To be gridded with ``sticky="ew"``; ``style`` is a kind of label such as ``"Muted.TLabel"``.

    A number stays in a line with its unit, and 18 with its 1/4: the space between them is shown as one that does not break.
    """

    def __init__(self, parent: tk.Misc, text: str = "", style: str = "TLabel") -> None:
        super().__init__(parent, style=styled(parent, style), justify="left")
        edges = self.winfo_reqwidth()  # what the label keeps free beside its words; they would be cut off there
        self.configure(text=text, width=1)
        self.bind("<Configure>", lambda event: self.configure(wraplength=max(event.width - edges, NARROWEST)))

    def configure(self, cnf: Any = None, **options: Any) -> Any:
        if "text" in options:
            options["text"] = _BEFORE_UNIT.sub(UNBROKEN, str(options["text"]))
        return super().configure(cnf, **options)

    def cget(self, key: str) -> Any:
        value = super().cget(key)
        return value.replace(UNBROKEN, " ") if key == "text" else value

    __getitem__ = cget
