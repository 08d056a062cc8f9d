"""The cells of one sheet of a workbook, row by row as its XML is read: numbers, texts, days, and what can't be taken."""

import math
import re
from collections.abc import Callable
from datetime import date, timedelta
from functools import lru_cache

from logbook.craft.words.numbers import grouped
from logbook.errors import RefusedError
from logbook.sheets.cell_texts import GatheredTexts, unescaped, whole_number
from logbook.sheets.limits import MOST_COLUMNS, RawCell, RowCollector, Unusable
from logbook.sheets.number_formats import Moment
from logbook.sheets.zip_parts import DamagedZipError, Handlers

_LETTERS = re.compile(r"[A-Za-z]{1,3}\Z")
NEITHER = Unusable("what is neither true nor false")
_TRUTH = {"1": "TRUE", "true": "TRUE", "0": "FALSE", "false": "FALSE"}
_NAMESPACES = {
    "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "http://purl.oclc.org/ooxml/spreadsheetml/main",
}
"""The language of sheets, as the standard's transitional and its strict form call it."""
_WIDEST = 16_384
"""Columns that a sheet can have at all (its last one is XFD). Blank cells may reach that far: whole rows are given colours."""


class SheetReader:
    """Takes the elements of one sheet and gathers its rows."""

    def __init__(self, shared: list[str], moments: list[Moment], since_1904: bool, collector: RowCollector) -> None:
        self.collector = collector
        self._shared, self._moments, self._since_1904 = shared, moments, since_1904
        self._row = self._column = 0
        self._cells: list[RawCell] = []
        self._attributes: dict[str, str] = {}
        self._texts = GatheredTexts()
        self._value: str | None = None
        self._in_data = self._in_row = self._in_cell = self._in_value = self._formula = self._worded = False

    def handlers(self) -> Handlers:
        """What to call while the sheet is read. What stands beside its data may use the same names: it is passed over."""
        starts = {
            **self._texts.starts, "sheetData": self._start_data, "row": self._start_row, "c": self._start_cell,
            "v": self._start_value, "f": self._start_formula,
            "worksheet": self._start_sheet, "is": self._start_text,
        }  # fmt: skip
        ends = {**self._texts.ends, "sheetData": self._end_data, "row": self._end_row, "c": self._end_cell, "v": self._end_value}
        return Handlers(starts, ends, self._text)

    def _start_sheet(self, attributes: dict[str, str]) -> None:
        if not _NAMESPACES & {value for name, value in attributes.items() if name.startswith("xmlns")}:
            raise DamagedZipError("its sheet is not written in the language of workbooks")

    def _start_data(self, attributes: dict[str, str]) -> None:
        self._in_data = True

    def _end_data(self) -> None:
        self._in_data = False

    def _start_row(self, attributes: dict[str, str]) -> None:
        if not self._in_data:
            return
        number = whole_number(attributes["r"]) if "r" in attributes else self._row + 1
        if number <= self._row:
            raise DamagedZipError(f"row {number} stands after row {self._row}")
        if self._in_row:
            raise DamagedZipError(f"row {number} stands within row {self._row}")
        self._row, self._column, self._cells, self._in_row = number, 0, [], True

    def _end_row(self) -> None:
        if self._in_data:
            self._in_row = False
            self.collector.add(self._row, self._cells)

    def _start_cell(self, attributes: dict[str, str]) -> None:
        if not self._in_data:
            return
        if self._in_cell or not self._in_row:
            raise DamagedZipError(f"a cell stands within another, or in no row (row {self._row})")
        column = _column_number(attributes["r"], self._row) if "r" in attributes else self._column + 1
        if column <= self._column:
            raise DamagedZipError(f"the cells of row {self._row} stand out of order")
        if column > _WIDEST:
            raise DamagedZipError(f"row {self._row} has more than {grouped(_WIDEST)} cells, blank ones counted")
        self._column, self._attributes, self._in_cell = column, attributes, True
        self._value, self._formula, self._worded = None, False, False
        self._texts.clear()

    def _start_text(self, attributes: dict[str, str]) -> None:
        if self._in_data and self._worded:
            raise DamagedZipError(f"a cell of row {self._row} holds two texts")
        self._worded = True
        self._texts.clear()

    def _start_value(self, attributes: dict[str, str]) -> None:
        if self._in_cell and self._value is not None:
            raise DamagedZipError(f"a cell of row {self._row} holds two values")
        self._value, self._in_value = "", True

    def _end_value(self) -> None:
        self._in_value = False

    def _start_formula(self, attributes: dict[str, str]) -> None:
        self._formula = True

    def _text(self, piece: str) -> None:
        if self._in_value:
            self._value = (self._value or "") + piece
        else:
            self._texts.text(piece)

    def _end_cell(self) -> None:
        if not self._in_data:
            return
        self._in_cell = False
        content = self._content()
        if content is None or content == "":
            return
        if self._column > MOST_COLUMNS:
            raise RefusedError(
                f"Row {grouped(self._row)} reaches to column {grouped(self._column)}: the most is {MOST_COLUMNS}. "
                "Delete those not needed."
            )
        self._cells.extend([None] * (self._column - 1 - len(self._cells)))
        self._cells.append(content)

    def _content(self) -> RawCell:
        kind = self._attributes.get("t", "n")
        value = self._value or ""
        if self._formula and (self._value is None or (not value and kind != "str")):
            return Unusable("a formula whose result was never worked out")
        if kind == "inlineStr":
            return self._texts.joined()
        if not value:
            return None
        reader = _READERS.get(kind)
        if reader is None:
            raise DamagedZipError(f"row {self._row} has a cell of an unknown kind")
        return reader(self, value)

    def _number(self, value: str) -> RawCell:
        number = float(value)
        if not math.isfinite(number) or "_" in value:
            raise DamagedZipError(f"row {self._row} has a number that is none")
        style = self._attributes.get("s")
        if style is None:
            return number
        moment = self._moments[whole_number(style)]
        return number if moment is Moment.NONE else _day(number, moment, self._since_1904)

    def _shared_text(self, value: str) -> RawCell:
        return self._shared[whole_number(value)]

    def _truth(self, value: str) -> RawCell:
        return _TRUTH.get(value, NEITHER)

    def _iso_day(self, value: str) -> RawCell:
        day, _, time = value.partition("T")
        if time.strip("0:.Z"):
            return Unusable("a time of day")
        return date.fromisoformat(day)

    def _plain(self, value: str) -> RawCell:
        return unescaped(value)

    def _error(self, value: str) -> RawCell:
        return Unusable(f"the error {value[:20]}")


