"""How the sheet of a garment's pieces is laid out."""

from io import BytesIO

import openpyxl
import pytest

from logbook.craft.garments.cloth import Cloth
from logbook.sheets.garment_workbook import write_garment_workbook
from tests.support.shaped_pieces import cloth, garment

PLAN = {
    "name": "g",
    "pieces": [{"name": "back", "shape": "straight panel", "measures": {"width": "50 cm", "length": "56 cm"}}],
}


@pytest.mark.parametrize(
    ("of", "last"), [(cloth(6, 5), "plus"), (cloth(6, 5, 4, rows_in_repeat=2, closing_rows=1), "rows in a repeat")]
)
def test_the_heading_of_the_gauges_goes_over_all_of_them(of: Cloth, last: str) -> None:
    written = BytesIO()
    write_garment_workbook(written, "g", garment(PLAN, of), {"back": of}, (), (), "1 June 2026")
    rows = list(openpyxl.load_workbook(written)["Pieces"].iter_rows())
    place = next(number for number, row in enumerate(rows) if row[0].value == "Gauge: change what is shaded")
    above, names = rows[place], [cell for cell in rows[place + 1] if cell.value]
    assert names[-1].value == last
    assert all(above[cell.column - 1].border.bottom.style == above[0].border.bottom.style is not None for cell in names)
