"""Buttons side by side where there is room, else one beneath another."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.styles import styled


class ButtonBar(ttk.Frame):
    """They stand in the order in which they are added."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self._look = look
        self._buttons: list[ttk.Button] = []
        self.bind("<Configure>", lambda _: self._fit())

    def add(self, text: str, action: Callable[[], object], underline: int = -1) -> ttk.Button:
        """Another button; ``underline``: the place of the letter of its Alt key."""
        button = ttk.Button(self, text=text, underline=underline, command=action)
        self._buttons.append(button)
        return button

    def _fit(self) -> None:
        gap = self._look.pixels(1.5)
        beside = sum(button.winfo_reqwidth() + gap for button in self._buttons) <= self.winfo_width()
        for place, button in enumerate(self._buttons):
            button.grid(row=0 if beside else place, column=place if beside else 0, sticky="w", padx=(0, gap), pady=(0, 2))
