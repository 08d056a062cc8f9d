"""The field of written rows, with each row's count beside it and what there is trouble with marked."""

import tkinter as tk
from functools import partial
from tkinter import ttk

from logbook.pages.patterns.rows_card import Choice, CountBeside, RowsCard
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.styles import styled
from logbook.window.text_field import TextField
from logbook.window.wrapped_button import WrappedButton

TROUBLE, NOTE = "trouble", "note"
FEWEST_LINES = 5
ROOM_FOR_ROWS = 30
"""Letters; if less were left for the rows, the counts stand below them."""


class RowsField(TextField):
    """A field of several lines that shows a ``RowsCard``; ``lines`` at 100 % text."""

    def __init__(self, parent: tk.Misc, look: Look, text: str, *, lines: int) -> None:
        super().__init__(parent, look, text, lines=lines)
        self._lines = lines
        self._counts: tuple[CountBeside, ...] = ()
        self.beside = tk.Canvas(self._widget, width=1, height=1, highlightthickness=0, borderwidth=0, takefocus=False)
        self.below = Sentence(self, "", "Muted.TLabel")
        self.below.grid(row=3, column=0, columnspan=4, sticky="ew")
        self._bar = next(child for child in self._widget.winfo_children() if isinstance(child, ttk.Scrollbar))
        self.area.configure(yscrollcommand=self._scrolled)
        self.choices = ttk.Frame(self, style=styled(parent, "TFrame"))
        self.choices.grid(row=4, column=0, columnspan=4, sticky="ew")
        self.choices.grid_remove()
        self._offered: tuple[Choice, ...] = ()
        self._drawing = ""
        self.area.bind("<Configure>", lambda _: self._draw_soon(), add="+")
        self.bind("<Destroy>", lambda _: self._stop_drawing(), add="+")
        self.bind("<Configure>", lambda _: self._place(), add="+")
        look.when_changed(self.beside, self._follow_look)

    def show_rows(self, card: RowsCard) -> None:
        self._counts = card.counts
        self.area.tag_remove(TROUBLE, "1.0", "end")
        for start, end in card.marks:
            self.area.tag_add(TROUBLE, f"1.0+{start}c", f"1.0+{end}c")
        self.area.tag_remove(NOTE, "1.0", "end")
        for start, end in card.notes:
            self.area.tag_add(NOTE, f"1.0+{start}c", f"1.0+{end}c")
        self._offer(card.choices)
        self._place()

    def _offer(self, choices: tuple[Choice, ...]) -> None:
        """A button for each answer to what the text leaves open, which writes it into the text."""
        if choices == self._offered:
            return
        self._offered = choices
        for child in self.choices.winfo_children():
            child.destroy()
        for choice in choices:
            row = ttk.Frame(self.choices, style=str(self.choices.cget("style")))
            row.grid(sticky="ew", pady=(self.look.pixels(0.8), 0))
            row.columnconfigure(0, weight=1)
            button = WrappedButton(row, f"Write “{choice.words}”", command=partial(self._choose, choice))
            button.grid(row=0, column=0, sticky="ew")
        self.choices.columnconfigure(0, weight=1)
        self.choices.grid() if choices else self.choices.grid_remove()

    def _choose(self, choice: Choice) -> None:
        self.area.insert(f"1.0+{choice.place}c", f" {choice.words}")  # as if it were typed
        self.area.focus_set()

    def _follow_look(self) -> None:
        """Fewer lines of larger text, so that what is said of the rows stays in view under them."""
        self.area.configure(height=max(round(self._lines * 100 / self.look.percent), FEWEST_LINES))
        palette = self.look.palette
        self.area.tag_configure(TROUBLE, background=palette.error_field, underline=True)
        self.area.tag_configure(NOTE, foreground=palette.muted)
        self.beside.configure(background=palette.surface)
        self._place()

    def _place(self) -> None:
        """Beside the rows where there is room for both, else below."""
        widest = max((self.look.base.measure(one.count) for one in self._counts), default=0)
        room = self.winfo_width() - widest - ROOM_FOR_ROWS * self.look.letter
        if not widest or room < 0:
            self.beside.grid_remove()
        else:
            self.beside.configure(width=widest + self.look.pixels(3))
            self.beside.grid(row=0, column=2, sticky="ns")
        below = "\n".join(f"{one.name}: {one.count}" for one in self._counts) if room < 0 else ""
        self.below.configure(text=below)
        self.below.grid() if below else self.below.grid_remove()
        self._draw_soon()

    def _draw_soon(self) -> None:
        self._drawing = self._drawing or self.after_idle(self._draw)

    def _scrolled(self, first: float, last: float) -> None:
        self._bar.set(first, last)
        self._draw()

    def _stop_drawing(self) -> None:
        if self._drawing:
            self.after_cancel(self._drawing)

    def _draw(self) -> None:
        self._drawing = ""
        self.beside.delete("all")
        for one in self._counts:
            line = self.area.dlineinfo(f"1.0+{one.start}c")
            if line is not None:
                place = (self.look.pixels(1.5), line[1])
                self.beside.create_text(place, text=one.count, anchor="nw", font="TkDefaultFont", fill=self.look.palette.ink)
