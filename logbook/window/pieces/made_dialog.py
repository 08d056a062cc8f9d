"""What was really made: a form in a window of its own, begun from a piece or on its own."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import NamedTuple

from logbook.craft.words.numbers import in_mark
from logbook.pages.dates import date_in_form
from logbook.pages.picture_shelf import PictureShelf
from logbook.pages.pieces.made_form import LENGTHS, MadeForm
from logbook.pages.pieces.plan_texts import taken_unit, with_unit
from logbook.pages.session import Session
from logbook.pages.typed_since import MEANWHILE
from logbook.window.field import Field, LabelledField
from logbook.window.field_row import FieldRow
from logbook.window.form_dialog import FormDialog
from logbook.window.look import Look
from logbook.window.pictures_field import PicturesField
from logbook.window.sentence import Sentence
from logbook.window.text_field import TextField

LABEL_LETTERS = 18
COUNTED_IN = "What it measures is counted into the next single piece."


class FieldLine(NamedTuple):
    """Fields that stand side by side, each with its label and the letters it takes."""

    fields: tuple[tuple[str, str, int], ...]


class Whole(NamedTuple):
    """A field that takes a line for itself; of more than one line of text it is a text field. ``hint`` is said under it."""

    key: str
    label: str
    lines: int = 1
    hint: str = ""


WORKED = (
    Whole("name", "Na&me"),
    FieldLine((("size", "Si&ze", 8), ("date", "Da&te", 12), ("worked by", "Worked &by", 16))),
    FieldLine((("yarn used", "&Yarn it was made of", 28), ("lot used", "Dye &lot", 10))),
    FieldLine((("chain", "&Chained", 8), ("rows", "&Rows worked", 8), ("hook", "&Hook", 10))),
    FieldLine(
        (("predicted width", "Width by the swatch", 12), ("worked width", "as &worked", 10), ("washed width", "w&ashed", 10))
    ),
    FieldLine(
        (("predicted length", "Length by the swatch", 12), ("worked length", "as worked", 10), ("washed length", "washed", 10))
    ),
    FieldLine((("predicted grams", "Yarn &planned", 10), ("grams used", "Yarn &used", 10))),
    FieldLine(
        (("predicted hours", "Hours planned", 10), ("hours", "Hours &it took", 10), ("predicted growth", "&Growth in wear", 10))
    ),
    Whole("gauge as worked", "Its gauge as worked"),
    Whole("gauge washed", "Its gauge washed", hint="4 repeats = 15.1 cm; 22 rows = 15 cm"),
    Whole("changed", "What was changed", 2),
)
UNITS = {"predicted grams": "g", "grams used": "g"}
AFTERWARDS = (
    Whole("fits", "How it &fits", 2),
    Whole("wear", "How it w&ears", 3, "A line a day: 2026-09-01: 47.5 x 58 cm, 3 washes, cuffs loose"),
    Whole("notes", "N&otes", 2),
)


def show_made(parent: tk.Misc, look: Look, session: Session, form: MadeForm, done: Callable[[str], object]) -> None:
    """Opens the form; ``done`` is told, in a sentence, what was saved or deleted."""
    dialog = _MadeDialog(parent, look, session, form, done)
    dialog.open(dialog.fields["name"].input)
    dialog.wait_window()


class _MadeDialog(FormDialog):
    def __init__(self, parent: tk.Misc, look: Look, session: Session, form: MadeForm, done: Callable[[str], object]) -> None:
        super().__init__(parent, look, "Made piece", session, form, 64, self._give_up)
        self._form, self._done = form, done
        self._hints: dict[str, str] = {}
        self._build(self.body)
        if form.is_saved:
            self.add_button("&Delete", self._delete)
        self.add_button("&Cancel", self.leave)
        self._end_form(self._save)
        self._show()

    def _build(self, place: ttk.Frame) -> None:
        for part in WORKED:
            self._put(place, part)
        self.beside = Sentence(place, " ")
        self.look.grid(self.beside, row=place.grid_size()[1], column=0, sticky="ew", pady=(0, 1))
        for part in AFTERWARDS:
            self._put(place, part)
        pictures = PicturesField(place, self.look, "Pictures", PictureShelf(self._session), label_width=LABEL_LETTERS)
        self.look.grid(self._add("pictures", pictures), row=place.grid_size()[1], column=0, sticky="ew", pady=(1, 0))

    def _put(self, place: ttk.Frame, part: FieldLine | Whole) -> None:
        row = place.grid_size()[1]
        if isinstance(part, FieldLine):
            beside = FieldRow(place, self.look)
            beside.arrange([self._add(key, self._field(beside, key, label, width)) for key, label, width in part.fields])
            self.look.grid(beside, row=row, column=0, sticky="ew", pady=(1, 0))
            return
        if part.lines == 1:
            field: LabelledField = Field(place, self.look, part.label, label_width=LABEL_LETTERS, grow=True)
        else:
            field = TextField(place, self.look, part.label, lines=part.lines, label_width=LABEL_LETTERS)
        self._hints[part.key] = part.hint
        self.look.grid(self._add(part.key, field), row=row, column=0, sticky="ew", pady=(1, 0))

    def _field(self, place: FieldRow, key: str, label: str, width: int) -> LabelledField:
        field = Field(place, self.look, label, width=width, unit=UNITS.get(key, ""))
        if key in LENGTHS:
            field.show_taken_unit(lambda typed: taken_unit(typed, self._session.units))
        return field

    def _put_in_order(self, key: str) -> None:
        """A length stands there with its unit, a date as it is written everywhere."""
        if key == "date":
            self.fields[key].text = date_in_form(self.fields[key].text)
        if key in LENGTHS:
            self.fields[key].text = with_unit(self.fields[key].text, self._session.units)

    def _hint(self, key: str) -> str:
        return in_mark(self._hints.get(key, ""))

    def _show(self) -> None:
        super()._show()
        self.beside.configure(text=self._form.beside() or " ")

    def _give_up(self) -> None:
        if self._settle(self._form.texts["name"].strip() or "the new made piece", self._save) and self.winfo_exists():
            self.close()

    def _save(self) -> bool:
        if not self._saved():
            return False
        if self._form.is_dirty:
            self.refusal.configure(text=f"✕ {MEANWHILE}")
        else:
            self.close()
        self._done(f"“{self._form.texts['name'].strip()}” is saved. {self._form.taught() or COUNTED_IN}")
        return True

    def _delete(self) -> None:
        if self._try(self._form.delete):
            self.close()
            self._done(f"“{self._form.texts['name'].strip()}” is deleted. Undo brings it back.")
