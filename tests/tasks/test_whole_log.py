"""All of a logbook goes out as a workbook and comes in again: pieces, set runs, made pieces, body charts, patterns."""

import sqlite3
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from logbook.book.kept_records import kept_rows
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.swatches.assumptions import Assumptions
from logbook.errors import RefusedError
from logbook.sheets.workbook_reading import read_sheets
from logbook.tasks.body_charts import save_chart
from logbook.tasks.browsing import assumptions_of, save_assumptions
from logbook.tasks.exporting import export
from logbook.tasks.importing import carry_out, import_into, import_into_new, plan_import
from logbook.tasks.keeping import Logbook, new_book, open_book
from logbook.tasks.made_pieces import delete_made_piece, save_made_piece
from logbook.tasks.pieces import delete_piece, made_pieces, planned_pieces, save_piece
from logbook.tasks.sampling import new_sample
from tests.support.cloth import VEST
from tests.support.garments import garment_book, planned


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


@pytest.fixture
def small(tmp_path: Path) -> Iterator[Logbook]:
    """A logbook whose made piece is in ``one.xlsx`` alone."""
    with garment_book(tmp_path / "small.logbook") as book:
        planned(book, "H1", VEST, "Vest")
        save_chart(book, "friends", "size; bust\nIda; 91")
        save_made_piece(book, MadePiece(name="Ida's vest", worked_by="Ida", predicted_width_mm=410, washed_width_mm=424))
        export(book, tmp_path / "one.xlsx")
        delete_made_piece(book, made_pieces(book)[0])
        yield book


def rename_a_piece(book: Logbook) -> None:
    piece = planned_pieces(book)[0]
    save_piece(book, replace(piece, plan=replace(piece.plan, name="another name")))


def delete_a_piece(book: Logbook) -> None:
    delete_piece(book, planned_pieces(book)[0])


def add_a_chart(book: Logbook) -> None:
    save_chart(book, "friends", "size; bust\nIda; 92")


@pytest.mark.parametrize("meanwhile", [rename_a_piece, delete_a_piece, add_a_chart])
def test_what_comes_beside_swatches_is_planned_again_if_the_logbook_was_changed_since(
    small: Logbook, tmp_path: Path, meanwhile: Callable[[Logbook], None]
) -> None:
    plan = plan_import(small, tmp_path / "one.xlsx")
    assert [row.table for row in plan.kept.written] == ["made_piece"]
    with open_book(small.path) as other:
        meanwhile(other)
    before = held(small)
    with pytest.raises(RefusedError, match=r"changed while one\.xlsx was looked at"):
        carry_out(small, plan)
    assert held(small) == before


def test_what_was_changed_since_and_has_nothing_to_do_with_the_sheet_does_not_hinder_it(small: Logbook, tmp_path: Path) -> None:
    plan = plan_import(small, tmp_path / "one.xlsx")
    with open_book(small.path) as other:
        save_chart(other, "strangers", "size; bust\nOle; 101")
    carry_out(small, plan)
    assert [made.name for made in made_pieces(small)] == ["Ida's vest"]


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
    with pytest.raises(Exception, match="can't be imported") as refused:
        import_into_new(tmp_path / "bent.logbook", tmp_path / "bent.xlsx")
    assert not isinstance(refused.value, sqlite3.Error)
    assert not (tmp_path / "bent.logbook").exists()


def _without_first_sheets_rows(path: Path) -> Path:
    import openpyxl

    book = openpyxl.load_workbook(path)
    book["Swatches"].delete_rows(2, 100)
    book.save(path.with_name("no swatches.xlsx"))
    return path.with_name("no swatches.xlsx")


def test_what_pieces_and_made_pieces_took_stands_in_hours(sample: Logbook, tmp_path: Path) -> None:
    one = MadePiece(name="Vest", predicted_minutes=1200.0, minutes=1296.0, predicted_grams=250.0, grams_used=270.0)
    save_made_piece(sample, one)
    export(sample, tmp_path / "one.xlsx")
    sheets = cells_of(tmp_path / "one.xlsx")
    headings, *lines = sheets["Made pieces"][2:]
    made = dict(zip(headings, next(line for line in lines if line[0] == "Vest"), strict=True))
    assert [made[name] for name in ("predicted hours", "hours")] == [20.0, 21.6]
    assert [made[name] for name in ("predicted grams", "grams used")] == [250.0, 270.0]
    assert [made[name] for name in ("hours off by", "yarn off by")] == pytest.approx([0.08, 0.08])
    headings, *lines = sheets["Pieces"][2:]
    known = [dict(zip(headings, line, strict=False)) for line in lines]
    assert any(isinstance(line["hours"], float | int) and line["hours"] > 0 for line in known)
