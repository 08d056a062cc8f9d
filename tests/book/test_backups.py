"""Backups: made before the first write, verified, kept as long as promised, restored equal."""

import os
import time
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from logbook.book import backups
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.trouble import DamagedError
from logbook.errors import RefusedError
from tests.support.books import edit, held, small_book

START = datetime(2026, 1, 1, 12, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    small_book(tmp_path / "a.logbook").close()
    return tmp_path / "a.logbook"


@pytest.fixture
def book(path: Path, tmp_path: Path) -> Iterator[Logbook]:
    with open_logbook(path, tmp_path / "backups") as made:
        yield made


def folder(book: Logbook) -> Path:
    assert book.backup_folder is not None
    return book.backup_folder / book.uid


def test_the_first_write_of_a_session_makes_one_of_what_was_there(book: Logbook, tmp_path: Path) -> None:
    before = held(book)
    assert backups.listed(folder(book)) == []
    edit(book, "S-01", colour="rust")
    edit(book, "S-01", colour="teal")
    (made,) = backups.listed(folder(book))
    assert made.swatches == 3
    backups.restore(made.path, tmp_path / "restored.logbook")
    with open_logbook(tmp_path / "restored.logbook") as restored:
        assert held(restored) == before
        assert restored.uid == book.uid


def test_an_import_makes_another(book: Logbook) -> None:
    edit(book, "S-01", colour="rust")
    book.back_up_once()
    assert len(backups.listed(folder(book))) == 1
    book.back_up_once(again=True)
    assert len(backups.listed(folder(book))) == 2


def test_reading_makes_none(book: Logbook) -> None:
    held(book)
    assert not (book.backup_folder or book.path).exists()


def test_without_its_backup_nothing_is_written(book: Logbook) -> None:
    (book.backup_folder or book.path).write_text("in the way")
    before = held(book)
    with pytest.raises(RefusedError, match="can't be made"):
        edit(book, "S-01", colour="rust")
    assert held(book) == before


def test_of_a_damaged_logbook_none_is_made_and_nothing_written(path: Path, tmp_path: Path) -> None:
    """The quick look at the start does not see it; the backup does."""
    with open_logbook(path) as book:
        book.connection.execute("PRAGMA foreign_keys = OFF")
        book.connection.execute("DELETE FROM yarn")
    with open_logbook(path, tmp_path / "backups", quick=True) as book:
        before = held(book)
        with pytest.raises(DamagedError, match="points to nothing"):
            edit(book, "S-01", colour="rust")
        assert held(book) == before
        assert backups.listed(folder(book)) == []


def test_what_can_not_be_read_is_listed_as_such(book: Logbook) -> None:
    edit(book, "S-01", colour="rust")
    bad = folder(book) / "20260101T000000.000Z.logbook"
    bad.write_text("no logbook")
    (folder(book) / "20269999T000000.000Z.logbook").write_text("no date")
    (folder(book) / "mine.logbook").write_text("no backup")
    assert [(one.path == bad, one.swatches) for one in backups.listed(folder(book))] == [(False, 3), (True, None)]


def test_its_place_is_remembered(book: Logbook, tmp_path: Path) -> None:
    edit(book, "S-01", colour="rust")
    assert backups.place_of(folder(book)) == book.path
    assert backups.place_of(tmp_path) is None


def test_a_name_is_never_taken_twice(book: Logbook) -> None:
    book.now = START.isoformat
    for _ in range(3):
        book.back_up_once(again=True)
    assert len({one.path for one in backups.listed(folder(book))}) == 3


# Restoring ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("beside", ["", "-journal", "-wal"])
def test_restoring_goes_over_nothing(path: Path, tmp_path: Path, beside: str) -> None:
    (tmp_path / f"new.logbook{beside}").write_text("mine")
    with pytest.raises(RefusedError, match="is there already"):
        backups.restore(path, tmp_path / "new.logbook")
    assert (tmp_path / f"new.logbook{beside}").read_text() == "mine"


def test_restoring_what_is_damaged_is_refused(path: Path, tmp_path: Path) -> None:
    data = bytearray(path.read_bytes())
    data[4096 * 3 : 4096 * 4] = bytes(4096)
    path.write_bytes(data)
    with pytest.raises(DamagedError):
        backups.restore(path, tmp_path / "new.logbook")
    assert not (tmp_path / "new.logbook").exists()
    assert path.read_bytes() == data


def test_restoring_what_was_left_in_a_write_is_refused(path: Path, tmp_path: Path) -> None:
    path.with_name("a.logbook-journal").write_text("something")
    with pytest.raises(RefusedError, match="middle of a write"):
        backups.restore(path, tmp_path / "new.logbook")


# Pruning --------------------------------------------------------------------------------------------------------------


def found(*days: float) -> list[tuple[Path, datetime]]:
    return sorted(((Path(f"{day}"), START + timedelta(days=day)) for day in days), key=lambda pair: pair[1], reverse=True)


def left(*days: float) -> list[float]:
    there = found(*days)
    gone = backups.to_remove(there)
    return sorted(float(path.name) for path, _ in there if path not in gone)


def test_the_last_ten_are_kept() -> None:
    assert left(*range(10)) == [*range(10)]
    assert left(*range(12)) == [*range(2, 12)]
    assert left() == []


def test_one_a_month_is_kept_for_a_year() -> None:
    """A backup a day for three years: the last ten, and the last of each month of the last year."""
    days = left(*range(3 * 365))
    made = [START + timedelta(days=day) for day in days]
    assert days[-10:] == [*range(3 * 365 - 10, 3 * 365)]
    assert len({(one.year, one.month) for one in made}) in (12, 13)
    for one in made[:-10]:
        assert (one + timedelta(days=1)).month != one.month, "the newest of its month"
        assert made[-1] - one <= timedelta(days=366)


def test_over_the_years_as_one_made_each_day(book: Logbook) -> None:
    """Pruned after each, what is kept stays as promised."""
    folder(book).mkdir(parents=True)
    for day in range(0, 500, 3):
        made = START + timedelta(days=day)
        target = folder(book) / (made.strftime("%Y%m%dT%H%M%S.000Z") + ".logbook")
        target.touch()
        backups.prune(folder(book), target)
    kept = backups.kept(folder(book))
    assert len(kept) >= 10 + 11
    assert [pair[1] for pair in kept[:10]] == [made - timedelta(days=3 * n) for n in range(10)]
    assert {(one.year, one.month) for _, one in kept} >= {(2026, month) for month in range(6, 13)} | {(2027, 1)}


def test_the_one_just_made_is_kept_whatever_the_clock_says(book: Logbook) -> None:
    for day in range(12):
        book.now = (START + timedelta(days=day)).isoformat
        book.back_up_once(again=True)
    book.now = datetime(1970, 1, 1, tzinfo=UTC).isoformat
    book.back_up_once(again=True)
    assert [one.made.year for one in backups.listed(folder(book))][-1] == 1970


def test_nothing_is_pruned_before_a_newer_one_was_verified(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    for day in range(12):
        book.now = (START + timedelta(days=day)).isoformat
        book.back_up_once(again=True)
    before = sorted(folder(book).iterdir())

    def fails(*_: object) -> None:
        raise RefusedError("The disk is full.")

    monkeypatch.setattr(backups, "verified_copy", fails)
    with pytest.raises(RefusedError, match="so nothing was written: The disk is full"):
        book.back_up_once(again=True)
    assert sorted(folder(book).iterdir()) == before


def test_what_killed_programs_left_goes_after_a_day(book: Logbook) -> None:
    edit(book, "S-01", colour="rust")
    old, new = (folder(book) / f".20260101T000000.000Z.logbook.{pid}.part" for pid in (1, 2))
    old.touch()
    new.touch()
    os.utime(old, (0, time.time() - 2 * 86400))
    book.back_up_once(again=True)
    assert not old.exists()
    assert new.exists()


def test_a_drill_every_kept_backup_restores_to_equal_rows(book: Logbook, tmp_path: Path) -> None:
    """Sessions over fourteen months, a change in each; what is still kept at the end is each restored and compared."""
    states = {}
    for session in range(30):
        made = START + timedelta(days=14 * session)
        book.now = made.isoformat
        states[made] = held(book)
        book.back_up_once(again=True)
        edit(book, "S-01", notes=f"session {session}")
    kept = backups.listed(folder(book))
    assert len(kept) >= 10 + 8
    for number, one in enumerate(kept):
        assert one.swatches == 3
        backups.restore(one.path, tmp_path / f"restored {number}.logbook")
        with open_logbook(tmp_path / f"restored {number}.logbook") as restored:
            assert held(restored) == states[one.made]
