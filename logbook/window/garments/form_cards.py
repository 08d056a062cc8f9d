"""The form of the garment in hand or of the piece chosen in it: one card for the garment and one for each shape."""

import tkinter as tk
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial
from tkinter import ttk
from typing import NamedTuple

from logbook.craft.garments.shapes import SHAPES
from logbook.craft.pieces.seams import SEAMS
from logbook.craft.sizes.body_chart import MEASURES
from logbook.pages.garments.garment_card import GarmentCard
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.garment_texts import GARMENT_KEYS, PIECE_KEYS, TICKED, piece_key
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.field import Field, LabelledField
from logbook.window.form_card import FormCard, Item, Section
from logbook.window.garments.form_items import GARMENT_ITEMS, Entry, piece_items
from logbook.window.garments.joins_view import JoinsView
from logbook.window.keyboard import focused
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.text_field import TextField
from logbook.window.tick_box import TickBox

LABEL_LETTERS, VALUE_LETTERS = 16, 9
OWN_SIZES = "Like “M: bust 96 cm; ease 6 cm; end width of sleeve 35 cm”."


class GarmentAround(NamedTuple):
    """What the page gives its form: the card of this moment, and how it hears of changes; ``structure``: of pieces or joins."""

    card: Callable[[], GarmentCard]
    typed: Callable[[], object]
    structure: Callable[[], object]
    fold: Callable[[str, bool], object]
    opened: Iterable[str]


class _PartTexts:
    """The texts of the piece chosen, or of the garment, by the names of their fields."""

    def __init__(self, form: GarmentForm) -> None:
        self._form = form

    @property
    def texts(self) -> Mapping[str, str]:
        keys = PIECE_KEYS if self._form.piece else GARMENT_KEYS
        return {key: self._form.texts.get(full_key(self._form, key), "") for key in keys}


def full_key(form: GarmentForm, key: str) -> str:
    """The name of a text of the form by the name of its field."""
    return piece_key(form.piece, key) if form.piece else key


def shape_in_hand(form: GarmentForm) -> str:
    """The shape of the piece chosen; "" where the garment itself is."""
    return form.piece_text("shape") if form.piece else ""


class PartCard(FormCard):
    """The form of the garment (no shape) or of a piece of one shape.

    The keyboard may leave one of its fields when another card is shown already: what stands there is not of that one's part.
    """

    def __init__(self, parent: tk.Misc, look: Look, form: GarmentForm, shape: str, around: GarmentAround) -> None:
        self.form, self._shape, self._around = form, shape, around
        self._entries: dict[str, Entry] = {}
        self._ticks: dict[str, tk.BooleanVar] = {}
        self.joins: JoinsView | None = None
        self._names: Sentence | None = None
        items: Sequence[Item | Section] = piece_items(SHAPES[shape], tuple(SHAPES)) if shape else GARMENT_ITEMS
        super().__init__(parent, look, _PartTexts(form), items, around.opened, around.typed, around.fold)

    def say(self) -> None:
        """Brings title, what measures come to, and messages up to date."""
        self.say_title(self.form.title)
        card = self._around.card()
        for key, field in self.fields.items():
            field.say_taken_unit()
            error = self.fault(key, card.errors.get(full_key(self.form, key)))
            if error:
                field.show_message(error, waits=self.may_wait(key))
            elif not (self._entries[key].kind == "swatch" and not self.was_left(key) and focused(field) is field.input):
                field.show_message(self._hint(key), "hint")
            if self._entries[key].kind == "measure":
                value = card.values.get(key, "")
                field.show_unit(value or ("—" if self.fields[key].text.strip() else ""))
        if self.joins is not None:
            self.joins.show()
        if self._names is not None:
            self._names.configure(text=self._names_to_use())

    def _hint(self, key: str) -> str | None:
        if self._entries[key].kind == "swatch":
            return self.form.swatches.words(self.fields[key].text) or None
        if self._entries[key].kind == "measure":
            return self._around.card().hints.get(key) or None
        return OWN_SIZES if key == "own sizes" else None

    def _names_to_use(self) -> str:
        garment = self._around.card().garment
        body = [name for name in MEASURES if garment is None or name in garment.size.body]
        read = self.form.read()
        own = [f"{m} of {p.name}" for n, p in read.pieces.items() if n != self.form.piece for m in p.measures]
        return " · ".join((*body, "ease", *own))

    def _make(self, place: ttk.Frame, item: Item) -> ttk.Widget:
        assert isinstance(item, Entry)
        if item.kind == "joins":
            self.joins = JoinsView(place, self.look, self.form, self._around.typed)
            return self.joins
        if item.kind == "names":
            self._names = Sentence(place, style="Muted.TLabel")
            return self._names
        if item.kind == "tick":
            ticked = self._ticks[item.key] = tk.BooleanVar(self, False)
            return TickBox(place, self.look, item.label, ticked, partial(self._ticked, item.key))
        self._entries[item.key] = item
        return self._follow(item.key, self._field(place, item))

    def _field(self, place: ttk.Frame, entry: Entry) -> LabelledField:
        look, label, width = self.look, entry.label, entry.width or 10
        if entry.kind == "swatch":
            suggest = partial(self._swatches, entry.key)
            field = SuggestionField(place, look, label, suggest, width=width, label_width=LABEL_LETTERS, grow=True)
            field.box.bind("<<ComboboxSelected>>", lambda _: self._leave(entry.key), add="+")
            return field
        if entry.kind == "seam":
            seams = [seam.name for seam in SEAMS]
            return SuggestionField(place, look, label, lambda: seams, width=width, label_width=LABEL_LETTERS, grow=True)
        if entry.kind in ("choice", "chart"):
            words = self.form.charts if entry.kind == "chart" else entry.words
            return ChoiceField(place, look, label, words, width=width, label_width=LABEL_LETTERS)
        if entry.kind == "lines":
            return TextField(place, look, label, lines=width, label_width=LABEL_LETTERS)
        plain = Field(place, look, label, width=width, label_width=LABEL_LETTERS, grow=not entry.width)
        if entry.example:
            plain.show_example(entry.example)
        if entry.key == "ease":
            plain.show_taken_unit(self.form.taken_unit)
        if entry.kind == "measure":
            plain.show_unit("")
            assert plain.unit is not None
            plain.unit.configure(width=VALUE_LETTERS)  # the field keeps its width whatever stands after it
        return plain

    def _swatches(self, key: str) -> list[str]:
        known = self.form.swatches.line(self.fields[key].text)
        return self.form.swatches.offered("" if known else self.fields[key].text)

    def _ticked(self, key: str) -> None:
        self._typed(key, TICKED if self._ticks[key].get() else "")

    def _typed(self, key: str, text: str) -> None:
        if self._shape != shape_in_hand(self.form):
            return
        entry = self._entries.get(key)
        if entry is not None and entry.kind == "choice" and not self._form.texts[key] and text == entry.words[0]:
            return  # what is not said is as usual
        super()._typed(key, text)

    def _show_texts(self) -> None:
        for key, field in self.fields.items():
            text = self._form.texts[key]
            if not text and self._entries[key].kind == "choice":
                text = self._entries[key].words[0]
            if field.text != text:
                field.text = text
        for key, ticked in self._ticks.items():
            ticked.set(self._form.texts[key] == TICKED)

    def _type_in(self, key: str, text: str) -> None:
        self.form.type_in(full_key(self.form, key), text)
        if key == "shape":
            self.form.change_shape()

    def _leave(self, key: str) -> None:
        """A swatch chosen from the list stands there by its tag alone."""
        if self._shape != shape_in_hand(self.form):
            return
        field, swatches = self.fields[key], self.form.swatches
        if self._entries[key].kind == "swatch" and swatches.line(field.text) and field.text != swatches.tag(field.text):
            field.text = swatches.tag(field.text)
        super()._leave(key)


