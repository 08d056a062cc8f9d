"""An open logbook: the file, its connection, and the two doors to it, reading and writing."""

import os
import re
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path

from logbook.book import backups
from logbook.book.changes import Writing, new_uid, utc_now
from logbook.book.checking import check_tables, check_whole
from logbook.book.connection import connect, keep_one_file, transaction
from logbook.book.copying import new_file, verified_copy
from logbook.book.derived import refresh_derived
from logbook.book.kept_twice import require_kept_alike
from logbook.book.leftover import name_with_journal, take_back
from logbook.book.opening import is_writable, look
from logbook.book.schema import APPLICATION_ID, STEPS, take_steps
from logbook.book.trouble import NOT_WRITABLE, DamagedError, InUseError, OtherNameError, as_sentences, code_of
from logbook.errors import RefusedError

_UID = re.compile(r"[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")


class ReplacedError(RefusedError):
    """The file under the open logbook is not the one that was opened."""


class WrittenOverError(ReplacedError):
    """It is the same file, but something else was written into it: what was open is not there any more."""


@dataclass(slots=True)
class Logbook:
    """An open logbook file. ``read_only``: the place can't be written to. Made by ``open_logbook`` and ``new_logbook``.

    ``before_writing`` is called before anything is written, when nobody else can write any more; it may refuse.

    Everything raised over the file is a RefusedError with a sentence.
    """

    path: Path
    connection: sqlite3.Connection
    uid: str
    read_only: bool
    backup_folder: Path | None
    identity: tuple[int, int]
    now: Callable[[], str] = utc_now
    last_seen: tuple[int, int] | None = None
    before_writing: Callable[[], object] = lambda: None
    warning: str = ""

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """One consistent view of the file."""
        with self._view(writes=False):
            yield self.connection

    def require_writable(self) -> None:
        """Raises RefusedError if it lies where it can't be written to."""
        if self.read_only:
            raise RefusedError(NOT_WRITABLE.format(name=self.path.name))

    @contextmanager
    def writing(self, label: str, kind: str = "do", of: str | None = None) -> Iterator[Writing]:
        """One user action, kept and undoable: all of it or nothing.

        Raises what ``before_writing`` raises.
        """
        self.require_writable()
        with self._view(writes=True):
            self.before_writing()
            writing = Writing(self.connection, label, kind, of, self.now)
            yield writing
            refresh_derived(self.connection, writing.touched)
            writing.seal()

    def back_up(self, *, again: bool = False) -> Path | None:
        """Makes a verified backup and says where; None if none are kept. If the newest is of this very state it is that one, or
        another if ``again``.

        It goes by a connection of its own and keeps no writer waiting. Raises RefusedError if none could be made.
        """
        if self.backup_folder is None:
            return None
        with self.again() as own, as_sentences(self.path):
            with own.reading():
                pass  # it is still the file that was opened
            return backups.make(own.connection, self.path, self.backup_folder / self.uid, self.now(), again=again)

    def back_up_first(self) -> None:
        """The same before what changes much. Raises RefusedError if there is none; then that is not to be done."""
        try:
            self.back_up()
        except (DamagedError, InUseError):
            raise
        except RefusedError as error:
            raise RefusedError(f"In {self.path.name} nothing was written, since no backup could be made: {error}") from error

    def is_backed_up(self) -> bool:
        """Whether there is nothing to back up: the newest backup is of this very state, or none are kept."""
        if self.backup_folder is None:
            return True
        with self.reading() as connection:
            return backups.is_of_now(connection, self.backup_folder / self.uid)

    def again(self) -> "Logbook":
        """A second connection to the same file, for work in another thread; the file's bytes are not looked at again."""
        with as_sentences(self.path):
            connection = connect(self.path)
        return Logbook(self.path, connection, self.uid, self.read_only, self.backup_folder, self.identity, self.now)

    def save_copy(self, target: Path) -> None:
        """Saves what is open here as the new file ``target``, even if the logbook's own file was moved or replaced meanwhile.

        The copy is a logbook of its own: its backups are not those of this one.
        """

        def own_uid(copy: sqlite3.Connection) -> None:
            copy.execute("UPDATE logbook SET uid = ?", (new_uid(),))

        with as_sentences(self.path):
            self._forget_if_touched()
            self._require_own()
            verified_copy(self.connection, self.path, target, own_uid)

    def data_version(self) -> int:
        """A number that changes when another connection has written."""
        with as_sentences(self.path):
            return int(self.connection.execute("PRAGMA data_version").fetchone()[0])

    def wait_for_others(self, seconds: float) -> None:
        """For how long a lock that another program holds is waited for, standing still meanwhile."""
        self.connection.execute(f"PRAGMA busy_timeout = {round(seconds * 1000)}")

    def is_at(self, path: Path) -> bool:
        """Whether ``path`` leads to this logbook's own file."""
        try:
            found = os.stat(path)
        except OSError:
            return False
        return (found.st_dev, found.st_ino) == self.identity

    def close(self) -> None:
        """Closes the connection; closing twice is no harm."""
        self.connection.close()

    def __enter__(self) -> "Logbook":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    @contextmanager
    def _view(self, *, writes: bool) -> Iterator[None]:
        with as_sentences(self.path):
            self._forget_if_touched()
            with transaction(self.connection, writes=writes):
                self._require_same()
                if writes:
                    self._require_whole()
                yield

    def _require_whole(self) -> None:
        """What another program added at the end SQLite would cut off without a word."""
        pages, size = (self.connection.execute(f"PRAGMA {name}").fetchone()[0] for name in ("page_count", "page_size"))
        if os.stat(self.path).st_size > pages * size:
            raise ReplacedError(
                f"Another program added something at the end of {self.path.name} while it was open: nothing was written. "
                "Save a copy of what is open here and go on with that."
            )

    def _forget_if_touched(self) -> None:
        """SQLite takes its cached pages for current if a counter in the file is; one written over by an equally old copy of the
        logbook, as sync programs do, would come out as a mixture of the two."""
        try:
            found = os.stat(self.path)
        except OSError:
            return
        if self.last_seen != (found.st_mtime_ns, found.st_size):
            self.last_seen = (found.st_mtime_ns, found.st_size)
            self.connection.execute("PRAGMA shrink_memory")

    def _require_same(self) -> None:
        if not self.is_at(self.path):
            raise ReplacedError(
                f"{self.path.name} was moved or replaced by another file while it was open: nothing was written. "
                "Save a copy of what is open here, then open the file again."
            )
        self._require_own()

    def _require_own(self) -> None:
        """A file that was cut to nothing reads as an empty database: no error, and no logbook."""
        if _uids(self.connection) != [self.uid]:
            raise WrittenOverError(
                f"{self.path.name} was overwritten with something else while it was open: nothing was written. "
                "Open it again, or restore the newest backup under a new name."
            )


