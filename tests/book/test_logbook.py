"""An open logbook: one action at a time, other writers, and the file replaced underneath."""

import os
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from logbook.book import backups
from logbook.book.connection import connect
from logbook.book.logbook import Logbook, ReplacedError, open_logbook
from logbook.book.opening import look
from logbook.book.swatches import put_swatch, swatches
from logbook.book.thorough_check import check_thoroughly
from logbook.book.trouble import DamagedError, InUseError
from logbook.book.undo import redo, undo
from logbook.errors import RefusedError
from tests.support.books import edit, held, put_worked, small_book


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook") as made:
        yield made


def colours(book: Logbook) -> set[str]:
    with book.reading() as connection:
        return {one.colour for one in swatches(connection)}


def test_reading_sees_one_state(book: Logbook, tmp_path: Path) -> None:
    with open_logbook(tmp_path / "a.logbook", patience=0) as other:
        with book.reading() as connection:
            before = swatches(connection)
            with pytest.raises(InUseError):
                edit(other, "S-01", colour="rust")
            assert swatches(connection) == before
        edit(other, "S-01", colour="rust")
    assert colours(book) == {"moss", "rust"}


def test_another_window_is_noticed(book: Logbook, tmp_path: Path) -> None:
    before = book.data_version()
    edit(book, "S-01", colour="rust")
    assert book.data_version() == before
    with open_logbook(tmp_path / "a.logbook") as other:
        edit(other, "S-02", colour="rust")
    assert book.data_version() != before


def test_a_yarn_that_another_window_took_out_is_named(book: Logbook, tmp_path: Path) -> None:
    found = swatches(book.connection)
    with open_logbook(tmp_path / "a.logbook") as other:
        for _ in range(3):
            undo(other)
    with pytest.raises(RefusedError, match="“Étang cotton” is not in the logbook any more"), book.writing("log") as writing:
        put_swatch(writing, found[0])


def test_undo_after_another_window_wrote(book: Logbook, tmp_path: Path) -> None:
    """What it undoes is what was done last, by whichever window."""
    with open_logbook(tmp_path / "a.logbook") as other:
        edit(other, "S-01", colour="rust")
    assert undo(book).label == "edit S-01"
    assert colours(book) == {"moss"}


def test_a_second_connection_for_another_thread(book: Logbook) -> None:
    with book.again() as other:
        edit(other, "S-01", colour="rust")
        assert other.uid == book.uid
    assert colours(book) == {"moss", "rust"}


# Replaced, moved, written over ----------------------------------------------------------------------------------------


def other_bytes(folder: Path, **values: str) -> bytes:
    """Another logbook of as many commits and pages, so that its counters are the same."""
    path = folder / "other.logbook"
    with small_book(path) as made:
        if values:
            edit(made, "S-01", **values)
    data = path.read_bytes()
    path.unlink()
    return data


@contextmanager
def nothing_is_written_to(path: Path) -> Iterator[None]:
    before = path.read_bytes() if path.exists() else None
    yield
    assert (path.read_bytes() if path.exists() else None) == before


def test_replaced_by_a_rename(book: Logbook, tmp_path: Path) -> None:
    mine = held(book)
    (tmp_path / "new").write_bytes(other_bytes(tmp_path))
    os.replace(tmp_path / "new", book.path)
    with nothing_is_written_to(book.path):
        with pytest.raises(ReplacedError, match="Save a copy"):
            held(book)
        with pytest.raises(ReplacedError, match="nothing was written"):
            edit(book, "S-01", colour="rust")
        with pytest.raises(ReplacedError):
            undo(book)
        book.save_copy(tmp_path / "saved.logbook")
    with open_logbook(tmp_path / "saved.logbook") as saved:
        assert held(saved) == mine


def test_moved_away(book: Logbook, tmp_path: Path) -> None:
    mine = held(book)
    book.path.rename(tmp_path / "elsewhere.logbook")
    with nothing_is_written_to(tmp_path / "elsewhere.logbook"), pytest.raises(ReplacedError):
        edit(book, "S-01", colour="rust")
    book.save_copy(tmp_path / "saved.logbook")
    with open_logbook(tmp_path / "saved.logbook") as saved:
        assert held(saved) == mine
    assert not book.path.exists()


def test_written_over_by_another_logbook(book: Logbook, tmp_path: Path) -> None:
    """Its counters are the same, so SQLite alone would go on with its cached pages and write them into the other one."""
    data = other_bytes(tmp_path)
    assert data[24:40] == book.path.read_bytes()[24:40], "the counters must agree, or this shows nothing"
    held(book)
    book.path.write_bytes(data)
    with nothing_is_written_to(book.path):
        with pytest.raises(ReplacedError, match="overwritten"):
            edit(book, "S-01", colour="rust")
        with pytest.raises(ReplacedError, match="overwritten"):
            held(book)


