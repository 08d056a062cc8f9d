"""A bordered surface on the page, for what belongs together."""

import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look


class Card(ttk.Frame):
    """Put things straight into it; its space inside the border follows the text size."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, style="Outlined.Card.TFrame")
        look.when_changed(self, lambda: self.configure(padding=look.pixels(3)))
