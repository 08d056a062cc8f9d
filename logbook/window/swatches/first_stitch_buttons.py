"""The stitches the rows may begin with, a button each; there only while that is asked."""

import tkinter as tk
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from tkinter import ttk

from logbook.pages.swatches.first_stitches import FirstStitchChoice
from logbook.window.look import Look
from logbook.window.styles import styled


class FirstStitchButtons(ttk.Frame):
    """``on_choose`` gets the texts that the chosen stitch types into the form."""

    def __init__(self, parent: tk.Misc, look: Look, on_choose: Callable[[Mapping[str, str]], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look, self._on_choose = look, on_choose
        self._shown: Sequence[FirstStitchChoice] = ()

    def show(self, choices: Sequence[FirstStitchChoice]) -> None:
        """These, or none."""
        if list(choices) == list(self._shown):
            return
        self._shown = tuple(choices)
        for button in self.winfo_children():
            button.destroy()
        for column, choice in enumerate(choices):
            button = ttk.Button(self, text=choice.label, width=5, command=partial(self._on_choose, choice.texts))
            self.look.grid(button, row=0, column=column, padx=(0, 1))
        if choices:
            self.grid()
        else:
            self.grid_remove()
