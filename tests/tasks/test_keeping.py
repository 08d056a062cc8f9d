"""Checking a logbook and keeping it: what a thorough look finds, which backup is offered, under what name."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from logbook.book.tables import RECORDS
from logbook.errors import RefusedError
from logbook.tasks.keeping import (
    Logbook,
    back_up,
    backups_of,
    check,
    check_book,
    new_book,
    newest_good_backup,
    open_book,
    restore,
    restored_name,
    usual_logbook,
)
from logbook.tasks.logging_swatches import save_swatch
from tests.support.books import COTTON, SHELLS, edit, held, swatch


@pytest.fixture
def full(book: Logbook) -> Logbook:
    """Three swatches, and a backup."""
    for number in (1, 2, 3):
        save_swatch(book, swatch(number, yarn=COTTON, pattern=SHELLS))
    back_up(book)
    return book


FAULTS = {
    "a reading that does not say what is kept": (
        "UPDATE reading SET length_mm = 99 WHERE place = 0",
        3,
        "is 99.0, but was kept as",
    ),
    "a reading that can't be read": ("UPDATE reading SET text = 'plenty' WHERE rowid = 1", 1, "is 'plenty', but was kept as"),
    "a state no fabric is in": ("UPDATE reading SET condition = 'boiled' WHERE rowid = 1", 1, "'boiled'"),
    "units nobody counts": ("UPDATE reading SET counted = 'loops' WHERE rowid = 1", 1, "'loops'"),
    "search words out of date": ("UPDATE swatch_words SET folded = 'x' WHERE rowid = 1", 1, "searches in"),
    "search words missing": ("DELETE FROM swatch_words", 1, "searches in"),
    "a reading of no swatch": ("DELETE FROM swatch WHERE tag = 'S-02'", 1, "points to nothing"),
    "an action that undoes nothing": ("UPDATE action SET kind = 'undo' WHERE position = 2", 1, "is broken at"),
    "a change that is no record": ("UPDATE change SET after = '[]' WHERE position = 1", 1, "is no yarn"),
    "an assumption that is no number": ("INSERT INTO assumption VALUES ('most_edge_stitches', 9e999)", 1, "assumption"),
}


@pytest.mark.parametrize("fault", FAULTS)
def test_a_planted_fault_is_found(full: Logbook, fault: str) -> None:
    assert check_book(full, deep=True).problems == ()
    statement, count, said = FAULTS[fault]
    full.connection.execute("PRAGMA foreign_keys = OFF")
    full.connection.execute(statement)
    result = check_book(full, deep=True)
    assert not result.ok
    assert len(result.problems) == count
    assert all(said in problem for problem in result.problems), result.problems


def test_a_reading_whose_text_says_otherwise_is_found(full: Logbook) -> None:
    """Kept so by whatever program: the record is as its change says."""
    columns = RECORDS["reading"]
    with full.writing("another program's") as writing:
        for number, text in ((1, "plenty"), (2, "9 rows = 10 cm")):
            uid, *values = writing.connection.execute(
                f"SELECT uid, {', '.join(columns)} FROM reading WHERE rowid = ?", (number,)
            ).fetchone()
            writing.put("reading", uid, dict(zip(columns, values, strict=True)) | {"text": text})
    first, second = sorted(check_book(full, deep=True).problems, key=len, reverse=True)
    assert "plenty" in first + second
    assert "does not agree with the figures kept of it" in first + second


@pytest.mark.parametrize("column", ["number", "length_mm"])
def test_a_reading_of_nought_in_both_copies_is_named(full: Logbook, column: str) -> None:
    """Kept so by whatever program."""
    columns = RECORDS["reading"]
    with full.writing("another program's") as writing:
        uid, *values = writing.connection.execute(
            f"""SELECT uid, {", ".join(columns)} FROM reading
            WHERE place = 0 AND swatch = (SELECT uid FROM swatch WHERE tag = 'S-02')"""
        ).fetchone()
        writing.put("reading", uid, dict(zip(columns, values, strict=True)) | {column: 0.0})
    for deep in (False, True):
        (problem,) = check_book(full, deep=deep).problems
        assert problem.startswith("Swatch S-02: “4 repeats = 15.3 cm” is kept as "), problem
        assert problem.endswith("so no gauge counts it: open that swatch, change something and save it.")


def test_a_sound_one(full: Logbook) -> None:
    before = held(full)
    for deep in (False, True):
        assert check(full.path, deep=deep) == check_book(full, deep=deep)
        assert check_book(full, deep=deep).swatches == 3
    assert held(full) == before


def test_a_damaged_backup_is_named(full: Logbook) -> None:
    (newest, *_) = backups_of(full)
    newest.path.write_bytes(newest.path.read_bytes()[:-1])
    assert check_book(full).ok
    (problem,) = check_book(full, deep=True).problems
    assert problem.startswith(f"Backup: {newest.path.name} is damaged")


def test_the_newest_backup_that_is_good_is_offered_even_if_the_logbook_can_not_say_its_uid(full: Logbook) -> None:
    older = backups_of(full)[0]
    edit(full, "S-01", colour="rust")
    newest = back_up(full)
    full.close()
    full.path.write_bytes(b"")
    found = newest_good_backup(full.path)
    assert found is not None
    assert (found.path, found.swatches) == (newest, 3)
    newest.write_bytes(newest.read_bytes()[:-1])
    found = newest_good_backup(full.path)
    assert found is not None
    assert found.path == older.path
    assert newest_good_backup(full.path.with_name("another.logbook")) is None


def test_it_is_restored_under_a_free_name(full: Logbook) -> None:
    before = held(full)
    target = restored_name(full.path)
    assert target.name == "vests restored.logbook"
    restore(backups_of(full)[0].path, target)
    assert restored_name(full.path).name == "vests restored 2.logbook"
    with open_book(target) as again:
        assert held(again) == before


def test_only_the_usual_one_gets_its_folder_made(tmp_path: Path) -> None:
    with pytest.raises(RefusedError, match="no folder"):
        new_book(tmp_path / "none" / "new.logbook")
    new_book(usual_logbook()).close()
    assert usual_logbook().is_file()


def test_without_backups_none_are_made(tmp_path: Path, users_folder: Path) -> None:
    with new_book(tmp_path / "new.logbook", keep_backups=False) as book:
        save_swatch(book, swatch(yarn=COTTON))
        book.back_up()
    assert not users_folder.exists()


def test_a_logbook_of_another_program_stays_as_it_is(tmp_path: Path) -> None:
    with closing(sqlite3.connect(tmp_path / "other.logbook")) as connection:
        connection.execute("CREATE TABLE recipe (name)")
    before = (tmp_path / "other.logbook").read_bytes()
    result = check(tmp_path / "other.logbook", deep=True)
    assert (result.ok, result.swatches, len(result.problems)) == (False, None, 1)
    assert (tmp_path / "other.logbook").read_bytes() == before