class GarmentEditor(ttk.Frame):
    """Shows the card for what is chosen; each is made when it is first needed."""

    def __init__(self, parent: tk.Misc, look: Look, form: GarmentForm, around: GarmentAround) -> None:
        super().__init__(parent, width=1, height=1)
        self.look, self.form, self._around = look, form, around
        self.grid_propagate(False)
        self.columnconfigure(0, weight=1)
        self.rowconfigure(0, weight=1)
        self._cards: dict[str, PartCard] = {}
        self._shown: PartCard | None = None
        self.show()

    @property
    def card(self) -> PartCard:
        """The card that is shown."""
        assert self._shown is not None
        return self._shown

    @property
    def fields(self) -> Mapping[str, LabelledField]:
        """The fields of the card that is shown."""
        return self.card.fields

    def show(self) -> None:
        """Shows the garment or the piece in hand as the form has it; a keyboard in the card before goes to this one."""
        before = self._shown
        here = focused(self)
        changed = self._choose()
        self.card.show()
        if changed and before is not None and str(here).startswith(f"{before}."):
            self.start()

    def say(self) -> None:
        """Brings what follows from the texts up to date; a piece that has got another shape gets its card."""
        if self._choose():
            self.card.show()
            self.update_idletasks()  # what is not drawn yet takes no keyboard, and the next key would go elsewhere
            self.card.fields["shape" if self.form.piece else "name"].input.focus_set()
        else:
            self.card.say()

    def show_errors(self, errors: Mapping[str, str]) -> None:
        """Goes to the first text that stands in the way, wherever in the garment it is, and says what with it is."""
        here = f"piece {self.form.piece}: " if self.form.piece else ""
        own = {key.removeprefix(here): said for key, said in errors.items() if self._is_here(key)}
        if not own:
            first = next(iter(errors))
            self.form.piece = int(first.split(":")[0].split()[1]) if first.startswith("piece ") else 0
            if first.startswith("join "):
                self.form.join = int(first.split(":")[0].split()[1])
            self._around.structure()
            here = f"piece {self.form.piece}: " if self.form.piece else ""
            own = {key.removeprefix(here): said for key, said in errors.items() if self._is_here(key)}
        self.card.show_errors(own)
        if self.card.joins is not None and any(key.startswith("join ") for key in errors):
            self.card.joins.say_errors(errors)

    def start(self) -> None:
        """Puts the keyboard into the first field."""
        self.card.start()

    def _is_here(self, key: str) -> bool:
        if self.form.piece:
            return key.startswith(f"piece {self.form.piece}: ")
        return not key.startswith("piece ")

    def _choose(self) -> bool:
        """Whether it is another card than before."""
        shape = shape_in_hand(self.form)
        card = self._cards.get(shape)
        if card is None:
            card = self._cards[shape] = PartCard(self, self.look, self.form, shape, self._around)
        if card is self._shown:
            return False
        if self._shown is not None:
            self._shown.grid_remove()
        card.grid(row=0, column=0, sticky="nsew")
        self._shown = card
        return True
