"""The log as a workbook: the log itself and its readings, so that it can be taken in again, and sheets for people.

The first three sheets are those that scripts rely on; it opens at the calculator.
"""

import re
import zipfile
from collections.abc import Iterable, Iterator, Sequence
from typing import BinaryIO, TypeVar

from logbook.craft.gauges.lending import Lending
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.swatches.yarn import YARN_CLASSES
from logbook.errors import RefusedError
from logbook.sheets import chain_sheet
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Content, Heading
from logbook.sheets.chain_sheet import write_chain_sheet
from logbook.sheets.chain_start import SwatchToBegin
from logbook.sheets.columns import COLUMNS
from logbook.sheets.gauges_sheet import TOP as GAUGES_TOP
from logbook.sheets.gauges_sheet import gauge_line, gauge_row, write_gauges
from logbook.sheets.hooks_sheet import HookGroup, hook_groups, write_hooks
from logbook.sheets.kept_sheets import write_kept
from logbook.sheets.log import Log, LoggedSwatches
from logbook.sheets.pieces_sheets import write_made, write_pieces
from logbook.sheets.progress import Progress, counted
from logbook.sheets.readings_sheet import MOST_LIVE, GaugeNumbers, write_readings

_Item = TypeVar("_Item")
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
    swatches, assumptions, many = log.swatches, log.assumptions, len(log.swatches)
    told = _Told(many, progress)
    numbers = GaugeNumbers(swatches, assumptions) if many <= MOST_LIVE else None
    with BookWriter(title, date) as book:
        _write_swatches(book, swatches, told)
        write_readings(book, told.counted(swatches, 1), swatches.readings, numbers, assumptions)
        words = book.sheet("Words and units", _WORDS, top=1)
        words.table(_WORDS, _words(), len(list(_words())))
        gauges = _Gauges(log, numbers, told)
        write_chain_sheet(book, many, gauges.first, log.drift, assumptions)
        write_gauges(book, gauges.rows, live=numbers is not None)
        write_hooks(book, gauges.hooks)
        write_made(book, log)
        write_pieces(book, log.lines)
        write_kept(book, log.kept)
        book.open_at(chain_sheet.NAME)
        book.save(stream, told.packed)


_PARTS = 4
"""Rows, readings and gauges are written, then all is packed."""


class _Told:
    """How far it has come, in swatches of each part."""

    def __init__(self, many: int, progress: Progress | None) -> None:
        self._many, self._progress = many, progress

    def counted(self, items: Iterable[_Item], part: int) -> Iterator[_Item]:
        """``items``, one a swatch, of the part of that number."""
        return counted(items, self._many, self._progress, self._many * part, self._many * (_PARTS - 1 - part))

    def packed(self, done: int, total: int) -> None:
        """So many bytes of all are."""
        if self._progress is not None:
            self._progress(self._many * (_PARTS - 1) + self._many * done // max(total, 1), self._many * _PARTS)


class _Gauges:
    """What is gathered yarn by yarn, since those of a yarn lend one another: rows of gauges, lines of hooks, what is first."""

    def __init__(self, log: Log, numbers: GaugeNumbers | None, told: _Told) -> None:
        self.first = SwatchToBegin()
        self.hooks: list[HookGroup] = []
        places = {uid: place for place, uid in enumerate(log.swatches.newest_first())}
        self.rows: list[Sequence[Content]] = [()] * len(places)
        for swatch, lending in told.counted(self._lent(log), 2):
            line = gauge_line(swatch, lending)
            row = places[swatch.uid] + GAUGES_TOP + 1
            self.rows[places[swatch.uid]] = gauge_row(row, line, log.drift.of(swatch.worked_by), numbers)
            self.first.look_at(row, line)

    def _lent(self, log: Log) -> Iterator[tuple[Swatch, Lending]]:
        for some in log.swatches.by_yarn():
            self.hooks.extend(hook_groups(some, log.assumptions))
            known = {swatch.uid: gauges_of(swatch, log.assumptions) for swatch in some}
            lending = Lending(some, log.assumptions, known)
            for swatch in some:
                yield swatch, lending


def _write_swatches(book: BookWriter, swatches: LoggedSwatches, told: _Told) -> None:
    """The log: too wide for one page in a size that can be read, so that it takes three."""
    headings = _LOG[: len(swatches.columns)]
    sheet = book.sheet("Swatches", headings, landscape=True, pages_wide=3, top=1, freeze=2)
    sheet.raw.print_title_cols = "A:B"
    sheet.table(headings, told.counted(swatches.rows(), 0), len(swatches), who=lambda row: f"Swatch “{row[1]}”")


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
