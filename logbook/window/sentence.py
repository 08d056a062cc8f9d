"""A label that wraps to the width it gets instead of asking for more."""

import tkinter as tk
from tkinter import ttk

from logbook.window.styles import styled


class Sentence(ttk.Label):
    """To be gridded with ``sticky="ew"``; ``style`` is a kind of label such as ``"Muted.TLabel"``."""

    def __init__(self, parent: tk.Misc, text: str = "", style: str = "TLabel") -> None:
        super().__init__(parent, text=text, style=styled(parent, style), width=1, justify="left")
        self.bind("<Configure>", lambda event: self.configure(wraplength=event.width))
