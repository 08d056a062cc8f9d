"""The log as a workbook: the log itself and its readings, so that it can be taken in again, and sheets for people.

The first three sheets are those that scripts rely on; it opens at the calculator.
"""

import re
import zipfile
from collections.abc import Iterator, Sequence
from typing import BinaryIO

from logbook.craft.gauges.lending import Lending
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import YARN_CLASSES
from logbook.errors import RefusedError
from logbook.sheets import chain_sheet
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Heading
from logbook.sheets.chain_sheet import write_chain_sheet
from logbook.sheets.columns import COLUMNS, cells_of, columns_for
from logbook.sheets.gauges_sheet import write_gauges
from logbook.sheets.hooks_sheet import write_hooks
from logbook.sheets.kept_sheets import write_kept
from logbook.sheets.log import Log
from logbook.sheets.pieces_sheets import write_made, write_pieces
from logbook.sheets.progress import Progress, counted
from logbook.sheets.readings_sheet import MOST_LIVE, GaugeNumbers, write_readings

_ROW = re.compile(rb"<row ")
_LOG = tuple(
    Heading(c.name, c.width, "0.0##" if c.name.endswith("hook mm") else "General", c.is_number, c.wraps, c.name == "uid")
    for c in COLUMNS
)
_WORDS = (Heading("word", 26), Heading("means", 66, wraps=True), Heading("unit", 9))


def write_workbook(stream: BinaryIO, log: Log, title: str, date: str, progress: Progress | None = None) -> None:
    """Writes the whole workbook; ``title`` and ``date`` (as shown) stand at the foot of each printed page.

    Raises RefusedError for text that no sheet can hold, naming swatch and column; what ``progress`` raises passes through.
    """
    swatches, assumptions = log.swatches, log.assumptions
    lending, live = Lending(swatches, assumptions), len(swatches) <= MOST_LIVE
    numbers = GaugeNumbers(swatches, assumptions)
    with BookWriter(title, date) as book:
        _write_swatches(book, swatches, numbers.rows, progress)
        write_readings(book, swatches, numbers, live=live, progress=progress, before=len(swatches))
        words = book.sheet("Words and units", _WORDS, top=1)
        words.table(_WORDS, _words(), len(list(_words())))
        write_chain_sheet(book, swatches, lending, log.drift, assumptions)
        write_gauges(book, swatches, lending, log.drift, numbers if live else None)
        write_hooks(book, swatches, assumptions)
        write_made(book, log)
        write_pieces(book, log.lines)
        write_kept(book, log.kept)
        book.open_at(chain_sheet.NAME)
        book.save(stream)


def _write_swatches(book: BookWriter, swatches: Sequence[Swatch], readings: int, progress: Progress | None) -> None:
    """The log: too wide for one page in a size that can be read, so that it takes three."""
    columns = len(columns_for(swatches))
    sheet = book.sheet("Swatches", _LOG[:columns], landscape=True, pages_wide=3, top=1, freeze=2)
    sheet.raw.print_title_cols = "A:B"
    rows = (cells_of(swatch)[:columns] for swatch in counted(swatches, progress, after=readings))
    sheet.table(_LOG[:columns], rows, len(swatches), who=lambda row: f"Swatch “{row[1]}”")


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


def _words() -> Iterator[tuple[str, str, str]]:
    for column in COLUMNS:
        yield column.name, column.field.expected, column.unit
    for condition in Condition:
        yield condition.value, f"readings taken {condition.words}", ""
    yield "stitches", "along a row, counted in stitches or repeats", ""
    yield "rows", "up the rows, counted in rows or row repeats", ""
    for one in YARN_CLASSES:
        yield f"yarn class {one.number}", f"{one.name} ({one.other_names}); usual hook {one.usual_hook_mm} mm", ""
