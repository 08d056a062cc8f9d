"""The size run of the piece in hand: its table, what is wanted of one size, what parts those that are the same, the lines."""

import tkinter as tk
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from tkinter import ttk

from logbook.craft.pieces.piece import PiecePlan
from logbook.pages.pieces.run_card import RunCard
from logbook.pages.pieces.size_texts import KEYS, SizeTexts, rows_of, text_of
from logbook.window.button_bar import ButtonBar
from logbook.window.field import Field
from logbook.window.field_row import FieldRow
from logbook.window.fitting import FittingColumns
from logbook.window.folding import Folding
from logbook.window.look import Look
from logbook.window.pieces.notes_view import NotesView
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("size", "Size", 5),
    Column("body", "Body", 7, "right", grow=True),
    Column("chain", "Chain", 5, "right", grow=True),
    Column("repeats", "Repeats", 5, "right", grow=True),
    Column("edges", "Edge sts", 4, "right", grow=True),
    Column("rows", "Rows", 4, "right", grow=True),
    Column("width", "Width", 7, "right", grow=True),
    Column("length", "Length", 7, "right", grow=True),
    Column("around", "All round", 7, "right", grow=True),
    Column("ease", "Ease", 7, "right", grow=True),
    Column("armhole", "Armhole at", 5, "right", grow=True),
    Column("neck", "Neck", 4, "right", grow=True),
    Column("yarn", "Yarn", 5, "right", grow=True),
    Column("balls", "Balls", 4, "right", grow=True),
    Column("hours", "Hours", 5, "right", grow=True),
    Column("same", "Same as", 7, grow=True),
)
NEED = (
    "size", "chain", "rows", "around", "ease", "same", "width", "body", "balls", "armhole", "neck", "length", "repeats", "yarn",
    "hours", "edges",
)  # fmt: skip
CHANGES = (
    Column("size", "Size", 6),
    Column("what", "Number", 12, grow=True),
    Column("was", "As published", 12, "right", grow=True),
    Column("now", "Today", 10, "right", grow=True),
)
FIELDS = {
    "size": ("Size", 7), "body": ("Body", 9), "ease": ("Ease", 9), "length": ("Length", 9), "armhole": ("Armhole", 9),
    "neck": ("Neck", 9),
}  # fmt: skip
"""What of one size can be typed on the page; the rest comes from a chart."""
MOST_ROWS = 9
"""So many sizes are in view at once; the table scrolls through more."""


@dataclass(frozen=True, slots=True)
class RunActions:
    """What the view asks for: other sizes, a remedy, another size shown, sizes from a chart, the lines copied or folded."""

    typed: Callable[[str], object]
    remedy: Callable[[PiecePlan], object]
    chosen: Callable[[], object]
    from_chart: Callable[[], object]
    copy_lines: Callable[[], object]
    fold_lines: Callable[[bool], object]
    lines_open: bool


