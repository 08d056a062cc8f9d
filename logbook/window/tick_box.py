"""A box to tick."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.styles import styled


class TickBox(ttk.Checkbutton):
    """``command`` follows every tick the user sets or takes away."""

    def __init__(
        self, parent: tk.Misc, look: Look, text: str, variable: tk.BooleanVar, command: Callable[[], object]
    ) -> None:
        look.need_check_signs()
        super().__init__(parent, text=text, variable=variable, command=command, style=styled(parent, "TCheckbutton"))
