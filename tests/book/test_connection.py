"""The connection: settings read back, names with signs in them, all or nothing."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from logbook.book import connection as module
from logbook.book.connection import connect, keep_one_file, transaction
from logbook.errors import RefusedError
from tests.support.books import small_book


@pytest.fixture
def path(tmp_path: Path) -> Path:
    small_book(tmp_path / "a.logbook").close()
    return tmp_path / "a.logbook"


def test_every_setting_is_in_force(path: Path) -> None:
    with closing(connect(path)) as connection:
        keep_one_file(connection, path)
        found = {
            name: connection.execute(f"PRAGMA {name}").fetchone()[0]
            for name in (
                "journal_mode", "synchronous", "foreign_keys", "trusted_schema", "cell_size_check", "recursive_triggers",
                "busy_timeout",
            )
        }  # fmt: skip
        assert connection.isolation_level is None
    assert found == {
        "journal_mode": "delete", "synchronous": 3, "foreign_keys": 1, "trusted_schema": 0, "cell_size_check": 1,
        "recursive_triggers": 1, "busy_timeout": 2000,
    }  # fmt: skip


def test_a_setting_that_is_not_taken_is_refused(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(module._SETTINGS, "synchronous", 7)
    with pytest.raises(RefusedError, match="setting synchronous"):
        connect(path)


def test_too_old_an_sqlite_is_refused(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sqlite3, "sqlite_version_info", (3, 36, 0))
    with pytest.raises(RefusedError, match="the logbook needs 3"):
        connect(path)


def test_what_is_not_there_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(sqlite3.OperationalError):
        connect(tmp_path / "none.logbook")
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("name", ["what?", "a#b", "100 %41", "two words", "Étoile", "a&mode=memory", "new\nline"])
def test_any_name_is_that_file(tmp_path: Path, name: str) -> None:
    with closing(connect(tmp_path / name, "rwc")) as connection:
        connection.execute("CREATE TABLE t (x)")
    assert [found.name for found in tmp_path.iterdir()] == [name]


def test_a_name_that_is_no_text_is_that_file(tmp_path: Path) -> None:
    name = b"caf\xe9".decode("utf-8", "surrogateescape")
    try:
        (tmp_path / name).touch()
    except OSError:
        pytest.skip("this file system keeps names as text")
    with closing(connect(tmp_path / name)) as connection:
        connection.execute("CREATE TABLE t (x)")
    assert (tmp_path / name).stat().st_size > 0


def interrupted(connection: sqlite3.Connection) -> None:
    connection.execute("DELETE FROM swatch_words")
    raise KeyboardInterrupt


def test_a_transaction_is_all_or_nothing(path: Path) -> None:
    with closing(connect(path)) as connection:
        before = connection.execute("SELECT count(*) FROM swatch").fetchone()
        with pytest.raises(KeyboardInterrupt), transaction(connection):
            interrupted(connection)
        assert not connection.in_transaction
        assert connection.execute("SELECT count(*) FROM swatch_words").fetchone() == before


def test_a_commit_that_fails_is_rolled_back(path: Path) -> None:
    with closing(connect(path)) as connection:
        with pytest.raises(sqlite3.IntegrityError), transaction(connection):
            connection.execute("UPDATE swatch SET yarn = 'nowhere'")
        assert not connection.in_transaction


def test_a_writer_has_its_lock_from_the_start(path: Path) -> None:
    """Two that read first and write later would each wait for the other."""
    with closing(connect(path, patience=0)) as one, closing(connect(path, patience=0)) as other, transaction(one):
        with pytest.raises(sqlite3.OperationalError, match="locked"), transaction(other):
            pass
        with transaction(other, writes=False):
            assert other.execute("SELECT count(*) FROM swatch").fetchone() == (3,)
