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
from logbook.book.schema import APPLICATION_ID, STEPS
from logbook.book.trouble import DamagedError, as_sentences
from logbook.errors import RefusedError

_MAGIC = b"SQLite format 3\0"
_HEADER_BYTES = 100


class NotThereError(RefusedError):
    """There is no file of that name."""


@dataclass(frozen=True, slots=True)
class Seen:
    """What the first look found: a logbook of ours at schema ``step``; ``hot``: a journal stands beside it to be rolled back."""

    step: int
    hot: bool


def look(path: Path) -> Seen:
    """Looks at the file without a connection. Raises RefusedError, in one sentence, for all that is no logbook we can read."""
    header, size = _first_bytes(path)
    if size == 0:
        raise RefusedError(f"{path.name} is empty (0 bytes), so it is no logbook: choose another file, or restore a backup.")
    if not header.startswith(_MAGIC[: len(header)]) or (size < len(_MAGIC)):
        raise RefusedError(f"{path.name} is not a logbook but some other kind of file: choose the logbook itself.")
    if len(header) < _HEADER_BYTES:
        raise RefusedError(_cut_short(path))
    application = int.from_bytes(header[68:72], "big", signed=True)
    step = int.from_bytes(header[60:64], "big", signed=True)
    hot = _stands_beside(path)
    if application != APPLICATION_ID:
        raise RefusedError(f"{path.name} is another program's file, not a logbook: choose the logbook itself.")
    if step > len(STEPS):
        raise RefusedError(f"{path.name} was written by a newer logbook program (schema {step}; this one knows {len(STEPS)}): "
                           "install the newer version to open it.")  # fmt: skip
    if step < 1:
        raise RefusedError(f"{path.name} is a logbook that was never finished: choose another file, or restore a backup.")
    if not hot and _length_said(header) != size:
        raise DamagedError(_cut_short(path))
    return Seen(step, hot)


def is_logbook(path: Path) -> bool:
    """Whether a file that is not open here looks like a logbook (of any step). Missing or unreadable: False."""
    try:
        header, _ = _first_bytes(path)
    except RefusedError:
        return False
    return header[:16] == _MAGIC and int.from_bytes(header[68:72], "big") == APPLICATION_ID


def check_whole(connection: sqlite3.Connection, path: Path) -> None:
    """Raises DamagedError if the file's pages or its references are broken."""
    with as_sentences(path):
        problems = [row[0] for row in connection.execute("PRAGMA integrity_check(3)")]
        dangling = connection.execute("PRAGMA foreign_key_check").fetchone()
    if problems != ["ok"]:
        raise DamagedError(f"{path.name} is damaged ({problems[0].splitlines()[-1]}): leave it as it is and restore the newest "
                           "backup under a new name.")  # fmt: skip
    if dangling is not None:
        raise DamagedError(f"{path.name} is damaged (a record of {dangling[0]} points to nothing): leave it as it is and "
                           "restore the newest backup under a new name.")  # fmt: skip


def roll_back_leftover(path: Path, patience: float) -> None:
    """A journal left by a killed program: SQLite rolls it back at the first read; then look again."""
    with as_sentences(path), closing(connect(path, patience=patience)) as connection:
        connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()
    look(path)


def is_writable(connection: sqlite3.Connection) -> bool:
    """Whether a write would go through, tried with a real one that is rolled back: BEGIN alone succeeds on read-only files.

    A file that is in use elsewhere counts as writable: that passes.
    """
    try:
        with transaction(connection):
            connection.execute("UPDATE logbook SET uid = uid")
            raise _ProbedError
    except _ProbedError:
        return True
    except sqlite3.OperationalError as error:
        if error.sqlite_errorcode & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
            return True
        if error.sqlite_errorcode & 0xFF in (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM):
            return False
        raise


class _ProbedError(Exception):
    """Takes the probe's transaction back."""


def _first_bytes(path: Path) -> tuple[bytes, int]:
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
            return file.read(_HEADER_BYTES), found.st_size
    except OSError as error:
        raise RefusedError(f"{path.name} may not be read ({error.strerror}): ask for permission to read it.") from error


def _kind(mode: int) -> str:
    return "a folder" if stat.S_ISDIR(mode) else "a device or pipe"


def _stands_beside(path: Path) -> bool:
    journal = path.with_name(path.name + "-journal")
    try:
        return journal.stat().st_size > 0
    except OSError:
        return False


def _length_said(header: bytes) -> int:
    page = int.from_bytes(header[16:18], "big")
    pages = int.from_bytes(header[28:32], "big")
    return (65536 if page == 1 else page) * pages


def _cut_short(path: Path) -> str:
    return f"{path.name} is damaged (its length is not what it says): leave it as it is and restore the newest backup."
