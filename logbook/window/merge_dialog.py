"""What two logbooks have otherwise, side by side, and whose word goes."""

import tkinter as tk

from logbook.craft.words.counting import counted
from logbook.tasks.merging import Prefer, Question
from logbook.window.dialog import BESIDE, Dialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

_COLUMNS = (
    Column("record", "What", 22),
    Column("field", "Field", 14),
    Column("ours", "Here", 26, grow=True),
    Column("theirs", "In the other logbook", 26, grow=True),
)
_ROWS = 10
_WIDTH = 96


def ask_whose(parent: tk.Misc, look: Look, name: str, questions: tuple[Question, ...]) -> Prefer | None:
    """Shows every difference; None if the user leaves the logbook as it is."""
    return _Asked(parent, look, name, questions).prefer


class _Asked:
    def __init__(self, parent: tk.Misc, look: Look, name: str, questions: tuple[Question, ...]) -> None:
        self.prefer: Prefer | None = None
        self._questions = questions
        self._dialog = Dialog(parent, look, f"Merge {name}", lambda: self._dialog.close())
        inside = self._dialog.inside
        said = f"Both logbooks changed the same things: {counted(len(questions), 'difference')}. Whose word goes?"
        look.grid(Sentence(inside, said), row=0, column=0, sticky="ew", pady=(0, 2))
        inside.columnconfigure(0, minsize=min(_WIDTH * look.base.measure("0"), inside.winfo_screenwidth() - BESIDE))
        table = Table(inside, look, _COLUMNS, self._show_whole)
        table.set_rows(
            Row(str(place), shown, shown)
            for place, q in enumerate(questions)
            if (shown := tuple(" ".join(text.split()) for text in (q.record, q.field, q.ours, q.theirs)))
        )
        table.tree.configure(height=min(_ROWS, max(len(questions), 3)))
        look.grid(table, row=1, column=0, sticky="nsew")
        inside.rowconfigure(1, weight=1)
        self._whole = Sentence(inside)
        look.grid(self._whole, row=2, column=0, sticky="ew", pady=(1, 0))
        cancel = self._dialog.add_button("&Cancel", self._dialog.close)
        self._dialog.add_button("Keep what is &here", lambda: self._choose("ours"))
        self._dialog.add_button("&Take the other's", lambda: self._choose("theirs"))
        table.select(["0"])
        self._show_whole(("0",))
        self._dialog.open(cancel)
        self._dialog.wait_window()

    def _choose(self, prefer: Prefer) -> None:
        self.prefer = prefer
        self._dialog.close()

    def _show_whole(self, keys: tuple[str, ...]) -> None:
        """A text may be wider than its column: the chosen one stands whole beneath."""
        if keys:
            one = self._questions[int(keys[0])]
            field = f", {one.field}" if one.field else ""
            self._whole.configure(text=f"{one.record}{field}: here {one.ours or 'nothing'}; there {one.theirs or 'nothing'}.")
