"""Readings of one condition: a line each, as a person says them, with what it means beside it."""

import tkinter as tk
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from tkinter import ttk

from logbook.craft.words.numbers import in_mark
from logbook.pages.swatches.form_texts import ReadingLine
from logbook.window.example import Example
from logbook.window.field import MARKS
from logbook.window.keyboard import focused
from logbook.window.keys import MnemonicLabel, split_mnemonic
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.styles import styled

LETTERS = 16
SAID = 5
"""Letters of what a reading comes to, at least."""
ROWS_AT_LEAST = 2
EXAMPLES = ("16 sts = 10 cm", "22 rows = 15 cm", "4 repeats = 15.1 cm")
"""In the first empty lines."""


@dataclass(slots=True)
class ReadingRow:
    """An entry for one reading, the example in it while it is empty, and the label that says what it comes to."""

    variable: tk.StringVar
    entry: ttk.Entry
    example: Example
    says: ttk.Label


class ReadingsView(ttk.Frame):
    """There is always an empty line to type the next reading in; Return goes to it. ``on_change`` gets all lines as one text.

    ``hint`` stands under the list until something is read in it.
    """

    def __init__(self, parent: tk.Misc, look: Look, title: str, hint: str, on_change: Callable[[str], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look, self._hint, self._on_change = look, hint, on_change
        self.rows: list[ReadingRow] = []
        self._lines: Sequence[ReadingLine] = ()
        self._together = self._error = ""
        self._quiet = False
        self.columnconfigure(0, weight=1)
        words, underline = split_mnemonic(title)
        self.label = MnemonicLabel(self, text=words, underline=underline, style=styled(parent, "TLabel"))
        look.grid(self.label, row=0, column=0, sticky="w", pady=(0, 0.5))
        self._over = ttk.Label(self, style=styled(parent, "Muted.TLabel"))
        self._over.grid(row=0, column=0, columnspan=2, sticky="e")
        self._foot = Sentence(self, " ", "Muted.TLabel")
        self._foot.grid(row=1000, column=0, columnspan=2, sticky="ew")
        self.bind("<Configure>", self._follow_width, add="+")
        look.when_changed(self, self._lay_out)
        self.text = ""

    @property
    def text(self) -> str:
        return "\n".join(row.variable.get() for row in self.rows).rstrip("\n")

    @text.setter
    def text(self, value: str) -> None:
        self._quiet = True
        lines = value.split("\n") if value else []
        self._have_rows(max(ROWS_AT_LEAST, len(lines) + 1))
        for row, line in zip(self.rows, [*lines, *[""] * len(self.rows)], strict=False):
            row.variable.set(line)
        self._quiet = False

    def say(self, lines: Sequence[ReadingLine], over: str, together: str, error: str = "") -> None:
        """What the lines mean one by one, as so many ``over`` 10 cm or 4 in, and together, or what the list as a whole lacks."""
        self._over.configure(text=f"in {over}")
        self._lines, self._together, self._error = lines, together, error
        self._show()

    def _show(self) -> None:
        """A line that can't be read is at fault only once it has been left."""
        here = focused(self) if self.winfo_ismapped() else None
        fault = self._error
        for place, row in enumerate(self.rows):
            line = self._lines[place] if place < len(self._lines) else ReadingLine()
            wrong = bool(line.error) and row.entry is not here
            fault = fault or (line.error if wrong else "")
            says, style = (MARKS["error"].strip(), "Error.TLabel") if wrong else (line.over, "Muted.TLabel")
            row.says.configure(text=says, style=styled(self, style))
            row.entry.state(["invalid" if wrong else "!invalid"])
            self._show_example(place)
            self._place(place)
        said, style = (MARKS["error"] + fault, "Error.TLabel") if fault else (self._together or self._hint, "Muted.TLabel")
        self._foot.configure(text=said or " ", style=styled(self, style))

    def _show_example(self, place: int) -> None:
        """In an empty line, how a reading is written."""
        row = self.rows[place]
        row.example.say(f"e.g. {in_mark(EXAMPLES[place % len(EXAMPLES)])}")

    def _have_rows(self, count: int) -> None:
        while len(self.rows) < count:
            self._add_row()
        for row in self.rows[count:]:
            for widget in (row.entry, row.says):
                widget.destroy()
        del self.rows[count:]

    def _add_row(self) -> None:
        variable = tk.StringVar(self)
        entry = ttk.Entry(self, textvariable=variable, width=LETTERS, font="TkTextFont")
        muted = styled(self, "Muted.TLabel")
        says = ttk.Label(self, style=muted, width=-SAID, anchor="e")
        row = ReadingRow(variable, entry, Example(entry, variable, self.look, ""), says)
        self.rows.append(row)
        if len(self.rows) == 1:
            self.label.target = entry
        variable.trace_add("write", lambda *_: self._typed())
        entry.bind("<Return>", lambda _: self._go_on(row))
        for event in ("<FocusOut>", "<FocusIn>"):
            entry.bind(event, lambda _: self.after_idle(self._show), add="+")
        self._place(len(self.rows) - 1)

    def _typed(self) -> None:
        if self._quiet:
            return
        if self.rows[-1].variable.get():
            self._add_row()
        self._on_change(self.text)

    def _go_on(self, row: ReadingRow) -> str:
        following = self.rows[self.rows.index(row) + 1 :]
        if following:
            following[0].entry.focus_set()
        return "break"

    def _follow_width(self, event: "tk.Event[tk.Misc]") -> None:
        beside = self._over.winfo_reqwidth() + self.look.letter
        self.label.configure(wraplength=max(1, event.width - beside - self.look.label_edges))

    def _lay_out(self) -> None:
        for place in range(len(self.rows)):
            self._place(place)

    def _place(self, place: int) -> None:
        """Lines of stitches and lines of rows stand a little apart."""
        row = self.rows[place]
        above = self.look.pixels(2) if place and self._turns(place) else 0
        row.entry.grid(row=1 + place, column=0, sticky="ew", pady=(above, self.look.pixels(0.8)))
        row.says.grid(row=1 + place, column=1, sticky="e", padx=(self.look.pixels(1), 0), pady=(above, 0))

    def _turns(self, place: int) -> bool:
        """Whether this line is of the other direction than the one before it."""
        here, before = (self._lines[at].direction if at < len(self._lines) else None for at in (place, place - 1))
        return here is not None and before is not None and here is not before
