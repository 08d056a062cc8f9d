"""The swatch in hand: its form, top to bottom."""

import tkinter as tk
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from tkinter import ttk

from logbook.pages.swatches.form_texts import READINGS
from logbook.pages.swatches.meanings import together
from logbook.pages.swatches.swatch_form import SwatchForm
from logbook.window.card import Card
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.folding import Folding
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.swatches.form_fields import ITEMS, Entry, Item, Readings, Section
from logbook.window.swatches.readings_view import ReadingsView
from logbook.window.text_field import TextField

LABEL_LETTERS = 17
INDENT = 2
"""Units by which what is folded stands in."""


class FormView(Card):
    """Shows a ``SwatchForm`` and types into it. ``on_change`` is called after every change of a text, ``on_fold`` with the
    name of a section the user opens or closes. What is folded away is made when it is first opened."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        form: SwatchForm,
        opened: Iterable[str],
        on_change: Callable[[], object],
        on_fold: Callable[[str, bool], object],
    ) -> None:
        super().__init__(parent, look)
        self.configure(width=1, height=1)
        self.grid_propagate(False)
        self.look, self.form = look, form
        self._on_change, self._on_fold = on_change, on_fold
        self._opened = set(opened)
        self.fields: dict[str, LabelledField] = {}
        self.readings: dict[str, ReadingsView] = {}
        self.sections: dict[str, Folding] = {}
        self._choices: dict[str, dict[str, str]] = {}
        self._left: set[str] = set()
        self._lacking: Mapping[str, str] = {}
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self._title = ttk.Label(self, style="Card.Section.TLabel")
        look.grid(self._title, row=0, column=0, sticky="w", pady=(0, 1.5))
        self._scrolled = Scrolled(self, look, 10)
        self._scrolled.grid(row=1, column=0, sticky="nsew")
        self._build(self._scrolled.inside, ITEMS)
        self.show()

    def show(self) -> None:
        """Shows the swatch in hand as the form has it, from the top, with nothing at fault yet."""
        self._left.clear()
        self._lacking = {}
        for key, field in self.fields.items():
            field.text = self._shown(key)
        for key, readings in self.readings.items():
            readings.text = self.form.texts[key]
        self._scrolled.canvas.yview_moveto(0)
        self.say()

    def say(self) -> None:
        """Brings title, meanings and messages up to date."""
        self._title.configure(text=self.form.title)
        typed, hints = self.form.typed(), self.form.hints()
        letter = self.form.hook_letter()
        self.fields["hook mm"].show_unit(f"mm · {letter}" if letter else "mm")
        for key, field in self.fields.items():
            error = self._lacking.get(key) or (typed.errors.get(key) if key in self._left else None)
            if error:
                field.show_message(error)
            else:
                field.show_message(hints.get(key) or None, "hint")
        for key, readings in self.readings.items():
            said = together(typed.swatch, READINGS[key], self.form.assumptions)
            readings.say(typed.lines[key], said, self._lacking.get(key, ""))

    def show_errors(self, errors: Mapping[str, str]) -> None:
        """Says what stands in the way of saving beside each field, and goes to the first."""
        self._lacking = errors
        for section in (item for item in ITEMS if isinstance(item, Section)):
            if any(item.key in errors for item in section.items):
                self._open(section)
        self.say()
        first = next((key for key in _keys(ITEMS) if key in errors), None)
        if first in self.readings:
            self._first_fault(self.readings[first], first).focus_set()
        elif first is not None:
            self.fields[first].input.focus_set()

    def start(self) -> None:
        """Puts the keyboard into the first field."""
        self.fields["yarn"].input.focus_set()

    def _first_fault(self, readings: ReadingsView, key: str) -> ttk.Entry:
        lines = self.form.typed().lines[key]
        place = next((place for place, line in enumerate(lines) if line.error), 0)
        return readings.rows[place].entry

    def _build(self, place: ttk.Frame, items: Iterable[Item], indent: float = 0) -> None:
        place.columnconfigure(0, weight=1)
        for row, item in enumerate(items):
            widget: ttk.Frame
            if isinstance(item, Section):
                widget = self._build_section(place, item)
            elif isinstance(item, Readings):
                widget = ReadingsView(place, self.look, item.label, item.hint, partial(self._typed, item.key))
                self.readings[item.key] = widget
            else:
                widget = self._build_field(place, item)
            self.look.grid(widget, row=row, column=0, sticky="ew", padx=(indent, 1), pady=(0, 0.5))

    def _build_section(self, place: ttk.Frame, section: Section) -> Folding:
        is_open = section.name in self._opened
        folding = Folding(place, section.title, is_open, partial(self._folded, section))
        self.sections[section.name] = folding
        if is_open:
            self._build(folding.inside, section.items, INDENT)
        return folding

    def _folded(self, section: Section, is_open: bool) -> None:
        if is_open:
            self._open(section)
            self.say()
        self._on_fold(section.name, is_open)

    def _open(self, section: Section) -> None:
        """Opens a section, making its fields if they were never shown."""
        folding = self.sections[section.name]
        if not folding.inside.winfo_children():
            self._build(folding.inside, section.items, INDENT)
            for item in section.items:
                if isinstance(item, Readings):
                    self.readings[item.key].text = self.form.texts[item.key]
                elif isinstance(item, Entry):
                    self.fields[item.key].text = self._shown(item.key)
        folding.show(True)

    def _build_field(self, place: ttk.Frame, entry: Entry) -> LabelledField:
        field = self._field(place, entry)
        self.fields[entry.key] = field
        field.variable.trace_add("write", lambda *_: self._typed(entry.key, field.text))
        field.input.bind("<FocusOut>", lambda _: self._leave(entry.key), add="+")
        return field

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
        return Field(place, look, label, width=width, label_width=LABEL_LETTERS, unit=entry.unit, grow=entry.grows)

    def _shown(self, key: str) -> str:
        text = self.form.texts[key]
        return self._choices[key].get(text, text) if key in self._choices else text

    def _text(self, key: str, shown: str) -> str:
        choices = self._choices.get(key, {})
        return next((text for text, words in choices.items() if words == shown), shown)

    def _typed(self, key: str, shown: str) -> None:
        text = self._text(key, shown)
        if text == self.form.texts[key]:
            return
        self._left.discard(key)
        self._lacking = {name: error for name, error in self._lacking.items() if name != key}
        for name in self.form.type_in(key, text):
            if name in self.fields:
                self.fields[name].text = self._shown(name)
        self.say()
        self._on_change()

    def _leave(self, key: str) -> None:
        self._left.add(key)
        self.say()


def _keys(items: Iterable[Item]) -> Iterable[str]:
    for item in items:
        if isinstance(item, Section):
            yield from _keys(item.items)
        else:
            yield item.key
