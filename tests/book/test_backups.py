"""Backups: verified, in nobody's way, in their order whatever the clock says, kept as long as promised, restored equal."""

import os
import shutil
import sqlite3
import stat
import time
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from logbook.book import backups, copying
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.trouble import DamagedError, InUseError
from logbook.book.undo import undo
from logbook.errors import RefusedError
from tests.support.books import edit, held, put_worked, small_book

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


def test_it_is_of_what_was_there(book: Logbook, tmp_path: Path) -> None:
    before = held(book)
    assert backups.listed(folder(book)) == []
    book.back_up()
    edit(book, "S-01", colour="rust")
    (made,) = backups.listed(folder(book))
    assert made.swatches == 3
    backups.restore(made.path, tmp_path / "restored.logbook")
    with open_logbook(tmp_path / "restored.logbook") as restored:
        assert held(restored) == before
        assert restored.uid == book.uid


def test_a_write_makes_none_and_waits_for_none(book: Logbook) -> None:
    (book.backup_folder or book.path).write_text("in the way")
    edit(book, "S-01", colour="rust")
    assert "rust" in str(held(book)["swatch"])
    with pytest.raises(RefusedError, match="can't be made"):
        book.back_up()


def test_of_one_state_there_is_one(book: Logbook) -> None:
    assert not book.is_backed_up()
    first = book.back_up()
    assert book.is_backed_up()
    assert book.back_up() == first
    edit(book, "S-01", colour="rust")
    assert not book.is_backed_up()
    book.back_up()
    undo(book)  # as it was, but not the same state: history has grown
    book.back_up()
    assert len(backups.listed(folder(book))) == 3


def test_reading_makes_none(book: Logbook) -> None:
    held(book)
    assert not (book.backup_folder or book.path).exists()


def test_of_a_damaged_logbook_none_is_made(path: Path, tmp_path: Path) -> None:
    """The quick look at the start does not see it; the backup does."""
    with open_logbook(path) as book:
        book.connection.execute("PRAGMA foreign_keys = OFF")
        book.connection.execute("DELETE FROM yarn")
    with open_logbook(path, tmp_path / "backups") as book:
        with pytest.raises(DamagedError, match="points to nothing"):
            book.back_up()
        assert backups.listed(folder(book)) == []


