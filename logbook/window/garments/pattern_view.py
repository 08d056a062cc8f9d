"""The written pattern of a garment: to read, copy, save and print; and what was published of it."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import NamedTuple

from logbook.window.flow import Flow
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.text_area import TextArea


class PatternActions(NamedTuple):
    """What can be done with the pattern: its buttons, each with its words."""

    copy: Callable[[], object]
    save: Callable[[], object]
    print: Callable[[], object]


class PatternView(ttk.Frame):
    """The text can be selected and walked through with keys, not typed into."""

    def __init__(self, parent: tk.Misc, look: Look, actions: PatternActions) -> None:
        super().__init__(parent, style="Card.TFrame")
        self.look = look
        self.columnconfigure(0, weight=1)
        self.rowconfigure(2, weight=1)
        bar = Flow(self, look)
        look.grid(bar, row=0, column=0, sticky="ew", pady=(0, 1))
        self.buttons: dict[str, ttk.Button] = {}
        words = {"Copy the pattern": actions.copy, "Save it…": actions.save, "Print it": actions.print}
        for text, action in words.items():
            button = self.buttons[text] = ttk.Button(bar, text=text, command=action)
            bar.add(button)
        self.says = Sentence(self, style="Warning.TLabel")
        look.grid(self.says, row=1, column=0, sticky="ew", pady=(0, 1))
        shown = TextArea(self, look, width=20, height=4, font="TkFixedFont", takefocus=True)  # its columns are made of spaces
        shown.grid(row=2, column=0, sticky="nsew")
        self.area = shown.area
        self.area.bind("<Control-Key-a>", lambda _: self._all())
        self._text = ""
        self.area.configure(state="disabled")

    @property
    def text(self) -> str:
        """What is shown."""
        return self._text

    def show(self, text: str, says: str = "") -> None:
        """Shows a pattern, and what is to be said of it; without one the buttons are off."""
        if text != self._text:
            place = self.area.yview()[0]
            self._text = text
            self.area.configure(state="normal")
            self.area.replace("1.0", "end", text)
            self.area.configure(state="disabled")
            self.area.yview_moveto(place)
        self.says.configure(text=says)
        if says:
            self.says.grid()
        else:
            self.says.grid_remove()
        for button in self.buttons.values():
            button.state(["!disabled" if text else "disabled"])

    def _all(self) -> str:
        self.area.tag_add("sel", "1.0", "end-1c")
        return "break"
