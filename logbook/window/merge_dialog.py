"""What two logbooks have otherwise, side by side, and whose word goes: asked of each, or of several chosen together."""

import tkinter as tk
from collections.abc import Mapping

from logbook.craft.words.counting import counted
from logbook.tasks.merging import Point, Question, Side
from logbook.window.dialog import Dialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

_COLUMNS = (
    Column("taken", "Keep", 10),
    Column("record", "What", 22, grow=True, least=12),
    Column("field", "Field", 14),
    Column("ours", "Here", 24, grow=True, least=10),
    Column("theirs", "In the other logbook", 24, grow=True, least=10),
)
_TAKEN: Mapping[Side | None, str] = {"ours": "here", "theirs": "the other", None: "?"}
_ROWS = 10
_WIDTH = 104


def ask_whose(parent: tk.Misc, look: Look, name: str, questions: tuple[Question, ...]) -> dict[Point, Side] | None:
    """Shows every difference and asks of each; None if the user leaves the logbook as it is."""
    return _Asked(parent, look, name, questions).answers


class _Asked:
    def __init__(self, parent: tk.Misc, look: Look, name: str, questions: tuple[Question, ...]) -> None:
        self.answers: dict[Point, Side] | None = None
        self._questions = questions
        self._chosen: list[Side | None] = [None] * len(questions)
        self._dialog = Dialog(parent, look, f"Merge {name}", lambda: self._dialog.close())
        inside = self._dialog.inside
        said = (
            f"Both logbooks changed the same things: {counted(len(questions), 'difference')}. Which one is kept? Choose for "
            "each, or for several selected together (Ctrl+A: all)."
        )
        look.grid(Sentence(inside, said), row=0, column=0, sticky="ew", pady=(0, 2))
        inside.columnconfigure(0, minsize=self._dialog.wide(_WIDTH))
        self._table = Table(inside, look, _COLUMNS, self._show_whole)
        self._table.set_rows(self._row(place) for place in range(len(questions)))
        self._table.tree.configure(height=min(_ROWS, max(len(questions), 3)))
        look.grid(self._table, row=1, column=0, sticky="nsew")
        inside.rowconfigure(1, weight=1)
        self._whole = Sentence(inside)
        look.grid(self._whole, row=2, column=0, sticky="ew", pady=(1, 0))
        self._dialog.add_button("&Cancel", self._dialog.close)
        self._dialog.add_button("Keep what is &here", lambda: self._choose("ours"))
        self._dialog.add_button("Use &the other’s", lambda: self._choose("theirs"))
        self._merge = self._dialog.add_button("&Merge", self._done, accent=True)
        self._select(0)
        self._follow()
        self._dialog.open(self._table.tree)
        self._dialog.wait_window()

    def _row(self, place: int) -> Row:
        one = self._questions[place]
        shown = tuple(" ".join(text.split()) for text in (one.record, one.field, one.ours, one.theirs))
        cells = (_TAKEN[self._chosen[place]], *shown)
        return Row(str(place), cells, cells)

    def _select(self, place: int) -> None:
        self._table.select([str(place)])
        self._show_whole((str(place),))

    def _choose(self, side: Side) -> None:
        """For what is selected; then the next that is open is selected."""
        selected = [int(key) for key in self._table.selected]
        for place in selected:
            self._chosen[place] = side
            self._table.replace_row(self._row(place))
        after = [int(key) for key in self._table.shown if self._chosen[int(key)] is None]
        if after:
            self._select(next((place for place in after if place > max(selected, default=0)), after[0]))
        self._follow()

    def _follow(self) -> None:
        self._merge.state(["disabled" if None in self._chosen else "!disabled"])

    def _done(self) -> None:
        answers = {one.point: side for one, side in zip(self._questions, self._chosen, strict=True) if side is not None}
        if None not in self._chosen:
            self.answers = answers
            self._dialog.close()

    def _show_whole(self, keys: tuple[str, ...]) -> None:
        """A text may be wider than its column: the chosen one stands whole beneath."""
        if len(keys) > 1:
            self._whole.configure(text=f"{counted(len(keys), 'difference')} selected.")
        elif keys:
            one = self._questions[int(keys[0])]
            what = f"{one.record}, {one.field}" if one.field else one.record
            self._whole.configure(text=f"{what}\nHere: {one.ours or 'nothing'}\nThere: {one.theirs or 'nothing'}")
        self._dialog.grow()