def open_logbook(path: Path, backup_folder: Path | None = None, *, patience: float = 2.0) -> Logbook:
    """Opens an existing logbook, taking it to the newest schema (after a verified backup) if it is older.

    ``backup_folder`` is where the backups of all logbooks are kept (None: make none); ``patience`` is how many seconds a lock is
    waited for. It looks at the tables alone, whatever the size; ``check_thoroughly`` looks at all.
    Raises RefusedError in one sentence; a file that is refused is not changed by a byte.
    """
    path = name_with_journal(Path(os.path.realpath(path)))
    with _by_this_name(path):
        seen = look(path)
    if seen.hot:
        take_back(path, patience)
        seen = look(path)
    with _by_this_name(path), as_sentences(path):
        connection = connect(path, patience=patience)
        try:
            check_tables(connection, path, seen.step)
            if warning := _warning(path):
                check_whole(connection, path, seen.step)
                if seen.step == len(STEPS):
                    require_kept_alike(connection)
            uid = _own_uid(connection, path)
            keep_one_file(connection, path)
            read_only = not is_writable(connection)
            if seen.step < len(STEPS):
                _take_to_newest(connection, path, backup_folder, uid, seen.step, read_only=read_only)
            return Logbook(path, connection, uid, read_only, backup_folder, seen.identity, warning=warning)
        except BaseException:
            connection.close()
            raise


@contextmanager
def _by_this_name(path: Path) -> Iterator[None]:
    """Without a journal that its other name left in another folder the file may not be whole."""
    try:
        yield
    except DamagedError as error:
        if _warning(path):
            raise OtherNameError(path.name) from error
        raise


def _warning(path: Path) -> str:
    if os.stat(path).st_nlink < 2:
        return ""
    return f"{path.name} has more than one name on this disk: open it by one of them alone, or a crash could damage it."


def new_logbook(
    path: Path, backup_folder: Path | None = None, *, patience: float = 2.0, fill: Callable[[Writing], None] | None = None
) -> Logbook:
    """Makes a new logbook, empty or with what ``fill`` writes as its first action: whole, or not there, whatever happens.

    Raises RefusedError if something of that name is there already, or the folder is not.
    """
    path = Path(os.path.abspath(path))
    with new_file(path) as new, as_sentences(path), closing(connect(new, "rwc")) as connection, transaction(connection):
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        take_steps(connection, STEPS)
        connection.execute("INSERT INTO logbook (uid) VALUES (?)", (new_uid(),))
        if fill is not None:
            writing = Writing(connection, "")
            fill(writing)
            refresh_derived(connection, writing.touched)
            writing.seal()
    return open_logbook(path, backup_folder, patience=patience)


def _own_uid(connection: sqlite3.Connection, path: Path) -> str:
    """The logbook's own uid, which also names the folder of its backups, so it had better not be another path."""
    match _uids(connection):
        case [str(uid)] if _UID.fullmatch(uid):
            return uid
        case _:
            raise DamagedError("it does not say which logbook it is", path.name)


def _uids(connection: sqlite3.Connection) -> list[object]:
    try:
        return [uid for (uid,) in connection.execute("SELECT uid FROM logbook")]
    except sqlite3.OperationalError as error:
        if code_of(error) == sqlite3.SQLITE_ERROR:  # no such table: it is no logbook any more
            return []
        raise


def _take_to_newest(
    connection: sqlite3.Connection, path: Path, backup_folder: Path | None, uid: str, step: int, *, read_only: bool
) -> None:
    if read_only:
        raise RefusedError(
            f"{path.name} was made by an older version of this program and can't be brought up to date here: "
            "copy it to a folder of your own and open that."
        )
    check_whole(connection, path, step)
    if backup_folder is not None:
        backups.make(connection, path, backup_folder / uid, utc_now())
    with transaction(connection):
        taken = connection.execute("PRAGMA user_version").fetchone()[0]  # now: another window may have been quicker
        take_steps(connection, STEPS, taken)
