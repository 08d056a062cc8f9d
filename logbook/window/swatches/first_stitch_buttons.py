"""The stitches the rows may begin with, a button each; there only while that is asked. Of two usual ways, one is chosen."""

import tkinter as tk
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from tkinter import ttk

from logbook.pages.swatches.first_stitches import FirstStitchChoice
from logbook.window.look import Look
from logbook.window.styles import styled

SHORT = 5


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
        short = all(len(choice.label) <= SHORT for choice in choices)
        for place, choice in enumerate(choices):
            words = f"✓ {choice.label}" if choice.chosen else choice.label
            button = ttk.Button(self, text=words, width=SHORT if short else 0, command=partial(self._on_choose, choice.texts))
            row, column = (0, place) if short else (place, 0)
            self.columnconfigure(column, weight=int(short))  # narrower where there is no room
            self.look.grid(button, row=row, column=column, padx=(0, 1), pady=(0, 0 if short else 1), sticky="ew")
        if choices:
            self.grid()
        else:
            self.grid_remove()
