"""The unit that a number typed without one is taken in, in grey at the end of its field."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.window.in_field import InField
from logbook.window.look import Look


class TakenUnit(InField):
    """Stands in ``entry`` while ``unit`` has one for what is typed, and there is room behind that."""

    def __init__(self, entry: ttk.Entry, variable: tk.StringVar, look: Look, unit: Callable[[str], str]) -> None:
        super().__init__(entry, variable, look)
        self._unit = unit

    def _stand(self, typed: str, edge: int, room: int) -> bool:
        unit, measure = self._unit(typed), self._look.base.measure
        if not unit or measure(f"{typed} {unit}") > room or self._entry.instate(["disabled"]):
            return False
        self.configure(text=unit)
        self.place(relx=1, x=-edge, rely=0.5, anchor="e")
        return True