_READERS: dict[str, Callable[[SheetReader, str], RawCell]] = {
    "n": SheetReader._number,
    "s": SheetReader._shared_text,
    "str": SheetReader._plain,
    "b": SheetReader._truth,
    "d": SheetReader._iso_day,
    "e": SheetReader._error,
}


def _day(number: float, moment: Moment, since_1904: bool) -> RawCell:
    """The day that a count of days stands for. In the count from 1900 the 60th is the 29 February that year did not have."""
    if moment is Moment.TIME or number != int(number):
        return Unusable("a time of day")
    if not since_1904 and not (1 <= number < 2_958_466 and number != 60):
        return Unusable("a day that no calendar has")
    if since_1904 and not 0 <= number < 2_957_004:
        return Unusable("a day that no calendar has")
    if since_1904:
        return date(1904, 1, 1) + timedelta(days=number)
    return date(1899, 12, 31 if number < 60 else 30) + timedelta(days=number)


def _column_number(reference: str, row: int) -> int:
    """``AB7`` in row 7 → 28."""
    return _number_of_column(reference.removesuffix(str(row)))


@lru_cache(maxsize=1_000)
def _number_of_column(letters: str) -> int:
    if not _LETTERS.match(letters):
        raise DamagedZipError(f"“{letters[:20]}” is no cell of its row")
    number = 0
    for letter in letters.upper():
        number = number * 26 + ord(letter) - ord("A") + 1
    return number
