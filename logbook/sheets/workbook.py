"""The log as a workbook: the log itself, its readings one a row for reading only, and the words and units."""

import re
import zipfile
from collections.abc import Sequence
from contextlib import ExitStack
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Any, BinaryIO

from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import YARN_CLASSES
from logbook.errors import LogbookError, RefusedError
from logbook.sheets.columns import COLUMNS, Cell, cell_text, cells_of
from logbook.sheets.printing import in_margin
from logbook.sheets.progress import Progress, counted
from logbook.sheets.text_cells import holdable

if TYPE_CHECKING:
    from openpyxl import Workbook

_A4 = "9"
_ROW = re.compile(rb"<row ")


@dataclass(frozen=True, slots=True)
class _Heading:
    """One column of any of the sheets: its width in characters, how numbers show, whether text wraps."""

    name: str
    width: int
    number_format: str = "General"
    wraps: bool = False


_LOG = tuple(_Heading(c.name, c.width, "0.0##" if c.name.endswith("hook mm") else "General", c.wraps) for c in COLUMNS)
_READINGS = (
    _Heading("tag", 14), _Heading("condition", 20), _Heading("direction", 11), _Heading("as typed", 30, wraps=True),
    _Heading("number", 10), _Heading("counted", 12), _Heading("length cm", 11, "0.0#"),
    _Heading("mm per stitch or row", 20, "0.00"),
)  # fmt: skip
_WORDS = (_Heading("word", 26), _Heading("means", 70, wraps=True), _Heading("unit", 10))


def write_workbook(stream: BinaryIO, swatches: Sequence[Swatch], title: str, date: str, progress: Progress | None = None) -> None:
    """Writes the whole workbook; ``title`` and ``date`` (as shown) stand at the head of each printed page.

    Raises RefusedError for text that no sheet can hold, naming swatch and column; what ``progress`` raises passes through.
    """
    import openpyxl  # only here: it takes a tenth of a second

    book = openpyxl.Workbook(write_only=True)
    with ExitStack() as given_up:
        # openpyxl keeps what was written so far in files of its own, and clears them up on saving.
        given_up.callback(book.save, BytesIO())
        log = _sheet(book, "Swatches", _LOG, len(swatches), title, date)
        taken = [(swatch, reading) for swatch in swatches for reading in swatch.readings]
        for swatch in counted(swatches, progress, after=len(taken)):
            log.append(swatch.tag, cells_of(swatch))
        readings = _sheet(book, "Readings", _READINGS, len(taken), title, date)
        for swatch, reading in counted(taken, progress, before=len(swatches)):
            readings.append(swatch.tag, _reading_cells(swatch, reading))
        words = _sheet(book, "Words and units", _WORDS, len(_words()), title, date)
        for row in _words():
            words.append("", row)
        given_up.pop_all()
    content = BytesIO()
    book.save(content)
    stream.write(content.getbuffer())


def count_workbook_rows(stream: BinaryIO) -> int:
    """How many rows lie beneath the heading of the first sheet of a workbook written here, every part of it being whole."""
    with zipfile.ZipFile(stream) as parts:
        if parts.testzip() is not None:
            raise RefusedError("The workbook did not reach the disk whole: try again, or choose another folder.")
        rows, rest = 0, b""
        with parts.open("xl/worksheets/sheet1.xml") as sheet:
            while chunk := sheet.read(65_536):
                rows += len(_ROW.findall(rest + chunk))
                rest = chunk[-4:]
    return rows - 1


def _reading_cells(swatch: Swatch, taken: TakenReading) -> tuple[Cell, ...]:
    reading = taken.reading
    units = swatch.per_repeat(taken.direction) if reading.counted.whole_repeats else 1
    return (
        swatch.tag, taken.condition.words, taken.direction.value, reading.text, reading.number, reading.counted.value,
        reading.length_mm / 10, reading.unit_mm / units if units and reading.measures else None,
    )  # fmt: skip


def _words() -> list[tuple[str, str, str]]:
    return [
        *((column.name, column.field.expected, column.unit) for column in COLUMNS),
        *((condition.value, f"readings taken {condition.words}", "") for condition in Condition),
        ("stitches", "along a row, counted in stitches or repeats", ""),
        ("rows", "up the rows, counted in rows or row repeats", ""),
        *(
            (f"yarn class {one.number}", f"{one.name} ({one.other_names}); usual hook {one.usual_hook_mm} mm", "")
            for one in YARN_CLASSES
        ),
    ]


def _sheet(book: "Workbook", name: str, headings: Sequence[_Heading], rows: int, title: str, date: str) -> "_SheetWriter":
    sheet: Any = book.create_sheet(name)  # the stubs know only part of what a sheet written row by row can do
    sheet.freeze_panes = "C2" if headings is _LOG else "A2"
    _set_up_columns(sheet, headings, rows)
    _set_up_print(sheet, title, date, pages_wide=3 if headings is _LOG else 1)
    return _SheetWriter(sheet, headings)


def _set_up_columns(sheet: Any, headings: Sequence[_Heading], rows: int) -> None:
    from openpyxl.utils import get_column_letter

    for place, heading in enumerate(headings, start=1):
        sheet.column_dimensions[get_column_letter(place)].width = heading.width
    sheet.auto_filter.ref = f"A1:{get_column_letter(len(headings))}{rows + 1}"


def _set_up_print(sheet: Any, title: str, date: str, pages_wide: int) -> None:
    """Landscape A4, fitted to the width. The log is too wide for one page in a size that can be read: it takes three."""
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.paperSize = _A4
    sheet.page_setup.fitToWidth = pages_wide
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
    sheet.print_title_rows = "1:1"
    if pages_wide > 1:
        sheet.print_title_cols = "A:B"
    sheet.oddHeader.left.text = in_margin(title)
    sheet.oddHeader.right.text = in_margin(date)
    sheet.oddFooter.center.text = "&P / &N"


class _SheetWriter:
    """Appends rows to one sheet, reusing one styled cell a column."""

    def __init__(self, sheet: Any, headings: Sequence[_Heading]) -> None:
        from openpyxl.cell import WriteOnlyCell
        from openpyxl.styles import Alignment, Font

        self._sheet, self._headings = sheet, headings
        top = []
        self._cells = []
        for heading in headings:
            name = WriteOnlyCell(sheet, heading.name)
            name.font, name.alignment = Font(bold=True), Alignment(wrap_text=True, vertical="top")
            top.append(name)
            cell = WriteOnlyCell(sheet)
            cell.alignment = Alignment(wrap_text=heading.wraps, vertical="top")
            cell.number_format = heading.number_format
            self._cells.append(cell)
        sheet.append(top)

    def append(self, tag: str, cells: Sequence[Cell]) -> None:
        """One row, of the swatch ``tag``. Raises RefusedError for text no sheet can hold."""
        row: list[Any] = []
        for heading, cell, content in zip(self._headings, self._cells, cells, strict=True):
            if content is None or content == "":
                row.append(None)
                continue
            if isinstance(content, str):
                cell.value = _holdable(content, tag, heading.name)
                cell.data_type = "s"  # also of what looks like a formula or an error
            else:
                cell.value = cell_text(content)  # as text, since openpyxl would leave off the last digit of a number like 1/3
                cell.data_type = "n"
            row.append(cell)
        self._sheet.append(row)


def _holdable(text: str, tag: str, column: str) -> str:
    try:
        return holdable(text)
    except LogbookError as error:
        raise RefusedError(f"Swatch “{tag}”, {column}: {error}") from error
