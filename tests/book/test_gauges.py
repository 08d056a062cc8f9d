"""The gauges kept beside swatches: always those that their readings give."""

import json
import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from logbook.book.gauges import gauges_in, put_gauges, row_of_gauges
from logbook.book.logbook import Logbook
from logbook.book.swatches import put_stitch_pattern, remove_swatch, stitch_patterns, swatches
from logbook.book.undo import redo, undo
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import gauges_of
from tests.support.books import edit, small_book, taken

READINGS = taken("4 repeats = 15.1 cm; 3 repeats = 11.5 cm; 22 rows = 15 cm; 9 sts = 3 5/8 in") + taken(
    "2.75 repeats in 10 cm; 18 sts in 10 cm; 20 rows = 9 cm to 2 mm; 2 1/3 row repeats in 10 cm; 1 row in 1 cm", Condition.WORKED
)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with small_book(tmp_path / "a.logbook", 2) as made:
        edit(made, "S-01", readings=READINGS)
        yield made


def kept(connection: sqlite3.Connection) -> dict[str, tuple[Any, ...]]:
    return {uid: tuple(row) for uid, *row in connection.execute("SELECT * FROM swatch_gauges")}


def as_reckoned(book: Logbook) -> bool:
    with book.reading() as connection:
        return kept(connection) == {one.uid: row_of_gauges(one) for one in swatches(connection)}


def change_repeat(book: Logbook, **values: Any) -> None:
    with book.writing("change the pattern") as writing:
        (pattern,) = stitch_patterns(writing.connection).values()
        put_stitch_pattern(writing, replace(pattern, **values))


def remove(book: Logbook, tag: str) -> None:
    with book.writing("delete") as writing:
        remove_swatch(writing, next(one.uid for one in swatches(writing.connection) if one.tag == tag))


def test_they_follow_every_change_there_and_back(book: Logbook) -> None:
    assert as_reckoned(book)
    works = (
        lambda: edit(book, "S-01", readings=READINGS[:-1]),
        lambda: edit(book, "S-01", readings=READINGS[1:3]),
        lambda: change_repeat(book, multiple=8),
        lambda: change_repeat(book, multiple=None),
        lambda: change_repeat(book, multiple=4, rows_in_repeat=2),
        lambda: edit(book, "S-02", pattern=None),
        lambda: edit(book, "S-02", readings=()),
        lambda: remove(book, "S-01"),
        lambda: change_repeat(book, notes="nothing of a repeat"),
    )
    for work in works:
        work()
        assert as_reckoned(book)
    for turn in (undo, redo):
        for _ in works:
            turn(book)
            assert as_reckoned(book)


@pytest.mark.parametrize(
    "assumed",
    [Assumptions(), Assumptions(tape_mm=2.0, tape_inch_mm=3.0, variation=0.05), Assumptions(count_step=0.5)],
    ids=["as at first", "others", "counts read otherwise"],
)
def test_what_they_give_is_what_the_readings_give(book: Logbook, assumed: Assumptions) -> None:
    change_repeat(book, rows_in_repeat=4)
    with book.reading() as connection:
        (one,) = (found for found in swatches(connection) if found.tag == "S-01")
        wanted = gauges_of(one, assumed)
        found = gauges_in(connection, [one.uid], assumed)[one.uid]
    assert len(wanted) == 4
    assert {key: replace(gauge, deviations=()) for key, gauge in found.items()} == {
        key: replace(gauge, deviations=()) for key, gauge in wanted.items()
    }


@pytest.mark.parametrize("done", ["UPDATE swatch_gauges SET arithmetic = 0, sums = '[]'", "DELETE FROM swatch_gauges"])
def test_those_of_another_arithmetic_or_not_there_are_reckoned_when_asked_for(book: Logbook, done: str) -> None:
    with book.reading() as connection:
        uids = [one.uid for one in swatches(connection)]
        before = gauges_in(connection, uids, Assumptions())
    book.connection.execute(done)
    with book.reading() as connection:
        after = gauges_in(connection, uids, Assumptions())
    assert {(uid, key, gauge.pitch_mm, gauge.give_or_take) for uid in uids for key, gauge in after[uid].items()} == {
        (uid, key, gauge.pitch_mm, gauge.give_or_take) for uid in uids for key, gauge in before[uid].items()
    }


def test_they_are_read_and_not_reckoned(book: Logbook) -> None:
    with book.reading() as connection:
        uids = [one.uid for one in swatches(connection)]
    text = json.dumps([["washed", "rows", 7.0, 1, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, False, False]])
    book.connection.execute("UPDATE swatch_gauges SET sums = ?", (text,))
    with book.reading() as connection:
        found = gauges_in(connection, uids, Assumptions())
    assert [[gauge.pitch_mm for gauge in one.values()] for one in found.values()] == [[7.0], [7.0]]


def test_all_are_kept_anew_at_once(book: Logbook) -> None:
    before = kept(book.connection)
    book.connection.execute("DELETE FROM swatch_gauges")
    put_gauges(book.connection)
    assert kept(book.connection) == before
