"""What follows: the starting chain for a width, live."""

import tkinter as tk
from collections.abc import Callable, Iterable, Mapping
from functools import partial
from tkinter import ttk

from logbook.craft.words.lengths import Units, show_length
from logbook.pages.pieces.plan_texts import FINISH, PARITY, TICKED, taken_unit
from logbook.pages.swatches.chain_card import NOT_YET, ChainCard
from logbook.pages.swatches.chain_drawing import chain_drawing
from logbook.pages.swatches.chain_texts import CHOOSE, ChainTexts
from logbook.window.canvas import DrawingCanvas
from logbook.window.card import Card
from logbook.window.choices import ChoiceField
from logbook.window.field import Field, LabelledField
from logbook.window.fitting import FittingColumns
from logbook.window.flow import Flow
from logbook.window.folding import Folding
from logbook.window.followed_fields import FollowedFields
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.swatches.first_stitch_buttons import FirstStitchButtons
from logbook.window.table import Column, Row, Table
from logbook.window.tick_box import TickBox

LABEL_LETTERS = 16
SENTENCE_LINES = 2
"""Lines of what explains the answer that are in view in any case."""
OPTION_COLUMNS = (
    Column("chain", "Chain", 6, "right", grow=True),
    Column("width", "Makes", 7, "right", grow=True),
    Column("difference", "Difference", 7, "right", grow=True),
    Column("repeats", "Repeats", 5, "right", grow=True),
    Column("stitches", "Stitches", 5, "right", grow=True),
    Column("swatch", "Swatch ±", 7, "right", grow=True),
    Column("piece", "Piece ±", 7, "right", grow=True),
    Column("before", "Unwashed", 7, "right", grow=True),
)
OPTION_NEED = ("chain", "width", "difference", "repeats", "piece", "swatch", "stitches", "before")
PLAIN_NEED = ("chain", "width", "difference", "stitches", "piece", "swatch", "before")
"""Of a plain stitch a repeat is a stitch."""
ROW_COLUMNS = (
    Column("rows", "Rows", 6, "right", grow=True),
    Column("width", "Width", 7, "right", grow=True),
    Column("difference", "Difference", 7, "right", grow=True),
    Column("swatch", "Swatch ±", 7, "right", grow=True),
    Column("piece", "Piece ±", 7, "right", grow=True),
)
ROW_NEED = ("rows", "width", "difference", "piece", "swatch")
TICKS = {
    "in_round": "Worked in the round",
    "joined_after_row_1": "Row 1 flat, then joined",
    "foundation_stitches": "Foundation stitches",
    "half_repeats": "Half repeats",
    "sideways": "Worked sideways",
}
BODY, THEIRS, WAYS = "swatches.body", "swatches.theirs", "swatches.ways"
SECTION_KEYS = {
    THEIRS: {"their_gauge", "their_count"},
    BODY: {"body", "ease", "panels", "seam"},
    WAYS: {"edging", "choose", "parity", "finish", "round_plus", "length", *TICKS},
}
"""What is typed and ticked in each section that folds."""


class WidthField(Field):
    """The field of the main job: what is wrong with it is said where the answer would stand, not under it."""

    line_below = False


