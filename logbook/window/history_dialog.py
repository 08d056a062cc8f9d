"""What has happened to one record: when, which field, and what was there before."""

import tkinter as tk

from logbook.pages.session import Session
from logbook.tasks.undoing import history
from logbook.window.dialog import Dialog
from logbook.window.look import Look
from logbook.window.table import Column, Row, Table

MOST_LINES = 16


def show_history(parent: tk.Misc, look: Look, session: Session, name: str, uid: str) -> None:
    """Lists the changes of the record ``uid``, called ``name``."""
    lines = history(session.book, uid)
    dialog = Dialog(parent, look, f"Changes of {name}", lambda: dialog.close())
    columns = [
        Column("at", "When (UTC)", 16),
        Column("action", "What was done", 20, grow=True, least=14),
        Column("field", "Field", 18, grow=True, least=14),
        Column("before", "Before", 24, grow=True, least=12),
        Column("after", "After", 24, grow=True, least=12),
    ]
    rows: list[Row] = []
    table = Table(dialog.inside, look, columns)
    for number, line in enumerate(lines):
        cells = (line.at[:16].replace("T", " "), line.action, line.field, line.before, line.after)
        rows.append(Row(str(number), cells, (line.at, *cells[1:])))
    table.set_rows(rows)
    table.tree.configure(height=min(max(len(rows), 4), MOST_LINES))
    look.grid(table, row=0, column=0, sticky="nsew")
    dialog.inside.rowconfigure(0, weight=1)
    close = dialog.add_button("&Close", dialog.close, accent=True)
    dialog.open(close)
