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
        self._in_a_line = 0

    def arrange(self, fields: Sequence[LabelledField]) -> None:
        self.fields = tuple(fields)
        for field in self.fields:
            field.keep_no_line()
        self.look.when_changed(self, self._lay_out)
        self.bind("<Configure>", lambda _: self._fit())

    def show_messages(self) -> None:
        """Says what the first of its fields that has something to say was given to say."""
        text, style = next((field.said for field in self.fields if field.said[0]), (" ", styled(self, "TLabel")))
        self.message.configure(text=text, style=style)

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
            field.grid(row=at // count, column=at % count, sticky="ew" if alone else "w", padx=(0, gap))
        self.message.grid(row=len(self.fields), column=0, columnspan=len(self.fields) + 1, sticky="ew")
        # A field that is alone in its line gives way when even that is too narrow for it.
        self.columnconfigure(0, weight=int(alone))
        self.columnconfigure(len(self.fields), weight=int(not alone))
