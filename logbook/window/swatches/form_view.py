"""The swatch in hand: its form, top to bottom."""

import tkinter as tk
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from tkinter import ttk

from logbook.craft.gauges.over_length import over_length
from logbook.pages.dates import date_in_form
from logbook.pages.picture_shelf import PictureShelf
from logbook.pages.swatches.form_texts import READINGS
from logbook.pages.swatches.meanings import together
from logbook.pages.swatches.section_words import heading_words, section_words
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.form_card import FormCard, Item, Section, SideBySide, keys_of
from logbook.window.look import Look
from logbook.window.pair import Pair
from logbook.window.pictures_field import PicturesField
from logbook.window.swatches.form_fields import ITEMS, Entry, Pictures, ReadingsEntry
from logbook.window.swatches.readings_view import ReadingsView
from logbook.window.text_field import TextField

LABEL_LETTERS = 17


class FormView(FormCard):
    """Shows a ``SwatchForm`` and types into it."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        form: SwatchForm,
        opened: Iterable[str],
        on_change: Callable[[], object],
        on_fold: Callable[[str, bool], object],
        shelf: PictureShelf,
    ) -> None:
        self.form, self._shelf = form, shelf
        self.readings: dict[str, ReadingsView] = {}
        self._choices: dict[str, dict[str, str]] = {}
        super().__init__(parent, look, form, ITEMS, opened, on_change, on_fold)

    def say(self) -> None:
        """Brings title, meanings and messages up to date."""
        typed, hints, warnings = self.form.typed(), self.form.hints(), self.form.warnings()
        self.say_title(self.form.title, heading_words(self.form.texts))
        for name, words in section_words(self.form.texts, typed.swatch).items():
            if name in self.sections:
                self.sections[name].say_beside(words)
        letter = self.form.hook_letter()
        self.fields["hook mm"].show_unit(f"mm · {letter}" if letter else "mm")
        for key, field in self.fields.items():
            error = self.fault(key, typed.errors.get(key))
            if error:
                field.show_message(error)
            elif key in warnings:
                field.show_message(warnings[key], "warning")
            else:
                field.show_message(hints.get(key) or None, "hint")
        for key, readings in self.readings.items():
            said = together(typed.swatch, READINGS[key], self.form.assumptions, self.form.units)
            readings.say(typed.lines[key], over_length(self.form.units)[1], said, self.fault(key, None))

    def start_readings(self) -> None:
        """Puts the keyboard into the first reading."""
        next(iter(self.readings.values())).rows[0].entry.focus_set()

    def _leave(self, key: str) -> None:
        """A date stands there as it is written everywhere."""
        if key == "date":
            self.fields[key].text = date_in_form(self.fields[key].text)
        super()._leave(key)

    def _go_to(self, key: str) -> None:
        """Of several readings, to the first at fault."""
        if key in self.readings:
            lines = self.form.typed().lines[key]
            place = next((place for place, line in enumerate(lines) if line.error), 0)
            self.readings[key].rows[place].entry.focus_set()
        else:
            super()._go_to(key)

    def _make(self, place: ttk.Frame, item: Item) -> ttk.Widget:
        if isinstance(item, SideBySide):
            pair = Pair(place, self.look)
            pair.arrange([self._make(pair, one) for one in item.items])
            return pair
        if isinstance(item, ReadingsEntry):
            self.readings[item.key] = ReadingsView(place, self.look, item.label, item.hint, partial(self._typed, item.key))
            return self.readings[item.key]
        if isinstance(item, Pictures):
            return self._follow(item.key, PicturesField(place, self.look, "Pictures", self._shelf, label_width=LABEL_LETTERS))
        assert isinstance(item, Entry)
        return self._follow(item.key, self._field(place, item))

    def _field(self, place: ttk.Frame, entry: Entry) -> LabelledField:
        look, label, width = self.look, entry.label, entry.width or 10
        if entry.suggests:
            known = partial(self.form.suggested, entry.key)
            return SuggestionField(place, look, label, known, width=width, label_width=LABEL_LETTERS, grow=entry.grows)
        if entry.choices:
            self._choices[entry.key] = entry.choices
            return ChoiceField(place, look, label, tuple(entry.choices.values()), width=width, label_width=LABEL_LETTERS)
        if entry.lines:
            return TextField(place, look, label, lines=entry.lines, label_width=LABEL_LETTERS)
        field = Field(place, look, label, width=width, label_width=LABEL_LETTERS, unit=entry.unit, grow=entry.grows)
        if entry.example:
            field.show_example(entry.example)
        return field

    def _show_texts(self) -> None:
        for key, field in self.fields.items():
            field.text = self._shown(key)
        for key, readings in self.readings.items():
            readings.text = self.form.texts[key]

    def start(self) -> None:
        """Puts the keyboard into the yarn."""
        self._go_to("yarn")

    def add_picture(self) -> None:
        """Asks for a picture of the swatch in hand."""
        self._open(next(item for item in ITEMS if isinstance(item, Section) and "pictures" in keys_of(item.items)))
        self._go_to("pictures")
        pictures = self.fields["pictures"]
        assert isinstance(pictures, PicturesField)
        pictures.add()

    def _shown(self, key: str) -> str:
        text = self.form.texts[key]
        return self._choices[key].get(text, text) if key in self._choices else text

    def _typed(self, key: str, text: str) -> None:
        choices = self._choices.get(key, {})
        super()._typed(key, next((one for one, words in choices.items() if words == text), text))

    def put(self, texts: Mapping[str, str]) -> None:
        """Types several texts at once, of fields that need not be in sight."""
        for key, text in texts.items():
            self.form.type_in(key, text)
        for key, field in self.fields.items():
            field.text = self._shown(key)
        for key, readings in self.readings.items():
            if key in texts and readings.text != self.form.texts[key].rstrip("\n"):
                readings.text = self.form.texts[key]
        self.say()
        self._on_change()

    def _type_in(self, key: str, text: str) -> None:
        """The details of a known yarn or stitch pattern come with its name."""
        for name in self.form.type_in(key, text):
            if name in self.fields:
                self.fields[name].text = self._shown(name)
