"""The stitch pattern in hand: its form, top to bottom."""

import tkinter as tk
from collections.abc import Callable, Mapping
from tkinter import ttk

from logbook.pages.patterns.message import Message
from logbook.pages.patterns.number_words import in_sight, number_words
from logbook.pages.patterns.pattern_form import PatternForm
from logbook.pages.patterns.pattern_texts import SENTENCE
from logbook.pages.session import Session
from logbook.window.choices import ChoiceField
from logbook.window.field import Field, LabelledField
from logbook.window.field_row import FieldRow
from logbook.window.form_card import FormCard, Item, SideBySide
from logbook.window.keyboard import focused
from logbook.window.look import Look
from logbook.window.patterns.chart_view import ChartView
from logbook.window.patterns.form_fields import BEGINS, CHART, ITEMS, NUMBERS, ROWS, Entry
from logbook.window.patterns.prover import Prover
from logbook.window.patterns.rows_field import RowsField
from logbook.window.swatches.first_stitch_buttons import FirstStitchButtons
from logbook.window.text_field import TextField

EXAMPLE = "As the pattern says it: “multiple of 10 plus 4”, or “multiple of 6 plus 1, add 1 for the base chain”."


class FormView(FormCard):
    """Shows a ``PatternForm`` and types into it."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        session: Session,
        form: PatternForm,
        on_change: Callable[[], object],
        on_fold: Callable[[str, bool], object],
    ) -> None:
        self.form, self._session = form, session
        self._prover = Prover(parent, form, self._rows_proven)
        super().__init__(parent, look, form, ITEMS, session.settings.opened, on_change, on_fold)

    @property
    def written_rows(self) -> RowsField:
        """The field of written rows."""
        field = self.fields[ROWS]
        assert isinstance(field, RowsField)
        return field

    def say(self) -> None:
        """Brings title and messages, and what the written rows come to, up to date."""
        self.say_title(self.form.title)
        errors, messages, card = self.form.reading().problems, self.form.messages(), self.form.rows()
        here = focused(self)
        self.sections[NUMBERS].say_beside(number_words(self.form.texts))
        if not self.sections[NUMBERS].is_open:
            messages |= in_sight(messages)
        for key, field in self.fields.items():
            error = self.fault(key, errors.get(key)) or ("" if field.input is here else errors.get(key))
            message = Message(error, "error") if error else messages.get(key)
            if key == SENTENCE and not error and (key in errors or not field.text.strip()):
                message = Message(EXAMPLE, "hint")
            if key == ROWS and message is None:
                message = card.message
            field.show_message(message.text if message else None, message.kind if message else "error")
            if key == SENTENCE:
                self._show_begins(asked=bool(error))
        self.written_rows.show_rows(card)
        self.chart.follow(self.form.texts[ROWS], self.form.texts["terms"])
        self._prover.follow()

    def _make(self, place: ttk.Frame, item: Item) -> ttk.Widget:
        if isinstance(item, SideBySide):
            row = FieldRow(place, self.look)
            fields = [self._make(row, one) for one in item.items]
            row.arrange([field for field in fields if isinstance(field, LabelledField)])
            return row
        if item.key == BEGINS:
            self.begins = FirstStitchButtons(place, self.look, self._begin)
            return self.begins
        if item.key == CHART:
            self.chart = ChartView(place, self.look, self._session, lambda: self.form.texts["name"])
            return self.chart
        assert isinstance(item, Entry)
        return self._follow(item.key, self._field(place, item))

    def _field(self, place: ttk.Frame, entry: Entry) -> LabelledField:
        look, label = self.look, entry.label
        if entry.key == ROWS:
            return RowsField(place, look, label, lines=entry.lines)
        if entry.choices:
            return ChoiceField(place, look, label, entry.choices, width=entry.width)
        if entry.lines:
            return TextField(place, look, label, lines=entry.lines)
        return Field(place, look, label, width=entry.width or 10, unit=entry.unit, grow=not entry.width)

    def _show_texts(self) -> None:
        for key, field in self.fields.items():
            if field.text != self.form.texts[key]:
                field.text = self.form.texts[key]

    def _type_in(self, key: str, text: str) -> None:
        """Sentence, numbers and rows follow one another."""
        self.form.type_in(key, text)
        self._show_texts()

    def _leave(self, key: str) -> None:
        """A sentence that was taken away is again what the rows say."""
        if key == SENTENCE and self.form.is_dirty and not self.form.texts[SENTENCE].strip():
            self._rows_filled()
        super()._leave(key)

    def _rows_filled(self) -> None:
        before = dict(self.form.texts)
        self.form.fill_from_rows()
        if self.form.texts != before:
            self._show_texts()
            self._on_change()

    def _show_begins(self, *, asked: bool) -> None:
        """The stitches that the rows may begin with, under the sentence that leaves it open, once that was left."""
        choices = self.form.begins() if asked else ()
        self.begins.show(choices)
        if choices:
            self.begins.grid_configure(sticky="w")
        else:
            self.begins.grid_remove()

    def _begin(self, texts: Mapping[str, str]) -> None:
        """Types what a chosen stitch says; the keyboard goes to the sentence, for the buttons go."""
        self.fields[SENTENCE].input.focus_set()
        for key, text in texts.items():
            self.form.type_in(key, text)
        self._show_texts()
        self.say()
        self._on_change()

    def _rows_proven(self) -> None:
        self._show_texts()
        self.say()
        self._on_change()
