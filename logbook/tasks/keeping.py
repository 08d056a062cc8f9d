"""Keeping the logbook safe: check, back up, restore."""

import os
from collections.abc import Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from logbook.book import backups
from logbook.book.connection import connect
from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.opening import check_whole, look
from logbook.book.search import stale_words
from logbook.book.swatches import swatches
from logbook.book.trouble import as_sentences
from logbook.craft.readings import read_readings
from logbook.errors import LogbookError, RefusedError
from logbook.settings import data_folder

__all__ = ["CheckResult", "Logbook", "back_up", "backup_folder", "check", "new_book", "open_book", "restore", "usual_logbook"]


@dataclass(frozen=True, slots=True)
class CheckResult:
    """Whether all is well, how many swatches there are (None: can't be counted), and a sentence for each problem."""

    ok: bool
    swatches: int | None
    problems: tuple[str, ...]


def backup_folder() -> Path:
    """Where the backups of all logbooks are kept."""
    return data_folder() / "backups"


def usual_logbook() -> Path:
    """The logbook used where none is chosen."""
    return data_folder() / "swatches.logbook"


def open_book(path: Path) -> Logbook:
    """Opens a logbook with backups kept in the user's data folder."""
    return open_logbook(path, backup_folder())


def new_book(path: Path) -> Logbook:
    """Makes a new, empty logbook; the usual one's folder is made with it."""
    if path == usual_logbook():
        path.parent.mkdir(parents=True, exist_ok=True)
    return new_logbook(path, backup_folder())


def check(path: Path, *, deep: bool = False) -> CheckResult:
    """Checks a logbook; ``deep``: also every record, reading's text and backup. Damage is a result, not an error."""
    problems: list[str] = []
    count: int | None = None
    try:
        with open_book(path) as book, book.reading() as connection:
            count = int(connection.execute("SELECT count(*) FROM swatch").fetchone()[0])
            if deep:
                problems.extend(_deep_problems(book))
                problems.extend(_backup_problems(backup_folder() / book.uid))
    except RefusedError as error:
        problems.append(str(error))
    return CheckResult(not problems, count, tuple(problems))


def back_up(path: Path) -> Path:
    """Makes a backup now and says where it lies."""
    with open_book(path) as book:
        return backups.make(book.connection, book.path, backup_folder() / book.uid, book.now())


def restore(backup: Path, target: Path) -> Path:
    """Restores a backup under a new name; nothing is ever overwritten."""
    backups.restore(backup, target)
    return Path(os.path.abspath(target))


def _deep_problems(book: Logbook) -> Iterator[str]:
    for swatch in swatches(book.connection):
        for taken in swatch.readings:
            try:
                again = read_readings(taken.reading.text, taken.direction)
            except LogbookError as error:
                yield f"Swatch {swatch.tag}: {error}"
                continue
            if again != (taken.reading,):
                yield f"Swatch {swatch.tag}: “{taken.reading.text}” does not say what is kept of it."
    for tag in stale_words(book.connection):
        yield f"Swatch {tag}: its search words are out of date; saving the swatch again mends that."


def _backup_problems(folder: Path) -> Iterator[str]:
    for path, _ in backups.kept(folder):
        try:
            look(path)
            with as_sentences(path), closing(connect(path, "ro")) as connection:
                check_whole(connection, path)
        except RefusedError as error:
            yield f"Backup: {error}"
