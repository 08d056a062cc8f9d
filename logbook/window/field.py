"""A labelled field to type in, with its unit; a message takes a line under it when there is one."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import Literal

from logbook.window.example import Example
from logbook.window.keyboard import focused
from logbook.window.keys import MnemonicLabel, split_mnemonic
from logbook.window.look import Look
from logbook.window.message_line import MessageLine
from logbook.window.sentence import Sentence
from logbook.window.styles import styled
from logbook.window.taken_unit import TakenUnit

Kind = Literal["error", "warning", "good", "hint"]
MARKS: dict[Kind, str] = {"error": "✕ ", "warning": "! ", "good": "✓ ", "hint": ""}
STYLES: dict[Kind, str] = {
    "error": "Error.TLabel",
    "warning": "Warning.TLabel",
    "good": "Good.TLabel",
    "hint": "Muted.TLabel",
}
NARROW = 16
"""Letters that a growing field wants beside its label at least; with less it moves above."""


class LabelledField(ttk.Frame):
    """What all fields share; a field of a kind makes its widget and calls ``arrange``; ``input`` takes the focus.

    ``text`` may mark the letter to underline, ``"&Width"``. ``variable`` holds what is typed, as it is typed: no
    keystroke is ever refused. With ``label_width`` (in letters) the label stands at the left while there is room for the
    widest of the fields that stand beneath one another, without it above. Unit and message are made when there is something
    to say: a form has many fields, and most of them never say anything. ``said`` is the message and its style, for whoever
    shows it elsewhere.
    """

    line_below = True
    """Whether its message stands under the field."""
    several_lines = False
    """Whether the widget is higher than its label, which then stands at its first line."""

    def __init__(self, parent: tk.Misc, look: Look, text: str, label_width: int = 0, unit: str = "") -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look = look
        self.variable = tk.StringVar(self)
        self.label_width = label_width
        words, underline = split_mnemonic(text)
        self.label = MnemonicLabel(self, text=words, underline=underline, style=styled(parent, "TLabel"))
        self.unit: ttk.Label | None = ttk.Label(self, text=unit, style=styled(parent, "Muted.TLabel")) if unit else None
        self.said = ("", "TLabel")
        self.on_said: Callable[[], object] = lambda: None
        self.in_a_row = False
        self._line = MessageLine(self, self._place_message)
        self._message_waits = False
        self._example: Example | None = None
        self._taken_unit: TakenUnit | None = None
        self._stacked = label_width == 0

    def arrange(self, widget: ttk.Widget, grow: bool, focus: tk.Widget | None = None) -> None:
        """Lays out label, ``widget``, unit and message; ``grow`` lets the widget take all the width there is.

        ``focus`` is the part of the widget that takes the focus, if not the whole.
        """
        self._widget, self._grow = widget, grow
        self.input = focus or widget
        self.label.target = self.input
        self.look.when_changed(self, lambda: self._lay_out(self._stacked))
        self.bind("<Configure>", self._follow_width, add="+")

    def _follow_width(self, event: "tk.Event[tk.Misc]") -> None:
        self.label.configure(wraplength=event.width - self.look.pixels(2) - self.look.label_edges)
        if not self.label_width or self.in_a_row:
            return
        together = (field for field in self.master.winfo_children() if isinstance(field, LabelledField) and field.label_width)
        stacked = event.width < max(field.width_in_line() for field in together)
        if stacked != self._stacked:
            self._lay_out(stacked)

    def stand_in_row(self, in_a_row: bool, label_width: int) -> None:
        """Beside others, where the label of so many letters stays at its left, or alone in its line."""
        if (in_a_row, label_width) != (self.in_a_row, self.label_width):
            self.in_a_row, self.label_width = in_a_row, label_width
            self._lay_out(self._stacked and not in_a_row)

    def width_in_line(self, label_width: int = 0) -> int:
        """Pixels that it takes with the label, of so many letters or as many as it has, at its left, and nothing cut."""
        letter, gap = self.look.letter, self.look.pixels(2)
        letters = label_width or self.label_width
        after = gap + self.unit.winfo_reqwidth() if self.unit else 0
        if self._grow:
            return (letters + NARROW) * letter + after
        label = letters * letter + self.look.label_edges + gap
        return label + self._widget.winfo_reqwidth() + after

    def _lay_out(self, stacked: bool) -> None:
        self._stacked = stacked
        row, column = (1, 0) if stacked else (0, 1)
        gap = self.look.pixels(2)
        self.label.configure(width=0 if stacked else self.label_width)
        self.label.grid(
            row=0,
            column=0,
            columnspan=3 if stacked else 1,
            sticky="nw" if self.several_lines else "w",
            padx=(0, gap),
            pady=self.look.pixels(1 if self._grow and not stacked else 0.5),
        )
        self._widget.grid(row=row, column=column, sticky="ew" if self._grow else "w")
        if self.unit is not None:
            self.unit.grid(row=row, column=column + 1, sticky="w", padx=(gap, 0))
        self._line.place_again()
        # When room is short the entry gives way, when there is plenty the space after the unit takes it.
        for index in range(4):
            after_unit = 0 if self._grow else 10_000
            self.columnconfigure(index, weight={column: 1, column + 2: after_unit}.get(index, 0))

    def _place_message(self, sentence: Sentence) -> None:
        row, column = (2, 0) if self._stacked else (1, 1)
        sentence.grid(row=row, column=column, columnspan=3, sticky="ew")

    @property
    def message(self) -> Sentence | None:
        """The line under it, if it ever said something there."""
        return self._line.sentence

    def keep_no_line(self) -> None:
        """For a field whose messages are shown elsewhere."""
        self.line_below = False
        self._lay_out(self._stacked)

    @property
    def text(self) -> str:
        return self.variable.get()

    @text.setter
    def text(self, value: str) -> None:
        self.variable.set(value)

    def show_unit(self, text: str) -> None:
        """Says after the field what the text is measured in."""
        if self.unit is None:
            self.unit = ttk.Label(self, style=styled(self, "Muted.TLabel"))
            self._lay_out(self._stacked)
        self.unit.configure(text=text)

    def show_message(self, text: str | None, kind: Kind = "error", *, waits: bool = False) -> None:
        """Says ``text`` under the field, with a mark so that colour is not needed; None clears it. ``waits``: it takes room only
        when the keyboard leaves the field that is typed in.
        """
        said = (MARKS[kind] + text if text else "", styled(self, STYLES[kind]))
        if said == self.said and waits == self._message_waits:
            return
        self.said, self._message_waits = said, waits
        self._widget.state(["invalid" if text and kind == "error" else "!invalid"])
        self.on_said()
        if self.line_below:
            self._line.say(*said, at_once=self.is_urgent and not waits)

    @property
    def is_urgent(self) -> bool:
        """Whether what it says is to be seen at once: something is wrong, or it is said of what is being typed."""
        text, style = self.said
        return bool(text) and (not style.endswith(STYLES["hint"]) or focused(self) in (self.input, self._widget))

    def show_example(self, text: str) -> None:
        """Says in the empty field how it is written, or what holds without it."""
        if self._example is None:
            assert isinstance(self.input, ttk.Entry)
            self._example = Example(self.input, self.variable, self.look, text)
        else:
            self._example.say(text)

    def show_taken_unit(self, unit: Callable[[str], str]) -> None:
        """Says in the field, behind a number typed without a unit, which one it is taken in: ``unit`` of the text, or ""."""
        assert isinstance(self.input, ttk.Entry)
        self._taken_unit = TakenUnit(self.input, self.variable, self.look, unit)

    def say_taken_unit(self) -> None:
        """Anew: what it goes by is another now."""
        if self._taken_unit is not None:
            self._taken_unit.follow()


class Field(LabelledField):
    """One line of text, ``width`` letters wide."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        text: str,
        *,
        width: int = 12,
        label_width: int = 0,
        unit: str = "",
        grow: bool = False,
    ) -> None:
        super().__init__(parent, look, text, label_width, unit)
        self.arrange(ttk.Entry(self, textvariable=self.variable, width=width, font="TkTextFont"), grow)
