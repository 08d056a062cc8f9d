"""The figures of a piece as a workbook of one sheet, values only."""

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Any, BinaryIO

from logbook.craft.swatches.fields import clean_text


@dataclass(frozen=True, slots=True)
class Figure:
    """One line: what it is, its figure and unit, give or take and size before washing in the same unit (None: not known)."""

    what: str
    figure: float | str
    unit: str = ""
    give_or_take: float | None = None
    before_washing: float | None = None


HEADINGS = ("what", "figure", "unit", "give or take", "before washing")
_WIDTHS = (34, 14, 12, 14, 16)


def write_piece_workbook(stream: BinaryIO, title: str, figures: Sequence[Figure], notes: Sequence[str]) -> None:
    """Writes ``title``, the figures beneath their headings, then the notes. Text is text, also what looks like a formula."""
    import openpyxl  # only here: it takes a tenth of a second
    from openpyxl.styles import Alignment, Font

    book = openpyxl.Workbook()
    sheet: Any = book.active
    sheet.title = "Piece"
    sheet.page_setup.paperSize = "9"
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    for letter, width in zip("ABCDE", _WIDTHS, strict=True):
        sheet.column_dimensions[letter].width = width
    _put(sheet, 1, 1, title)
    sheet["A1"].font = Font(bold=True, size=14)
    for column, heading in enumerate(HEADINGS, start=1):
        _put(sheet, 3, column, heading)
        sheet.cell(3, column).font = Font(bold=True)
    for row, line in enumerate(figures, start=4):
        for column, value in enumerate((line.what, line.figure, line.unit, line.give_or_take, line.before_washing), start=1):
            _put(sheet, row, column, value)
    for row, note in enumerate(notes, start=5 + len(figures)):
        _put(sheet, row, 1, note)
        sheet.merge_cells(start_row=row, end_row=row, start_column=1, end_column=len(HEADINGS))
        sheet.cell(row, 1).alignment = Alignment(wrap_text=True, vertical="top")
        sheet.row_dimensions[row].height = 15 * (1 + len(note) // 85)
    content = BytesIO()
    book.save(content)
    stream.write(content.getbuffer())


def _put(sheet: Any, row: int, column: int, value: float | str | None) -> None:
    if value is None or value == "":
        return
    cell = sheet.cell(row, column)
    if isinstance(value, str):
        cell.value, cell.data_type = clean_text(value), "s"
    else:
        cell.value = round(value, 6)
        cell.number_format = "0" if isinstance(value, int) else "0.0#"
