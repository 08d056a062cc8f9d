"""What follows: chain and rows of the piece, marks, yarn and fit, its drawing and its sizes; live."""

import tkinter as tk
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from tkinter import ttk

from logbook.pages.pieces.piece_card import NOT_YET, PieceCard
from logbook.window.canvas import DrawingCanvas
from logbook.window.card import Card
from logbook.window.fitting import FittingColumns
from logbook.window.keyboard import focused
from logbook.window.keys import accelerator
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("what", "", 8, grow=True),
    Column("out", "You get", 8, "right", grow=True),
    Column("asked", "You asked for", 8, "right", grow=True),
    Column("before", "Unwashed", 8, "right", grow=True),
    Column("swatch", "Swatch ±", 8, "right", grow=True),
    Column("piece", "Piece ±", 8, "right", grow=True),
)
NEED = ("what", "out", "piece", "asked", "before", "swatch")


class FollowView(Card):
    """The chain and rows stay in view; below them lies what explains them. ``runs`` is a place for the sizes of the piece."""

    def __init__(self, parent: tk.Misc, look: Look, shape: Callable[[], object]) -> None:
        super().__init__(parent, look, fills=True)
        self.rowconfigure(2, weight=1)
        self._holding = False
        look.grid(Sentence(self, "Your numbers", "Title.TLabel"), row=0, column=0, sticky="ew", pady=(0, 1))
        self.headline = Sentence(self, NOT_YET, "Result.TLabel")
        self.headline.grid(row=1, column=0, sticky="ew")
        self._scrolled = Scrolled(self, look, 10)
        self._scrolled.grid(row=2, column=0, sticky="nsew")
        place = self._scrolled.inside
        place.columnconfigure(0, weight=1)
        self.missing = Sentence(place)
        self.warnings = Sentence(place, style="Warning.TLabel")
        self.sentences = Sentence(place)
        self.drawing = DrawingCanvas(place, look)
        self.joined = DrawingCanvas(place, look)
        self.sizes = Table(place, look, COLUMNS, lambda _: None)
        FittingColumns(self.sizes, NEED)
        self.notes = Sentence(place, style="Muted.TLabel")
        self.shaping = ttk.Button(place, text=f"Shaping…  {accelerator(place, 'Mod-j')}", command=shape)
        self._parts = (self.missing, self.warnings, self.sentences, self.drawing, self.joined, self.sizes, self.notes)
        self._spare = ttk.Frame(place, style="Card.TFrame", height=1)
        self.runs = ttk.Frame(place, style="Card.TFrame")
        self.runs.columnconfigure(0, weight=1)
        before = (self.missing, self.warnings, self.drawing, self.sentences)
        in_order = (*before, self._spare, self.runs, self.sizes, self.joined, self.notes, self.shaping)
        for row, widget in enumerate(in_order):
            sticky = "w" if widget is self.shaping else "ew"
            look.grid(widget, row=row, column=0, sticky=sticky, padx=(0, 2), pady=0 if widget is self._spare else (0.5, 1))

    def show(self, card: PieceCard) -> None:
        """Shows the answer of this moment, or that there is none yet and why."""
        self.headline.configure(text=card.headline)
        self.missing.configure(text=card.missing)
        self.warnings.configure(text="\n".join(f"! {warning}" for warning in card.warnings))
        self.sentences.configure(text="\n".join(card.sentences))
        self.notes.configure(text="\n".join(card.notes))
        self.drawing.show(card.draw)
        self.joined.show(card.draw_joined)
        self.sizes.set_rows(Row(cells[0], cells, (place,) * len(cells)) for place, cells in enumerate(card.sizes))
        self.sizes.tree.configure(height=max(1, len(card.sizes)))
        shown = (card.missing, card.warnings, card.sentences, card.draw, card.draw_joined, card.sizes, card.notes)
        for widget, there in zip(self._parts, shown, strict=True):
            if there:
                widget.grid()
            else:
                widget.grid_remove()
        if card.answer is None and not self._holding:
            self.to_top()

    @contextmanager
    def holding_runs(self) -> Iterator[None]:
        """What is shown meanwhile leaves the sizes under the pointer, and a field of theirs that is typed in where it is: room
        above is kept, what grows there scrolls away.
        """
        typed_in = focused(self)
        stays = typed_in if isinstance(typed_in, ttk.Entry) and str(typed_in).startswith(f"{self.runs}.") else self.runs
        before = stays.winfo_rooty()
        self._holding = True
        try:
            yield
        finally:
            self._holding = False
        self.update_idletasks()
        lower, spare = stays.winfo_rooty() - before, self._spare.winfo_height()
        if lower > spare:
            lower -= self._scrolled.scroll_lines(-(-(lower - spare) // self._scrolled.look.line))
        self._spare.configure(height=max(1, spare - lower))
        self.update_idletasks()

    def to_top(self) -> None:
        """Another piece is in hand: shows what follows from its beginning."""
        self._spare.configure(height=1)
        self._scrolled.canvas.yview_moveto(0)
