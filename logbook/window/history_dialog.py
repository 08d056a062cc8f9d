"""What has happened to one record: when, which field, and what was there before."""

import tkinter as tk
from collections.abc import Sequence
from datetime import datetime

from logbook.craft.words.dates import date_words
from logbook.pages.session import Session
from logbook.tasks.undoing import HistoryLine, history
from logbook.window.dialog import Dialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

MOST_LINES = 16
COLUMNS = (
    Column("at", "When", 18),
    Column("action", "What was done", 18),
    Column("field", "Field", 15),
    Column("before", "Before", 27, grow=True, least=10),
    Column("after", "After", 27, grow=True, least=10),
)


def show_history(parent: tk.Misc, look: Look, session: Session, name: str, uid: str) -> None:
    """Lists the changes of the record ``uid``, called ``name``."""
    lines = history(session.book, uid)
    dialog = Dialog(parent, look, f"Changes of {name}", lambda: dialog.close())
    whole = Sentence(dialog.inside)

    def show(keys: Sequence[str]) -> None:
        """Notes are longer than a column is wide."""
        if keys:
            line = lines[int(keys[0])]
            whole.configure(text=f"{line.field}: {line.before or 'nothing'} → {line.after or 'nothing'}")

    table = Table(dialog.inside, look, COLUMNS, show)
    table.set_rows(_row(number, line) for number, line in enumerate(lines))
    table.tree.configure(height=min(max(len(lines), 4), MOST_LINES))
    look.grid(table, row=0, column=0, sticky="nsew")
    look.grid(whole, row=1, column=0, sticky="ew", pady=(1, 0))
    dialog.inside.rowconfigure(0, weight=1)
    dialog.add_button("&Close", dialog.close, accent=True)
    table.select(["0"])
    show(table.selected)
    dialog.open(table.tree)


def _row(number: int, line: HistoryLine) -> Row:
    when = datetime.fromisoformat(line.at).astimezone()
    cells = (f"{date_words(when.date().isoformat())} {when:%H:%M}", line.action, line.field, line.before, line.after)
    return Row(str(number), cells, (line.at, *cells[1:]))
