"""What is done to a logbook while it is killed, cut off or refused: the same work each time, so that states can be compared."""

import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

from logbook.book.logbook import Logbook
from logbook.book.swatches import put_swatch, swatches
from logbook.book.undo import redo, undo
from tests.support.books import put_worked
from tests.support.folders import QUICK

MANY = 15
CYCLE = ("log", "edit", "import", "undo", "redo", "log", "back up", "edit")


def act(book: Logbook, number: int) -> None:
    """Does the ``number``-th piece of work: one acknowledged action, or a backup."""
    kind = CYCLE[number % len(CYCLE)]
    if kind == "undo":
        undo(book)
    elif kind == "redo":
        redo(book)
    elif kind == "back up":
        book.back_up()
    else:
        with book.writing(f"{kind} {number}") as writing:
            if kind == "edit":
                found = swatches(writing.connection)[-1]
                put_swatch(writing, replace(found, notes=f"{number} " * 200, readings=found.readings[1:]))
            for one in range(MANY if kind == "import" else 1 if kind == "log" else 0):
                put_worked(writing, 1000 * (number + 1) + one, notes="x" * 300)


def plain(connection: sqlite3.Connection) -> tuple[Any, ...]:
    """All that the logbook holds, without the uids and times, which differ from run to run."""
    found = tuple(
        replace(one, uid="", yarn=one.yarn and replace(one.yarn, uid=""), pattern=one.pattern and replace(one.pattern, uid=""))
        for one in swatches(connection)
    )
    actions = connection.execute("SELECT label, kind FROM action ORDER BY position").fetchall()
    changes = connection.execute("SELECT record_table, before IS NULL, after IS NULL FROM change ORDER BY position").fetchall()
    words = connection.execute("SELECT folded FROM swatch_words ORDER BY folded").fetchall()
    return found, actions, changes, words


@contextmanager
def in_place(target: Path, mode: int = 0o600) -> Iterator[Path]:
    """A weakness to plant: a new file is written under its own name, and not under another until it is whole."""
    os.close(os.open(target, os.O_CREAT | os.O_EXCL | os.O_RDWR, mode))
    yield target


@contextmanager
def quick_folder() -> Iterator[Path]:
    """A temporary folder, in memory if possible."""
    with tempfile.TemporaryDirectory(dir=QUICK) as name:
        yield Path(name)
