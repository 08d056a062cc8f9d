"""Short fields side by side that share the line for messages under them."""

import tkinter as tk
from collections.abc import Sequence
from tkinter import ttk

from logbook.window.field import STYLES, LabelledField
from logbook.window.look import Look
from logbook.window.message_line import MessageLine
from logbook.window.sentence import Sentence
from logbook.window.styles import styled


class FieldRow(ttk.Frame):
    """Make the fields in it, then ``arrange`` them; where room is short they stand in several lines. What the first of them that
    has something to say is given to say stands under its line.
    """

    def __init__(self, parent: tk.Misc, look: Look) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look = look
        self.fields: tuple[LabelledField, ...] = ()
        self._line = MessageLine(self, self._place_message)
        self._labels: dict[LabelledField, int] = {}
        self._in_a_line, self._speaking = 1, 0

    def arrange(self, fields: Sequence[LabelledField]) -> None:
        self.fields, self._speaking = tuple(fields), len(fields) - 1
        self._labels = {field: field.label_width for field in self.fields}
        for field in self.fields:
            field.keep_no_line()
            field.on_said = self._say
        self.look.when_changed(self, self._lay_out)
        self.bind("<Configure>", lambda _: self._fit())

    @property
    def message(self) -> Sentence | None:
        """The line under them, if they ever said something."""
        return self._line.sentence

    def _say(self) -> None:
        speaking = next((at for at, field in enumerate(self.fields) if field.said[0]), None)
        if speaking is None:
            self._line.say("", styled(self, "TLabel"), at_once=False)
            return
        if speaking != self._speaking:
            self._speaking = speaking
            self._line.place_again()
        text, style = self.fields[speaking].said
        self._line.say(text, style, at_once=style.endswith(STYLES["error"]))

    def _place_message(self, sentence: Sentence) -> None:
        """Under the line of the field that it is about."""
        row = 2 * (self._speaking // self._in_a_line) + 1
        sentence.grid(row=row, column=0, columnspan=len(self.fields) + 1, sticky="ew")

    def _fit(self) -> None:
        if self._fitting() != self._in_a_line:
            self._lay_out()

    def _fitting(self) -> int:
        """How many fields fit side by side into the width there is."""
        gap = self.look.pixels(3)
        for count in range(len(self.fields), 1, -1):
            lines = [self.fields[start : start + count] for start in range(0, len(self.fields), count)]
            widths = [max(self._needs(line[at]) for line in lines if at < len(line)) for at in range(count)]
            if sum(widths) + gap * (count - 1) <= self.winfo_width():
                return count
        return 1

    def _needs(self, field: LabelledField) -> int:
        return field.width_in_line(self._labels[field]) if self._labels[field] else field.winfo_reqwidth()

    def _lay_out(self) -> None:
        self._in_a_line = count = self._fitting()
        alone = count == 1
        for field, letters in self._labels.items():  # one under the other their labels are as wide as the first
            field.stand_in_row(bool(letters) and not alone, self._labels[self.fields[0]] if alone else letters)
        for at, field in enumerate(self.fields):
            gap = 0 if at % count == count - 1 else self.look.pixels(3)
            field.grid(row=2 * (at // count), column=at % count, sticky="ew" if alone else "w", padx=(0, gap))
        self._line.place_again()
        # A field that is alone in its line gives way when even that is too narrow for it.
        self.columnconfigure(0, weight=int(alone))
        self.columnconfigure(len(self.fields), weight=int(not alone))