class ChainView(Card):
    """The width and the number of chains stay in view; below them lies what explains it. ``on_change`` follows every key.

    ``above`` the width and ``beneath`` the answer there is room for what an empty logbook begins with, ``below`` for more at
    the end of it.
    """

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        units: Callable[[], Units],
        opened: Iterable[str],
        on_change: Callable[[], object],
        on_fold: Callable[[str, bool], object],
        on_begin: Callable[[Mapping[str, str]], object],
    ) -> None:
        super().__init__(parent, look, fills=True)
        self.look, self._units = look, units
        self._on_change, self._on_fold = on_change, on_fold
        self._opened = set(opened)
        self._followed = FollowedFields(self._typed, lambda _: self._say())
        self._fields = self._followed.fields
        self._ticks: dict[str, tk.BooleanVar] = {}
        self._from_body: Sentence | None = None
        self._foldings: dict[str, Folding] = {}
        self._to_build: dict[str, Callable[[], None]] = {}
        self._card = ChainCard()
        self.rowconfigure(7, weight=1)
        self._build_head(on_begin)
        self._scrolled = Scrolled(self, look, 10)
        self._scrolled.grid(row=7, column=0, sticky="nsew")
        for key, pages in {"Prior": -1, "Next": 1}.items():  # what explains the answer can be read without leaving the width
            self.width.input.bind(f"<{key}>", partial(self._page, pages))
        self._build(self._scrolled.inside, on_begin)
        self._show_units()
        look.when_changed(self, self._show_units)

    def _build_head(self, on_begin: Callable[[Mapping[str, str]], object]) -> None:
        """What stays in view."""
        look = self.look
        self._title = Sentence(self, "Starting chain", "Title.TLabel")
        look.grid(self._title, row=0, column=0, sticky="ew", pady=(0, 1))
        self._above = Scrolled(self, look, 10)
        self._above.grid(row=1, column=0, sticky="ew")
        self.above = self._above.inside
        for widget in (self, self.above):
            widget.bind("<Configure>", lambda _: self._fit_above(), add="+")
        self.width = self._add(WidthField(self, look, "Finished width w&anted", width=9, label_width=20), "width")
        self.count = self._add(WidthField(self, look, "or number of chains", width=6, label_width=20), "chain")
        look.grid(self.width, row=2, column=0, sticky="ew", pady=(0, 0.5))
        look.grid(self.count, row=3, column=0, sticky="ew", pady=(0, 1))
        self.headline = ttk.Label(self, text=NOT_YET, style="Card.Result.TLabel")
        self.headline.grid(row=4, column=0, sticky="w")
        self.begins = FirstStitchButtons(self, look, on_begin)
        look.grid(self.begins, row=5, column=0, sticky="w", pady=(1, 0))
        self.begins.grid_remove()
        self.beneath = ttk.Frame(self, style="Card.TFrame")
        look.grid(self.beneath, row=6, column=0, sticky="ew", pady=(1, 0))

    def texts(self) -> ChainTexts:
        """What is typed, chosen and ticked just now."""
        texts = {name: field.text for name, field in self._fields.items()}
        return ChainTexts(**texts, **{name: ticked.get() for name, ticked in self._ticks.items()})  # type: ignore[arg-type]

    def show(self, card: ChainCard) -> None:
        """Shows the answer of this moment, or that there is none yet and why."""
        self._card = card
        self.begins.show(card.begins)
        self.forms.show(card.forms)
        self._fitting.need(PLAIN_NEED if card.answer is not None and card.answer.pattern.multiple in (None, 1) else OPTION_NEED)
        self.options.set_rows(Row(str(i), one.cells, tuple(range(len(one.cells)))) for i, one in enumerate(card.options))
        self._show_rows(card)
        self._say_notes(None)
        if card.recommended is not None:
            self.options.select([str(card.recommended)])
        self._show_option(card.recommended)
        self._say()

    @property
    def target_mm(self) -> float | None:
        """What the chain shown aims at; None while there is none."""
        return self._card.answer.target_mm if self._card.answer else None

    def take_up(self, texts: Mapping[str, str]) -> None:
        """Types these texts and ticks these boxes, opening the sections they are in."""
        for name, keys in SECTION_KEYS.items():
            if keys & texts.keys():
                self._foldings[name].show(True)
                self._folded(name, True)
        for key, field in self._fields.items():
            field.text = texts.get(key, field.text)
        for key, ticked in self._ticks.items():
            ticked.set(texts[key] == TICKED if key in texts else ticked.get())
        self._on_change()

    def ask_for_chains(self, wanted: bool) -> None:
        """Whether a chain may be typed instead of a width: not while an empty logbook asks for more than that ``above``."""
        shown, hidden = (self.count, self._above) if wanted else (self._above, self.count)
        hidden.grid_remove()
        shown.grid()

    def _fit_above(self) -> None:
        """What is above scrolls where the answer would not be in view."""
        below = (self._title, self.width, self.headline, self.begins, self.beneath)
        taken = sum(widget.winfo_reqheight() for widget in below if widget.winfo_manager()) + self.look.pixels(12)
        room = self.winfo_height() - taken - SENTENCE_LINES * self.look.line
        self._above.canvas.configure(height=max(1, min(self.above.winfo_reqheight(), max(room, 3 * self.look.line))))

    def start(self) -> None:
        """Puts the keyboard into the wanted width, its text marked."""
        self.width.input.focus_set()
        self.width.input.event_generate("<<SelectAll>>")

    def _page(self, pages: int, _: object) -> None:
        self._scrolled.canvas.yview_scroll(pages, "pages")

    def settings_changed(self) -> None:
        """Other units."""
        self._show_units()

    def _build(self, place: ttk.Frame, on_begin: Callable[[Mapping[str, str]], object]) -> None:
        place.columnconfigure(0, weight=1)
        look = self.look
        self.sentence = Sentence(place)
        self.drawing = DrawingCanvas(place, look)
        self.options = Table(place, look, OPTION_COLUMNS, self._option_chosen)
        self._fitting = FittingColumns(self.options, OPTION_NEED)
        self.rows: Table | None = None
        self._row_place = ttk.Frame(place, style="Card.TFrame")
        self.notes = Sentence(place, style="Muted.TLabel")
        look.grid(self.sentence, row=0, column=0, sticky="ew", padx=(0, 1), pady=(0.5, 1.5))
        look.grid(self.drawing, row=1, column=0, sticky="ew", padx=(0, 1), pady=(0, 1.5))
        look.grid(self.options, row=2, column=0, sticky="ew", padx=(0, 1), pady=(0, 1.5))
        look.grid(self._row_place, row=3, column=0, sticky="ew", padx=(0, 1), pady=(0, 1.5))
        look.grid(self.notes, row=10, column=0, sticky="ew", padx=(0, 1), pady=(1.5, 0))
        self._row_place.grid_remove()
        self.forms = FirstStitchButtons(place, look, on_begin)
        look.grid(self.forms, row=4, column=0, sticky="ew", padx=(0, 1), pady=(0, 1.5))
        self.forms.grid_remove()
        self.folds = Flow(place, look)
        self.folds.grid(row=5, column=0, sticky="ew")
        self._section(place, BODY, "From a &body measure", self._build_body).grid(row=6, column=0, sticky="ew")
        self._section(place, THEIRS, "From a pattern’s gauge", self._build_theirs).grid(row=7, column=0, sticky="ew")
        self._section(place, WAYS, "&More ways", self._build_ways).grid(row=8, column=0, sticky="ew")
        self.below = ttk.Frame(place, style="Card.TFrame")
        self.below.columnconfigure(0, weight=1)
        self.below.grid(row=9, column=0, sticky="ew")

    def _show_rows(self, card: ChainCard) -> None:
        """The rows of a piece worked sideways; their table is made when the first such piece is asked for."""
        if self.rows is None and card.rows:
            self._row_place.columnconfigure(0, weight=1)
            Sentence(self._row_place, "Rows for the width", "Section.TLabel").grid(sticky="ew")
            self.rows = Table(self._row_place, self.look, ROW_COLUMNS, lambda _: None)
            FittingColumns(self.rows, ROW_NEED)
            self.rows.grid(sticky="ew")
        if self.rows is not None:
            self.rows.set_rows(Row(str(i), one.cells, tuple(range(len(one.cells)))) for i, one in enumerate(card.rows))
        if card.rows:
            self._row_place.grid()
        else:
            self._row_place.grid_remove()

    def _section(self, place: ttk.Frame, name: str, title: str, build: Callable[[ttk.Frame], None]) -> Folding:
        folding = Folding(place, title, name in self._opened, lambda is_open: self._folded(name, is_open), self.folds)
        folding.inside.columnconfigure(0, weight=1)
        self._foldings[name] = folding
        self._to_build[name] = lambda: build(folding.inside)
        if folding.is_open:
            self._to_build.pop(name)()
        return folding

    def _folded(self, name: str, is_open: bool) -> None:
        """What is folded away is made when it is first opened."""
        if is_open and name in self._to_build:
            self._to_build.pop(name)()
            self._show_units()
            self._say()
        self._on_fold(name, is_open)

    def _build_body(self, place: ttk.Frame) -> None:
        labels = {"body": "Round the body", "ease": "Ease", "panels": "Panels round", "seam": "A seam takes"}
        for name, label in labels.items():
            self._next_field(Field(place, self.look, label, width=9, label_width=LABEL_LETTERS), name)
        self._from_body = Sentence(place)
        self._from_body.grid(sticky="ew")

    def _build_theirs(self, place: ttk.Frame) -> None:
        self._next_field(Field(place, self.look, "Their gauge", width=16, label_width=LABEL_LETTERS), "their_gauge")
        count = Field(place, self.look, "Their count", width=16, label_width=LABEL_LETTERS)
        count.show_example("e.g. 90, or ch 92")
        self._next_field(count, "their_count")

    def _build_ways(self, place: ttk.Frame) -> None:
        look = self.look
        self._next_field(Field(place, look, "Edging each side", width=9, label_width=LABEL_LETTERS), "edging")
        for name, label, choices in (
            ("choose", "Width should be", CHOOSE),
            ("parity", "Stitch count", PARITY),
            ("finish", "Finished size is", FINISH),
        ):
            self._next_field(ChoiceField(place, look, label, tuple(choices), width=16, label_width=LABEL_LETTERS), name)
        self._tick(place, "in_round")
        self._next_field(Field(place, look, "plus in the round", width=6, label_width=LABEL_LETTERS), "round_plus")
        for name in ("joined_after_row_1", "foundation_stitches", "half_repeats", "sideways"):
            self._tick(place, name)
        self._next_field(Field(place, look, "Finished length", width=9, label_width=LABEL_LETTERS), "length")

    def _next_field(self, field: LabelledField, name: str) -> None:
        """The next field of a section."""
        self.look.grid(self._add(field, name), sticky="ew", pady=(0, 0.5))

    def _add(self, field: LabelledField, name: str) -> LabelledField:
        return self._followed.follow(name, field)

    def _tick(self, place: ttk.Frame, name: str) -> None:
        ticked = self._ticks[name] = tk.BooleanVar(self, False)
        TickBox(place, self.look, TICKS[name], ticked, self._on_change).grid(sticky="w")

    def _typed(self, name: str) -> None:
        self._followed.touched(name)
        self._on_change()

    def _say(self) -> None:
        """Messages under the fields; what does not count, as something else stands before it, can't be typed."""
        card, texts = self._card, self.texts()
        for name, field in self._fields.items():
            field.show_message(self._followed.fault(name, card.errors.get(name)) or None)
        self._show_units()
        outdone = {"width": texts.width_follows, **dict.fromkeys(SECTION_KEYS[THEIRS], texts.from_chain)}
        outdone |= dict.fromkeys(SECTION_KEYS[BODY], texts.from_chain or texts.from_theirs)
        for name in outdone.keys() & self._fields.keys():
            self._fields[name].input.state(["disabled" if outdone[name] else "!disabled"])  # type: ignore[attr-defined]
        if self._from_body is not None:
            self._from_body.configure(text=card.body_width or " ")

    def _option_chosen(self, keys: tuple[str, ...]) -> None:
        if keys:
            self._show_option(int(keys[0]))

    def _show_option(self, place: int | None) -> None:
        answer = self._card.answer
        if place is None or answer is None:
            self.headline.configure(text=NOT_YET)
            self.sentence.configure(text=self._card.missing)
            self.drawing.show(None)
            for widget in (self.drawing, self.options):
                widget.grid_remove()
            return
        for widget in (self.drawing, self.options):
            widget.grid()
        shown = self._card.options[place]
        self.headline.configure(text=shown.headline)
        self.sentence.configure(text=shown.brief)
        self._say_notes(shown.option.before_washing_mm)
        self.drawing.show(chain_drawing(answer, shown.option, self._units()))

    def _say_notes(self, before_washing_mm: float | None) -> None:
        tape = f"Before washing it measures {show_length(before_washing_mm, self._units())}." if before_washing_mm else ""
        self.notes.configure(text="\n".join(note for note in (tape, *self._card.notes) if note))
        if self.notes.cget("text"):
            self.notes.grid()
        else:
            self.notes.grid_remove()

    def _show_units(self) -> None:
        """After each length the unit it is taken in, but where one is typed."""
        units = self._units()
        shown = {**dict.fromkeys(("width", "body", "seam", "edging", "length"), units.value), "ease": f"{units.value} or %"}
        for name in shown.keys() & self._fields.keys():
            field = self._fields[name]
            field.show_unit("" if field.text.strip() and not taken_unit(field.text, units) else shown[name])
