"""An open logbook: the file, its connection, and the two doors to it, reading and writing."""

import os
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from logbook.book import backups
from logbook.book.changes import Writing, new_uid, utc_now
from logbook.book.connection import connect, transaction
from logbook.book.opening import check_whole, is_writable, look, roll_back_leftover
from logbook.book.schema import APPLICATION_ID, STEPS, take_steps
from logbook.book.search import refresh_words
from logbook.book.trouble import as_sentences
from logbook.errors import RefusedError


class ReplacedError(RefusedError):
    """The file under the open logbook is not the one that was opened."""


@dataclass(slots=True)
class Logbook:
    """An open logbook file. ``read_only``: the place can't be written to. Made by ``open_logbook`` and ``new_logbook``.

    Everything raised over the file is a RefusedError with a sentence.
    """

    path: Path
    connection: sqlite3.Connection
    uid: str
    read_only: bool
    backup_folder: Path | None
    identity: tuple[int, int]
    now: Callable[[], str] = utc_now
    backed_up: bool = False

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """One consistent view of the file."""
        with as_sentences(self.path), transaction(self.connection, writes=False):
            self._require_same()
            yield self.connection

    @contextmanager
    def writing(self, label: str, kind: str = "do", of: str | None = None) -> Iterator[Writing]:
        """One user action, kept and undoable: all of it or nothing. A session's first write makes a backup before it."""
        if self.read_only:
            raise RefusedError(
                f"{self.path.name} can't be written to here: save a copy in a folder of your own and go on with that."
            )
        self.back_up_once()
        with as_sentences(self.path), transaction(self.connection):
            self._require_same()
            writing = Writing(self.connection, label, kind, of, self.now)
            yield writing
            refresh_words(self.connection, writing.touched)

    def back_up_once(self, *, again: bool = False) -> None:
        """Makes a verified backup if this session has made none yet, or ``again`` before an import or merge."""
        if self.backup_folder is not None and (again or not self.backed_up):
            with self.reading():
                pass
            backups.make(self.connection, self.path, self.backup_folder / self.uid, self.now())
            self.backed_up = True

    def data_version(self) -> int:
        """A number that changes when another connection has written."""
        with as_sentences(self.path):
            return int(self.connection.execute("PRAGMA data_version").fetchone()[0])

    def close(self) -> None:
        """Closes the connection; closing twice is no harm."""
        self.connection.close()

    def __enter__(self) -> "Logbook":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def _require_same(self) -> None:
        try:
            same = _identity(self.path) == self.identity
        except OSError:
            same = False
        if same:
            found = self.connection.execute("SELECT uid FROM logbook").fetchone()
            same = found is not None and found[0] == self.uid
        if not same:
            raise ReplacedError(
                f"{self.path.name} was moved or replaced by another file while it was open: nothing was written. "
                "Save a copy of what is open here, then open the file again."
            )


def open_logbook(path: Path, backup_folder: Path | None = None, *, patience: float = 2.0, vfs: str | None = None) -> Logbook:
    """Opens an existing logbook, taking it to the newest schema (after a verified backup) if it is older.

    ``backup_folder`` is where the backups of all logbooks are kept (None: make none). Raises RefusedError in one sentence; a file
    that is refused is not changed by a byte.
    """
    path = path.resolve()
    seen = look(path)
    if seen.hot:
        roll_back_leftover(path, patience)
        seen = look(path)
    with as_sentences(path):
        connection = connect(path, patience=patience, vfs=vfs)
        try:
            check_whole(connection, path)
            uid = _own_uid(connection, path)
            read_only = not is_writable(connection)
            if seen.step < len(STEPS):
                _take_to_newest(connection, path, seen.step, backup_folder, uid, read_only=read_only)
        except BaseException:
            connection.close()
            raise
    return Logbook(path, connection, uid, read_only, backup_folder, _identity(path))


def new_logbook(path: Path, backup_folder: Path | None = None, *, patience: float = 2.0, vfs: str | None = None) -> Logbook:
    """Makes a new, empty logbook. Raises RefusedError if something of that name is there already, or the folder is not."""
    path = path.resolve()
    if not path.parent.is_dir():
        raise RefusedError(f"There is no folder {path.parent}: make it first, or choose another place.")
    for beside in (path, path.with_name(path.name + "-journal")):
        if os.path.lexists(beside):
            raise RefusedError(f"{beside} is there already: choose another name for the new logbook.")
    uid = new_uid()
    with as_sentences(path):
        connection = connect(path, "rwc", patience, vfs)
        try:
            with transaction(connection):
                connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
                take_steps(connection, 0)
                connection.execute("INSERT INTO logbook (uid) VALUES (?)", (uid,))
        except BaseException:
            connection.close()
            path.unlink(missing_ok=True)
            raise
    # An empty logbook needs no backup before its first write.
    return Logbook(path, connection, uid, False, backup_folder, _identity(path), backed_up=True)


def _own_uid(connection: sqlite3.Connection, path: Path) -> str:
    found = connection.execute("SELECT uid FROM logbook").fetchall()
    if len(found) != 1:
        raise RefusedError(f"{path.name} does not say which logbook it is: restore the newest backup under a new name.")
    return str(found[0][0])


def _take_to_newest(
    connection: sqlite3.Connection, path: Path, step: int, backup_folder: Path | None, uid: str, *, read_only: bool
) -> None:
    if read_only:
        raise RefusedError(
            f"{path.name} is of an older schema and can't be written to here: save a copy elsewhere and open that."
        )
    if backup_folder is not None:
        backups.make(connection, path, backup_folder / uid, utc_now())
    with transaction(connection):
        take_steps(connection, step)


def _identity(path: Path) -> tuple[int, int]:
    found = os.stat(path)
    return found.st_dev, found.st_ino
