"""The one place where a connection to a logbook file is made.

A rollback journal and not a write-ahead log: between commits there is exactly one file, which is what people and sync programs
copy. ``synchronous=EXTRA`` also syncs the folder after the journal is gone, so that no power cut takes back a commit.
"""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from logbook.errors import RefusedError

LEAST_SQLITE = (3, 37, 0)
_SETTINGS = {
    "foreign_keys": 1,
    "trusted_schema": 0,
    "cell_size_check": 1,
    "recursive_triggers": 1,
    "synchronous": 3,
    "cache_size": -16_384,
}
"""``cache_size`` is in KiB: what a look-up reads of a large logbook stays in memory from key to key."""


def connect(path: Path, mode: str = "rw", patience: float = 2.0) -> sqlite3.Connection:
    """A connection in autocommit with every safety setting set and read back.

    ``mode`` is ``rw``, ``ro`` or ``rwc`` (only for a new file); ``patience`` is how many seconds a lock is waited for. Raises
    RefusedError if SQLite is too old or does not take a setting, sqlite3.Error as it comes.
    """
    if sqlite3.sqlite_version_info < LEAST_SQLITE:
        raise RefusedError(f"This Python brings SQLite {sqlite3.sqlite_version}: the logbook needs 3.37 or newer.")
    address = f"{Path(os.path.abspath(path)).as_uri()}?mode={mode}"
    connection = sqlite3.connect(address, uri=True, isolation_level=None, timeout=patience)
    try:
        for name, wanted in _SETTINGS.items():
            connection.execute(f"PRAGMA {name} = {wanted}")
            if connection.execute(f"PRAGMA {name}").fetchone()[0] != wanted:
                raise RefusedError(f"SQLite does not take its setting {name}: this build can't keep the logbook safe.")
    except BaseException:
        connection.close()
        raise
    return connection


def keep_one_file(connection: sqlite3.Connection, path: Path) -> None:
    """Sets the rollback journal, which another program may have turned into a write-ahead log. Raises RefusedError if it can't.

    That writes to the file, so it is done only once the file was found sound.
    """
    if connection.execute("PRAGMA journal_mode = DELETE").fetchone()[0] != "delete":
        raise RefusedError(
            f"{path.name} was set to keep a part of itself in {path.name}-wal, and that can't be undone now: close it in the "
            "other program, or copy both files to a folder of your own and open it there."
        )


@contextmanager
def transaction(connection: sqlite3.Connection, *, writes: bool = True) -> Iterator[sqlite3.Connection]:
    """One user action: all of it or none. Reading takes one too, so that it sees one state of the file."""
    connection.execute("BEGIN IMMEDIATE" if writes else "BEGIN")
    try:
        yield connection
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:
            connection.execute("ROLLBACK")
        raise
