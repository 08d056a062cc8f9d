"""Every state a file can be in when it is opened: what is said, and that not a byte changes where nothing may."""

import os
import socket
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from logbook.book import schema
from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.opening import NotThereError, is_writable, look
from logbook.book.swatches import swatches
from logbook.book.thorough_check import check_thoroughly
from logbook.book.trouble import DamagedError, InUseError
from logbook.errors import RefusedError
from tests.support.books import edit, held, put_worked, small_book
from tests.support.children import as_nobody, as_nobody_only


@pytest.fixture
def path(tmp_path: Path) -> Path:
    small_book(tmp_path / "vests.logbook").close()
    return tmp_path / "vests.logbook"


@pytest.fixture
def open_folder() -> Iterator[Path]:
    """A folder that other users can get at."""
    with tempfile.TemporaryDirectory() as name:
        os.chmod(name, 0o777)
        yield Path(name)


def foreign(path: Path) -> None:
    path.unlink()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE t (x)")


def with_pragma(path: Path, pragma: str) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute(f"PRAGMA {pragma}")


def truncated(path: Path, size: int) -> None:
    os.truncate(path, size)


def written_over(path: Path, offset: int, data: bytes) -> None:
    with open(path, "r+b") as file:
        file.seek(offset)
        file.write(data)


def broken_index(path: Path) -> None:
    """Takes a row out of an index alone, so that the pages look right each by itself."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute("DELETE FROM sqlite_schema WHERE name = 'change_of_record'")
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA writable_schema = ON")
        connection.execute("UPDATE change SET record = 'x' WHERE position = 1")
        sql = next(line for line in schema.STEPS[0] if "change_of_record" in line)
        root = connection.execute("SELECT max(rootpage) FROM sqlite_schema").fetchone()[0] - 1
        connection.execute("INSERT INTO sqlite_schema VALUES ('index', 'change_of_record', 'change', ?, ?)", (root, sql))


def dangling(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("DELETE FROM yarn")


def no_uid(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("DELETE FROM logbook")


def no_text_for_a_uid(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("UPDATE logbook SET uid = CAST(x'ff' AS TEXT)")


def a_path_for_a_uid(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("UPDATE logbook SET uid = '../../elsewhere'")


def a_trigger(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("CREATE TRIGGER sly AFTER INSERT ON swatch BEGIN DELETE FROM reading; END")


def another_column(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("ALTER TABLE yarn RENAME COLUMN fibre TO fiber")


def no_text(path: Path) -> None:
    data = path.read_bytes()
    assert data.count("Étang".encode()) >= 1
    path.write_bytes(data.replace("Étang".encode(), b"\xff\xfftang"))


REFUSED: list[tuple[str, Callable[[Path], object], type[RefusedError], str]] = [
    ("nothing there", lambda p: p.unlink(), NotThereError, "There is no logbook"),
    ("0 bytes", lambda p: truncated(p, 0), RefusedError, "is empty"),
    ("7 bytes", lambda p: truncated(p, 7), RefusedError, "some other kind"),
    ("16 bytes", lambda p: truncated(p, 16), DamagedError, "its length"),
    ("99 bytes", lambda p: truncated(p, 99), DamagedError, "its length"),
    ("100 bytes", lambda p: truncated(p, 100), DamagedError, "its length"),
    ("a page short", lambda p: truncated(p, p.stat().st_size - 4096), DamagedError, "its length"),
    ("a byte short", lambda p: truncated(p, p.stat().st_size - 1), DamagedError, "its length"),
    ("a byte long", lambda p: truncated(p, p.stat().st_size + 1), DamagedError, "its length"),
    ("text", lambda p: p.write_text("row 1: ch 2\n" * 100), RefusedError, "some other kind of file"),
    ("a zip", lambda p: p.write_bytes(b"PK\x03\x04" + bytes(5000)), RefusedError, "some other kind of file"),
    ("another program's", foreign, RefusedError, "another program's file"),
    ("newer", lambda p: with_pragma(p, "user_version = 99"), RefusedError, "made by a newer version"),
    ("never finished", lambda p: with_pragma(p, "user_version = 0"), RefusedError, "never finished"),
    ("a broken schema", lambda p: written_over(p, 100, b"\xff" * 40), DamagedError, "damaged"),
    ("no uid", no_uid, DamagedError, "which logbook it is"),
    ("no text for a uid", no_text_for_a_uid, DamagedError, "not text any more"),
    ("a path for a uid", a_path_for_a_uid, DamagedError, "which logbook it is"),
    ("a trigger", a_trigger, RefusedError, "holds trigger sly"),
    ("another column", another_column, DamagedError, "table yarn is not as it was made"),
]


@pytest.mark.parametrize(("spoil", "kind", "says"), [one[1:] for one in REFUSED], ids=[one[0] for one in REFUSED])
def test_refused_in_one_sentence_and_not_a_byte_changed(
    path: Path, spoil: Callable[[Path], object], kind: type[RefusedError], says: str
) -> None:
    spoil(path)
    before = {found.name: found.read_bytes() for found in path.parent.iterdir()}
    with pytest.raises(RefusedError, match=says) as raised:
        open_logbook(path)
    assert isinstance(raised.value, kind)
    assert "\n" not in str(raised.value)
    assert path.name in str(raised.value)
    assert {found.name: found.read_bytes() for found in path.parent.iterdir()} == before


@pytest.mark.parametrize(
    ("spoil", "says"),
    [
        (lambda p: written_over(p, 4096 * 3, bytes(4096)), "damaged"),
        (broken_index, "damaged"),
        (dangling, "a record of swatch points to nothing"),
        (no_text, "not text any more"),
    ],
    ids=["a broken page", "a broken index", "a dangling record", "no text"],
)
def test_what_opening_does_not_look_at_the_thorough_check_does(path: Path, spoil: Callable[[Path], object], says: str) -> None:
    spoil(path)
    before = path.read_bytes()
    with open_logbook(path), pytest.raises(DamagedError, match=says):
        check_thoroughly(path)
    assert path.read_bytes() == before


def test_opening_takes_no_longer_with_a_large_one(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It reads the tables' own pages and the logbook's row, and none of the records'."""
    said: list[str] = []

    real = sqlite3.connect

    def traced(*args: Any, **kwargs: Any) -> sqlite3.Connection:
        made = real(*args, **kwargs)
        made.set_trace_callback(said.append)
        return made

    monkeypatch.setattr("logbook.book.connection.sqlite3.connect", traced)
    open_logbook(path).close()
    assert said
    assert not [one for one in said if "_check" in one.replace("cell_size_check", "")]


