"""What follows from the garment in hand: drawing, numbers, sizes, the written pattern; live."""

import tkinter as tk
from collections.abc import Callable
from functools import partial
from tkinter import ttk
from typing import NamedTuple

from logbook.craft.garments.garment_drawing import piece_drawing, pieces_drawing
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units
from logbook.pages.garments.garment_card import GarmentCard, GarmentMaker, yarn_sentences
from logbook.pages.garments.join_fix import JoinFix
from logbook.pages.garments.joins_words import join_lines
from logbook.pages.garments.number_rows import size_rows
from logbook.window.canvas import DrawingCanvas
from logbook.window.card import Card
from logbook.window.fitting import FittingColumns
from logbook.window.flat_choice import FlatChoice
from logbook.window.garments.joins_table import JoinsTable
from logbook.window.garments.numbers_view import GIVE_OR_TAKE, WIDTHS, NumbersView
from logbook.window.garments.pattern_view import PatternActions, PatternView
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

DRAWING, NUMBERS, SIZES, PATTERN = "Drawing", "Numbers", "Sizes", "Pattern"
VIEWS = (DRAWING, NUMBERS, SIZES, PATTERN)
MOST_PROBLEMS = 3
"""So many are in view at once; how many more there are is said."""
LONGEST_SIZE = 14
"""Letters of a size's name that the table of sizes makes room for."""
SHORT = 18
"""Lines of text that leave no room for headline and sentences above what they are about."""
BESIDE_FIX = 26
"""Letters that a trouble wants beside the button that mends it, which else stands beneath."""
LAST_NEEDED = ("Cost", "Hours", GIVE_OR_TAKE)
"""Columns of the table of sizes that give way to the others, the last of them first."""
ABREAST = 62
"""Letters that the large piece and all pieces side by side want."""


class FollowActions(NamedTuple):
    """What the view asks for: another size or view is shown, a join is mended."""

    size_chosen: Callable[[str], object]
    view_chosen: Callable[[str], object]
    fix: Callable[[JoinFix], object]


