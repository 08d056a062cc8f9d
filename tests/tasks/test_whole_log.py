"""All of a logbook goes out as a workbook and comes in again: pieces, set runs, made pieces, body charts, patterns."""

import sqlite3
from pathlib import Path
from typing import Any

import pytest

from logbook.book.kept_records import kept_rows
from logbook.craft.swatches.assumptions import Assumptions
from logbook.sheets.workbook_reading import read_sheets
from logbook.tasks.body_charts import save_chart
from logbook.tasks.browsing import assumptions_of, save_assumptions
from logbook.tasks.exporting import export
from logbook.tasks.importing import import_into, import_into_new
from logbook.tasks.keeping import Logbook, new_book, open_book
from logbook.tasks.sampling import new_sample


@pytest.fixture
def sample(tmp_path: Path) -> Any:
    with new_sample(tmp_path) as book:
        save_assumptions(book, Assumptions(variation=0.03, count_lean=False))
        save_chart(book, "friends", "size; bust\nIda; 91\nUna; 104")
        with book.writing("a pattern nobody used yet") as writing:
            values = dict(
                zip(
                    PATTERN, ("hilltop", 4, 1, 1, None, None, None, None, 2, None, "", "Row 1: sc.", "from a friend"), strict=True
                )
            )
            writing.put("stitch_pattern", "uid-of-hilltop", values)
        yield book


PATTERN = (
    "name", "multiple", "plus", "extra_chains", "first_stitch", "skip_cover", "half_plus", "set_up_rows", "rows_in_repeat",
    "closing_rows", "terms", "rows_text", "notes",
)  # fmt: skip


def held(book: Logbook) -> dict[str, list[Any]]:
    with book.reading() as connection:
        return {table: sorted(map(repr, rows)) for table, rows in kept_rows(connection).items()}


def cells_of(path: Path) -> dict[str, Any]:
    return {sheet.name: [row.cells for row in sheet.rows] for sheet in read_sheets(path.read_bytes(), path.name)}


def test_out_in_and_out_again_is_the_same_cell_by_cell(sample: Logbook, tmp_path: Path) -> None:
    export(sample, tmp_path / "one.xlsx")
    plan, result = import_into_new(tmp_path / "again.logbook", tmp_path / "one.xlsx")
    assert (plan.problems, result and result.added) == ((), 43)
    assert result is not None
    assert "3 pieces" in result.others
    assert "1 body chart" in result.others
    assert "2 assumptions" in result.others
    with open_book(tmp_path / "again.logbook") as again:
        assert held(again) == held(sample)
        assert assumptions_of(again) == Assumptions(variation=0.03, count_lean=False)
        export(again, tmp_path / "two.xlsx")
    one, two = cells_of(tmp_path / "one.xlsx"), cells_of(tmp_path / "two.xlsx")
    assert one == two


def test_taken_in_where_all_is_known_already_it_changes_nothing(sample: Logbook, tmp_path: Path) -> None:
    export(sample, tmp_path / "one.xlsx")
    before = held(sample)
    plan, result = import_into(sample, tmp_path / "one.xlsx")
    assert (plan.kept.written, plan.problems, plan.kept.note) == ((), (), "")
    assert result is not None
    assert held(sample) == before


def test_a_logbook_with_swatches_goes_on_by_what_it_assumes_itself_and_says_so(sample: Logbook, tmp_path: Path) -> None:
    export(sample, tmp_path / "one.xlsx")
    own = Assumptions(variation=0.01)
    save_assumptions(sample, own)
    plan, _ = import_into(sample, tmp_path / "one.xlsx")
    assert "goes by its own" in plan.kept.note
    assert assumptions_of(sample) == own


@pytest.mark.parametrize("value", [-0.03, ""])
def test_an_assumption_that_is_none_is_a_problem(sample: Logbook, tmp_path: Path, value: object) -> None:
    import openpyxl

    export(sample, tmp_path / "one.xlsx")
    book = openpyxl.load_workbook(tmp_path / "one.xlsx")
    sheet = book["Kept assumptions"]
    place = next(cell.column for cell in sheet[4] if cell.value == "value")
    sheet.cell(5, place).value = value
    book.save(tmp_path / "one.xlsx")
    plan, result = import_into_new(tmp_path / "again.logbook", tmp_path / "one.xlsx")
    assert result is None
    assert any(problem.sheet == "Kept assumptions" for problem in plan.problems)


def test_a_piece_whose_swatch_is_nowhere_is_a_problem(sample: Logbook, tmp_path: Path) -> None:
    export(sample, tmp_path / "one.xlsx")
    with new_book(tmp_path / "other.logbook") as other:
        plan, _ = import_into(other, _without_first_sheets_rows(tmp_path / "one.xlsx"))
        assert any("Its swatch is neither" in problem.says for problem in plan.problems)
        assert held(other)["piece"] == []


def test_a_plan_that_can_not_be_made_out_takes_nothing_in(sample: Logbook, tmp_path: Path) -> None:
    import openpyxl

    export(sample, tmp_path / "one.xlsx")
    book = openpyxl.load_workbook(tmp_path / "one.xlsx")
    plan = next(cell for cell in book["Kept pieces"][4] if cell.value == "plan")
    book["Kept pieces"].cell(5, plan.column).value = "{}x"
    book.save(tmp_path / "bent.xlsx")
    with pytest.raises(Exception, match="can't be taken in") as refused:
        import_into_new(tmp_path / "bent.logbook", tmp_path / "bent.xlsx")
    assert not isinstance(refused.value, sqlite3.Error)
    assert not (tmp_path / "bent.logbook").exists()


def _without_first_sheets_rows(path: Path) -> Path:
    import openpyxl

    book = openpyxl.load_workbook(path)
    book["Swatches"].delete_rows(2, 100)
    book.save(path.with_name("no swatches.xlsx"))
    return path.with_name("no swatches.xlsx")
