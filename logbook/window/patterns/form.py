"""The form of a stitch pattern."""

import tkinter as tk
from collections.abc import Callable, Mapping
from tkinter import ttk

from logbook.pages.patterns.form import KEYS, SENTENCE, TERMS
from logbook.pages.patterns.message import Message
from logbook.pages.patterns.rows_card import RowsCard
from logbook.pages.patterns.wording import COVERS
from logbook.window.choices import ChoiceField
from logbook.window.field import Field, LabelledField
from logbook.window.field_row import FieldRow
from logbook.window.keyboard import focused
from logbook.window.look import Look
from logbook.window.patterns.rows_field import RowsField
from logbook.window.styles import styled
from logbook.window.text_field import TextField

EXAMPLE = "As the pattern says it: “multiple of 10 plus 4”, or “multiple of 6 plus 1, add 1 for the base chain”."


class PatternForm(ttk.Frame):
    """``on_typed`` gets the key of a field and its text, whenever the user has changed it."""

    def __init__(self, parent: tk.Misc, look: Look, on_typed: Callable[[str, str], object]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look = look
        self._on_typed = on_typed
        self._showing = False
        self._messages: Mapping[str, Message] = {}
        self.fields: dict[str, LabelledField] = {}
        self.rows: list[FieldRow] = []
        self.columnconfigure(0, weight=1)
        self._build()
        self.fields = {key: self.fields[key] for key in KEYS}
        for key, field in self.fields.items():
            field.variable.trace_add("write", lambda *_, key=key: self._typed(key))
        for event in ("<FocusIn>", "<FocusOut>"):
            self.fields[SENTENCE].input.bind(event, lambda _: self.after_idle(self._show_all), add="+")

    def show(self, texts: Mapping[str, str]) -> None:
        """Shows these texts; fields that hold theirs already are left alone, with their cursor."""
        self._showing = True
        for key, field in self.fields.items():
            if field.text != texts[key]:
                field.text = texts[key]
        self._showing = False

    def show_messages(self, messages: Mapping[str, Message]) -> None:
        """Shows a message under each field that has one, and clears the others."""
        self._messages = messages
        self._show_all()

    def show_rows(self, card: RowsCard) -> None:
        """Shows what the written rows come to."""
        self.written_rows.show_rows(card)
        if "rows_text" not in self._messages and card.message is not None:
            self.written_rows.show_message(card.message.text, card.message.kind)

    def focus_on(self, key: str) -> None:
        """Puts the keyboard into a field."""
        self.fields[key].input.focus_set()

    def _typed(self, key: str) -> None:
        if not self._showing:
            self._on_typed(key, self.fields[key].text)

    def _show_all(self) -> None:
        for key, field in self.fields.items():
            message = self._messages.get(key)
            if key == SENTENCE and self._half_typed(message):
                message = Message(EXAMPLE, "hint")
            if message is None:
                field.show_message(None)
            else:
                field.show_message(message.text, message.kind)
        for row in self.rows:
            row.show_messages()

    def _half_typed(self, message: Message | None) -> bool:
        """A sentence is no error while it is being written, only when it is left like that."""
        field = self.fields[SENTENCE]
        writing = focused(self) is field.input
        return not field.text.strip() or (writing and message is not None and message.kind == "error")

    def _build(self) -> None:
        self._place(0, "name", Field(self, self.look, "Na&me", grow=True))
        self._place(1, SENTENCE, Field(self, self.look, "The &chain, in words", grow=True))
        self._numbers(2, {"multiple": "Multi&ple", "plus": "Plus", "extra_chains": "E&xtra chains"})
        row = self._row(3)
        self.fields["first_stitch"] = Field(row, self.look, "First stitch, in ch&ain", width=6, unit="from the hook")
        self.fields["skip_cover"] = ChoiceField(row, self.look, "S&kipped chains count as", COVERS, width=20)
        row.arrange((self.fields["first_stitch"], self.fields["skip_cover"]))
        self._numbers(4, {"set_up_rows": "Set-up rows", "rows_in_repeat": "Rows in a repeat", "closing_rows": "Closing rows"})
        row = self._row(5)
        self.fields["half_plus"] = Field(row, self.look, "Plus for a half repeat", width=6)
        self.fields["terms"] = ChoiceField(row, self.look, "Terms", TERMS, width=10)
        row.arrange((self.fields["half_plus"], self.fields["terms"]))
        self.written_rows = RowsField(self, self.look, "Written r&ows", lines=8)
        self._place(6, "rows_text", self.written_rows)
        self._place(8, "notes", TextField(self, self.look, "Notes", lines=3))

    def _place(self, row: int, key: str, field: LabelledField) -> None:
        self.fields[key] = field
        field.grid(row=row, column=0, sticky="ew")

    def _row(self, row: int) -> FieldRow:
        fields = FieldRow(self, self.look)
        fields.grid(row=row, column=0, sticky="ew")
        self.rows.append(fields)
        return fields

    def _numbers(self, row: int, labels: Mapping[str, str]) -> None:
        fields = self._row(row)
        for key, label in labels.items():
            self.fields[key] = Field(fields, self.look, label, width=6)
        fields.arrange([self.fields[key] for key in labels])
