"""What garments there are, each with its pieces below it, folding; and the find field above."""

import tkinter as tk
from collections.abc import Callable, Sequence
from functools import cached_property, partial

from logbook.pages.garments.garment_list import GarmentLine, GarmentList
from logbook.window.field import Field
from logbook.window.keys import accelerator
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import COPY_KEYS, Column, Row, Table

COLUMNS = (Column("name", "Garments", 14, grow=True, least=8), Column("chain", "Chain", 5, "right"))
EMPTY = (
    "No garment is planned yet.",
    "“New” begins one: choose what it is like, or begin empty and add its pieces one by one. Save it, and it stands here.",
)


class TreeTable(Table):
    """A table whose rows are garments and, below each that is open, its pieces. Left and Right fold and unfold."""

    @cached_property
    def menu(self) -> tk.Menu:
        """What can be done with the rows; they are not sorted, since that would part garments and pieces."""
        menu = tk.Menu(self, tearoff=False)
        menu.add_command(label="Copy rows", accelerator=accelerator(self, COPY_KEYS), command=self.copy)
        return menu

    def sort_by(self, column: str) -> None:
        """Nothing is sorted."""

    def _select_all(self) -> None:
        """One line is in hand at a time."""


class GarmentTree(tk.Frame):
    """``select`` gets the key of the row that the user chose: of a garment, or of one of its pieces."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        garments: GarmentList,
        select: Callable[[tuple[str, ...]], object],
        take: Callable[[], object],
        delete: Callable[[], object],
    ) -> None:
        super().__init__(parent, borderwidth=0, highlightthickness=0)
        self.look, self._garments, self._take_in_hand = look, garments, take
        look.when_changed(self, lambda: self.configure(background=look.palette.page))
        self.columnconfigure(0, weight=1)
        self.rowconfigure(1, weight=1)
        self.find = Field(self, look, "&Find", label_width=5, grow=True)
        self.find.grid(row=0, column=0, sticky="ew")
        self.table = TreeTable(self, look, COLUMNS, select)
        self.table.tree.configure(selectmode="browse")
        look.grid(self.table, row=1, column=0, sticky="nsew", pady=(1, 0))
        self._empty = tk.Frame(self, borderwidth=0, highlightthickness=0)
        look.when_changed(self._empty, lambda: self._empty.configure(background=look.palette.page))
        self._empty.columnconfigure(0, weight=1)
        for row, sentence in enumerate(EMPTY):
            style = "Section.TLabel" if row == 0 else "TLabel"
            look.grid(Sentence(self._empty, sentence, style), row=row, column=0, sticky="ew", pady=(0, 2))
        look.grid(self._empty, row=1, column=0, sticky="new", pady=(3, 0))
        self._lines: list[GarmentLine] = []
        self._bind_keys(delete)
        self.find.variable.trace_add("write", lambda *_: self.reload())

    def reload(self, chosen: str | None = None) -> None:
        """Shows the lines as they are now, with the chosen one marked; the find text goes on holding."""
        lines, count = self._garments.lines(self.find.text)
        self.find.show_message(count, "hint")
        if lines != self._lines:
            same_rows = [line.key for line in lines] == [line.key for line in self._lines]
            self._lines = lines
            if same_rows:
                for line in lines:
                    self.table.replace_row(Row(line.key, line.cells, line.cells))
            else:
                self.table.set_rows(Row(line.key, line.cells, line.cells) for line in lines)
        there = bool(lines) or bool(self.find.text.strip())
        shown, hidden = (self.table, self._empty) if there else (self._empty, self.table)
        hidden.grid_remove()
        shown.grid()
        if chosen is not None:
            self.table.select([chosen] if any(line.key == chosen for line in lines) else [])

    def start(self) -> None:
        """Puts the keyboard into the find field, its text marked."""
        self.find.input.focus_set()
        self.find.input.event_generate("<<SelectAll>>")

    def _bind_keys(self, delete: Callable[[], object]) -> None:
        entry, tree = self.find.input, self.table.tree
        for key, step in {"Down": 1, "Up": -1, "Next": 10, "Prior": -10}.items():
            entry.bind(f"<{key}>", partial(self._walk, step))
        for widget in (entry, tree):
            widget.bind("<Return>", lambda _: self._take())
            widget.bind("<Escape>", lambda _: self._clear())
        tree.bind("<Delete>", lambda _: delete())
        for key, is_open in {"Right": True, "Left": False}.items():
            tree.bind(f"<{key}>", partial(self._fold_here, is_open))
        tree.bind("<ButtonRelease-1>", self._clicked, add="+")
        tree.bind("<Double-Button-1>", self._double_clicked)

    def _walk(self, step: int, _: object) -> str:
        self.table.walk(step)
        return "break"

    def _take(self) -> str:
        if self.table.shown and not set(self.table.selected) & set(self.table.shown):
            self.table.walk(1)
        self._take_in_hand()
        return "break"

    def _clear(self) -> None:
        self.find.text = ""

    def _fold_here(self, is_open: bool, _: object) -> str:
        for key in self.table.selected[:1]:
            line = next((one for one in self._lines if one.key == key), None)
            if line is not None and line.is_piece and not is_open:
                self.table.select([line.garment])  # from a piece to its garment, as trees go
                self.table.on_select_now()
            elif line is not None and not line.is_piece:
                self._fold(line.garment, is_open)
        return "break"

    def _clicked(self, event: "tk.Event[tk.Misc]") -> None:
        """The sign before a garment folds."""
        key = self.table.tree.identify_row(event.y)
        if event.x < self.look.base.measure("▸ ") + self.look.pixels(2.5) and key in self._keys_of_garments():
            self._fold(key, not self._garments.is_open(key))

    def _double_clicked(self, event: "tk.Event[tk.Misc]") -> str:
        key = self.table.tree.identify_row(event.y)
        if key in self._keys_of_garments():
            self._fold(key, not self._garments.is_open(key))
        return "break"

    def _keys_of_garments(self) -> Sequence[str]:
        return [line.key for line in self._lines if not line.is_piece]

    def _fold(self, garment: str, is_open: bool) -> None:
        chosen = self.table.selected
        self._garments.fold(garment, is_open)
        hidden = chosen and chosen[0] != garment and chosen[0].startswith(f"{garment}/") and not is_open
        self.reload(garment if hidden else chosen[0] if chosen else None)
        if hidden:
            self.table.on_select_now()
