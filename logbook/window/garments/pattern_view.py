"""The written pattern of a garment: to read, copy, save and print; and what was published of it."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import NamedTuple

from logbook.window.flow import Flow
from logbook.window.look import Look
from logbook.window.text_area import TextArea


class PatternActions(NamedTuple):
    """What can be done with the pattern: its buttons, each with its words."""

    copy: Callable[[], object]
    save: Callable[[], object]
    print: Callable[[], object]


_SAYS, _PATTERN = "says", "pattern"


class PatternView(ttk.Frame):
    """The text can be selected and walked through with keys, not typed into. What is to be said of it stands above it and scrolls
    with it, so that in large text both can be reached.
    """

    def __init__(self, parent: tk.Misc, look: Look, actions: PatternActions) -> None:
        super().__init__(parent, style="Card.TFrame")
        self.look = look
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        bar = Flow(self, look)
        look.grid(bar, row=0, column=0, sticky="ew", pady=(0, 1))
        self.buttons: dict[str, ttk.Button] = {}
        words = {"Copy the pattern": actions.copy, "Save it…": actions.save, "Print it": actions.print}
        for text, action in words.items():
            button = self.buttons[text] = ttk.Button(bar, text=text, command=action)
            bar.add(button)
        shown = TextArea(self, look, width=20, height=4, font="TkFixedFont", takefocus=True)  # its columns are made of spaces
        shown.grid(row=1, column=0, sticky="nsew")
        self.area = shown.area
        look.when_changed(self.area, self._follow_look)
        self.area.bind("<Control-Key-a>", lambda _: self._all())
        self._text, self.says = "", ""
        self.area.configure(state="disabled")

    @property
    def text(self) -> str:
        """What is shown."""
        return self._text

    def show(self, text: str, says: str = "") -> None:
        """Shows a pattern, and what is to be said of it; without one the buttons are off."""
        if (text, says) != (self._text, self.says):
            place = self.area.yview()[0]
            self._text, self.says = text, says
            self.area.configure(state="normal")
            self.area.delete("1.0", "end")
            if says:
                self.area.insert("end", f"{says}\n\n" if text else says, _SAYS)
            self.area.insert("end", text, _PATTERN)
            self.area.configure(state="disabled")
            self.area.yview_moveto(place)
        for button in self.buttons.values():
            button.state(["!disabled" if text else "disabled"])

    def _all(self) -> str:
        """Selects the pattern, without what is said of it."""
        if where := self.area.tag_ranges(_PATTERN):
            self.area.tag_add("sel", *where)
        return "break"

    def _follow_look(self) -> None:
        self.area.tag_configure(_SAYS, foreground=self.look.palette.warning, font="TkTextFont")
