"""Every change is kept: what was there before, what after."""

import math
import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from logbook.book.changes import changes_of_action, changes_of_record, row_of
from logbook.book.logbook import Logbook
from logbook.book.running_digest import not_as_kept
from logbook.book.swatches import put_swatch, put_yarn, remove_swatch, swatches, yarns
from logbook.book.trouble import DamagedError
from logbook.book.undo import undo
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError, UnreadableError
from tests.support.books import edit, held, small_book, swatch

# Floats whose decimals are easily lost, and text that is easily changed.
FLOATS = [0.1, 1 / 3, 1e-300, 1.7976931348623157e308, 5e-324, 123456789.123456789, 38.18]
TEXTS = ["=1+1", "\"'`", "a\nb\tc", "\u202eשלום", "🧶", "007", "x" * 20_000, "NULL", "'; DROP TABLE swatch; --", "é ≠ é", "½ ″"]


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook", 1) as made:
        yield made


def actions(book: Logbook) -> list[str]:
    return [uid for (uid,) in book.connection.execute("SELECT uid FROM action ORDER BY position")]


def test_an_edit_keeps_the_whole_record_before_and_after(book: Logbook) -> None:
    edit(book, "S-01", colour="rust")
    (change,) = changes_of_action(book.connection, actions(book)[-1])
    assert (change.table, change.label, change.kind) == ("swatch", "edit S-01", "do")
    assert change.before is not None
    assert change.after == change.before | {"colour": "rust"}
    history = changes_of_record(book.connection, change.record)
    assert [(one.label, one.before is None) for one in history] == [("log S-01", True), ("edit S-01", False)]


def test_a_removal_keeps_what_was_there(book: Logbook) -> None:
    (found,) = swatches(book.connection)
    with book.writing("remove") as writing:
        remove_swatch(writing, found.uid)
    gone = [(one.table, one.after) for one in changes_of_action(book.connection, actions(book)[-1])]
    assert gone == [("reading", None), ("reading", None), ("swatch", None)]
    assert swatches(book.connection) == []


def test_what_changes_nothing_leaves_no_trace(book: Logbook) -> None:
    before = held(book), actions(book)
    edit(book, "S-01", colour="moss")
    with book.writing("remove none") as writing:
        remove_swatch(writing, "not there")
    assert (held(book), actions(book)) == before


def test_what_fails_leaves_no_trace(book: Logbook) -> None:
    before = held(book), actions(book)
    with pytest.raises(RefusedError, match="finite"), book.writing("half") as writing:
        [put_yarn(writing, Yarn(name=f"{grams}", ball_grams=grams)) for grams in (50.0, math.inf)]
    assert (held(book), actions(book)) == before


@pytest.mark.parametrize("number", FLOATS)
def test_floats_are_exact(book: Logbook, number: float) -> None:
    with book.writing("weigh") as writing:
        uid = put_yarn(writing, Yarn(name="heavy", ball_grams=number))
    assert yarns(book.connection)[uid].ball_grams == number
    assert changes_of_record(book.connection, uid)[-1].after["ball_grams"] == number  # type: ignore[index]


@pytest.mark.parametrize("text", TEXTS)
def test_texts_come_back_equal(book: Logbook, text: str) -> None:
    edit(book, "S-01", notes=text)
    (found,) = swatches(book.connection)
    assert found.notes == text
    assert changes_of_record(book.connection, found.uid)[-1].after["notes"] == text  # type: ignore[index]


def test_line_ends_become_one(book: Logbook) -> None:
    edit(book, "S-01", notes="a\r\nb\rc")
    assert swatches(book.connection)[0].notes == "a\nb\nc"


@pytest.mark.parametrize("character", ["\0", "\x1b", "\ud800", "\ufffe", "\uffff"])
def test_what_no_file_can_hold_is_refused_by_name(book: Logbook, character: str) -> None:
    before = held(book)
    with pytest.raises(UnreadableError, match=f"U\\+{ord(character):04X}"):
        edit(book, "S-01", notes=f"a{character}")
    with pytest.raises((RefusedError, UnreadableError), match=f"U\\+{ord(character):04X}"):
        edit(book, "S-01", tag=f"a{character}")
    assert held(book) == before


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
def test_numbers_that_are_none_are_refused(book: Logbook, number: float) -> None:
    with pytest.raises(RefusedError, match="swatch grams must be a finite number"):
        edit(book, "S-01", swatch_grams=number)
    assert swatches(book.connection)[0].swatch_grams is None


