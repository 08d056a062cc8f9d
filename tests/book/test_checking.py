"""The thorough check, made beside an open logbook."""

from pathlib import Path

import pytest

from logbook.book import thorough_check
from logbook.book.logbook import open_logbook
from logbook.book.thorough_check import check_thoroughly
from logbook.book.trouble import DamagedError
from tests.support.books import edit, small_book

SPOILT = [
    ("UPDATE reading SET condition = 'wxshed' WHERE place = 0", "A reading can't be read"),
    ("UPDATE reading SET counted = 'stitchez' WHERE place = 0", "A reading can't be read"),
    ("UPDATE change SET after = '{' WHERE position = 3", "A kept change can't be read"),
    ("UPDATE action SET kind = 'undo', of = 'x' WHERE position = 3", "is broken at"),
    ("INSERT INTO assumption VALUES ('most_edge_stitches', 9e999)", "An assumption can't be read"),
    (
        "INSERT INTO garment (uid, name, plan, notes, position) VALUES ('x', 'Vest', '{', '', 0)",
        "The plan of “Vest” can't be read",
    ),
    ("DELETE FROM swatch_words WHERE swatch = (SELECT uid FROM swatch)", "what it searches in"),
    ("UPDATE swatch_words SET folded = 'x'", "what it searches in"),
    ("UPDATE swatch_gauges SET sums = '[]' WHERE rowid = 1", "a gauge it keeps"),
    ("PRAGMA foreign_keys = OFF; DELETE FROM yarn", "points to nothing"),
]


def test_a_sound_one_passes_while_it_is_open_and_written_to(tmp_path: Path) -> None:
    with small_book(tmp_path / "a.logbook") as book, book.writing("log"):
        assert check_thoroughly(book.path) == 3


@pytest.mark.parametrize(("spoil", "says"), SPOILT)
def test_what_the_quick_look_passes_over_is_found(tmp_path: Path, spoil: str, says: str) -> None:
    with small_book(tmp_path / "a.logbook") as book:
        edit(book, "S-01", colour="rust")
        for statement in spoil.split("; "):
            book.connection.execute(statement)
    open_logbook(tmp_path / "a.logbook").close()
    with pytest.raises(DamagedError, match=says):
        check_thoroughly(tmp_path / "a.logbook")


@pytest.mark.parametrize("calls", [1, 2, 50])
def test_it_ends_with_what_is_raised_when_it_is_not_to_go_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, calls: int) -> None:
    class Ended(Exception):
        pass

    left = iter(range(calls - 1))

    def go_on() -> None:
        if next(left, None) is None:
            raise Ended

    monkeypatch.setattr(thorough_check, "STEPS_A_LOOK", 20)
    small_book(tmp_path / "a.logbook").close()
    with pytest.raises(Ended):
        check_thoroughly(tmp_path / "a.logbook", go_on=go_on)
    assert check_thoroughly(tmp_path / "a.logbook") == 3
