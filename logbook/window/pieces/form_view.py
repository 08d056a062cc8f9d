"""The piece in hand: its form, top to bottom."""

import tkinter as tk
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from tkinter import ttk

from logbook.craft.lengths import Units
from logbook.pages.pieces.piece_form import PieceForm, tag_of
from logbook.pages.pieces.plan_texts import TICKED
from logbook.window.card import Card
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.folding import Folding
from logbook.window.look import Look
from logbook.window.pieces.form_fields import ITEMS, Entry, Item, Section, Tick, keys_of
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.text_field import TextField
from logbook.window.tick_box import TickBox

LABEL_LETTERS = 15


class FormView(Card):
    """Shows a ``PieceForm`` and types into it. ``on_change`` is called after every change of a text, ``on_fold`` with the
    name of a section the user opens or closes. What is folded away is made when it is first opened."""

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
        super().__init__(parent, look)
        self.configure(width=1, height=1)
        self.grid_propagate(False)
        self.look, self.form, self._units = look, form, units
        self._on_change, self._on_fold = on_change, on_fold
        self._opened = set(opened)
        self.fields: dict[str, LabelledField] = {}
        self.ticks: dict[str, tk.BooleanVar] = {}
        self.boxes: dict[str, ttk.Checkbutton] = {}
        self.sections: dict[str, Folding] = {}
        self._entries: dict[str, Entry] = {}
        self._left: set[str] = set()
        self._lacking: Mapping[str, str] = {}
        self._showing = False
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self._title = Sentence(self, style="Section.TLabel")
        look.grid(self._title, row=0, column=0, sticky="ew", pady=(0, 1.5))
        self._scrolled = Scrolled(self, look, 10)
        self._scrolled.grid(row=1, column=0, sticky="nsew")
        self._build(self._scrolled.inside, ITEMS)
        self.show()

    def show(self) -> None:
        """Shows the piece in hand as the form has it, from the top, with nothing at fault yet."""
        self._left.clear()
        self._lacking = {}
        self._show_texts()
        self._scrolled.canvas.yview_moveto(0)
        self.say()

    def say(self, body_width: str = "") -> None:
        """Brings title, units and messages up to date; ``body_width`` is what a body measure comes to."""
        self._title.configure(text=self.form.title)
        errors = self.form.read().errors
        hints = {
            "swatch": self.form.swatch_words(),
            "edge swatch": self.form.swatch_words("edge swatch"),
            "body": body_width,
        }
        for key, field in self.fields.items():
            error = self._lacking.get(key) or (errors.get(key) if key in self._left else None)
            if error:
                field.show_message(error)
            elif not (self._entries[key].swatches and key not in self._left and field.focus_get() is field.input):
                field.show_message(hints.get(key) or None, "hint")
            if self._entries[key].length:
                field.show_unit(self._units().value)
        self.fields["ease"].show_unit(f"{self._units().value} or %")
        from_body = bool(self.form.texts["body"].strip())
        self.fields["width"].input.state(["disabled" if from_body else "!disabled"])  # type: ignore[attr-defined]

    def show_errors(self, errors: Mapping[str, str]) -> None:
        """Says what stands in the way of saving beside each field, and goes to the first."""
        self._lacking = errors
        for section in (item for item in ITEMS if isinstance(item, Section)):
            if any(item.key in errors for item in section.items):
                self._open(section)
        self.say()
        first = next((key for key in keys_of(ITEMS) if key in errors), None)
        if first is not None:
            self.fields[first].input.focus_set()

    def start(self) -> None:
        """Puts the keyboard into the first field."""
        self.fields["name"].input.focus_set()

    def _show_texts(self) -> None:
        self._showing = True
        for key, field in self.fields.items():
            if field.text != self.form.texts[key]:
                field.text = self.form.texts[key]
        for key, ticked in self.ticks.items():
            ticked.set(self.form.texts[key] == TICKED)
        self._showing = False

    def _build(self, place: ttk.Frame, items: Iterable[Item]) -> None:
        place.columnconfigure(0, weight=1)
        for row, item in enumerate(items):
            if isinstance(item, Section):
                self._build_section(place, item).grid(row=row, column=0, sticky="ew")
            elif isinstance(item, Tick):
                self._build_tick(place, item).grid(row=row, column=0, sticky="w")
            else:
                self._build_field(place, item).grid(row=row, column=0, sticky="ew")

    def _build_section(self, place: ttk.Frame, section: Section) -> Folding:
        is_open = section.name in self._opened
        folding = Folding(place, section.title, is_open, partial(self._folded, section))
        self.sections[section.name] = folding
        if is_open:
            self._build(folding.inside, section.items)
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
            self._build(folding.inside, section.items)
            self._show_texts()
        folding.show(True)

    def _build_field(self, place: ttk.Frame, entry: Entry) -> LabelledField:
        field = self._field(place, entry)
        self.fields[entry.key], self._entries[entry.key] = field, entry
        field.variable.trace_add("write", lambda *_: self._typed(entry.key, field.text))
        field.input.bind("<FocusOut>", lambda _: self._leave(entry.key), add="+")
        return field

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
        return Field(place, look, label, width=width, label_width=LABEL_LETTERS, unit=entry.unit, grow=entry.grows)

    def _swatches(self, key: str) -> list[str]:
        known = self.form.swatch_uid(key)
        return self.form.offered("" if known else self.fields[key].text)

    def _build_tick(self, place: ttk.Frame, tick: Tick) -> ttk.Checkbutton:
        ticked = self.ticks[tick.key] = tk.BooleanVar(self, False)

        def follow() -> None:
            self._typed(tick.key, TICKED if ticked.get() else "")

        box = TickBox(place, self.look, tick.label, ticked, follow)
        self.boxes[tick.key] = box
        return box

    def _typed(self, key: str, text: str) -> None:
        if self._showing or text == self.form.texts[key]:
            return
        self._left.discard(key)
        self._lacking = {name: error for name, error in self._lacking.items() if name != key}
        self.form.type_in(key, text)
        self.say()
        self._on_change()

    def _leave(self, key: str) -> None:
        """A swatch chosen from the list stands there by its tag alone."""
        self._left.add(key)
        field = self.fields[key]
        if self._entries[key].swatches and self.form.swatch_uid(key) and field.text != tag_of(field.text):
            field.text = tag_of(field.text)
            self._left.add(key)
        self.say()
