"""The first rows of a sheet in the maker's own words, with a guess above each column that the maker corrects."""

import tkinter as tk
from functools import partial
from tkinter import ttk

from logbook.errors import LogbookError
from logbook.pages.own_sheet_page import ROWS_SHOWN, OwnSheetPage, SheetPage
from logbook.window.choices import ChoiceField
from logbook.window.dialog import Dialog
from logbook.window.field import Field
from logbook.window.keyboard import last_focused
from logbook.window.look import Look
from logbook.window.message import say_foreseen
from logbook.window.scroll_bar import show_bar
from logbook.window.sentence import Sentence

_WIDTH, _COLUMN = 120, 18
"""Letters, where the screen has room for them."""


def ask_columns(parent: tk.Misc, look: Look, page: SheetPage) -> bool:
    """Lets the maker say what the columns are; True if it goes on."""
    dialog = OwnSheetDialog(parent, look, page)
    dialog.start()
    return dialog.wanted


class OwnSheetDialog(Dialog):
    """What is chosen shows at once what comes of it."""

    def __init__(self, parent: tk.Misc, look: Look, page: SheetPage) -> None:
        super().__init__(parent, look, f"Import {page.name}", self.close)
        self.wanted, self._page = False, page
        inside = self.inside
        self._where = Sentence(inside)
        look.grid(self._where, row=0, column=0, sticky="ew", pady=(0, 2))
        above = ttk.Frame(inside)
        look.grid(above, row=1, column=0, sticky="ew", pady=(0, 1))
        self._sheet: ChoiceField | None = None
        if len(page.sheet_names) > 1:
            self._sheet = ChoiceField(above, look, "&Sheet", page.sheet_names, width=24)
            self._sheet.text = page.table.sheet
            self._sheet.variable.trace_add("write", lambda *_: self._take_sheet())
            look.grid(self._sheet, row=0, column=0, sticky="w", padx=(0, 4))
        self._over = Field(above, look, "Counts without a length are &over", width=10, unit="such as 10 cm or 4 in")
        self._over.text = page.over
        self._over.variable.trace_add("write", lambda *_: self._say_over())
        look.grid(self._over, row=0, column=1, sticky="w")
        self._add_table(inside)
        self._left, self._outcome = Sentence(inside, style="Muted.TLabel"), Sentence(inside)
        look.grid(self._left, row=4, column=0, sticky="ew", pady=(1, 0))
        look.grid(self._outcome, row=5, column=0, sticky="ew", pady=(1, 0))
        inside.rowconfigure(2, weight=1)
        width = self.wide(_WIDTH)
        inside.columnconfigure(0, minsize=width)
        self.add_button("&Cancel", self.close)
        if isinstance(page, OwnSheetPage):
            self.add_button("Rest to the &notes", lambda: self._rest_to_notes(page))
        self._go = self.add_button("&Go on", self._go_on, accent=True)

    def start(self) -> None:
        """Shows it until it is left."""
        self._show()
        self.open(self._boxes[0].input if self._boxes else self._go)
        self.wait_window()

    def _add_table(self, inside: ttk.Frame) -> None:
        look = self.look
        self._canvas = tk.Canvas(inside, highlightthickness=0, borderwidth=0, background=look.palette.page)
        self._bar = ttk.Scrollbar(inside, orient="horizontal", command=self._canvas.xview, takefocus=False)
        self._canvas.configure(xscrollcommand=partial(show_bar, self._bar), xscrollincrement=look.letter)
        self._canvas.grid(row=2, column=0, sticky="nsew")
        self._bar.grid(row=3, column=0, sticky="ew")
        self._boxes: list[ChoiceField] = []
        self._saying = False
        self._table = ttk.Frame(self._canvas)
        self._canvas.create_window(0, 0, anchor="nw", window=self._table)
        self.bind("<FocusIn>", lambda _: self._reveal(), add="+")

    def _fill_table(self) -> None:
        for child in self._table.winfo_children():
            child.destroy()
        self._boxes = []
        for place, (heading, choice, cells) in enumerate(self._page.columns):
            box = ChoiceField(
                self._table, self.look, _short(heading) or f"(column {place + 1})", self._page.options, width=_COLUMN
            )
            box.keep_no_line()
            box.text = choice
            box.variable.trace_add("write", partial(self._choose, place))
            self.look.grid(box, row=0, column=place, sticky="ew", padx=(0, 2), pady=(0, 1))
            self._boxes.append(box)
            for row, cell in enumerate([*cells, *[""] * (ROWS_SHOWN - len(cells))], start=1):
                ttk.Label(self._table, text=cell, width=_COLUMN + 2).grid(row=row, column=place, sticky="w")
        self._table.update_idletasks()
        width, height = self._table.winfo_reqwidth(), self._table.winfo_reqheight()
        self._canvas.configure(scrollregion=(0, 0, width, height), height=height)

    def _choose(self, place: int, *_: object) -> None:
        if not self._saying:
            self._page.choose(place, self._boxes[place].text)
            self._say()

    def _take_sheet(self) -> None:
        assert self._sheet is not None
        try:
            self._page.take_sheet(self._sheet.text)
        except LogbookError as error:
            say_foreseen(self, self.look, error)
            self._sheet.text = self._page.table.sheet
        self._show()

    def _say_over(self) -> None:
        self._page.say_over(self._over.text)
        self._over.show_message(self._page.trouble or None, "error")
        self._say()

    def _rest_to_notes(self, page: OwnSheetPage) -> None:
        page.rest_to_notes()
        self._say()

    def _show(self) -> None:
        self._fill_table()
        self._say()

    def _say(self) -> None:
        """What follows from what is chosen; the boxes too, since a column is taken once."""
        self._saying = True
        for box, (_, choice, _) in zip(self._boxes, self._page.columns, strict=True):
            box.text = choice
        self._saying = False
        self._where.configure(text=self._page.sentence())
        self._left.configure(text=self._page.left() or " ")
        self._outcome.configure(text=self._page.outcome())
        self.after_idle(self.grow)

    def _reveal(self) -> None:
        """Brings the column that has the keyboard into view."""
        here = last_focused(self)
        box = next((box for box in self._boxes if box.input is here), None)
        if box is None:
            return
        left, width = box.winfo_x(), box.winfo_width()
        first, shown = self._canvas.canvasx(0), self._canvas.winfo_width()
        if left < first or left + width > first + shown:
            whole = max(1, self._table.winfo_reqwidth())
            self._canvas.xview_moveto(max(0, left + width - shown if left > first else left) / whole)

    def _go_on(self) -> None:
        self.wanted = True
        self.close()


def _short(heading: str) -> str:
    plain = heading.replace("&", "+")  # an ampersand would mark a letter
    return plain if len(plain) <= _COLUMN + 2 else plain[: _COLUMN + 1] + "…"
