"""What SQLite says, said as one sentence to the maker."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from logbook.errors import RefusedError


class DamagedError(RefusedError):
    """The file is a logbook whose pages or records are broken."""


class InUseError(RefusedError):
    """Another window or program is writing; trying again may help."""


_SENTENCES: dict[int, str] = {
    sqlite3.SQLITE_READONLY: "{name} can't be written to here: save a copy in a folder of your own and go on with that.",
    sqlite3.SQLITE_FULL: "The disk is full, so {name} could not take this: make room and save again.",
    sqlite3.SQLITE_IOERR: "The disk did not take this for {name}: see whether it is connected and has room, then save again.",
    sqlite3.SQLITE_CANTOPEN: "{name} can't be opened here: see whether its folder is there and may be written to.",
    sqlite3.SQLITE_PERM: "{name} may not be opened: ask for permission to its folder, or save a copy elsewhere.",
    sqlite3.SQLITE_AUTH: "{name} may not be opened: ask for permission to its folder, or save a copy elsewhere.",
}
_BUSY = {sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED}
_DAMAGED = {sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB, sqlite3.SQLITE_FORMAT, sqlite3.SQLITE_MISMATCH}


@contextmanager
def as_sentences(path: Path) -> Iterator[None]:
    """Turns what SQLite raises over the file at ``path`` into one sentence; errors of our own making pass as they are."""
    try:
        yield
    except UnicodeDecodeError as error:
        raise DamagedError(_damaged(path, "a text in it is not text any more")) from error
    except sqlite3.Error as error:
        raise _sentence(error, path) from error


def _sentence(error: sqlite3.Error, path: Path) -> Exception:
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    if code in _BUSY:
        return InUseError(f"{path.name} is being written by another window or program: wait a moment and try again.")
    if code in _DAMAGED or (isinstance(error, sqlite3.OperationalError) and "Could not decode" in str(error)):
        return DamagedError(_damaged(path, str(error)))
    if code in _SENTENCES:
        return RefusedError(_SENTENCES[code].format(name=path.name))
    return error


def _damaged(path: Path, how: str) -> str:
    return f"{path.name} is damaged ({how}): leave it as it is and restore the newest backup under a new name."
