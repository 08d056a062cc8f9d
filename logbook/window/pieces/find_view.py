"""What there is: the find field and the list of planned pieces."""

import tkinter as tk
from collections.abc import Callable
from tkinter import ttk

from logbook.pages.pieces.piece_list import PieceList, cells, sort_keys
from logbook.window.field import Field
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("piece", "Piece", 8, grow=True, summary=True),
    Column("name", "Piece", 16, grow=True),
    Column("tag", "Swatch", 7),
    Column("stitch", "Stitch pattern", 13, grow=True),
    Column("yarn", "Yarn", 13, grow=True),
)
NEED = ("name", "tag", "stitch", "yarn")
LEAST = 2
"""With room for fewer columns a line says name, swatch and stitch pattern in two lines of text."""
EMPTY = (
    "No piece is planned yet.",
    "Name one in the form beside this, choose the swatch it is worked from, and type a width. Once saved, it is listed here. "
    "The sample (Logbook → Open the sample) holds some.",
)


class FindView(ttk.Frame):
    """Typing filters at once; Down and Up walk through the list from the find field, Return goes on to the form."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        pieces: PieceList,
        select: Callable[[tuple[str, ...]], object],
        take: Callable[[], object],
        delete: Callable[[], object],
    ) -> None:
        super().__init__(parent, width=1, height=1)
        self.look, self._pieces, self._take_in_hand = look, pieces, take
        self.grid_propagate(False)
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self.find = Field(self, look, "&Find", label_width=5, grow=True)
        self.find.grid(row=0, column=0, sticky="ew")
        self.table = Table(self, look, COLUMNS, select)
        FittingColumns(self.table, NEED, LEAST, "piece")
        look.grid(self.table, row=1, column=0, sticky="nsew", pady=(1, 0))
        self._empty = ttk.Frame(self)
        self._empty.columnconfigure(0, weight=1)
        for row, sentence in enumerate(EMPTY):
            style = "Section.TLabel" if row == 0 else "TLabel"
            look.grid(Sentence(self._empty, sentence, style), row=row, column=0, sticky="ew", pady=(0, 2))
        look.grid(self._empty, row=1, column=0, sticky="new", pady=(3, 0))
        self._bind_keys(delete)
        self.find.variable.trace_add("write", lambda *_: self.look_up())
        self.reload()

    def reload(self) -> None:
        """Shows the lines of the list as they are now; the find text goes on holding."""
        lines = self._pieces.lines
        self.table.set_rows(Row(line.uid, cells(line), sort_keys(line)) for line in lines)
        shown, hidden = (self.table, self._empty) if lines else (self._empty, self.table)
        hidden.grid_remove()
        shown.grid()
        self.look_up()

    def look_up(self) -> None:
        """Shows what the words find, and how many that is."""
        uids, count = self._pieces.find(self.find.text)
        self.table.show_only(uids)
        all_gone = uids == [] and bool(self._pieces.lines)
        self.find.show_message(f"{count}. Esc shows all again." if all_gone else count, "hint")

    def start(self) -> None:
        """Puts the keyboard into the find field, its text marked."""
        self.find.input.focus_set()
        self.find.input.event_generate("<<SelectAll>>")

    def _clear(self) -> None:
        self.find.text = ""

    def _bind_keys(self, delete: Callable[[], object]) -> None:
        entry = self.find.input
        for key, step in {"Down": 1, "Up": -1, "Next": 10, "Prior": -10}.items():
            entry.bind(f"<{key}>", lambda _, step=step: self._walk(step))  # type: ignore[misc]
        for widget in (entry, self.table.tree):
            widget.bind("<Return>", lambda _: self._take())
            widget.bind("<Escape>", lambda _: self._clear())
        self.table.tree.bind("<Delete>", lambda _: delete())

    def _walk(self, step: int) -> str:
        self.table.walk(step)
        return "break"

    def _take(self) -> str:
        """With the piece in hand hidden by the find text, the first that is found is taken."""
        if self.table.shown and not set(self.table.selected) & set(self.table.shown):
            self.table.walk(1)
        self._take_in_hand()
        return "break"