def test_written_over_by_an_equally_old_copy_of_itself(book: Logbook, tmp_path: Path) -> None:
    start = book.path.read_bytes()
    edit(book, "S-01", colour="rust")
    theirs = book.path.read_bytes()
    book.close()
    (tmp_path / "a.logbook").write_bytes(start)
    with open_logbook(tmp_path / "a.logbook") as again:
        edit(again, "S-02", colour="teal")
        assert colours(again) == {"moss", "teal"}
        assert again.path.read_bytes()[24:40] == theirs[24:40], "the counters must agree, or this shows nothing"
        again.path.write_bytes(theirs)
        assert colours(again) == {"moss", "rust"}
        edit(again, "S-03", colour="teal")
    with open_logbook(tmp_path / "a.logbook") as last:
        assert colours(last) == {"moss", "rust", "teal"}


@pytest.mark.parametrize("data", [b"", b"row 1: ch 2\n" * 1000])
def test_written_over_by_something_else(book: Logbook, data: bytes) -> None:
    held(book)
    book.path.write_bytes(data)
    with nothing_is_written_to(book.path), pytest.raises((ReplacedError, DamagedError)):
        edit(book, "S-01", colour="rust")


def test_its_own_file_is_told_from_others(book: Logbook, tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to(book.path)
    (tmp_path / "b.logbook").write_bytes(b"")
    assert book.is_at(tmp_path / "link")
    assert not book.is_at(tmp_path / "b.logbook")
    assert not book.is_at(tmp_path / "none")


# The trap of the second handle ----------------------------------------------------------------------------------------

_WRITES = """
import sys
from pathlib import Path
from logbook.book.logbook import open_logbook
from tests.support.books import edit
with open_logbook(Path(sys.argv[1]), patience=0) as book:
    edit(book, "S-02", colour="teal")
"""


@pytest.mark.skipif(os.name != "posix", reason="locks as on Unix")
@pytest.mark.parametrize("trapped", [False, True])
def test_closing_a_second_handle_drops_the_locks(book: Logbook, trapped: bool) -> None:
    """Why no bytes of an open logbook are ever looked at: with the trap sprung, a second writer gets in."""
    with closing(connect(book.path)) as connection:
        connection.execute("BEGIN IMMEDIATE")
        connection.execute("UPDATE swatch SET notes = 'mine'")
        if trapped:
            look(book.path)
        other = subprocess.run([sys.executable, "-c", _WRITES, str(book.path)], capture_output=True, text=True, check=False)
        if trapped:
            assert other.returncode == 0, "the second writer did not get in: the trap is gone, and so is the reason for the rule"
        else:
            assert "InUseError" in other.stderr
            connection.execute("COMMIT")


_SEEN: list[str] | None = None


def _note_opened(event: str, arguments: tuple[object, ...]) -> None:
    if event == "open" and _SEEN is not None:
        _SEEN.append(os.fspath(arguments[0]) if isinstance(arguments[0], str | bytes | os.PathLike) else "")  # type: ignore[arg-type]


sys.addaudithook(_note_opened)


def test_no_bytes_of_an_open_logbook_are_looked_at(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.logbook"
    small_book(path).close()
    with open_logbook(path, tmp_path / "backups") as book:
        seen: list[str] = []
        monkeypatch.setattr(sys.modules[__name__], "_SEEN", seen)
        edit(book, "S-01", colour="rust")
        undo(book)
        redo(book)
        held(book)
        book.back_up()
        book.save_copy(tmp_path / "copy.logbook")
        with book.again() as other:
            held(other)
        check_thoroughly(path)
        backups.listed(tmp_path / "backups" / book.uid)
        assert book.is_at(path)
    assert seen, "the hook must have seen the copies' files, or this shows nothing"
    assert str(path) not in seen


def test_what_another_program_added_at_the_end_is_noticed_at_the_next_save(book: Logbook) -> None:
    """It is neither cut off nor written over."""
    with open(book.path, "ab") as file:  # as another process would; this one holds no lock just now
        file.write(b"added")
    before = held(book)
    with pytest.raises(ReplacedError, match="at the end of"):
        edit(book, "S-01", colour="rust")
    assert held(book) == before
    assert book.path.read_bytes().endswith(b"added")


def test_closing_twice_is_no_harm(book: Logbook) -> None:
    book.close()
    book.close()
    with pytest.raises(sqlite3.ProgrammingError), book.writing("late") as writing:
        put_worked(writing, 9)