def test_every_kind_of_thing_that_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="is not a file but a folder"):
        open_logbook(tmp_path)
    with pytest.raises(NotThereError):
        open_logbook(tmp_path / "none" / "a.logbook")
    (tmp_path / "file").touch()
    with pytest.raises(NotThereError):
        open_logbook(tmp_path / "file" / "a.logbook")
    with pytest.raises(RefusedError, match="can't be reached"):
        open_logbook(tmp_path / ("x" * 300))


@pytest.mark.skipif(os.name != "posix", reason="pipes, devices and links as on Unix")
def test_pipes_devices_and_links(tmp_path: Path, path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "loop").symlink_to("loop")
    with closing(socket.socket(socket.AF_UNIX)) as server:
        cwd = Path.cwd()
        os.chdir(tmp_path)  # a socket's name must be short
        try:
            server.bind("socket")
        finally:
            os.chdir(cwd)
        for name in ("pipe", "socket", "/dev/null"):
            with pytest.raises(RefusedError, match="a device or pipe"):
                open_logbook(tmp_path / name)
    with pytest.raises(RefusedError, match="can't be reached"):
        open_logbook(tmp_path / "loop")
    (tmp_path / "link").symlink_to(path)
    with open_logbook(tmp_path / "link") as book:
        assert book.path == path


@pytest.mark.parametrize("name", ["what?.logbook", "a#b.logbook", "100 %41.logbook", "two words", "Étoile &c.logbook"])
def test_names_with_signs_in_them(tmp_path: Path, name: str) -> None:
    with small_book(tmp_path / name, 1) as made:
        before = held(made)
    with open_logbook(tmp_path / name) as book:
        assert held(book) == before
    assert [found.name for found in tmp_path.iterdir()] == [name]


def test_opening_a_sound_one_changes_nothing(path: Path) -> None:
    before, stat = path.read_bytes(), path.stat()
    with open_logbook(path) as book:
        assert not book.read_only
        held(book)
    assert path.read_bytes() == before
    assert path.stat().st_mtime_ns == stat.st_mtime_ns
    assert list(path.parent.iterdir()) == [path]


# Older and newer ------------------------------------------------------------------------------------------------------


