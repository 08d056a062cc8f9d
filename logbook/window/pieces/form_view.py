"""The piece in hand: its form, top to bottom."""

import tkinter as tk
from collections.abc import Callable, Iterable
from functools import partial
from tkinter import ttk

from logbook.craft.words.lengths import Units
from logbook.pages.pieces.piece_form import PieceForm
from logbook.pages.pieces.plan_texts import TICKED, taken_unit, with_unit
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.field_row import FieldRow
from logbook.window.form_card import FormCard, Item, SideBySide
from logbook.window.keyboard import focused
from logbook.window.look import Look
from logbook.window.pieces.form_fields import ITEMS, LABEL_LETTERS, Entry, Tick
from logbook.window.text_field import TextField
from logbook.window.tick_box import TickBox


class FormView(FormCard):
    """Shows a ``PieceForm`` and types into it."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        form: PieceForm,
        units: Callable[[], Units],
        opened: Iterable[str],
        on_change: Callable[[], object],
        on_fold: Callable[[str, bool], object],
    ) -> None:
        self.form, self._units = form, units
        self.ticks: dict[str, tk.BooleanVar] = {}
        self.boxes: dict[str, ttk.Checkbutton] = {}
        self._entries: dict[str, Entry] = {}
        self._body_width = ""
        super().__init__(parent, look, form, ITEMS, opened, on_change, on_fold)

    def say_body_width(self, said: str) -> None:
        """What a body measure comes to, and everything else anew."""
        self._body_width = said
        self.say()

    def say(self) -> None:
        """Brings title, units and messages up to date."""
        self.say_title(self.form.title)
        errors = self.form.read().errors
        hints = {
            "swatch": self.form.swatch_words(),
            "edge swatch": self.form.swatch_words("edge swatch"),
            "body": self._body_width,
        }
        for key, field in self.fields.items():
            field.say_taken_unit()
            error = self.fault(key, errors.get(key))
            if error:
                field.show_message(error)
            elif not (self._entries[key].swatches and not self.was_left(key) and focused(field) is field.input):
                field.show_message(hints.get(key) or None, "hint")
        from_body = bool(self.form.texts["body"].strip())
        self.fields["width"].input.state(["disabled" if from_body else "!disabled"])  # type: ignore[attr-defined]

    def _make(self, place: ttk.Frame, item: Item) -> ttk.Widget:
        if isinstance(item, Tick):
            return self._make_tick(place, item)
        if isinstance(item, SideBySide):
            row = FieldRow(place, self.look)
            for one in item.items:
                self._make(row, one)
            row.arrange([self.fields[one.key] for one in item.items])
            return row
        assert isinstance(item, Entry)
        self._entries[item.key] = item
        return self._follow(item.key, self._field(place, item))

    def _field(self, place: ttk.Frame, entry: Entry) -> LabelledField:
        look, label, width = self.look, entry.label, entry.width or 10
        if entry.swatches:
            suggest = partial(self._swatches, entry.key)
            field = SuggestionField(place, look, label, suggest, width=width, label_width=LABEL_LETTERS, grow=True)
            field.box.bind("<<ComboboxSelected>>", lambda _: self._leave(entry.key), add="+")
            return field
        if entry.choices:
            return ChoiceField(place, look, label, entry.choices, width=width, label_width=LABEL_LETTERS)
        if entry.lines:
            return TextField(place, look, label, lines=entry.lines, label_width=LABEL_LETTERS)
        plain = Field(place, look, label, width=width, label_width=entry.letters, grow=entry.grows)
        if entry.example:
            plain.show_example(entry.example)
        if entry.length:
            plain.show_taken_unit(lambda typed: taken_unit(typed, self._units()))
        return plain

    def _swatches(self, key: str) -> list[str]:
        known = self.form.swatch_uid(key)
        return self.form.offered("" if known else self.fields[key].text)

    def _make_tick(self, place: ttk.Frame, tick: Tick) -> ttk.Checkbutton:
        ticked = self.ticks[tick.key] = tk.BooleanVar(self, False)

        def follow() -> None:
            self._typed(tick.key, TICKED if ticked.get() else "")

        box = TickBox(place, self.look, tick.label, ticked, follow)
        self.boxes[tick.key] = box
        return box

    def _show_texts(self) -> None:
        for key, field in self.fields.items():
            if field.text != self.form.texts[key]:
                field.text = self.form.texts[key]
        for key, ticked in self.ticks.items():
            ticked.set(self.form.texts[key] == TICKED)

    def _type_in(self, key: str, text: str) -> None:
        self.form.type_in(key, text)

    def _leave(self, key: str) -> None:
        """A swatch chosen from the list stands there by its tag alone, a length with its unit."""
        field = self.fields[key]
        if self._entries[key].length:
            field.text = with_unit(field.text, self._units())
        if self._entries[key].swatches and self.form.swatch_uid(key) and field.text != self.form.swatch_tag(key):
            field.text = self.form.swatch_tag(key)
        super()._leave(key)
