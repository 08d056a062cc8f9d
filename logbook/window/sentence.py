"""A label that wraps to the width it gets instead of asking for more."""

import tkinter as tk
from tkinter import ttk

from logbook.window.styles import styled

NARROWEST = 100
"""Pixels; a long text wrapped to a label that has no width yet would be higher than a screen can hold."""


class Sentence(ttk.Label):
    """To be gridded with ``sticky="ew"``; ``style`` is a kind of label such as ``"Muted.TLabel"``."""

    def __init__(self, parent: tk.Misc, text: str = "", style: str = "TLabel") -> None:
        super().__init__(parent, style=styled(parent, style), justify="left")
        edges = self.winfo_reqwidth()  # what the label keeps free beside its words; they would be cut off there
        self.configure(text=text, width=1)
        self.bind("<Configure>", lambda event: self.configure(wraplength=max(event.width - edges, NARROWEST)))
