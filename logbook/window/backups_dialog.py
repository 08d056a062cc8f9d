"""The backups of the logbook that is open, with what each holds; one can be restored under a new name."""

import tkinter as tk
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from logbook.craft.words.dates import date_words
from logbook.craft.words.numbers import fixed
from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.tasks.keeping import SUFFIX, back_up, backups_of, restore
from logbook.window.dialog import Dialog
from logbook.window.file_dialogs import ask_where_to_save
from logbook.window.look import Look
from logbook.window.message import tell
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

COLUMNS = (
    Column("made", "Made", 21),
    Column("swatches", "Swatches", 10, "right"),
    Column("size", "Size", 10, "right"),
    Column("file", "File", 34, grow=True, least=27),
)


def show_backups(parent: tk.Misc, look: Look, session: Session, open_path: Callable[[Path], object]) -> None:
    """Shows the list; ``open_path`` opens a restored logbook."""
    _Backups(parent, look, session, open_path)


class _Backups:
    def __init__(self, parent: tk.Misc, look: Look, session: Session, open_path: Callable[[Path], object]) -> None:
        self._look, self._session, self._open_path = look, session, open_path
        self._dialog = Dialog(parent, look, f"Backups of {session.book.path.name}", lambda: self._dialog.close())
        inside = self._dialog.inside
        inside.rowconfigure(1, weight=1)
        self._said = Sentence(inside)
        look.grid(self._said, row=0, column=0, sticky="ew", pady=(0, 2))
        self._table = Table(inside, look, COLUMNS)
        look.grid(self._table, row=1, column=0, sticky="nsew")
        self._dialog.add_button("Back up &now", self._back_up)
        restore_button = self._dialog.add_button("&Restore under a new name…", self._restore)
        self._dialog.add_button("&Close", self._dialog.close, accent=True)
        self._list()
        self._dialog.open(self._table.tree if self._table.shown else restore_button)

    def _list(self) -> None:
        backups = backups_of(self._session.book)
        self._table.set_rows(
            Row(
                str(backup.path),
                (
                    _when(backup.made.astimezone()),
                    "unreadable" if backup.swatches is None else str(backup.swatches),
                    f"{fixed(backup.path.stat().st_size / 1e6, 1)} MB",
                    backup.path.name,
                ),
                (backup.made.timestamp(), backup.swatches, float(backup.path.stat().st_size), backup.path.name),
            )
            for backup in backups
        )
        if backups:
            self._table.select([str(backups[0].path)])
        self._said.configure(
            text="The last ten are kept, one a day for a week, one a week for two months and one a month for a year, all checked."
            if backups
            else "There is no backup yet: one is made when the window has been idle for a minute, and when it closes. "
            "For a copy on another disk or stick: Logbook → Save a copy."
        )

    def _back_up(self) -> None:
        try:
            back_up(self._session.book)
        except RefusedError as error:
            tell(self._dialog, self._look, str(error))
        self._list()

    def _restore(self) -> None:
        if not self._table.selected:
            return
        chosen = ask_where_to_save(
            parent=self._dialog,
            title="Restore under a new name",
            kinds=[("Logbooks", f"*{SUFFIX}")],
            name=f"{Path(self._table.selected[0]).stem} restored",
            confirmoverwrite=False,
        )
        if not chosen:
            return
        try:
            restored, _ = restore(Path(self._table.selected[0]), Path(chosen))
        except RefusedError as error:
            tell(self._dialog, self._look, str(error))
            return
        self._dialog.close()
        self._open_path(restored)


def _when(made: datetime) -> str:
    return f"{date_words(made.date().isoformat())} {made:%H:%M:%S}"
