"""Opening a logbook: look before connecting, and refuse in one sentence what is not a sound logbook of ours.

Only this module reads bytes of the file, and only before any connection to it exists in this process: closing such a handle would
drop the locks SQLite holds.
"""

import os
import sqlite3
import stat
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from logbook.book.connection import connect, transaction
from logbook.book.copying import beside_too
from logbook.book.schema import APPLICATION_ID, STEPS
from logbook.book.trouble import DamagedError, as_sentences, code_of
from logbook.errors import RefusedError

_MAGIC = b"SQLite format 3\0"
_HEADER_BYTES = 100


class NotThereError(RefusedError):
    """There is no file of that name."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What the first look found: a logbook of ours at schema ``step``; ``hot``: something stands beside it that SQLite may have
    to take back (a journal) or take in (a write-ahead log); ``identity``: device and file number."""

    step: int
    hot: bool
    identity: tuple[int, int]


def look(path: Path) -> Seen:
    """Looks at the file without a connection. Raises RefusedError, in one sentence, for all that is no logbook we can read."""
    header, found = _first_bytes(path)
    size = found.st_size
    if size == 0:
        raise RefusedError(f"{path.name} is empty (0 bytes), so it is not a logbook: choose another file, or restore a backup.")
    if not header.startswith(_MAGIC):
        raise RefusedError(f"{path.name} is not a logbook but some other kind of file: choose the logbook itself.")
    if len(header) < _HEADER_BYTES:
        raise _cut_short(path)
    application = int.from_bytes(header[68:72], "big", signed=True)
    step = int.from_bytes(header[60:64], "big", signed=True)
    hot = _stands_beside(path)
    if application != APPLICATION_ID:
        raise RefusedError(f"{path.name} is another program's file, not a logbook: choose the logbook itself.")
    if step > len(STEPS):
        raise RefusedError(f"{path.name} was made by a newer version of this program: install that version to open it.")
    if step < 1:
        raise RefusedError(f"{path.name} is a logbook that was never finished: choose another file, or restore a backup.")
    if not hot and _length_said(header) != size and not _is_changing(path, header, size):
        raise _cut_short(path)
    return Seen(step, hot, (found.st_dev, found.st_ino))


def _is_changing(path: Path, header: bytes, size: int) -> bool:
    """Whether another program was writing between the looks at the length and at the header."""
    again, found = _first_bytes(path)
    return (again, found.st_size) != (header, size)


def roll_back_leftover(path: Path, patience: float) -> None:
    """What a killed program left beside the file is taken back or taken in by SQLite at the first read."""
    with as_sentences(path), closing(connect(path, patience=patience)) as connection:
        connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()


def is_writable(connection: sqlite3.Connection) -> bool:
    """Whether the place lets a write through, tried with a real one that is rolled back: BEGIN alone succeeds on read-only files.

    A file that is in use elsewhere and a full disk count as writable: those pass, and each write says so by itself.
    """
    patience = connection.execute("PRAGMA busy_timeout").fetchone()[0]
    connection.execute("PRAGMA busy_timeout = 0")
    try:
        with transaction(connection):
            connection.execute("UPDATE logbook SET uid = uid")
            raise _ProbedError
    except _ProbedError:
        return True
    except sqlite3.OperationalError as error:
        if code_of(error) & 0xFF in _PLACE_REFUSES:
            return False
        if code_of(error) & 0xFF in _PASSES:
            return True
        raise
    finally:
        connection.execute(f"PRAGMA busy_timeout = {patience}")


_PLACE_REFUSES = {sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM}
_PASSES = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_FULL, sqlite3.SQLITE_IOERR}


class _ProbedError(Exception):
    """Takes the probe's transaction back."""


def _first_bytes(path: Path) -> tuple[bytes, os.stat_result]:
    try:
        found = os.stat(path)
    except (FileNotFoundError, NotADirectoryError) as error:
        raise NotThereError(f"There is no logbook {path}: check the name, or make a new one.") from error
    except OSError as error:
        raise RefusedError(f"{path} can't be reached ({error.strerror}): check the folder.") from error
    if not stat.S_ISREG(found.st_mode):
        raise RefusedError(f"{path} is not a file but {_kind(found.st_mode)}: choose the logbook file itself.")
    try:
        with open(path, "rb") as file:
            return file.read(_HEADER_BYTES), found
    except OSError as error:
        raise RefusedError(f"{path.name} may not be read ({error.strerror}): ask for permission to read it.") from error


def _kind(mode: int) -> str:
    return "a folder" if stat.S_ISDIR(mode) else "a device or pipe"


def _stands_beside(path: Path) -> bool:
    """Beside the file itself, not beside a link to it: that is where SQLite looks."""
    return any(os.path.exists(beside) and os.path.getsize(beside) > 0 for beside in beside_too(Path(os.path.realpath(path)))[1:])


def _length_said(header: bytes) -> int:
    page = int.from_bytes(header[16:18], "big")
    pages = int.from_bytes(header[28:32], "big")
    return (65536 if page == 1 else page) * pages


def _cut_short(path: Path) -> DamagedError:
    return DamagedError("its length is not what it says", path.name)
