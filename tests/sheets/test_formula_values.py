import openpyxl
import pytest

from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Formula
from logbook.sheets.formula_values import filled
from tests.support.sheets import written_book


def test_a_formula_shows_its_value_and_stays_a_formula() -> None:
    with BookWriter("Numbers", "") as book:
        book.sheet("One", [10]).add((2, Formula("A1*3", 6), Formula('IF(A1<3,"",A1/7)', 2 / 7), Formula('"a"&"<b"', "a<b")))
        content = written_book(book)
    shown = openpyxl.load_workbook(content, data_only=True).worksheets[0]
    assert [cell.value for cell in shown[1]] == [2, 6, 2 / 7, "a<b"]
    kept = openpyxl.load_workbook(content).worksheets[0]
    assert [cell.value for cell in kept[1]][1:] == ["=A1*3", '=IF(A1<3,"",A1/7)', '="a"&"<b"']


@pytest.mark.parametrize("values", [{}, {"A1": 2, "B1": 3}, {"B1": 2}], ids=["none", "one too many", "another cell"])
def test_each_formula_wants_its_value(values: dict[str, str | int | float]) -> None:
    with pytest.raises(ValueError, match="formula"):
        filled('<c r="A1"><f>1+1</f><v/></c>', values)
