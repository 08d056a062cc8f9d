"""What was really made: a form in a window of its own, begun from a piece or on its own."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk
from typing import NamedTuple

from logbook.errors import RefusedError
from logbook.pages.dates import typed_date
from logbook.pages.picture_shelf import PictureShelf
from logbook.pages.pieces.made_form import LENGTHS, MadeForm
from logbook.pages.pieces.plan_texts import with_unit
from logbook.pages.session import Session
from logbook.pages.typed_since import MEANWHILE
from logbook.window.dialog import Dialog
from logbook.window.field import Field, LabelledField
from logbook.window.field_row import FieldRow
from logbook.window.followed_fields import FollowedFields
from logbook.window.look import Look
from logbook.window.pictures_field import PicturesField
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.text_field import TextField
from logbook.window.unsaved import ask_of_unsaved

LABEL_LETTERS = 18
COUNTED_IN = "What it measures is counted into the next piece."


class Line(NamedTuple):
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
    Line((("size", "Si&ze", 8), ("date", "Da&te", 12), ("worked by", "Worked &by", 16))),
    Line((("yarn used", "&Yarn it was made of", 28), ("lot used", "Dye &lot", 10))),
    Line((("chain", "&Chained", 8), ("rows", "&Rows worked", 8), ("hook", "&Hook", 10))),
    Line((("predicted width", "Width by the swatch", 12), ("worked width", "as &worked", 10), ("washed width", "w&ashed", 10))),
    Line((("predicted length", "Length by the swatch", 12), ("worked length", "as worked", 10), ("washed length", "washed", 10))),
    Line((("predicted grams", "Yarn &planned", 10), ("grams used", "Yarn &used", 10))),
    Line(
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


class _MadeDialog(Dialog):
    def __init__(self, parent: tk.Misc, look: Look, session: Session, form: MadeForm, done: Callable[[str], object]) -> None:
        super().__init__(parent, look, "Made piece", self._give_up, lambda: session.waiting)
        self._session, self._form, self._done = session, form, done
        self._followed = FollowedFields(self._typed, self._leave)
        self.fields = self._followed.fields
        self._hints: dict[str, str] = {}
        scrolled = Scrolled(self.inside, look, 64)
        scrolled.grid(row=0, column=0, sticky="nsew")
        self.inside.rowconfigure(0, weight=1)
        self._build(scrolled.inside)
        self.refusal = Sentence(self.inside, " ", "Error.TLabel")
        look.grid(self.refusal, row=1, column=0, sticky="ew", pady=(1, 0))
        if form.is_saved:
            self.add_button("&Delete", self._delete)
        self.add_button("&Cancel", self.leave)
        self.save_button = self.add_button("&Save", self._save, accent=True)
        self.bind("<Control-s>", lambda _: self._save())
        self._show()
        self.update_idletasks()
        scrolled.canvas.configure(height=min(scrolled.inside.winfo_reqheight(), self.winfo_screenheight() * 2 // 3))

    def _build(self, place: ttk.Frame) -> None:
        place.columnconfigure(0, weight=1)
        for part in WORKED:
            self._put(place, part)
        self.beside = Sentence(place, " ")
        self.look.grid(self.beside, row=place.grid_size()[1], column=0, sticky="ew", pady=(0, 1))
        for part in AFTERWARDS:
            self._put(place, part)
        pictures = PicturesField(place, self.look, "Pictures", PictureShelf(self._session), label_width=LABEL_LETTERS)
        self.look.grid(self._add("pictures", pictures), row=place.grid_size()[1], column=0, sticky="ew", pady=(1, 0))

    def _put(self, place: ttk.Frame, part: Line | Whole) -> None:
        row = place.grid_size()[1]
        if isinstance(part, Line):
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
        return Field(place, self.look, label, width=width, unit=UNITS.get(key, ""))

    def _add(self, key: str, field: LabelledField) -> LabelledField:
        return self._followed.follow(key, field)

    def _typed(self, key: str) -> None:
        if self.fields[key].text != self._form.texts[key]:
            self._followed.touched(key)
            self._form.type_in(key, self.fields[key].text)
            self._show()

    def _leave(self, key: str) -> None:
        """A length stands there with its unit, a date as it is kept."""
        if key == "date":
            self.fields[key].text = typed_date(self.fields[key].text)
        if key in LENGTHS:
            self.fields[key].text = with_unit(self.fields[key].text, self._session.units)
        self._show()

    def _show(self) -> None:
        self._followed.show(self._form.texts)
        errors = self._form.read().errors
        for key, field in self.fields.items():
            error = self._followed.fault(key, errors.get(key))
            field.show_message(error or self._hints.get(key) or None, "error" if error else "hint")
        self.beside.configure(text=self._form.beside() or " ")

    def _give_up(self) -> None:
        if not self._form.is_dirty:
            self.close()
            return
        answer = ask_of_unsaved(self, self.look, self._session, self._form.texts["name"].strip() or "the new made piece")
        if answer == "save":
            self._save()
        elif answer == "drop":
            self.close()

    def _save(self) -> None:
        try:
            errors = self._form.save()
        except RefusedError as error:
            self.refusal.configure(text=f"✕ {error}")
            return
        if errors:
            self._followed.leave(errors)
            self._show()
            self.fields[next(iter(errors))].input.focus_set()
            return
        if self._form.is_dirty:
            self.refusal.configure(text=f"✕ {MEANWHILE}")
        else:
            self.close()
        self._done(f"“{self._form.texts['name'].strip()}” is saved. {self._form.taught() or COUNTED_IN}")

    def _delete(self) -> None:
        try:
            self._form.delete()
        except RefusedError as error:
            self.refusal.configure(text=f"✕ {error}")
            return
        self.close()
        self._done(f"“{self._form.texts['name'].strip()}” is deleted. Undo brings it back.")
