"""What a killed program left beside the file: taken back only where it proves to be the file's own.

A journal that stands beside a file it does not belong to (the file was replaced after a kill) would be rolled back into damage.
So that is tried on copies first.
"""

import os
import shutil
import sqlite3
import tempfile
from contextlib import closing
from pathlib import Path

from logbook.book.checking import check_whole
from logbook.book.connection import connect
from logbook.book.copying import beside_too
from logbook.book.kept_twice import require_kept_alike
from logbook.book.opening import look, roll_back_leftover
from logbook.book.schema import STEPS
from logbook.book.trouble import DamagedError, as_sentences, code_of
from logbook.disk import sync_folder
from logbook.errors import RefusedError


def take_back(path: Path, patience: float) -> None:
    """Rolls a killed program's journal back; one that is not the file's own is given another name, for the file is whole.

    Raises DamagedError, with not a byte changed, if the file comes out whole neither way.
    """
    journal = beside_too(path)[1]
    writable = os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)  # else it can't be taken back here at all
    if writable and _is_hot(path, patience):
        try:
            with tempfile.TemporaryDirectory() as name:
                if not _comes_out_whole(path, journal, Path(name) / "with"):
                    if not _comes_out_whole(path, None, Path(name) / "without"):
                        raise DamagedError(f"{journal.name}, left beside it, does not make it whole", path.name)
                    os.rename(journal, _free_name(path))
                    sync_folder(path.parent)
        except OSError as error:
            raise RefusedError(f"{journal.name}, left beside {path.name}, can't be tried ({error.strerror}).") from error
    roll_back_leftover(path, patience)


def name_with_journal(path: Path) -> Path:
    """The name to open a file by that has several: the one a journal was left beside, if any in its folder was."""
    try:
        found = os.stat(path)
        if found.st_nlink < 2:
            return path
        for other in path.parent.iterdir():
            journal = beside_too(other)[1]
            if journal.is_file() and journal.stat().st_size and other.is_file() and other.samefile(path):
                return other
    except OSError:  # looking at it says so
        pass
    return path


def _is_hot(path: Path, patience: float) -> bool:
    """Whether SQLite would roll a journal back; not one of a living writer."""
    with as_sentences(path):
        try:
            with closing(connect(path, "ro", patience)) as connection:
                connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()
        except sqlite3.OperationalError as error:
            if code_of(error) == sqlite3.SQLITE_READONLY_ROLLBACK:
                return True
            if code_of(error) & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
                raise
    return False


def _comes_out_whole(path: Path, journal: Path | None, folder: Path) -> bool:
    folder.mkdir()
    copy = folder / "tried.logbook"
    shutil.copyfile(path, copy)
    if journal is not None:
        shutil.copyfile(journal, beside_too(copy)[1])
    try:
        roll_back_leftover(copy, 0)
        step = look(copy).step
        with as_sentences(copy), closing(connect(copy)) as connection:
            check_whole(connection, copy, step)
            if step == len(STEPS):
                require_kept_alike(connection)
    except (RefusedError, sqlite3.Error):
        return False
    return True


def _free_name(path: Path) -> Path:
    names = (path.with_name(f"{path.name}-journal of another{'' if n == 1 else f' {n}'}") for n in range(1, 1000))
    return next(name for name in names if not os.path.lexists(name))