class FollowView(Card):
    """Headline, size and troubles stay in view; below them stands the view that was chosen."""

    def __init__(
        self, parent: tk.Misc, look: Look, units: Callable[[], Units], actions: FollowActions, pattern: PatternActions
    ) -> None:
        super().__init__(parent, look, fills=True)
        self.look, self._units, self._do = look, units, actions
        self.views = FlatChoice(self, look, actions.view_chosen)
        self.headline = Sentence(self, "—", "Result.TLabel")
        self.sizes = FlatChoice(self, look, actions.size_chosen)
        self.sentences = Sentence(self)
        self.troubles = ttk.Frame(self, style="Card.TFrame")
        self.troubles.columnconfigure(1, weight=1)
        self.troubles.bind("<Configure>", lambda _: self._place_fixes(), add="+")
        self._places: dict[str, ttk.Frame] = {}
        self._size_columns: list[Column] = []
        self._size_table: Table
        self._size_words: Sentence
        for row, widget in enumerate((self.views, self.headline, self.sizes, self.sentences, self.troubles)):
            look.grid(widget, row=row, column=0, sticky="ew", pady=(0, 0.7))
        self.rowconfigure(5, weight=1)
        self.views.show({name: name for name in VIEWS}, DRAWING)
        self._build_drawing()
        self.numbers = self._places[NUMBERS] = NumbersView(self, look)
        self._build_sizes()
        self.pattern = PatternView(self, look, pattern)
        self._places[PATTERN] = self.pattern
        self._problems: object = None
        self._fixes: dict[JoinFix, ttk.Button] = {}
        places = {DRAWING: self._drawing.inside, NUMBERS: self.numbers.inside, SIZES: self._size_place}
        self._at_the_end = {name: Sentence(place) for name, place in places.items()}
        for sentence in self._at_the_end.values():
            look.grid(sentence, row=9, column=0, columnspan=2, sticky="ew", pady=(1, 0))
        self._says = ""
        self.bind("<Configure>", lambda _: self._follow_height(), add="+")
        self.show_view(DRAWING)

    @property
    def view(self) -> str:
        """The name of the view that is shown."""
        return self.views.chosen

    def show_view(self, name: str) -> None:
        """Shows one view."""
        self.views.show({one: one for one in VIEWS}, name)
        for one, place in self._places.items():
            if one == name:
                place.grid(row=5, column=0, sticky="nsew")
            else:
                place.grid_remove()
        self._show_headline()

    def _follow_height(self) -> None:
        self._show_headline()
        self._say_sentences()

    @property
    def _is_low(self) -> bool:
        return 1 < self.winfo_height() < SHORT * self.look.line

    def _show_headline(self) -> None:
        """Where there is little height what is read line by line has it all."""
        if self.view in (SIZES, PATTERN) and self._is_low:
            self.headline.grid_remove()
        else:
            self.headline.grid()

    def show(self, card: GarmentCard, bad_sizes: frozenset[str]) -> None:
        """Shows the answer of this moment, or that there is none yet and why."""
        self.headline.configure(text=card.headline_of_size if self.view in (SIZES, PATTERN) else card.headline)
        self.show_sizes(card, bad_sizes)
        self._says = "" if self.view == PATTERN else "\n".join(card.sentences)
        self._say_sentences()
        self.show_troubles(card)
        if self.view == DRAWING:
            self._show_drawing(card)
        elif self.view == NUMBERS:
            self.numbers.show(card, self._units())

    def _say_sentences(self) -> None:
        """Above the view; where there is little height at its end, so that what is looked at is in view."""
        low = self._is_low
        _say(self.sentences, "" if low else self._says)
        for name, sentence in self._at_the_end.items():
            _say(sentence, self._says if low and name == self.view else "")

    def show_sizes(self, card: GarmentCard, bad_sizes: frozenset[str]) -> None:
        """The sizes to step through, each with its sign where something does not fit."""
        if len(card.sizes) > 1 and self.view not in (SIZES, PATTERN):
            self.sizes.show({name: f"✕ {name}" if name in bad_sizes else name for name in card.sizes}, card.size)
            self.sizes.grid()
        else:
            self.sizes.grid_remove()

    def show_table(self, card: GarmentCard, maker: GarmentMaker) -> None:
        """The table of all sizes, as far as they are worked out."""
        headings, rows, sentences = size_rows(card, maker, self._units())
        longest = max((len(cells[0]) for cells in rows), default=0)
        columns = [Column(headings[0], headings[0], min(max(5, longest), LONGEST_SIZE))]
        columns += [Column(text, text, max(5, len(text), WIDTHS.get(text, 0)), "right", grow=True) for text in headings[1:]]
        if columns != self._size_columns:
            self._size_columns = columns
            self._size_table.destroy()
            self._size_table = Table(self._size_place, self.look, columns, lambda _: None)
            FittingColumns(
                self._size_table, sorted(headings, key=lambda name: name in LAST_NEEDED and 1 + LAST_NEEDED.index(name))
            )
            self._size_table.grid(row=0, column=0, sticky="ew")
        self._size_table.set_rows(Row(cells[0], cells, (number,) * len(cells)) for number, cells in enumerate(rows))
        self._size_table.tree.configure(height=max(2, min(len(rows), 12)))
        _say(self._size_words, "\n".join(sentences))

    def _build_drawing(self) -> None:
        scrolled = Scrolled(self, self.look, 10)
        place = scrolled.inside
        self._places[DRAWING] = scrolled
        self._drawing = scrolled
        self.large = DrawingCanvas(place, self.look)
        self.beside = ttk.Frame(place, style="Card.TFrame")
        self.beside.columnconfigure(0, weight=1)
        self.all_words = Sentence(self.beside, "All pieces, one scale", "Section.TLabel")
        self.all = DrawingCanvas(self.beside, self.look)
        self.below = ttk.Frame(place, style="Card.TFrame")
        self.below.columnconfigure(0, weight=1)
        self.joins = JoinsTable(self.below, self.look)
        self.yarn = Sentence(self.below, style="Muted.TLabel")
        self.notes = Sentence(self.below, style="Muted.TLabel")
        for row, widget in enumerate((self.all_words, self.all)):
            widget.grid(row=row, column=0, sticky="ew")
        for row, widget in enumerate((self.joins, self.yarn, self.notes)):
            self.look.grid(widget, row=row, column=0, sticky="ew", pady=(0.5, 0.5))
        for frame in (place, self.beside, self.below):  # without anything in it each would keep its height
            ttk.Frame(frame, style="Card.TFrame", height=1).grid(row=3, column=0)
        self._card = GarmentCard()
        scrolled.canvas.bind("<Configure>", lambda _: self._arrange_drawing(), add="+")
        self.look.when_changed(place, self._arrange_drawing)

    def _arrange_drawing(self) -> None:
        """The large piece and all pieces side by side where there is room."""
        wide = self._drawing.canvas.winfo_width()
        if wide <= 1:
            return
        place = self._drawing.inside
        alone = self._card.chosen is None
        abreast = wide >= ABREAST * self.look.letter and not alone
        if alone:
            self.large.grid_remove()
        else:
            self.large.grid(row=0, column=0, sticky="new")
        gap = self.look.pixels(3) if abreast else 0
        self.beside.grid(row=0 if abreast else 1, column=1 if abreast else 0, sticky="new", padx=(gap, 0))
        self.below.grid(row=1 if abreast else 2, column=0, columnspan=2, sticky="ew")
        place.columnconfigure(0, weight=11 if abreast else 1, uniform="drawing" if abreast else "")
        place.columnconfigure(1, weight=9 if abreast else 0, uniform="drawing" if abreast else "")
        self._draw_large()

    def _draw_large(self) -> None:
        card, garment = self._card, self._card.garment
        if garment is None or card.chosen is None:
            self.large.show(None)
            return
        below = 1.5 * (len(garment.joins) + 1) + 1.5
        highest = max(9.0, self._drawing.canvas.winfo_height() / self.look.line - 5.2 - below)
        self.large.show(piece_drawing(garment, card.chosen.name, self._units(), highest))

    def _show_drawing(self, card: GarmentCard) -> None:
        self._card = card
        garment = card.garment
        self._arrange_drawing()
        self.all.show(pieces_drawing(garment) if garment is not None and garment.pieces else None)
        lines = join_lines(garment, self._units()) if garment is not None else []
        self.joins.show(lines)
        _there(self.joins, bool(lines))
        _there(self.all, bool(garment and garment.pieces))
        _there(self.all_words, bool(garment and garment.pieces))
        _say(self.yarn, " ".join(yarn_sentences(garment, len(card.sizes) == 1)) if garment is not None else "")
        _say(self.notes, "\n".join(card.notes))

    def _build_sizes(self) -> None:
        scrolled = Scrolled(self, self.look, 10)
        self._places[SIZES] = scrolled
        self._size_place = scrolled.inside
        self._size_place.columnconfigure(0, weight=1)
        self._size_table = Table(self._size_place, self.look, (Column("0", "Size", 6),), lambda _: None)
        self._size_table.grid(row=0, column=0, sticky="ew")
        self._size_words = Sentence(self._size_place)
        self.look.grid(self._size_words, row=1, column=0, sticky="ew", pady=(1.5, 0))

    def show_troubles(self, card: GarmentCard) -> None:
        """Each with a bar at its left; those that can be mended have a button for it."""
        if self.view in (SIZES, PATTERN):
            card = GarmentCard(missing=card.missing)
        chosen = card.chosen.name if card.chosen is not None else ""
        order = sorted(card.problems, key=lambda problem: chosen not in problem.pieces if chosen else False)
        said = (tuple(card.missing), tuple(order), dict(card.fixes), self._units())
        if said == self._problems:
            return
        self._problems = said
        for widget in self.troubles.winfo_children():
            widget.destroy()
        self._fixes = {}
        sentences: list[tuple[str, JoinFix | None]] = [(text, None) for text in card.missing]
        sentences += [(problem.sentence, card.fixes.get(problem.sentence)) for problem in order]
        for row, (sentence, fix) in enumerate(sentences[:MOST_PROBLEMS]):
            self._trouble(row, sentence, fix)
        self._place_fixes()
        more = len(sentences) - MOST_PROBLEMS
        if more > 0:
            words = f"{counted(more, 'more problem')} in this size."
            Sentence(self.troubles, words, "Error.TLabel").grid(row=2 * MOST_PROBLEMS, column=1, sticky="ew")
        _there(self.troubles, bool(sentences))

    def _place_fixes(self) -> None:
        """Beside their troubles where there is room for both, else beneath."""
        wide = self.troubles.winfo_width()
        for button in self._fixes.values() if wide > 1 else ():
            row = int(button.grid_info()["row"]) // 2 * 2
            if wide >= button.winfo_reqwidth() + BESIDE_FIX * self.look.letter:
                button.grid(row=row, column=2, sticky="e")
            else:
                button.grid(row=row + 1, column=1, sticky="w")

    def _trouble(self, row: int, sentence: str, fix: JoinFix | None) -> None:
        bar = tk.Frame(self.troubles, width=3, borderwidth=0, highlightthickness=0)
        self.look.when_changed(bar, lambda: bar.configure(background=self.look.palette.error))
        bar.grid(row=2 * row, rowspan=2, column=0, sticky="ns", padx=(0, self.look.pixels(1.5)), pady=1)
        Sentence(self.troubles, f"✕ {sentence}", "Error.TLabel").grid(row=2 * row, column=1, sticky="ew", pady=2)
        if fix is not None:
            button = ttk.Button(self.troubles, text=fix.words(self._units()), command=partial(self._do.fix, fix))
            self.look.grid(button, row=2 * row, column=2, sticky="e", padx=(2, 0), pady=(0.3, 0.3))
            self._fixes[fix] = button


def _say(sentence: Sentence, text: str) -> None:
    if str(sentence.cget("text")) != text:
        sentence.configure(text=text)
    _there(sentence, bool(text))


def _there(widget: tk.Widget, is_there: bool) -> None:
    if is_there:
        widget.grid()
    else:
        widget.grid_remove()


def _given_way(heading: str) -> int:
    """The higher, the sooner the column gives way."""
    return 1 + LAST_NEEDED.index(heading) if heading in LAST_NEEDED else 0