def test_a_kept_change_that_was_tampered_with_is_damage(book: Logbook) -> None:
    edit(book, "S-01", colour="rust")
    for after in ("{", "[]", '{"colour": "x"}', "7"):
        book.connection.execute("UPDATE change SET after = ?", (after,))
        with pytest.raises(DamagedError, match="A kept change"):
            changes_of_action(book.connection, actions(book)[-1])


@pytest.mark.parametrize(("text", "schema"), [(5, 2), (b"{}", 2), ("{}", "2"), ("{}", None)])
def test_a_kept_change_of_another_type_is_damage(text: Any, schema: Any) -> None:
    """As a damaged page may show it, whatever the table demands."""
    with pytest.raises(DamagedError, match="A kept change"):
        row_of("yarn", text, schema)


def test_readings_keep_their_uid_by_place(book: Logbook) -> None:
    (found,) = swatches(book.connection)
    uids = [uid for (uid,) in book.connection.execute("SELECT uid FROM reading ORDER BY place")]
    with book.writing("fewer") as writing:
        put_swatch(writing, replace(found, readings=found.readings[:1]))
    assert [uid for (uid,) in book.connection.execute("SELECT uid FROM reading")] == uids[:1]


def test_every_action_raises_the_counter_and_what_changes_nothing_does_not(book: Logbook) -> None:
    def counter() -> int:
        (found,) = book.connection.execute("SELECT counter FROM logbook").fetchone()
        return int(found)

    begun = counter()
    edit(book, "S-01", colour="rust")
    edit(book, "S-01", colour="rust")
    undo(book)
    assert counter() == begun + 2


@pytest.mark.parametrize(
    ("alter", "place"),
    [
        ("UPDATE change SET after = replace(after, 'moss', 'mass') WHERE position = {}", 3),
        ("UPDATE change SET record = record || ' ' WHERE position = {}", 1),
        ("UPDATE action SET label = 'log S-11'", 1),
        ("UPDATE action SET schema = 1", 1),
        ("DELETE FROM change WHERE position = {}", 2),
        ("DELETE FROM change WHERE position = 5", 0),
    ],
)
def test_any_altered_byte_of_the_kept_changes_is_named_by_its_place(book: Logbook, alter: str, place: int) -> None:
    assert list(not_as_kept(book.connection)) == []
    book.connection.execute("PRAGMA foreign_keys = OFF")
    assert book.connection.execute("SELECT count(*) FROM change").fetchone() == (5,)
    assert book.connection.execute(alter.format(place)).rowcount
    found = list(not_as_kept(book.connection))
    assert found[0] == (3 if alter.startswith("DELETE FROM change") and place == 2 else place)


def test_there_is_no_way_round_the_record() -> None:
    """No executescript (it commits what is pending), no INSERT OR REPLACE (it skips deletes)."""
    folder = Path(__file__).parents[2] / "logbook" / "book"
    for source in folder.rglob("*.py"):
        text = source.read_text("utf-8")
        assert "executescript" not in text, source
        assert "INSERT OR REPLACE" not in text, source


def test_the_tag_of_another_swatch_is_refused(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="another swatch with that tag, “S-01”"), book.writing("twice") as writing:
        put_swatch(writing, swatch(1))


def test_a_constraint_is_a_sentence(book: Logbook) -> None:
    with pytest.raises(RefusedError, match="does not fit") as raised, book.writing("tampered") as writing:
        writing.put("reading", "x", {"swatch": "none", "place": 0, "condition": "washed", "number": 1.0, "counted": "rows",
                                     "length_mm": 1.0, "is_count": 0, "inches": 0, "finest": None, "text": ""})  # fmt: skip
    assert isinstance(raised.value.__cause__, sqlite3.IntegrityError)
