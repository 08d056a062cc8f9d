"""What garments there are, each with its pieces below it, folding, and what single pieces; and the find field above."""

import tkinter as tk
from collections.abc import Callable, Sequence
from functools import cached_property, partial

from logbook.pages.garments.garment_list import GarmentLine, GarmentList
from logbook.window.at_rest import AtRest
from logbook.window.find_list import FindActions, FindList
from logbook.window.fitting import FittingColumns
from logbook.window.keys import accelerator
from logbook.window.look import Look
from logbook.window.table import COPY_KEYS, Column, Row, Table

COLUMNS = (Column("name", "Garments and pieces", 14, grow=True, least=8), Column("chain", "Chain", 7, "right"))
EMPTY = (
    "Nothing is planned yet.",
    "For a single piece name it in the form beside this, choose the swatch it is worked from, and type a width. “New garment…” "
    "begins one of several pieces. Once saved, they are listed here. The sample (Logbook → Open the sample) holds some.",
)


class TreeTable(Table):
    """A table whose rows are garments with their pieces below, and single pieces. Left and Right fold and unfold.

    ``in_front`` gives the table that is shown: choosing a row of the other kind may have brought another.
    """

    in_front: "Callable[[], TreeTable | None]" = staticmethod(lambda: None)

    @cached_property
    def menu(self) -> tk.Menu:
        """What can be done with the rows; they are not sorted, since that would part garments and pieces."""
        menu = tk.Menu(self, tearoff=False)
        menu.add_command(label="Copy rows", accelerator=accelerator(self, COPY_KEYS), command=self.copy)
        return menu

    def sort_by(self, column: str) -> None:
        """Nothing is sorted."""

    def _pop_up(self, x: int, y: int) -> None:
        front = self.in_front()
        if front is None or front is self:
            super()._pop_up(x, y)
        else:
            front.after_idle(front._pop_up, x, y)

    def _select_all(self) -> None:
        """One line is in hand at a time."""


class GarmentTree(FindList):
    """What is selected is the key of a row: of a garment, of one of its pieces, or of a single piece.

    ``moved`` hears of a piece that was dragged onto another line.
    """

    def __init__(self, parent: tk.Misc, look: Look, garments: GarmentList, actions: FindActions) -> None:
        self._garments = garments
        self._lines: list[GarmentLine] = []
        self._pressed = ""
        self._waiting: tuple[str, ...] = ()
        self.moved: Callable[[str, str], object] = lambda key, onto: None
        super().__init__(parent, look, self._tree, EMPTY, actions)
        self._rest = AtRest(self, self._check, self._checked)

    def look_up(self) -> None:
        """Shows the lines as they are now: what the words do not find is no row."""
        lines, count = self._garments.lines(self.find.text)
        if lines != self._lines:
            same_rows = [line.key for line in lines] == [line.key for line in self._lines]
            self._lines = lines
            rows = [Row(line.key, line.cells, line.cells) for line in lines]
            if same_rows:
                for row in rows:
                    self.table.replace_row(row)
            else:
                self.table.set_rows(rows)
        self.show_table(bool(lines) or bool(self.find.text.strip()))
        self.say_found(count, nothing=not lines and bool(self.find.text.strip()))

    def reload(self, chosen: str | None = None) -> None:
        """Shows the lines as they are now, with the chosen one marked; the find text goes on holding."""
        self.look_up()
        if chosen is not None:
            self.table.select([chosen] if any(line.key == chosen for line in self._lines) else [])
        self._rest.soon()

    def _check(self) -> bool:
        """The chain of a piece, or what does not fit in a size; nothing while no list is shown."""
        return bool(self.winfo_ismapped()) and self._garments.check()

    def _checked(self) -> None:
        if self.winfo_ismapped():
            self.look_up()

    @property
    def tree_table(self) -> TreeTable:
        """Its table."""
        assert isinstance(self.table, TreeTable)
        return self.table

    def _tree(self, place: tk.Misc) -> Table:
        table = TreeTable(place, self.look, COLUMNS, self._chosen)
        table.tree.configure(selectmode="browse")
        FittingColumns(table, ("name", "chain"))
        return table

    def _bind_keys(self) -> None:
        super()._bind_keys()
        tree = self.table.tree
        for key, is_open in {"Right": True, "Left": False}.items():
            tree.bind(f"<{key}>", partial(self._fold_here, is_open))
        tree.bind("<Button-1>", self._press, add="+")
        tree.bind("<B1-Motion>", self._drag, add="+")
        tree.bind("<ButtonRelease-1>", self._clicked, add="+")
        tree.bind("<Double-Button-1>", self._double_clicked)

    def _chosen(self, keys: tuple[str, ...]) -> None:
        """What was chosen is taken in hand; under a pressed button only when that is released.

        Another list may come to the front then: a release that came to another widget than its press would take the next click.
        """
        if self._pressed:
            self._waiting = keys
        else:
            self._actions.select(keys)

    def _fold_here(self, is_open: bool, _: object) -> str:
        for key in self.table.selected[:1]:
            line = next((one for one in self._lines if one.key == key), None)
            if line is not None and line.is_piece and not is_open:
                self.table.select([line.garment])  # from a piece to its garment, as trees go
                self.table.on_select_now()
            elif line is not None and not line.is_piece:
                self._fold(line.garment, is_open)
        return "break"

    def _press(self, event: "tk.Event[tk.Misc]") -> None:
        self._pressed = self.table.tree.identify_row(event.y)

    def _drag(self, event: "tk.Event[tk.Misc]") -> str:
        """A piece that is dragged is taken along; nothing is chosen on the way."""
        over = self.table.tree.identify_row(event.y)
        away = self._pressed in self._keys_of_pieces() and over != self._pressed
        self.table.tree.configure(cursor="sb_v_double_arrow" if away else "")
        return "break"

    def _clicked(self, event: "tk.Event[tk.Misc]") -> None:
        """The sign before a garment folds; a piece that was dragged is dropped."""
        key, pressed = self.table.tree.identify_row(event.y), self._pressed
        self._pressed = ""
        self.table.tree.configure(cursor="")
        waiting, self._waiting = self._waiting, ()
        if waiting:
            self._actions.select(waiting)
        if pressed in self._keys_of_pieces() and key != pressed:
            self.moved(pressed, key)
            return
        if event.x < self.look.base.measure("▸ ") + self.look.pixels(2.5) and key in self._keys_of_garments():
            self._fold(key, not self._garments.is_open(key))

    def _double_clicked(self, event: "tk.Event[tk.Misc]") -> str:
        key = self.table.tree.identify_row(event.y)
        if key in self._keys_of_garments():
            self._fold(key, not self._garments.is_open(key))
        return "break"

    def _keys_of_garments(self) -> Sequence[str]:
        return [line.key for line in self._lines if not line.is_piece]

    def _keys_of_pieces(self) -> Sequence[str]:
        return [line.key for line in self._lines if line.is_piece]

    def _fold(self, garment: str, is_open: bool) -> None:
        chosen = self.table.selected
        self._garments.fold(garment, is_open)
        hidden = chosen and chosen[0] != garment and chosen[0].startswith(f"{garment}/") and not is_open
        self.reload(garment if hidden else chosen[0] if chosen else None)
        if hidden:
            self.table.on_select_now()
