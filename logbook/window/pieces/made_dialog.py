"""What was really made: a form in a window of its own, begun from a piece or on its own."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.errors import RefusedError
from logbook.pages.pieces.made_form import LENGTHS, MadeForm
from logbook.pages.session import Session
from logbook.pages.typed_since import MEANWHILE
from logbook.window.dialog import Dialog
from logbook.window.field import Field, LabelledField
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.text_field import TextField

LABEL_LETTERS = 20
LABELS = {
    "name": "Na&me", "size": "Si&ze", "date": "Da&te", "worked by": "Worked &by",
    "chain": "&Chained", "rows": "&Rows worked", "hook": "&Hook",
    "predicted width": "Width by the swatch", "predicted length": "Length by the swatch",
    "worked width": "Width as &worked", "worked length": "Length as worked",
    "washed width": "Width w&ashed", "washed length": "Length washed",
}  # fmt: skip


def show_made(parent: tk.Misc, look: Look, session: Session, form: MadeForm, done: Callable[[str], object]) -> None:
    """Opens the form; ``done`` is told, in a sentence, what was saved or deleted. Escape leaves all as it was."""
    dialog = _MadeDialog(parent, look, session, form, done)
    dialog.open(dialog.fields["name"].input)
    dialog.wait_window()


class _MadeDialog(Dialog):
    def __init__(self, parent: tk.Misc, look: Look, session: Session, form: MadeForm, done: Callable[[str], object]) -> None:
        super().__init__(parent, look, "Made piece", self.close, lambda: session.waiting)
        self._session, self._form, self._done = session, form, done
        self._showing = False
        self._left: set[str] = set()
        self.fields: dict[str, LabelledField] = {}
        scrolled = Scrolled(self.inside, look, 58)
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
        for row, (key, label) in enumerate(LABELS.items()):
            grow = key == "name"
            unit = self._session.units.value if key in LENGTHS else "mm" if key == "hook" else ""
            field = Field(place, self.look, label, width=14, label_width=LABEL_LETTERS, unit=unit, grow=grow)
            self._add(key, field).grid(row=row, column=0, sticky="ew")
        self.beside = Sentence(place, " ", "Section.TLabel")
        self.look.grid(self.beside, row=len(LABELS), column=0, sticky="ew", pady=(0, 1))
        for row, (key, label) in enumerate({"fits": "How it &fits", "notes": "N&otes"}.items(), len(LABELS) + 1):
            self._add(key, TextField(place, self.look, label, lines=2, label_width=LABEL_LETTERS)).grid(
                row=row, column=0, sticky="ew"
            )

    def _add(self, key: str, field: LabelledField) -> LabelledField:
        self.fields[key] = field
        field.variable.trace_add("write", lambda *_: self._typed(key))
        field.input.bind("<FocusOut>", lambda _: self._leave(key), add="+")
        return field

    def _typed(self, key: str) -> None:
        if not self._showing and self.fields[key].text != self._form.texts[key]:
            self._left.discard(key)
            self._form.type_in(key, self.fields[key].text)
            self._show()

    def _leave(self, key: str) -> None:
        self._left.add(key)
        self._show()

    def _show(self) -> None:
        self._showing = True
        for key, field in self.fields.items():
            if field.text != self._form.texts[key]:
                field.text = self._form.texts[key]
        self._showing = False
        errors = self._form.read().errors
        for key, field in self.fields.items():
            field.show_message(errors.get(key) if key in self._left else None)
        self.beside.configure(text=self._form.beside() or " ")

    def _save(self) -> None:
        try:
            errors = self._form.save()
        except RefusedError as error:
            self.refusal.configure(text=f"✕ {error}")
            return
        if errors:
            self._left.update(errors)
            self._show()
            self.fields[next(iter(errors))].input.focus_set()
            return
        if self._form.is_dirty:
            self.refusal.configure(text=f"✕ {MEANWHILE}")
        else:
            self.close()
        self._done(f"“{self._form.texts['name'].strip()}” is saved; what it measures is counted into the next piece.")

    def _delete(self) -> None:
        try:
            self._form.delete()
        except RefusedError as error:
            self.refusal.configure(text=f"✕ {error}")
            return
        self.close()
        self._done(f"“{self._form.texts['name'].strip()}” is deleted. Undo brings it back.")
