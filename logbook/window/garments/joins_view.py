"""The joins of the garment in hand: a list, and the fields of the one chosen."""

import tkinter as tk
from collections.abc import Callable, Mapping
from tkinter import ttk

from logbook.craft.garments.shapes import EDGES
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import JOIN_KEYS, join_key, piece_key
from logbook.pages.garments.joins_words import join_words
from logbook.window.button_bar import ButtonBar
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import LabelledField
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

COLUMNS = (Column("join", "Join", 20, grow=True, least=10),)
LABEL_LETTERS = 12


class JoinsView(ttk.Frame):
    """Adds, changes and takes out joins; the usual ones of such pieces come with one button."""

    def __init__(self, parent: tk.Misc, look: Look, form: GarmentForm, typed: Callable[[], object]) -> None:
        super().__init__(parent, style="Card.TFrame")
        self.look, self._form, self._typed_in = look, form, typed
        self.columnconfigure(0, weight=1)
        self._showing = False
        self.table = Table(self, look, COLUMNS, self._select)
        self.table.tree.configure(selectmode="browse", show="")
        look.grid(self.table, row=0, column=0, sticky="ew", pady=(0.5, 1))
        bar = ButtonBar(self, look)
        bar.grid(row=1, column=0, sticky="ew")
        self.usual_button = bar.add("Usual joins", self._usual)
        self.add_button = bar.add("Add a join", self._add)
        self.out_button = bar.add("Remove join", self._out)
        self.fields: dict[str, LabelledField] = {}
        self._place = ttk.Frame(self, style="Card.TFrame")
        self._place.columnconfigure(0, weight=1)
        look.grid(self._place, row=2, column=0, sticky="ew", pady=(1, 0))
        labels = {"edge": "The edge", "of": "of piece", "at": "to the edge", "to": "of piece(s)"}
        for row, (key, label) in enumerate(labels.items()):
            field: LabelledField
            if key in ("edge", "at"):
                field = ChoiceField(self._place, look, label, EDGES, width=12, label_width=LABEL_LETTERS)
            else:
                field = SuggestionField(self._place, look, label, self._names, width=14, label_width=LABEL_LETTERS)
            look.grid(field, row=row, column=0, sticky="ew", pady=(0, 0.5))
            field.variable.trace_add("write", lambda *_, key=key: self._typed(key))
            self.fields[key] = field
        self.message = Sentence(self, style="Error.TLabel")
        self.message.grid(row=3, column=0, sticky="ew")
        self.show()

    def show(self) -> None:
        """Shows the joins as they are typed."""
        form = self._form
        if form.join not in form.joins:
            form.join = form.joins[0] if form.joins else 0
        rows = []
        for number in form.joins:
            of, edge, at, to = (form.texts.get(join_key(number, key), "").strip() for key in JOIN_KEYS)
            words = join_words(of, edge, [one.strip() for one in to.split(",") if one.strip()], at)
            rows.append(Row(str(number), (words,), (words,)))
        self.table.set_rows(rows)
        self.table.tree.configure(height=max(1, min(6, len(rows))))
        self.table.select([str(form.join)] if form.join else [])
        self.out_button.state(["!disabled" if form.join else "disabled"])
        self.usual_button.state(["!disabled" if form.pieces else "disabled"])
        self.add_button.state(["!disabled" if form.pieces else "disabled"])
        if form.join:
            self._place.grid()
        else:
            self._place.grid_remove()
        self._show_fields()

    def say_errors(self, errors: Mapping[str, str]) -> None:
        """Says what stands in the way of the join chosen."""
        said = [text for key, text in errors.items() if key.startswith(f"join {self._form.join}: ")]
        self._say(said[0] if said else "")

    def _show_fields(self) -> None:
        form = self._form
        self._showing = True
        for key, field in self.fields.items():
            text = form.texts.get(join_key(form.join, key), "") if form.join else ""
            if field.text != text:
                field.text = text
        self._showing = False
        errors = form.read()
        wrong = {**errors.lacking, **errors.errors}
        self._say(next((wrong[join_key(form.join, key)] for key in JOIN_KEYS if join_key(form.join, key) in wrong), ""))

    def _say(self, text: str) -> None:
        self.message.configure(text=f"✕ {text}" if text else "")
        if text:
            self.message.grid()
        else:
            self.message.grid_remove()

    def _names(self) -> list[str]:
        return [self._form.texts[piece_key(number, "name")].strip() for number in self._form.pieces]

    def _typed(self, key: str) -> None:
        form = self._form
        name = join_key(form.join, key)
        if self._showing or not form.join or form.texts.get(name) == self.fields[key].text:
            return
        if key == "of" and not self.fields[key].text.strip():
            return  # a join without its piece would be none; it stays until another is typed
        form.type_in(name, self.fields[key].text)
        self._typed_in()

    def _select(self, keys: tuple[str, ...]) -> None:
        if keys and int(keys[0]) != self._form.join:
            self._form.join = int(keys[0])
            self._show_fields()

    def _add(self) -> None:
        self._form.add_join()
        self._typed_in()
        self.fields["edge"].input.focus_set()

    def _out(self) -> None:
        self._form.take_join_out()
        self._typed_in()
        self.add_button.focus_set()

    def _usual(self) -> None:
        if not self._form.take_usual_joins():
            self._say("There are no further usual joins for these pieces: add one by hand.")
            return
        self._typed_in()
