"""What is kept twice: an altered record or kept change is named, and set right from the other copy."""

import sqlite3
from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.book import backups
from logbook.book.kept_twice import differing, require_kept_alike, set_right
from logbook.book.logbook import Logbook, open_logbook
from logbook.book.swatches import swatches
from logbook.book.thorough_check import check_thoroughly
from logbook.book.trouble import DamagedError
from logbook.book.undo import undo
from tests.support.books import edit, held, put_planned_and_made, small_book


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook") as made:
        edit(made, "S-01", colour="rust")
        with made.writing("plan") as writing:
            put_planned_and_made(writing, swatches(writing.connection)[0].uid, 1)
        edit(made, "S-02", colour="teal")
        undo(made)
        made.connection.execute("PRAGMA foreign_keys = OFF")
        yield made


RECORDS = [
    ("UPDATE stitch_pattern SET multiple = 7", "the multiple of stitch pattern “Shells 100 %” is 7, but was kept as 6"),
    ("UPDATE swatch SET hook_mm = 4.50001 WHERE tag = 'S-01'", "the hook mm of swatch “S-01” is 4.50001, but was kept as 4.5"),
    ("UPDATE swatch SET notes = ' ' WHERE tag = 'S-03'", "the notes of swatch “S-03” is ' ', but was kept as ''"),
    ("UPDATE reading SET number = 5.0 WHERE rowid = 1", "the number of reading"),
    ("UPDATE piece SET plan = replace(plan, '920.5', '921.5')", "the plan of piece “vest 1”"),
    ("UPDATE made_piece SET chain = 75", "the chain of made piece “mine 1” is 75, but was kept as 74"),
    ("DELETE FROM size WHERE name = 'M'", "the size “M” is missing"),
    ("INSERT INTO body_chart VALUES ('x', 'mine', '')", "the body chart “mine” should not be there"),
    ("UPDATE yarn SET currency = 'EUR'", "the currency of yarn “Étang cotton” is 'EUR', but was kept as ''"),
]
CHANGES = [
    "UPDATE change SET after = replace(after, 'moss', 'mass') WHERE position = 3",
    "UPDATE change SET before = replace(before, 'moss', 'mass') WHERE before LIKE '%moss%' AND after LIKE '%rust%'",
    "UPDATE change SET after = replace(after, '920.5', '920.4') WHERE record_table = 'piece'",
]


def test_a_sound_one_differs_in_nothing(book: Logbook) -> None:
    require_kept_alike(book.connection)
    assert set_right(book.connection) == []


@pytest.mark.parametrize(("alter", "says"), RECORDS)
def test_an_altered_record_is_named_and_set_right(book: Logbook, alter: str, says: str) -> None:
    before = held(book)
    assert book.connection.execute(alter).rowcount
    with pytest.raises(DamagedError) as raised:
        require_kept_alike(book.connection)
    assert says[:60] in str(raised.value)
    (found,) = differing(book.connection)
    assert says in str(found)
    assert len(set_right(book.connection)) == 1
    assert held(book) == before
    require_kept_alike(book.connection)


@pytest.mark.parametrize("alter", CHANGES)
def test_an_altered_kept_change_is_named_and_set_right_from_what_its_digest_proves(book: Logbook, alter: str) -> None:
    kept = book.connection.execute("SELECT * FROM change").fetchall()
    assert book.connection.execute(alter).rowcount == 1
    with pytest.raises(DamagedError, match=r"a kept change, no\. \d+, is not as it was written"):
        require_kept_alike(book.connection)
    assert len(set_right(book.connection)) == 1
    assert book.connection.execute("SELECT * FROM change").fetchall() == kept


def test_what_nothing_proves_is_left_as_it_is(book: Logbook) -> None:
    book.connection.execute("UPDATE action SET label = 'x' WHERE position = 1")
    before = list(book.connection.iterdump())
    assert set_right(book.connection) == []
    assert list(book.connection.iterdump()) == before


def test_one_flipped_bit_gave_a_wrong_chain_and_was_called_sound(book: Logbook, tmp_path: Path) -> None:
    """The byte behind the name of a stitch pattern, 6 → 7; restoring the damaged file under a new name sets it right."""
    before = held(book)
    book.close()
    data = bytearray(book.path.read_bytes())
    place = data.rindex(b"Shells 100 %" + b"\x06") + len("Shells 100 %")
    data[place] ^= 1
    book.path.write_bytes(data)
    with pytest.raises(DamagedError, match="the multiple of stitch pattern “Shells 100 %” is 7, but was kept as 6"):
        check_thoroughly(book.path)
    said = backups.restore(book.path, tmp_path / "right.logbook")
    assert len(said) == 1
    assert book.path.read_bytes() == data
    with open_logbook(tmp_path / "right.logbook") as right:
        assert held(right) == before
    assert check_thoroughly(tmp_path / "right.logbook") == 3


def test_restoring_what_can_not_be_set_right_is_refused(book: Logbook, tmp_path: Path) -> None:
    book.connection.execute("UPDATE action SET label = 'x' WHERE position = 1")
    with pytest.raises(DamagedError, match="is not as it was written"):
        backups.restore(book.path, tmp_path / "right.logbook")
    assert not (tmp_path / "right.logbook").exists()


def test_the_search_text_follows_what_was_set_right(book: Logbook, tmp_path: Path) -> None:
    book.connection.execute("UPDATE yarn SET name = 'Etung'")
    assert isinstance(book.connection, sqlite3.Connection)
    backups.restore(book.path, tmp_path / "right.logbook")
    assert check_thoroughly(tmp_path / "right.logbook") == 3
