"""A verified copy of an open logbook: page by page through SQLite, read back and compared before it gets its name.

Never a file copy: a write in the middle would tear it, and opening the file a second time would drop SQLite's locks.
"""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path

from logbook.book.checking import check_whole
from logbook.book.connection import connect, transaction
from logbook.book.trouble import DamagedError, as_sentences
from logbook.disk import sync_folder
from logbook.errors import RefusedError

PART = ".part"
"""How the name of a file that is still being made ends."""


def verified_copy(source: sqlite3.Connection, own: Path, target: Path) -> None:
    """Copies the logbook behind ``source``, whose file is ``own``, to the new file ``target``.

    Raises RefusedError; then ``target`` is not there.

    Ids, pages and every row of the copy are checked against the source before it gets its name. Raises DamagedError if it is the
    source that is damaged.
    """
    with new_file(target) as temporary, as_sentences(own), transaction(source, writes=False):
        wanted = digest(source)
        try:
            with as_sentences(target):
                _copy(source, temporary)
                same = _checked_digest(temporary) == wanted
        except DamagedError:
            check_whole(source, own, _step(source))
            if _same(temporary, wanted):
                raise DamagedError("a table holds what it may not", own.name) from None
            same = False
        if not same:
            raise RefusedError(f"The copy {target.name} did not come out equal and was thrown away: try another disk.")


@contextmanager
def new_file(target: Path) -> Iterator[Path]:
    """A temporary name to make the file ``target`` under; it gets its name, durably, only when all went well.

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
    temporary = target.with_name(f".{target.name}.{os.getpid()}{PART}")
    _clear(temporary)
    try:
        yield temporary
        _give_name(temporary, target)
    except OSError as error:
        raise RefusedError(f"{target} could not be written ({error.strerror}): choose another place.") from error
    finally:
        _clear(temporary)


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
    tables = [name for name, sql in schema if (sql or "").upper().startswith("CREATE TABLE")]
    for table in tables:
        found.update(table.encode())
        rows = connection.execute(f'SELECT * FROM "{table}" ORDER BY rowid')
        while some := rows.fetchmany(500):
            found.update(repr(some).encode())
    return found.hexdigest()


def _copy(source: sqlite3.Connection, temporary: Path) -> None:
    with closing(connect(temporary, "rwc")) as copy:
        source.backup(copy)


def _checked_digest(temporary: Path) -> str:
    with closing(connect(temporary)) as copy:  # not to read only: SQLite would leave out what each table demands of its columns
        check_whole(copy, temporary, _step(copy))
        return digest(copy)


def _same(temporary: Path, wanted: str) -> bool:
    try:
        with closing(connect(temporary, "ro")) as copy:
            return digest(copy) == wanted
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
