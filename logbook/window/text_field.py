"""A field of several lines."""

import tkinter as tk

from logbook.window.field import LabelledField
from logbook.window.look import Look
from logbook.window.text_area import TextArea


class TextField(LabelledField):
    """Its ``variable`` follows the typing and may be set; Tab moves on to the next field instead of writing a tab."""

    several_lines = True

    def __init__(self, parent: tk.Misc, look: Look, text: str, *, lines: int = 3, label_width: int = 0) -> None:
        super().__init__(parent, look, text, label_width)
        field = TextArea(self, look, 0.8, height=lines, width=20, undo=True)
        self.area = field.area
        self.area.bind("<<Modified>>", self._follow_typing)
        self.variable.trace_add("write", self._follow_variable)
        self.arrange(field, grow=True, focus=self.area)

    def _content(self) -> str:
        return self.area.get("1.0", "end-1c")

    def _follow_typing(self, _: object) -> None:
        if self.area.edit_modified():
            self.area.edit_modified(False)
            if self._content() != self.variable.get():
                self.variable.set(self._content())

    def _follow_variable(self, *_: str) -> None:
        if self._content() != self.variable.get():
            self.area.replace("1.0", "end-1c", self.variable.get())
            self.area.edit_reset()