def test_an_older_one_is_backed_up_and_taken_to_the_newest(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = path.read_bytes()
    monkeypatch.setattr(schema, "STEPS", (*schema.STEPS, ("CREATE TABLE later (uid TEXT PRIMARY KEY) STRICT",)))
    for module in ("logbook.book.logbook", "logbook.book.opening", "logbook.book.checking"):
        monkeypatch.setattr(f"{module}.STEPS", schema.STEPS)
    with open_logbook(path, tmp_path / "backups") as book:
        assert book.connection.execute("SELECT count(*) FROM later").fetchone() == (0,)
        assert look(path).step == len(schema.STEPS)
        (backup,) = (tmp_path / "backups" / book.uid).glob("*.logbook")
    assert look(backup).step == len(schema.STEPS) - 1
    assert len(backup.read_bytes()) == len(before)
    with open_logbook(path) as book:
        assert len(swatches(book.connection)) == 3


def test_a_step_that_fails_leaves_the_older_one(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = path.read_bytes()
    twice = ("CREATE TABLE later (x TEXT) STRICT", "CREATE TABLE piece (y TEXT) STRICT")
    monkeypatch.setattr(schema, "STEPS", (*schema.STEPS, twice))
    for module in ("logbook.book.logbook", "logbook.book.opening", "logbook.book.checking"):
        monkeypatch.setattr(f"{module}.STEPS", schema.STEPS)
    with pytest.raises(sqlite3.OperationalError, match="already exists"):
        open_logbook(path)
    assert path.read_bytes() == before


def test_without_its_backup_no_step_is_taken(path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(schema, "STEPS", (*schema.STEPS, ("CREATE TABLE later (x TEXT) STRICT",)))
    for module in ("logbook.book.logbook", "logbook.book.opening", "logbook.book.checking"):
        monkeypatch.setattr(f"{module}.STEPS", schema.STEPS)
    (tmp_path / "backups").touch()
    before = path.read_bytes()
    with pytest.raises(RefusedError, match="can't be made"):
        open_logbook(path, tmp_path / "backups")
    assert path.read_bytes() == before


# Places that can't be written to --------------------------------------------------------------------------------------


def opened_to_read(path: Path) -> None:
    before = path.read_bytes()
    with open_logbook(path, path.parent / "backups") as book:
        assert book.read_only
        assert len(held(book)["swatch"]) == 3
        with pytest.raises(RefusedError, match="save a copy"), book.writing("log") as writing:
            put_worked(writing, 9)
        with pytest.raises(RefusedError, match="save a copy"):
            edit(book, "S-01", colour="rust")
    assert path.read_bytes() == before


@as_nobody_only
def test_a_read_only_file(open_folder: Path) -> None:
    small_book(open_folder / "a.logbook").close()
    os.chmod(open_folder / "a.logbook", 0o444)
    as_nobody(lambda: opened_to_read(open_folder / "a.logbook"))


@as_nobody_only
def test_a_read_only_folder(open_folder: Path) -> None:
    small_book(open_folder / "a.logbook").close()
    os.chmod(open_folder / "a.logbook", 0o666)
    os.chmod(open_folder, 0o555)
    as_nobody(lambda: opened_to_read(open_folder / "a.logbook"))


@as_nobody_only
def test_begin_alone_would_not_tell(open_folder: Path) -> None:
    """The trap the probe is there for."""
    small_book(open_folder / "a.logbook").close()
    os.chmod(open_folder / "a.logbook", 0o666)
    os.chmod(open_folder, 0o555)

    def work() -> None:
        with closing(sqlite3.connect(open_folder / "a.logbook", isolation_level=None)) as connection:
            connection.execute("BEGIN IMMEDIATE")
            connection.execute("ROLLBACK")
            assert not is_writable(connection)

    as_nobody(work)


@as_nobody_only
def test_a_copy_of_a_read_only_one_can_be_written_to(open_folder: Path) -> None:
    (open_folder / "shelf").mkdir()
    (open_folder / "mine").mkdir()
    small_book(open_folder / "shelf" / "a.logbook").close()
    os.chmod(open_folder / "shelf" / "a.logbook", 0o444)
    os.chmod(open_folder / "shelf", 0o555)
    os.chmod(open_folder / "mine", 0o777)

    def work() -> None:
        with open_logbook(open_folder / "shelf" / "a.logbook") as book:
            book.save_copy(open_folder / "mine" / "b.logbook")
            before = held(book)
        with open_logbook(open_folder / "mine" / "b.logbook") as copy:
            assert held(copy) == before
            edit(copy, "S-01", colour="rust")

    as_nobody(work)


@as_nobody_only
def test_what_may_not_be_read(open_folder: Path) -> None:
    small_book(open_folder / "a.logbook").close()
    os.chmod(open_folder / "a.logbook", 0)
    (open_folder / "shut").mkdir(mode=0o700)

    def work() -> None:
        with pytest.raises(RefusedError, match="may not be read"):
            open_logbook(open_folder / "a.logbook")
        with pytest.raises(RefusedError, match="can't be reached"):
            open_logbook(open_folder / "shut" / "a.logbook")

    as_nobody(work)


@as_nobody_only
@pytest.mark.parametrize(("file", "folder"), [(0o666, 0o555), (0o444, 0o777), (0o444, 0o555)])
def test_a_leftover_journal_that_can_not_be_taken_back_here(open_folder: Path, file: int, folder: int) -> None:
    path = open_folder / "a.logbook"
    left_by_a_kill(path)
    os.chmod(path, file)
    os.chmod(open_folder / "a.logbook-journal", 0o666)
    os.chmod(open_folder, folder)

    def work() -> None:
        with pytest.raises(RefusedError, match=r"copy it and a\.logbook-journal together"):
            open_logbook(path)

    as_nobody(work)


# Left by a kill, in use, another journal mode -------------------------------------------------------------------------

_KILLED = """
import os, sys
from pathlib import Path
from logbook.book.logbook import open_logbook
from tests.support.books import put_worked
with open_logbook(Path(sys.argv[1])) as book, book.writing("never finished") as writing:
    book.connection.execute("PRAGMA cache_size = 5")
    for number in range(100, 300):
        put_worked(writing, number, notes="x" * 500)
    os._exit(9)
"""


def left_by_a_kill(path: Path) -> None:
    """A logbook of three swatches, killed in the middle of a growing transaction whose pages went to the file already."""
    small_book(path).close()
    assert subprocess.run([sys.executable, "-c", _KILLED, str(path)], check=False).returncode == 9
    assert path.with_name(path.name + "-journal").stat().st_size > 0


def test_a_leftover_journal_is_taken_back(tmp_path: Path) -> None:
    path = tmp_path / "a.logbook"
    left_by_a_kill(path)
    assert look(path).hot
    header = path.read_bytes()[:100]
    assert int.from_bytes(header[28:32], "big") * 4096 != path.stat().st_size, "the length must be off, or this shows nothing"
    with open_logbook(path) as book:
        assert len(held(book)["swatch"]) == 3
        edit(book, "S-01", colour="rust")
    assert list(tmp_path.iterdir()) == [path]


def test_through_a_link_the_journal_is_found_too(tmp_path: Path) -> None:
    left_by_a_kill(tmp_path / "a.logbook")
    (tmp_path / "shelf").mkdir()
    link = tmp_path / "shelf" / "link"
    link.symlink_to(tmp_path / "a.logbook")
    assert look(link).hot
    with open_logbook(link) as book:
        assert len(held(book)["swatch"]) == 3


def test_in_use_elsewhere_reading_goes_on_and_writing_says_so(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        with open_logbook(path, patience=0) as book:
            assert not book.read_only
            assert len(held(book)["swatch"]) == 3
            with pytest.raises(InUseError, match="wait a moment"):
                edit(book, "S-01", colour="rust")
            other.execute("COMMIT")
            edit(book, "S-01", colour="rust")


def test_held_by_another_the_opening_says_so(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN EXCLUSIVE")
        with pytest.raises(InUseError):
            open_logbook(path, patience=0)
        other.execute("ROLLBACK")
    open_logbook(path, patience=0).close()


def test_a_journal_of_a_living_writer_is_left_alone(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        other.execute("UPDATE swatch SET colour = 'rust'")
        assert look(path).hot
        with open_logbook(path, patience=0) as book:
            assert {one.colour for one in swatches(book.connection)} == {"moss"}
        other.execute("COMMIT")
    with open_logbook(path) as book:
        assert {one.colour for one in swatches(book.connection)} == {"rust"}


def test_a_write_ahead_log_is_taken_in(path: Path) -> None:
    """Left by a program that set it and was killed: without the log its last commit would be lost."""
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("PRAGMA journal_mode = WAL")
        other.execute("UPDATE swatch SET colour = 'rust'")
        files = {name: path.with_name(path.name + name).read_bytes() for name in ("", "-wal")}
    path.with_name(path.name + "-shm").unlink(missing_ok=True)
    for name, data in files.items():
        path.with_name(path.name + name).write_bytes(data)
    with open_logbook(path) as book:
        assert {one.colour for one in swatches(book.connection)} == {"rust"}
        assert book.connection.execute("PRAGMA journal_mode").fetchone() == ("delete",)
    assert list(path.parent.iterdir()) == [path]


def test_a_write_ahead_log_in_use_is_refused(path: Path) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("PRAGMA journal_mode = WAL")
        other.execute("UPDATE swatch SET colour = 'rust'")
        with pytest.raises((RefusedError, InUseError), match=r"other program|another window"):
            open_logbook(path, patience=0)


def test_a_damaged_one_keeps_its_journal_mode(path: Path) -> None:
    with_pragma(path, "journal_mode = WAL")
    no_uid(path)
    before = path.read_bytes()
    with pytest.raises(DamagedError):
        open_logbook(path)
    assert path.read_bytes() == before


def test_a_write_between_the_looks_is_no_damage(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Another program may make the file longer after its length was taken and before its header is read."""
    real = os.stat
    looks = 0

    def stat(*args: object, **kwargs: object) -> os.stat_result:
        nonlocal looks
        looks += 1
        found = real(*args, **kwargs)  # type: ignore[arg-type]
        if looks == 1:
            with closing(sqlite3.connect(path, isolation_level=None)) as other:
                other.execute("UPDATE swatch SET notes = ?", ("x" * 20_000,))
        return found

    monkeypatch.setattr("logbook.book.opening.os.stat", stat)
    assert not look(path).hot


def test_a_full_disk_does_not_keep_from_reading(path: Path) -> None:
    class Full:
        def __init__(self, code: int) -> None:
            self.code = code

        def execute(self, sql: str) -> sqlite3.Cursor:
            if sql.startswith("UPDATE"):
                error = sqlite3.OperationalError("full")
                error.sqlite_errorcode = self.code
                raise error
            return connection.execute(sql)

        @property
        def in_transaction(self) -> bool:
            return connection.in_transaction

    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        assert is_writable(Full(sqlite3.SQLITE_FULL))  # type: ignore[arg-type]
        assert is_writable(Full(sqlite3.SQLITE_IOERR_WRITE))  # type: ignore[arg-type]
        assert not is_writable(Full(sqlite3.SQLITE_READONLY_DIRECTORY))  # type: ignore[arg-type]
        with pytest.raises(sqlite3.OperationalError):
            is_writable(Full(sqlite3.SQLITE_ERROR))  # type: ignore[arg-type]
        assert connection.execute("PRAGMA busy_timeout").fetchone() == (5000,)


# New ones -------------------------------------------------------------------------------------------------------------


def test_a_new_one_goes_over_nothing(tmp_path: Path) -> None:
    for name in ("a.logbook", "a.logbook-journal", "a.logbook-wal"):
        (tmp_path / name).write_text("mine")
        with pytest.raises(RefusedError, match="is there already"):
            new_logbook(tmp_path / "a.logbook")
        assert (tmp_path / name).read_text() == "mine"
        (tmp_path / name).unlink()
    with pytest.raises(RefusedError, match="There is no folder"):
        new_logbook(tmp_path / "none" / "a.logbook")
    assert not list(tmp_path.iterdir())


def test_a_new_one_that_fails_leaves_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A half-made file would be refused at every later start."""
    monkeypatch.setattr("logbook.book.logbook.take_steps", lambda *_: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        new_logbook(tmp_path / "a.logbook")
    assert not list(tmp_path.iterdir())


def test_two_new_ones_at_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two windows started together: the second must not put its empty logbook over the first one's."""
    real = schema.take_steps
    made: list[Logbook] = []

    def slow(connection: sqlite3.Connection, steps: Sequence[Sequence[str]]) -> None:
        monkeypatch.setattr("logbook.book.logbook.take_steps", real)
        monkeypatch.setattr("os.getpid", lambda: 0)
        made.append(small_book(tmp_path / "a.logbook"))
        real(connection, steps)

    monkeypatch.setattr("logbook.book.logbook.take_steps", slow)
    with pytest.raises(RefusedError, match=r"File exists|is there already"):
        new_logbook(tmp_path / "a.logbook")
    with made[0] as book:
        assert len(held(book)["swatch"]) == 3
