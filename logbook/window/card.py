"""A bordered surface on the page, for what belongs together."""

import tkinter as tk
from tkinter import ttk

from logbook.window.look import Look


class Card(ttk.Frame):
    """Put things straight into it; its space inside the border follows the text size. One that ``fills`` the place it gets asks
    for none, whatever is in it."""

    def __init__(self, parent: tk.Misc, look: Look, *, fills: bool = False) -> None:
        super().__init__(parent, style="Outlined.Card.TFrame")
        look.when_changed(self, lambda: self.configure(padding=(look.pixels(4), look.pixels(3))))
        if fills:
            self.configure(width=1, height=1)
            self.grid_propagate(False)
            self.columnconfigure(0, weight=1)
