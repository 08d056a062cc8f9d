"""A logbook of every schema that was ever released opens, goes back and forth, and hands on what it held, unchanged."""

import csv
import json
import shutil
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

from logbook.book.gauges import row_of_gauges
from logbook.book.logbook import Logbook, new_logbook, open_logbook
from logbook.book.running_digest import not_as_kept
from logbook.book.schema import STEPS
from logbook.book.swatches import swatches
from logbook.book.thorough_check import check_thoroughly
from logbook.book.undo import redo, undo
from logbook.craft.sizes.published_run import PublishedRun
from logbook.tasks.exporting import export
from logbook.tasks.merging import merge
from logbook.tasks.pieces import made_pieces, planned_pieces
from logbook.tasks.set_runs import published
from logbook.tasks.undoing import history
from tests.support.released import rows_of, turned_to_the_end

FOLDER = Path(__file__).parent / "released"
RELEASED = sorted((folder for folder in FOLDER.iterdir() if folder.name.isdecimal()), key=lambda folder: int(folder.name))


@pytest.fixture(params=RELEASED, ids=lambda folder: f"schema {folder.name}")
def released(request: pytest.FixtureRequest) -> Path:
    folder: Path = request.param
    return folder


@pytest.fixture
def held(released: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((released / "shelf.json").read_text("utf-8"))
    return found


@pytest.fixture
def path(released: Path, tmp_path: Path) -> Path:
    return Path(shutil.copyfile(released / "shelf.logbook", tmp_path / "shelf.logbook"))


def states(turn: Any, book: Logbook, columns: dict[str, Sequence[str]]) -> list[str]:
    return list(turned_to_the_end(turn, book, columns))


def test_there_is_one_of_every_schema_before_the_newest() -> None:
    assert {int(folder.name) for folder in RELEASED} >= set(range(1, len(STEPS)))


def test_what_is_kept_beside_the_records_is_there(path: Path) -> None:
    with open_logbook(path) as book:
        kept = {uid: tuple(row) for uid, *row in book.connection.execute("SELECT * FROM swatch_gauges")}
        assert kept == {one.uid: row_of_gauges(one) for one in swatches(book.connection)}
        assert kept


def test_it_opens_and_every_step_of_it_goes_back_and_forth(path: Path, held: dict[str, Any]) -> None:
    with open_logbook(path) as book:
        assert rows_of(book, held["columns"]) == held["now"]
        assert states(redo, book, held["columns"]) == held["redone"]
        assert states(undo, book, held["columns"]) == held["undone"]
        assert states(redo, book, held["columns"])[-1] == held["redone"][-1]
    with open_logbook(path) as book:  # and after opening it again
        assert states(undo, book, held["columns"]) == held["undone"]


def test_it_is_sound_and_hands_on_every_cell(path: Path, released: Path, tmp_path: Path) -> None:
    with open_logbook(path) as book:
        export(book, tmp_path / "now.csv")
        assert list(not_as_kept(book.connection)) == []
    assert check_thoroughly(path) == 3
    then, now = (
        list(csv.DictReader(sheet.read_text("utf-8-sig").splitlines(keepends=True)))
        for sheet in (released / "shelf.csv", tmp_path / "now.csv")
    )
    assert len(now) == len(then) == 3
    assert [{column: row[column] for column in then[0]} for row in now] == then


def test_merged_into_a_new_one_it_is_there_whole(path: Path, held: dict[str, Any], tmp_path: Path) -> None:
    before = path.read_bytes()
    with new_logbook(tmp_path / "new.logbook") as book:
        empty = rows_of(book, held["columns"])
        assert merge(book, path).written
        assert rows_of(book, held["columns"]) == held["now"]
        export(book, tmp_path / "merged.csv")
        assert not merge(book, path).written
        undo(book)
        assert rows_of(book, held["columns"]) == empty
        redo(book)
        assert rows_of(book, held["columns"]) == held["now"]
    assert check_thoroughly(tmp_path / "new.logbook") == 3
    assert path.read_bytes() == before
    with open_logbook(path) as book:
        export(book, tmp_path / "own.csv")
    assert sorted((tmp_path / "merged.csv").read_bytes().splitlines()) == sorted((tmp_path / "own.csv").read_bytes().splitlines())


def test_its_pieces_are_what_they_were(path: Path) -> None:
    with open_logbook(path) as book:
        (vest,) = planned_pieces(book)
        run = published(vest)
        assert isinstance(run, PublishedRun)
        assert [(size["size"], size["chain"], size["rows"]) for size in run.sizes] == [("S", 74, 83), ("M", 80, 85)]
        assert [made.name for made in made_pieces(book)] == ["Cushion", "Ferry vest, M"]
        labels = {line.action for line in history(book, vest.uid)}
    assert labels & {"set Ferry vest", "mark Ferry vest as published"}
    taken_back = labels & {"take back the set run of Ferry vest", "unmark Ferry vest as published"}
    assert {f"undo: {label}" for label in taken_back} & labels
