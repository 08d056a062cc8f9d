"""The stitches the rows may begin with, a button each; there only while that is asked. Of two usual ways, one is chosen."""

import tkinter as tk
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from tkinter import ttk

from logbook.pages.swatches.first_stitches import FirstStitchChoice
from logbook.window.look import Look
from logbook.window.styles import styled
from logbook.window.wrapped_button import WrappedButton

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
            chosen = partial(self._on_choose, choice.texts)
            button = ttk.Button(self, text=words, width=SHORT, command=chosen) if short else self._in_lines(words, chosen)
            row, column = (0, place) if short else (place, 0)
            self.look.grid(button, row=row, column=column, padx=(0, 1), pady=(0, 0 if short else 1), sticky="ew")
        for column in range(max(self.grid_size()[0], len(choices))):
            self.columnconfigure(column, weight=int(short or column == 0))  # narrower where there is no room
        if choices:
            self.grid(sticky="w" if short else "ew")
        else:
            self.grid_remove()

    def _in_lines(self, words: str, chosen: Callable[[], object]) -> ttk.Frame:
        """A button in a row of its own, whose words take more lines where there is no room."""
        row = ttk.Frame(self, style=str(self.cget("style")))
        row.columnconfigure(0, weight=1)
        WrappedButton(row, words, command=chosen).grid(row=0, column=0, sticky="ew")
        return row
