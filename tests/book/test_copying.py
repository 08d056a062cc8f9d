"""A copy is equal, or not there."""

import errno
import os
import sqlite3
import stat
from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.book import copying
from logbook.book.copying import digest, new_file, verified_copy
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.trouble import DamagedError
from logbook.errors import RefusedError
from tests.support.books import edit, held, small_book


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook") as made:
        yield made


@pytest.fixture
def target(tmp_path: Path) -> Path:
    (tmp_path / "copies").mkdir()
    return tmp_path / "copies" / "b.logbook"


def test_a_copy_is_equal(book: Logbook, target: Path) -> None:
    verified_copy(book.connection, book.path, target)
    assert list(target.parent.iterdir()) == [target]
    with open_logbook(target) as copy:
        assert held(copy) == held(book)
        assert digest(copy.connection) == digest(book.connection)
        assert copy.uid == book.uid


@pytest.mark.parametrize("beside", ["", "-journal", "-wal"])
def test_it_goes_over_nothing(book: Logbook, target: Path, beside: str) -> None:
    there = target.with_name(target.name + beside)
    there.write_text("mine")
    with pytest.raises(RefusedError, match="is there already: choose another name"):
        verified_copy(book.connection, book.path, target)
    assert list(target.parent.iterdir()) == [there]
    assert there.read_text() == "mine"


def test_it_goes_over_nothing_that_came_meanwhile(book: Logbook, target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(copying, "_sync", lambda _: target.write_text("mine"))
    with pytest.raises(RefusedError, match="could not be written"):
        verified_copy(book.connection, book.path, target)
    assert target.read_text() == "mine"
    assert list(target.parent.iterdir()) == [target]


def test_without_hard_links_it_is_renamed(book: Logbook, target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_links(*_: object) -> None:
        raise OSError(errno.EPERM, "no hard links here")

    monkeypatch.setattr(os, "link", no_links)
    verified_copy(book.connection, book.path, target)
    assert list(target.parent.iterdir()) == [target]


def test_no_folder(book: Logbook, tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="There is no folder"):
        verified_copy(book.connection, book.path, tmp_path / "none" / "b.logbook")


def test_one_that_comes_out_unequal_is_thrown_away(book: Logbook, target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def half(source: sqlite3.Connection, temporary: Path) -> None:
        real(source, temporary)
        with sqlite3.connect(temporary) as copy:
            copy.execute("UPDATE swatch SET hook_mm = hook_mm + 1e-9 WHERE tag = 'S-01'")
        copy.close()

    real = copying._copy
    monkeypatch.setattr(copying, "_copy", half)
    with pytest.raises(RefusedError, match="was not the same as the logbook"):
        verified_copy(book.connection, book.path, target)
    assert not list(target.parent.iterdir())


def test_one_that_comes_out_damaged_is_thrown_away(book: Logbook, target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def torn(source: sqlite3.Connection, temporary: Path) -> None:
        real(source, temporary)
        with open(temporary, "r+b") as file:
            file.seek(4096 * 3)
            file.write(bytes(4096))

    real = copying._copy
    monkeypatch.setattr(copying, "_copy", torn)
    with pytest.raises(RefusedError, match="was not the same as the logbook") as raised:
        verified_copy(book.connection, book.path, target)
    assert not isinstance(raised.value, DamagedError), "the logbook itself is sound"
    assert not list(target.parent.iterdir())


def test_of_a_damaged_logbook_none_is_made(book: Logbook, target: Path) -> None:
    book.connection.execute("PRAGMA foreign_keys = OFF")
    book.connection.execute("DELETE FROM yarn")
    with pytest.raises(DamagedError, match=r"a\.logbook is damaged"):
        verified_copy(book.connection, book.path, target)
    assert not list(target.parent.iterdir())


@pytest.mark.parametrize("call", ["fsync", "link", "open"])
def test_what_the_disk_refuses_leaves_nothing(book: Logbook, target: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    def refuse(*_: object) -> None:
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(os, call, refuse)
    if call == "link":
        monkeypatch.setattr(os, "rename", refuse)
    with pytest.raises(RefusedError, match="could not be written"):
        verified_copy(book.connection, book.path, target)
    monkeypatch.undo()
    assert not list(target.parent.iterdir())


def test_a_folder_that_is_not_synced_leaves_nothing(book: Logbook, target: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_: Path) -> None:
        assert target.exists()
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(copying, "sync_folder", refuse)
    with pytest.raises(RefusedError, match="could not be written"):
        verified_copy(book.connection, book.path, target)
    assert not list(target.parent.iterdir())


def test_what_lies_under_the_name_it_is_made_under_is_left_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    victim = tmp_path / "victim"
    victim.write_text("mine")
    planted = tmp_path / f".a.{b'chosen'.hex()}{copying.PART}"
    planted.symlink_to(victim)
    monkeypatch.setattr(copying.os, "urandom", lambda _: b"chosen")
    with pytest.raises(RefusedError, match="could not be written"), new_file(tmp_path / "a") as part:
        part.write_text("theirs")
    assert victim.read_text() == "mine"
    assert planted.is_symlink()
    assert not (tmp_path / "a").exists()


def test_the_name_it_is_made_under_can_not_be_foretold(tmp_path: Path) -> None:
    names = set()
    for number in range(3):
        with new_file(tmp_path / f"a {number}") as part:
            names.add(part.name.removeprefix(f".a {number}."))
            assert stat.S_IMODE(part.stat().st_mode) == 0o600
    assert len(names) == 3
    assert all(len(name) >= 16 for name in names)


def test_the_digest_sees_every_change(book: Logbook) -> None:
    found = {digest(book.connection)}
    for values in ({"colour": "rust"}, {"hook_mm": 4.25}, {"notes": "\u00e9"}, {"notes": "e\u0301"}):
        edit(book, "S-01", **values)
        found.add(digest(book.connection))
    book.connection.execute("PRAGMA user_version = 7")
    found.add(digest(book.connection))
    book.connection.execute("DELETE FROM swatch_words")
    found.add(digest(book.connection))
    assert len(found) == 7


def test_a_file_made_by_anything_is_named_only_when_whole(tmp_path: Path) -> None:
    with pytest.raises(ZeroDivisionError), new_file(tmp_path / "a") as part:  # noqa: PT012
        part.write_text("half")
        1 / 0  # noqa: B018
    assert not list(tmp_path.iterdir())
    with new_file(tmp_path / "a") as part:
        part.write_text("whole")
    assert (tmp_path / "a").read_text() == "whole"
