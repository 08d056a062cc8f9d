import openpyxl
import pytest

from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Formula
from logbook.sheets.sheet_xml import SheetRows
from tests.support.sheets import written_book


def test_a_formula_shows_its_value_and_stays_a_formula() -> None:
    with BookWriter("Numbers", "") as book:
        book.sheet("One", [10]).add((2, Formula("A1*3", 6), Formula('IF(A1<3,"",A1/7)', 2 / 7), Formula('"a"&"<b"', "a<b")))
        content = written_book(book)
    shown = openpyxl.load_workbook(content, data_only=True).worksheets[0]
    assert [cell.value for cell in shown[1]] == [2, 6, 2 / 7, "a<b"]
    kept = openpyxl.load_workbook(content).worksheets[0]
    assert [cell.value for cell in kept[1]][1:] == ["=A1*3", '=IF(A1<3,"",A1/7)', '="a"&"<b"']


@pytest.mark.parametrize("value", [0, 1 / 3, 1e-7, 1e22, 12345678901234567, -2.0, " x", "x\n", "&lt;<b>", "=1+1", "#N/A", "🧶"])
def test_a_cell_holds_what_was_put_into_it(value: float | str) -> None:
    with BookWriter("Cells", "") as book:
        book.sheet("One", [10]).add((value,))
        content = written_book(book)
    cell = openpyxl.load_workbook(content).worksheets[0]["A1"]
    assert (cell.value, cell.data_type) == (value, "s" if isinstance(value, str) else "n")


def test_sheets_stand_in_their_order_and_those_that_come_last_behind_the_others() -> None:
    with BookWriter("Order", "") as book:
        for name, last in (("one", False), ("two", True), ("three", False)):
            book.sheet(name, [10], last=last).add((name,))
        book.open_at("three")
        content = written_book(book)
    read = openpyxl.load_workbook(content)
    assert [(sheet.title, sheet["A1"].value) for sheet in read] == [(name, name) for name in ("one", "three", "two")]
    assert read.active.title == "three"


def test_rows_of_a_part_that_has_some_already_are_refused() -> None:
    rows = SheetRows()
    with pytest.raises(ValueError, match="unpack"):
        rows.pour(None, "", "<sheetData><row/></sheetData>", print)  # type: ignore[arg-type]
    rows.close()