class RunView(ttk.Frame):
    """Shows a ``RunCard`` and types into the text of its sizes."""

    def __init__(self, parent: tk.Misc, look: Look, actions: RunActions) -> None:
        super().__init__(parent, style="Card.TFrame")
        self.look, self._do = look, actions
        self._rows: list[SizeTexts] = []
        self._card = RunCard()
        self._place = 0
        self._showing = False
        self.fields: dict[str, Field] = {}
        self.columnconfigure(0, weight=1)
        self.table = Table(self, look, COLUMNS, self._select)
        FittingColumns(self.table, NEED)
        self.missing = Sentence(self)
        self.same = Sentence(self, style="Warning.TLabel")
        self.remedies = ttk.Frame(self, style="Card.TFrame")
        self.remedies.columnconfigure(1, weight=1)
        self.yarn = Sentence(self)
        self.set_words = Sentence(self, style="Section.TLabel")
        self.changes = Table(self, look, CHANGES)
        self.notes = NotesView(self, look)
        self.lines_fold = Folding(self, "Lines for the pattern", actions.lines_open, actions.fold_lines)
        self.lines_fold.inside.columnconfigure(0, weight=1)
        self.lines = Sentence(self.lines_fold.inside)
        self.copy_button = ttk.Button(self.lines_fold.inside, text="Copy the lines", command=actions.copy_lines)
        look.grid(self.copy_button, row=0, column=0, sticky="w", pady=(0.5, 1))
        self.lines.grid(row=1, column=0, sticky="ew")
        widgets = (self.table, self.missing, self._buttons(), self._size_fields(), self.same, self.remedies, self.yarn,
                   self.set_words, self.changes, self.lines_fold, self.notes)  # fmt: skip
        for row, widget in enumerate(widgets):
            look.grid(widget, row=row, column=0, sticky="ew", pady=(0, 1))

    @property
    def size_name(self) -> str:
        """The name of the size in hand; "" without sizes."""
        return self._rows[self._place]["size"] if self._rows else ""

    def show(self, card: RunCard, text: str) -> None:
        """Shows the run of this moment, and the sizes as they are typed."""
        self._card, self._rows = card, rows_of(text)
        self._place = min(self._place, max(0, len(self._rows) - 1))
        cells = card.rows or [(row["size"], row["body"], *("–" for _ in COLUMNS[2:])) for row in self._rows]
        self.table.set_rows(Row(str(i), tuple(line), tuple(range(len(line)))) for i, line in enumerate(cells))
        self.table.tree.configure(height=max(2, min(MOST_ROWS, len(cells))))
        self.table.select([str(self._place)] if cells else [])
        _say(self.missing, card.missing)
        self._show_remedies()
        _say(self.yarn, card.yarn)
        _say(self.set_words, "\n".join(card.set_words))
        self.lines.configure(text=card.lines.strip())
        self.copy_button.state(["!disabled" if card.lines else "disabled"])
        self._show_changes(card.changes)
        self._show_size()

    def say(self, card: RunCard) -> None:
        """Says what there is to say of the sizes."""
        _say(self.same, "\n".join(f"! {said}" for said in (*card.cautions, *card.same)))
        self.notes.show(card.notes)

    def _show_changes(self, changes: Sequence[tuple[str, ...]]) -> None:
        """What of the published numbers would be otherwise today."""
        if changes:
            self.changes.set_rows(Row(str(place), cells, cells) for place, cells in enumerate(changes))
            self.changes.tree.configure(height=min(MOST_ROWS, len(changes)))
            self.changes.grid()
        else:
            self.changes.grid_remove()

    def start(self) -> None:
        """Puts the keyboard into the first field of the size in hand, or onto the button that takes sizes from a chart."""
        (self.fields["size"].input if self._rows else self.chart_button).focus_set()

    def add(self) -> None:
        """Adds a size after the last, like it, to be named."""
        last = self._rows[-1] if self._rows else dict.fromkeys(KEYS, "")
        self._place = len(self._rows)
        names = {row["size"] for row in self._rows}
        name = next(str(number) for number in range(len(self._rows) + 1, 10_000) if str(number) not in names)
        self._do.typed(text_of([*self._rows, {**last, "size": name}]))
        self.start()
        self.fields["size"].input.event_generate("<<SelectAll>>")

    def remove(self) -> None:
        """Takes the size in hand out of the run."""
        if self._rows:
            self._do.typed(text_of(self._rows[: self._place] + self._rows[self._place + 1 :]))

    def _buttons(self) -> ButtonBar:
        bar = ButtonBar(self, self.look)
        self.chart_button = bar.add("From a body chart…", self._do.from_chart)
        bar.add("Add a size", self.add)
        self.remove_button = bar.add("Remove size", self.remove)
        return bar

    def _size_fields(self) -> FieldRow:
        self.size_row = FieldRow(self, self.look)
        for key, (label, width) in FIELDS.items():
            field = self.fields[key] = Field(self.size_row, self.look, label, width=width)
            field.variable.trace_add("write", lambda *_, key=key: self._typed(key))
        self.size_row.arrange(tuple(self.fields.values()))
        return self.size_row

    def _typed(self, key: str) -> None:
        if self._showing or not self._rows or self._rows[self._place][key] == self.fields[key].text.strip():
            return
        rows = [dict(row) for row in self._rows]
        rows[self._place][key] = self.fields[key].text.strip()
        self._do.typed(text_of(rows))

    def _select(self, keys: tuple[str, ...]) -> None:
        if keys and int(keys[0]) != self._place:
            self._place = int(keys[0])
            self._show_size()
            self._do.chosen()

    def _show_size(self) -> None:
        """The texts of the size in hand, but for the field that is being typed in."""
        self._showing = True
        for key, field in self.fields.items():
            text = self._rows[self._place][key] if self._rows else ""
            if field.text.strip() != text:
                field.text = text
            field.input.state(["!disabled" if self._rows else "disabled"])  # type: ignore[attr-defined]
            field.show_message(self._card.errors.get((self._place, key)) if self._rows else None)
        self._showing = False
        self.remove_button.state(["!disabled" if self._rows else "disabled"])

    def _show_remedies(self) -> None:
        for widget in self.remedies.winfo_children():
            widget.destroy()
        for row, (sentence, plan) in enumerate(self._card.remedies):
            Sentence(self.remedies, sentence).grid(row=row, column=1, sticky="ew")
            if plan is not None:
                button = ttk.Button(self.remedies, text="Apply this", command=partial(self._do.remedy, plan))
                self.look.grid(button, row=row, column=0, sticky="w", padx=(0, 2), pady=(0, 1))
        if self._card.remedies:
            self.remedies.grid()
        else:
            self.remedies.grid_remove()


def _say(sentence: Sentence, text: str) -> None:
    sentence.configure(text=text)
    if text:
        sentence.grid()
    else:
        sentence.grid_remove()
