"""Short fields side by side that share the line for messages under them."""

import tkinter as tk
from collections.abc import Sequence
from tkinter import ttk

from logbook.window.field import LabelledField
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.styles import styled


class FieldRow(ttk.Frame):
    """Make the fields in it with their labels above, then ``arrange`` them; where room is short they stand in several lines."""

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look = look
        self.fields: tuple[LabelledField, ...] = ()
        self.message = Sentence(self, " ")
        self._in_a_line, self._speaking = 1, 0

    def arrange(self, fields: Sequence[LabelledField]) -> None:
        self.fields, self._speaking = tuple(fields), len(fields) - 1
        for field in self.fields:
            field.keep_no_line()
        self.look.when_changed(self, self._lay_out)
        self.bind("<Configure>", lambda _: self._fit())

    def show_messages(self) -> None:
        """Says what the first of its fields that has something to say was given to say."""
        self._speaking = next((at for at, field in enumerate(self.fields) if field.said[0]), len(self.fields) - 1)
        text, style = self.fields[self._speaking].said
        self.message.configure(text=text or " ", style=style if text else styled(self, "TLabel"))
        self._place_message()

    def _place_message(self) -> None:
        """Under the line of the field that it is about."""
        row = 2 * (self._speaking // self._in_a_line) + 1
        self.message.grid(row=row, column=0, columnspan=len(self.fields) + 1, sticky="ew")

    def _fit(self) -> None:
        if self._fitting() != self._in_a_line:
            self._lay_out()

    def _fitting(self) -> int:
        """How many fields fit side by side into the width there is."""
        gap = self.look.pixels(3)
        for count in range(len(self.fields), 1, -1):
            lines = [self.fields[start : start + count] for start in range(0, len(self.fields), count)]
            widths = [max(line[at].winfo_reqwidth() for line in lines if at < len(line)) for at in range(count)]
            if sum(widths) + gap * (count - 1) <= self.winfo_width():
                return count
        return 1

    def _lay_out(self) -> None:
        self._in_a_line = count = self._fitting()
        alone = count == 1
        for at, field in enumerate(self.fields):
            gap = 0 if at % count == count - 1 else self.look.pixels(3)
            field.grid(row=2 * (at // count), column=at % count, sticky="ew" if alone else "w", padx=(0, gap))
        self._place_message()
        # A field that is alone in its line gives way when even that is too narrow for it.
        self.columnconfigure(0, weight=int(alone))
        self.columnconfigure(len(self.fields), weight=int(not alone))
