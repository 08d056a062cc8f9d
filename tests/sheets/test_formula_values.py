import zipfile
from io import BytesIO

import openpyxl
import pytest

from logbook.sheets.formula_values import with_values

PART = "xl/worksheets/sheet1.xml"


def workbook(**cells: object) -> bytes:
    book = openpyxl.Workbook()
    for place, value in cells.items():
        book.worksheets[0][place] = value
    content = BytesIO()
    book.save(content)
    return content.getvalue()


def shown(content: bytes) -> dict[str, object]:
    sheet = openpyxl.load_workbook(BytesIO(content), data_only=True).worksheets[0]
    return {cell.coordinate: cell.value for row in sheet.iter_rows() for cell in row}


def test_a_formula_shows_its_value_and_stays_a_formula() -> None:
    plain = workbook(A1=2, B1="=A1*3", C1='=IF(A1<3,"",A1/7)')
    assert shown(plain) == {"A1": 2, "B1": None, "C1": None}
    filled = with_values(plain, PART, {"B1": 6, "C1": 2 / 7})
    assert shown(filled) == {"A1": 2, "B1": 6, "C1": 2 / 7}
    sheet = openpyxl.load_workbook(BytesIO(filled)).worksheets[0]
    assert [sheet["B1"].value, sheet["C1"].value] == ["=A1*3", '=IF(A1<3,"",A1/7)']


def test_all_else_stays_as_it_is() -> None:
    plain = workbook(A1="=1+1", B1="text")
    filled = with_values(plain, PART, {"A1": 2})
    with zipfile.ZipFile(BytesIO(plain)) as before, zipfile.ZipFile(BytesIO(filled)) as after:
        assert before.namelist() == after.namelist()
        assert {name for name in before.namelist() if before.read(name) != after.read(name)} == {PART}


@pytest.mark.parametrize("values", [{}, {"A1": 2, "B1": 3}, {"B1": 2}], ids=["none", "one too many", "another cell"])
def test_each_formula_wants_its_value(values: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="formula"):
        with_values(workbook(A1="=1+1"), PART, values)
