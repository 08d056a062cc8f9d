"""A verified copy of an open logbook: page by page through SQLite, read back and compared before it gets its name.

Never a file copy: a write in the middle would tear it, and opening the file a second time would drop SQLite's locks.
"""

import os
import sqlite3
import stat
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from typing import Any

from logbook.book.checking import check_whole
from logbook.book.connection import connect, transaction
from logbook.book.trouble import DamagedError, InUseError, as_sentences
from logbook.disk import sync_folder
from logbook.errors import RefusedError

PART = ".part"
"""How the name of a file that is still being made ends."""
PRIVATE = 0o600
"""The mode of a new file: its owner's alone."""
PAGES_AT_A_TIME = 256
ROWS_AT_A_TIME = 500
MOST_RESTARTS = 3
MOST_REFUSED = 100
"""So often, a fiftieth of a second apart, another's lock is waited for."""


def verified_copy(
    source: sqlite3.Connection, own: Path, target: Path, finish: Callable[[sqlite3.Connection], None] | None = None
) -> None:
    """Copies the logbook behind ``source``, whose file is ``own``, to the new file ``target``.

    Raises RefusedError; then ``target`` is not there.

    It goes in steps between which nothing is locked, so that a write need not wait for more than one; after a write it begins
    anew, and after four of those it raises InUseError. Ids, pages and every row of the copy are checked against the source before
    it gets its name, and the mode of the source's file; ``finish`` may write to it once it was. Raises DamagedError if it is the
    source that is damaged.
    """
    with new_file(target, _mode_of(own)) as temporary, as_sentences(own):
        for _ in range(MOST_RESTARTS + 1):
            version = _version(source)
            same = _copied(source, own, target, temporary)
            if _version(source) == version:
                break
        else:
            raise InUseError(f"{own.name} is being written by another window or program: wait a moment and try again.")
        if not same:
            raise RefusedError(f"The copy {target.name} was not the same as the logbook, so it was deleted: try another disk.")
        if finish is not None:
            with as_sentences(target), closing(connect(temporary)) as copy, transaction(copy):
                finish(copy)


def _copied(source: sqlite3.Connection, own: Path, target: Path, temporary: Path) -> bool:
    """Whether the copy is equal, or the source has changed meanwhile."""
    try:
        with as_sentences(target):
            _copy(source, temporary)
            with closing(connect(temporary)) as copy:  # not to read only: SQLite would leave out what tables demand
                check_whole(copy, temporary, _step(copy))
                return digest(copy) == digest(source)
    except DamagedError:
        check_whole(source, own, _step(source))
        if _same(source, temporary):
            raise DamagedError("a table holds what it may not", own.name) from None
        return False


def _version(connection: sqlite3.Connection) -> int:
    """A number that changes when another connection has written."""
    return int(connection.execute("PRAGMA data_version").fetchone()[0])


def _mode_of(path: Path) -> int:
    try:
        return stat.S_IMODE(os.stat(path).st_mode) | PRIVATE  # of one that is read-only too, the copy can be written to
    except OSError:  # moved away while it was open
        return PRIVATE


@contextmanager
def new_file(target: Path, mode: int = PRIVATE) -> Iterator[Path]:
    """A temporary name to make the file ``target`` under; it gets its name, durably, and ``mode`` only when all went well.

    Nothing is ever overwritten. Raises RefusedError if something of that name, or what SQLite would take for its journal, is
    there already, if there is no such folder or it can't be written to.
    """
    if not target.name or target.is_dir():
        raise RefusedError(f"{target} is a folder: say what the file in it is to be called, as wardrobe.logbook.")
    for beside in beside_too(target):
        if os.path.lexists(beside):
            raise RefusedError(f"{beside} is there already: choose another name.")
    if not target.parent.is_dir():
        raise RefusedError(f"There is no folder {target.parent}: make it first, or choose another place.")
    temporary = target.with_name(f".{target.name}.{os.urandom(8).hex()}{PART}")
    try:
        os.close(os.open(temporary, os.O_CREAT | os.O_EXCL | os.O_RDWR, PRIVATE))
        try:
            yield temporary
            os.chmod(temporary, mode)
            _give_name(temporary, target)
        finally:
            _clear(temporary)
    except OSError as error:
        raise RefusedError(f"{target} could not be written ({error.strerror}): choose another place.") from error


def beside_too(path: Path) -> tuple[Path, Path, Path]:
    """The file, and what SQLite would roll back or forward into it if it stood beside it."""
    return path, path.with_name(path.name + "-journal"), path.with_name(path.name + "-wal")


def digest(connection: sqlite3.Connection) -> str:
    """A digest of the ids, the schema and every row of every table: equal digests, equal logbooks."""
    import hashlib  # only when something is copied: it brings a whole library with it

    found = hashlib.sha256()
    schema = connection.execute("SELECT name, sql FROM sqlite_schema ORDER BY name").fetchall()
    ids = [connection.execute(f"PRAGMA {name}").fetchone() for name in ("application_id", "user_version")]
    found.update(repr((schema, ids)).encode())
    for name, sql in schema:
        if (sql or "").upper().startswith("CREATE TABLE"):
            found.update(name.encode())
            for some in _rows(connection, name):
                found.update(repr(some).encode())
    return found.hexdigest()


def _rows(connection: sqlite3.Connection, table: str) -> Iterator[list[tuple[Any, ...]]]:
    """All rows, some at a time; between two times nothing is locked."""
    last: Any = -(2**63)
    while some := connection.execute(
        f'SELECT rowid, * FROM "{table}" WHERE rowid > ? ORDER BY rowid LIMIT {ROWS_AT_A_TIME}', (last,)
    ).fetchall():
        last = some[-1][0]
        yield some


def _copy(source: sqlite3.Connection, temporary: Path) -> None:
    left, restarts, refused = 0, 0, 0

    def step(code: int, remaining: int, _: int) -> None:
        nonlocal left, restarts, refused
        restarts += remaining > left > 0
        refused = refused + 1 if code & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED) else 0
        left = remaining
        if restarts > MOST_RESTARTS or refused > MOST_REFUSED:
            raise InUseError(f"{temporary.name} can't be made while another window or program is writing: try again.")

    with closing(connect(temporary)) as copy:
        source.backup(copy, pages=PAGES_AT_A_TIME, progress=step, sleep=0.02)


def _same(source: sqlite3.Connection, temporary: Path) -> bool:
    try:
        with closing(connect(temporary, "ro")) as copy:
            return digest(copy) == digest(source)
    except sqlite3.Error:
        return False


def _step(connection: sqlite3.Connection) -> int:
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def _give_name(temporary: Path, target: Path) -> None:
    _sync(temporary)
    try:
        os.link(temporary, target)  # unlike a rename, this can't replace a file that came to be there meanwhile
    except FileExistsError:
        raise
    except OSError:  # a file system without hard links, as on many sticks
        os.rename(temporary, target)
    try:
        sync_folder(target.parent)
    except OSError:
        target.unlink(missing_ok=True)
        raise


def _clear(temporary: Path) -> None:
    for leftover in beside_too(temporary):
        with suppress(OSError):  # not there, or in a folder that can't be written to: then making it says so
            leftover.unlink()


def _sync(path: Path) -> None:
    handle = os.open(path, os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
