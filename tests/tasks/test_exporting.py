"""Handing the log on: the target is the old file or the whole new one."""

from pathlib import Path

import pytest

from logbook.errors import RefusedError
from logbook.sheets import limits, own_export, reading
from logbook.tasks.exporting import export
from logbook.tasks.importing import import_into_new, plan_import
from logbook.tasks.keeping import Logbook
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from tests.support.books import COTTON, SHELLS, put_worked, swatch
from tests.support.sheets import read_rows


class Cancelled(Exception):
    pass


@pytest.fixture
def full(book: Logbook) -> Logbook:
    """150 swatches."""
    with book.writing("log many") as writing:
        for number in range(150):
            put_worked(writing, number)
    return book


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_cancelled_the_old_file_stands(full: Logbook, ending: str, tmp_path: Path) -> None:
    target = tmp_path / f"out.{ending}"
    target.write_text("old")

    def progress(done: int, total: int) -> None:
        if done >= 100:
            raise Cancelled

    with pytest.raises(Cancelled):
        export(full, target, progress)
    assert target.read_text() == "old"
    assert {path.name for path in tmp_path.iterdir() if path.is_file()} == {"vests.logbook", target.name}


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_progress_reaches_the_end(full: Logbook, ending: str, tmp_path: Path) -> None:
    seen: list[tuple[int, int]] = []
    assert export(full, tmp_path / f"out.{ending}", lambda done, total: seen.append((done, total))).rows == 150
    assert seen == sorted(seen)
    assert seen[0][0] == 0
    assert seen[-1][0] == seen[-1][1] >= 150


def test_in_the_order_they_were_logged_and_without_the_deleted(book: Logbook, tmp_path: Path) -> None:
    uids = [save_swatch(book, swatch(number, yarn=COTTON, pattern=SHELLS)) for number in (3, 1, 2)]
    delete_swatches(book, [uids[1]])
    export(book, tmp_path / "out.csv")
    assert [row["tag"] for row in read_rows(tmp_path / "out.csv")] == ["S-03", "S-02"]


def test_an_empty_log_is_a_heading(book: Logbook, tmp_path: Path) -> None:
    assert export(book, tmp_path / "out.csv").rows == 0
    assert read_rows(tmp_path / "out.csv") == []


@pytest.mark.parametrize("name", ["out.ods", "out", "vests.logbook"])
def test_another_ending_is_refused(book: Logbook, tmp_path: Path, name: str) -> None:
    with pytest.raises(RefusedError, match=f"“{name}” names no kind of sheet"):
        export(book, tmp_path / name)


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_an_import_takes_in_what_it_writes_beyond_what_it_takes_of_another_sheet(
    full: Logbook, ending: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / f"out.{ending}"
    export(full, target)
    few = limits.Limits(file_bytes=2_000, inflated_bytes=20_000, rows=100, cells=100, text_bytes=1_000, elements=100)
    monkeypatch.setattr(limits, "FOREIGN", few)
    monkeypatch.setattr(reading, "FOREIGN", few)
    plan, result = import_into_new(tmp_path / "new.logbook", target)
    assert (plan.problems, result and result.added) == ((), 150)
    monkeypatch.setattr(own_export, "_NAMES", ["another", "heading"])
    with pytest.raises(RefusedError, match="is larger than"):
        plan_import(None, target)