def test_a_write_between_its_steps_goes_first(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each step locks for itself: a writer that has no patience at all gets through, and the backup begins anew."""
    monkeypatch.setattr(copying, "PAGES_AT_A_TIME", 8)
    real = copying.connect
    written: list[str] = []

    class Slow:
        def __init__(self, connection: sqlite3.Connection) -> None:
            self.connection = connection

        def __getattr__(self, name: str) -> Any:
            return getattr(self.connection, name)

        def backup(self, target: sqlite3.Connection, *, progress: Any, **rest: Any) -> None:
            def step(*done: int) -> None:
                progress(*done)
                if len(written) < 2:
                    written.append("")
                    edit(book, "S-01", colour=f"colour {len(written)}")

            self.connection.backup(target, progress=step, **rest)

    book.wait_for_others(0)
    with book.again() as own:
        target = book.path.with_name("copy.logbook")
        copying.verified_copy(Slow(own.connection), book.path, target)  # type: ignore[arg-type]
    assert real is copying.connect
    assert len(written) == 2
    with open_logbook(target) as copy:
        assert held(copy) == held(book)


def test_after_three_restarts_it_is_put_off(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    real = copying.digest

    def written_meanwhile(connection: sqlite3.Connection) -> str:
        edit(book, "S-01", notes=f"{len(book.connection.execute('SELECT * FROM action').fetchall())}")
        return real(connection)

    monkeypatch.setattr(copying, "digest", written_meanwhile)
    with pytest.raises(InUseError, match="wait a moment"):
        book.back_up()
    assert list(folder(book).iterdir()) == []


# Private --------------------------------------------------------------------------------------------------------------


def mode(path: Path) -> int:
    return stat.S_IMODE(path.stat().st_mode)


@pytest.mark.skipif(os.name == "nt", reason="modes as on Unix")
def test_a_new_logbook_is_its_owners_alone_and_an_old_one_keeps_its_mode(path: Path, tmp_path: Path) -> None:
    before = os.umask(0)
    try:
        assert mode(path) == 0o600
        with open_logbook(path, tmp_path / "users" / "backups") as book:
            one = book.back_up()
            assert one is not None
            assert mode(one) == 0o600
            assert {mode(place) for place in (one.parent, one.parent.parent, one.parent.parent.parent)} == {0o700}
            path.chmod(0o640)
            edit(book, "S-01", colour="rust")
            other = book.back_up()
            assert other is not None
            assert (mode(path), mode(other)) == (0o640, 0o640)
            with book.writing("journal") as writing:
                put_worked(writing, 9)
                assert mode(path.with_name(path.name + "-journal")) == 0o640
            backups.restore(one, tmp_path / "restored.logbook")
            assert mode(tmp_path / "restored.logbook") == 0o600
    finally:
        os.umask(before)


def test_what_can_not_be_read_is_listed_as_such(book: Logbook) -> None:
    book.back_up()
    bad = folder(book) / "20260101T000000.000Z.logbook"
    bad.write_text("no logbook")
    (folder(book) / "20269999T000000.000Z.logbook").write_text("no date")
    (folder(book) / "mine.logbook").write_text("no backup")
    assert [(one.path == bad, one.swatches) for one in backups.listed(folder(book))] == [(False, 3), (True, None)]


def test_its_place_is_remembered(book: Logbook, tmp_path: Path) -> None:
    book.back_up()
    assert backups.place_of(folder(book)) == book.path
    assert backups.place_of(tmp_path) is None


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


# Order and pruning ----------------------------------------------------------------------------------------------------


def found(*days: float) -> list[tuple[Path, datetime]]:
    """Backups made on those days after START, in that order; the last made first."""
    return [(Path(f"{number} {day}"), START + timedelta(days=day)) for number, day in reversed(list(enumerate(days)))]


def left(*days: float) -> list[float]:
    there = found(*days)
    gone = backups.to_remove(there)
    return [float(path.name.split()[1]) for path, _ in reversed(there) if path not in gone]


def test_the_last_ten_are_kept() -> None:
    assert left(*range(10)) == [*range(10)]
    assert left() == []
    assert left(*[0.001 * number for number in range(12)]) == [0.001 * number for number in range(2, 12)]


def test_ten_in_a_minute_do_not_push_out_yesterday_last_week_or_last_month() -> None:
    minute = [200 + number / 100_000 for number in range(10)]
    assert left(100, 170, 192, 199, *minute) == [100, 170, 192, 199, *minute]


def test_one_a_day_for_a_week_one_a_week_for_two_months_one_a_month_for_a_year() -> None:
    """Twice a day for three years."""
    days = left(*[number / 2 for number in range(2 * 3 * 365)])
    made = [START + timedelta(days=day) for day in days]
    assert days[-10:] == [3 * 365 - 5 + number / 2 for number in range(10)]
    last = made[-1]
    assert len({one.date() for one in made if (last - one).days < 7}) >= 7
    assert len({one.isocalendar()[:2] for one in made if last - one < timedelta(weeks=8)}) >= 8
    assert len({(one.year, one.month) for one in made}) == 13
    assert len(made) <= 10 + 7 + 9 + 13


def test_one_start_with_the_clock_ahead_costs_nothing_and_is_not_the_newest_for_ever(book: Logbook) -> None:
    """Of those that lie there at most one goes, and the next start makes the newest again."""
    for day in range(0, 22 * 20, 20):
        made(book, START + timedelta(days=day))
    before = set(backups.kept(folder(book)))
    made(book, START + timedelta(days=4000))
    ahead = backups.kept(folder(book))[0]
    assert len(before - set(backups.kept(folder(book)))) <= 1
    last = made(book, START + timedelta(days=22 * 20))
    assert backups.kept(folder(book))[0][0] == last
    assert ahead in backups.kept(folder(book))


def test_a_clock_set_back_takes_nothing_away(book: Logbook) -> None:
    for day in range(0, 22 * 20, 20):
        made(book, START + timedelta(days=day))
    before = {path for path, _ in backups.kept(folder(book))}
    last = made(book, datetime(2000, 1, 1, tzinfo=UTC))
    after = backups.kept(folder(book))
    assert after[0][0] == last
    assert len(before - {path for path, _ in after}) <= 1


def test_after_an_older_state_was_restored_the_order_goes_on(book: Logbook, tmp_path: Path) -> None:
    older = book.back_up()
    assert older is not None
    for number in range(5):
        edit(book, "S-01", notes=f"{number}")
        book.back_up()
    backups.restore(older, tmp_path / "restored.logbook")
    with open_logbook(tmp_path / "restored.logbook", book.backup_folder) as restored:
        edit(restored, "S-01", notes="after the restoring")
        last = restored.back_up()
        assert backups.kept(folder(restored))[0][0] == last


def test_those_of_the_first_schema_come_before_by_their_counter(book: Logbook) -> None:
    shelf = Path(__file__).parent / "released" / "1" / "shelf.logbook"
    folder(book).mkdir(parents=True)
    ahead, behind = (folder(book) / f"{stamp}.000Z.logbook" for stamp in ("20991231T000000", "20000101T000000"))
    for place in (ahead, behind):
        shutil.copyfile(shelf, place)
    with closing(sqlite3.connect(ahead)) as connection:
        connection.execute("PRAGMA foreign_keys = OFF")
        connection.execute("DELETE FROM action WHERE position > 9")
        connection.commit()
    last = book.back_up()
    assert [path for path, _ in backups.kept(folder(book))] == [last, behind, ahead]


def made(book: Logbook, at: datetime) -> Path:
    """A backup of a new state at that time of the clock."""
    book.now = at.isoformat
    edit(book, "S-01", notes=f"{at} {book.connection.execute('SELECT counter FROM logbook').fetchone()}")
    path = book.back_up()
    assert path is not None
    return path


def test_nothing_is_pruned_before_a_newer_one_was_verified(book: Logbook, monkeypatch: pytest.MonkeyPatch) -> None:
    for hour in range(12):
        made(book, START + timedelta(hours=hour / 10))
    before = sorted(folder(book).iterdir())

    def fails(*_: object) -> None:
        raise RefusedError("The disk is full.")

    monkeypatch.setattr(backups, "verified_copy", fails)
    edit(book, "S-01", notes="one more")
    with pytest.raises(RefusedError, match=r"No backup of a\.logbook could be made: The disk is full"):
        book.back_up()
    assert sorted(folder(book).iterdir()) == before


def test_what_killed_programs_left_goes_after_a_day(book: Logbook) -> None:
    book.back_up()
    old, new = (folder(book) / f".20260101T000000.000Z.logbook.{pid}.part" for pid in (1, 2))
    old.touch()
    new.touch()
    os.utime(old, (0, time.time() - 2 * 86400))
    edit(book, "S-01", colour="rust")
    book.back_up()
    assert not old.exists()
    assert new.exists()


def test_a_drill_every_kept_backup_restores_to_equal_rows(book: Logbook, tmp_path: Path) -> None:
    """Sessions over fourteen months, a change in each; what is still kept at the end is each restored and compared."""
    states = {}
    for session in range(30):
        at = START + timedelta(days=14 * session)
        path = made(book, at)
        states[path] = held(book)
    kept = backups.listed(folder(book))
    assert len(kept) >= 10 + 8
    for number, one in enumerate(kept):
        assert one.swatches == 3
        backups.restore(one.path, tmp_path / f"restored {number}.logbook")
        with open_logbook(tmp_path / f"restored {number}.logbook") as restored:
            assert held(restored) == states[one.path]
