"""A verified copy of an open logbook: page by page through SQLite, read back and compared before it gets its name.

Never a file copy: a write in the middle would tear it, and opening the file a second time would drop SQLite's locks.
"""

import hashlib
import os
import sqlite3
from contextlib import closing, suppress
from pathlib import Path

from logbook.book.connection import connect, transaction
from logbook.book.schema import APPLICATION_ID
from logbook.book.trouble import as_sentences
from logbook.errors import RefusedError


def verified_copy(source: sqlite3.Connection, target: Path) -> None:
    """Copies the logbook behind ``source`` to the new file ``target``. Raises RefusedError; then ``target`` is not there.

    Identity, integrity and every row of the copy are checked against the source, the file and its folder synced, and only then
    renamed to ``target``.
    """
    for beside in (target, _journal(target)):
        if os.path.lexists(beside):
            raise RefusedError(f"{beside} is there already: choose another name for the copy.")
    if not target.parent.is_dir():
        raise RefusedError(f"There is no folder {target.parent}: make it first, or choose another place.")
    temporary = target.with_name(f".{target.name}.{os.getpid()}.part")
    try:
        with as_sentences(target):
            _copy(source, temporary)
            _sync(temporary)
            os.rename(temporary, target)
            _sync(target.parent)
    except OSError as error:
        raise RefusedError(f"{target} could not be written ({error.strerror}): choose another place.") from error
    finally:
        for leftover in (temporary, _journal(temporary)):
            with suppress(OSError):
                leftover.unlink()


def _copy(source: sqlite3.Connection, temporary: Path) -> None:
    with transaction(source, writes=False):
        wanted = digest(source)
        with closing(connect(temporary, "rwc")) as copy:
            source.backup(copy)
    with closing(connect(temporary, "ro")) as copy:
        ours = copy.execute("PRAGMA application_id").fetchone()[0] == APPLICATION_ID
        sound = [row[0] for row in copy.execute("PRAGMA integrity_check(1)")] == ["ok"]
        if not (ours and sound and digest(copy) == wanted):
            raise RefusedError(f"The copy {temporary.name} is not equal to the logbook, so it was thrown away: try another disk.")


def digest(connection: sqlite3.Connection) -> str:
    """A digest of the schema and of every row of every table: equal digests, equal logbooks."""
    found = hashlib.sha256()
    schema = connection.execute("SELECT name, sql FROM sqlite_schema ORDER BY name").fetchall()
    found.update(repr((schema, connection.execute("PRAGMA user_version").fetchone())).encode())
    tables = [name for name, sql in schema if (sql or "").upper().startswith("CREATE TABLE")]
    for table in tables:
        found.update(table.encode())
        for row in connection.execute(f'SELECT * FROM "{table}" ORDER BY rowid'):
            found.update(repr(row).encode("utf-8", "surrogatepass"))
    return found.hexdigest()


def _journal(path: Path) -> Path:
    return path.with_name(path.name + "-journal")


def _sync(path: Path) -> None:
    """Makes the file or folder durable. A folder can't be synced on Windows, where a rename is durable by itself."""
    if os.name == "nt" and path.is_dir():
        return
    handle = os.open(path, os.O_RDONLY if path.is_dir() else os.O_RDWR)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
