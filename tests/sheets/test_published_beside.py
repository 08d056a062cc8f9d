"""A published garment's workbook: the published numbers stay as values, and what the sheet then makes otherwise is framed."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from logbook.craft.words.terms import Terms
from logbook.tasks.garment_files import garment_workbook
from logbook.tasks.garments import garments, work_out
from logbook.tasks.sampling import new_sample
from tests.sheets.test_recalculation import GARMENTS
from tests.support.spreadsheet import changed_in_place, recalculated, shown

DAY = "2026-03-01"
COUNT = "numbers that differ"
HEADING = f"As published on {DAY}"


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The workbooks of the sample's garments by name, as published; and of each as it is handed on unpublished."""
    folder, found = tmp_path_factory.mktemp("published"), {}
    with new_sample(folder) as book:
        for garment in garments(book):
            for published in (True, False):
                name = garment.name if published else f"{garment.name}, not published"
                found[name] = folder / f"{name}.xlsx"
                with found[name].open("wb") as stream:
                    garment_workbook(work_out(garment.plan, book), Terms.US, stream, DAY, published=published)
    return found


def row_of(cells: Mapping[str, Any], words: str) -> int:
    return next(int(cell[1:]) for cell, value in cells.items() if cell[0] == "A" and str(value).startswith(words))


def block(path: Path, sheet: str) -> dict[int, dict[str, Any]]:
    """The rows below the heading, by their numbers, each by its letters."""
    cells = dict(shown(path, sheet)[sheet])
    top, rows = row_of(cells, HEADING), {}
    for cell, value in cells.items():
        if int(cell[1:]) > top:
            rows.setdefault(int(cell[1:]), {})[cell[0]] = round(value, 9) if isinstance(value, float) else value
    return rows


@pytest.mark.parametrize("name", GARMENTS)
def test_every_published_number_is_a_value_beside_its_formula(written: dict[str, Path], name: str) -> None:
    values, formulas = (dict(shown(written[name], "Pieces", formulas=own)["Pieces"]) for own in (False, True))
    top = row_of(values, HEADING)
    live = [cell for cell, text in formulas.items() if str(text).startswith("=") and int(cell[1:]) < top]
    rows = block(written[name], "Pieces")
    for number, row in rows.items():
        for letter in set(row) - {"A"}:
            assert str(formulas[f"{letter}{number}"]).startswith("=") == (row["A"] == COUNT), (letter, number)
    assert len(live) > 20
    assert {row["B"] for row in rows.values() if row.get("A") == COUNT} == {0}
    said = {(row["A"], value) for row in rows.values() for letter, value in row.items() if letter != "A" and "A" in row}
    for cell in live:
        label = str(values[f"A{cell[1:]}"])
        if "wanted" not in label:
            value = values[cell]
            assert (label, round(value, 9) if isinstance(value, float) else value) in said, cell


@pytest.mark.parametrize("name", GARMENTS)
def test_all_else_in_it_is_as_it_is_handed_on_unpublished(written: dict[str, Path], name: str) -> None:
    ours, plain = (written[name], written[f"{name}, not published"])
    sheets = openpyxl.load_workbook(plain, read_only=True).sheetnames
    assert openpyxl.load_workbook(ours, read_only=True).sheetnames == sheets
    for sheet, cells in shown(plain, *sheets, formulas=True).items():
        more = shown(ours, sheet, formulas=True)[sheet]
        assert cells.items() <= more.items()
        assert (cells == more) == (sheet not in ("Pieces", "Yarn"))


def test_each_published_number_is_framed_where_it_differs(written: dict[str, Path]) -> None:
    book = openpyxl.load_workbook(written["Matinee top"])
    for sheet in ("Pieces", "Yarn"):
        framed = [
            area for area in book[sheet].conditional_formatting if any("<>ROUND" in str(rule.formula) for rule in area.rules)
        ]
        rows = {row for area in framed for one in area.sqref.ranges for row in range(one.min_row, one.max_row + 1)}
        numbers = {
            number
            for number, row in block(written["Matinee top"], sheet).items()
            if row.get("A") != COUNT and any(isinstance(value, int | float) for value in row.values())
        }
        assert rows == numbers


@pytest.mark.long
def test_with_another_gauge_a_spreadsheet_counts_what_differs_and_moves_nothing_published(
    written: dict[str, Path], tmp_path: Path
) -> None:
    paths, changed = [written[name] for name in GARMENTS], []
    for path in paths:
        cells = shown(path, "Pieces")["Pieces"]
        stitch = f"B{row_of(cells, 'Gauge: change') + 2}"
        changed.append(changed_in_place(path, {"Pieces": {stitch: cells[stitch] * 1.2}}, tmp_path / f"changed {path.name}"))
    again = recalculated([*paths, *changed], tmp_path)
    for path, same, other in zip(paths, again, again[len(paths) :], strict=False):
        was, now = block(path, "Pieces"), block(other, "Pieces")
        assert block(same, "Pieces") == was
        assert {number: row for number, row in now.items() if row.get("A") != COUNT} == {
            number: row for number, row in was.items() if row.get("A") != COUNT
        }
        assert block(other, "Yarn") == block(path, "Yarn")
        cells = shown(other, "Pieces")["Pieces"]
        live, published = first_piece(cells, 1), first_piece(cells, row_of(cells, HEADING))
        differ = sum(round(value, 1) != round(live[label], 1) for label, value in published.items() if label != COUNT)
        assert published[COUNT] == differ > 0, path


def first_piece(cells: Mapping[str, Any], after: int) -> dict[str, Any]:
    """The numbers of the first piece below a row, in the first size, by their labels."""
    row = next(n for n in range(after, 500) if cells.get(f"B{n}") and "rows" in rows_from(cells, n))
    return rows_from(cells, row)


def rows_from(cells: Mapping[str, Any], heading: int) -> dict[str, Any]:
    found, row = {}, heading + 1
    while f"A{row}" in cells and f"B{row}" in cells:
        found[cells[f"A{row}"]] = cells[f"B{row}"]
        row += 1
    return found
