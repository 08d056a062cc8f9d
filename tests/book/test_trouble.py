"""What SQLite raises, as sentences."""

import sqlite3
from pathlib import Path

import pytest

from logbook.book.trouble import DamagedError, InUseError, as_damage, as_sentences
from logbook.errors import RefusedError

BOOK = Path("/somewhere/vests.logbook")


def error(code: int, says: str = "what SQLite says") -> sqlite3.OperationalError:
    made = sqlite3.OperationalError(says)
    made.sqlite_errorcode = code
    return made


@pytest.mark.parametrize(
    ("code", "kind", "says"),
    [
        (sqlite3.SQLITE_BUSY, InUseError, "another window"),
        (sqlite3.SQLITE_BUSY_SNAPSHOT, InUseError, "another window"),
        (sqlite3.SQLITE_LOCKED, InUseError, "another window"),
        (sqlite3.SQLITE_CORRUPT_INDEX, DamagedError, "what SQLite says"),
        (sqlite3.SQLITE_NOTADB, DamagedError, "restore the newest backup"),
        (sqlite3.SQLITE_READONLY, RefusedError, "save a copy"),
        (sqlite3.SQLITE_READONLY_DIRECTORY, RefusedError, "save a copy"),
        (sqlite3.SQLITE_READONLY_ROLLBACK, RefusedError, "vests.logbook-journal"),
        (sqlite3.SQLITE_FULL, RefusedError, "disk is full"),
        (sqlite3.SQLITE_IOERR_WRITE, RefusedError, "could not be written"),
        (sqlite3.SQLITE_CANTOPEN, RefusedError, "can't be opened"),
        (sqlite3.SQLITE_PERM, RefusedError, "permission"),
        (sqlite3.SQLITE_CONSTRAINT_UNIQUE, RefusedError, "does not fit"),
    ],
)
def test_each_kind_has_its_sentence(code: int, kind: type[RefusedError], says: str) -> None:
    with pytest.raises(RefusedError, match=says) as raised, as_sentences(BOOK):
        raise error(code)
    assert type(raised.value) is kind
    assert "vests.logbook" in str(raised.value)
    assert "/somewhere" not in str(raised.value)
    assert "\n" not in str(raised.value)


def test_a_mistake_in_the_program_passes_as_it_came() -> None:
    mine = error(sqlite3.SQLITE_ERROR)
    with pytest.raises(sqlite3.OperationalError) as raised, as_sentences(BOOK):
        raise mine
    assert raised.value is mine
    assert raised.value.__cause__ is None


def test_an_unknown_file_format_is_damage() -> None:
    with pytest.raises(DamagedError, match="unsupported file format"), as_sentences(BOOK):
        raise error(sqlite3.SQLITE_ERROR, "unsupported file format")


def test_our_own_sentences_pass() -> None:
    with pytest.raises(RefusedError, match=r"^ours$"), as_sentences(BOOK):
        raise RefusedError("ours")


def test_bytes_that_are_no_text_are_damage() -> None:
    with sqlite3.connect(":memory:") as connection, pytest.raises(DamagedError), as_sentences(BOOK):
        connection.execute("SELECT CAST(x'ff' AS TEXT)").fetchone()
    connection.close()
    with pytest.raises(DamagedError), as_sentences(BOOK):
        b"\xff".decode()


def test_text_that_can_not_be_kept_is_named() -> None:
    with sqlite3.connect(":memory:") as connection, pytest.raises(RefusedError, match=r"U\+D83E"), as_sentences(BOOK):
        connection.execute("SELECT ?", ("\ud83e",))
    connection.close()


def test_rows_that_make_no_record_are_damage() -> None:
    with pytest.raises(DamagedError, match="A reading can't be read"), as_damage("A reading"):
        int("x")
