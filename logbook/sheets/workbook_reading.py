"""Reading the first sheet of a workbook (.xlsx), cell by cell, straight off its XML.

openpyxl writes our workbooks but does not read foreign ones: it builds trees of whatever a part holds, and its pattern for a
print area takes 0.13 s for 2,000 apostrophes, 2.3 s for 8,000 and so on with the square; it drops rows that stand out of order;
a formula whose result was never worked out looks to it like an empty cell; and 5,000 swatches take it 3.4 s, where this takes
0.8 s. Here time and memory are bounded by the limits, whatever a file says.

Format: ECMA-376, part 1 (SpreadsheetML) and part 2 (packages).
"""

import math
import posixpath
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

from logbook.errors import RefusedError
from logbook.sheets.limits import FOREIGN, MOST_COLUMNS, MOST_SHEETS, Limits, RawCell, RawSheet, RowCollector, Unusable
from logbook.sheets.number_formats import Moment, builtin_moment, moment_of
from logbook.sheets.zip_parts import DamagedZipError, Handlers, ZipParts, refusing_damage

_ESCAPED = re.compile(r"_x([0-9A-Fa-f]{4})_")
_LETTERS = re.compile(r"[A-Za-z]{1,3}\Z")
_WHOLE = re.compile(r"[0-9]{1,10}\Z")
_NAMESPACES = {
    "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "http://purl.oclc.org/ooxml/spreadsheetml/main",
}
"""The language of sheets, as the standard's transitional and its strict form call it."""
_OTHER_SHEETS = {"chartsheet", "dialogsheet", "xlMacrosheet", "xlIntlMacrosheet"}
"""Kinds of sheets that hold no log."""
_WIDEST = 16_384
"""Columns that a sheet can have at all (its last one is XFD). Blank cells may reach that far: whole rows are given colours."""


def read_workbook(content: bytes, name: str, limits: Limits = FOREIGN) -> RawSheet:
    """The rows of the first sheet. Raises RefusedError past a limit, or if this is no workbook that can be read."""
    return _read(content, name, lambda sheets: sheets[:1], limits)[0]


def read_sheets(
    content: bytes, name: str, wanted: str | Callable[[str], bool] | None = None, limits: Limits = FOREIGN
) -> tuple[RawSheet, ...]:
    """The rows of every sheet, of the one called ``wanted`` or of those it is true of.

    Raises RefusedError as ``read_workbook``, and if there is none of that name.
    """

    def choose(sheets: Sequence[tuple[str, str]]) -> Sequence[tuple[str, str]]:
        if wanted is None:
            return sheets
        if not isinstance(wanted, str):
            return [one for one in sheets if wanted(one[0])]
        chosen = [one for one in sheets if one[0].casefold() == wanted.strip().casefold()]
        if not chosen:
            names = ", ".join(f"“{sheet}”" for sheet, _ in sheets)
            raise RefusedError(f"“{name}” has no sheet “{wanted[:40]}”: there is {names}.")
        return chosen

    return _read(content, name, choose, limits)


_Chosen = Callable[[Sequence[tuple[str, str]]], Sequence[tuple[str, str]]]


def _read(content: bytes, name: str, choose: _Chosen, limits: Limits) -> tuple[RawSheet, ...]:
    with refusing_damage(name):
        parts = ZipParts(content, name, limits)
        try:
            workbook = _find_workbook(parts)
            chosen = choose(workbook.sheets)
            shared, moments = _shared_strings(parts, workbook.shared), _moments(parts, workbook.styles)
            read = []
            for sheet_name, path in chosen:
                sheet = _SheetReader(shared, moments, workbook.since_1904, limits)
                parts.read(path, sheet.handlers())
                read.append(RawSheet(sheet_name, tuple(sheet.collector.rows)))
            return tuple(read)
        finally:
            parts.close()


@dataclass(frozen=True, slots=True)
class _Workbook:
    """Where the parts needed lie, "" for one that is not there; of each sheet its name and where it lies."""

    sheets: tuple[tuple[str, str], ...]
    shared: str
    styles: str
    since_1904: bool


def _find_workbook(parts: ZipParts) -> _Workbook:
    if not parts.has("_rels/.rels"):
        raise DamagedZipError("it is a zip file, but no .xlsx")
    roots = [target for kind, target in _relations(parts, "").values() if kind == "officeDocument"]
    if not roots or not parts.has(roots[0]):
        raise DamagedZipError("it holds no workbook")
    sheets, since_1904 = _sheets(parts, roots[0])
    relations = _relations(parts, roots[0])
    named = {kind: target for kind, target in relations.values() if parts.has(target)}
    found = []
    for sheet_name, identity in sheets:
        kind, target = relations.get(identity, ("", ""))
        if kind == "worksheet":
            found.append((sheet_name, target))
        elif kind not in _OTHER_SHEETS:
            raise DamagedZipError(f"its sheet “{sheet_name[:40]}” leads nowhere")
    if not found:
        raise DamagedZipError("it holds no sheet of cells")
    return _Workbook(tuple(found), named.get("sharedStrings", ""), named.get("styles", ""), since_1904)


def _relations(parts: ZipParts, path: str) -> dict[str, tuple[str, str]]:
    """What the part at ``path`` ("": the package) refers to: by id, the last word of the kind of relation and the path."""
    folder, name = posixpath.split(path)
    found: dict[str, tuple[str, str]] = {}

    def relation(attributes: dict[str, str]) -> None:
        if attributes.get("TargetMode") != "External":
            target = posixpath.normpath(posixpath.join("/" + folder, attributes["Target"])).lstrip("/")
            found[attributes["Id"]] = (attributes["Type"].rpartition("/")[2], target)

    parts.read(posixpath.join(folder, "_rels", f"{name}.rels"), Handlers({"Relationship": relation}))
    return found


def _sheets(parts: ZipParts, path: str) -> tuple[list[tuple[str, str]], bool]:
    """Name and relation id of every sheet, and whether days are counted from 1904."""
    sheets: list[tuple[str, str]] = []
    since_1904 = False

    def sheet(attributes: dict[str, str]) -> None:
        identity = next((value for key, value in attributes.items() if key.endswith(":id")), "")
        sheets.append((attributes.get("name", ""), identity))
        if len(sheets) > MOST_SHEETS:
            raise RefusedError(f"The workbook has more than {MOST_SHEETS} sheets: save the one with the log by itself.")

    def properties(attributes: dict[str, str]) -> None:
        nonlocal since_1904
        since_1904 = attributes.get("date1904") in ("1", "true")

    parts.read(path, Handlers({"sheet": sheet, "workbookPr": properties}))
    return sheets, since_1904


def _shared_strings(parts: ZipParts, path: str) -> list[str]:
    """The texts that cells refer to by number."""
    strings: list[str] = []
    texts = _Texts()

    def start(attributes: dict[str, str]) -> None:
        texts.clear()

    def end() -> None:
        strings.append(texts.joined())

    if path:
        parts.read(path, Handlers({**texts.starts, "si": start}, {**texts.ends, "si": end}, texts.text))
    return strings


def _moments(parts: ZipParts, path: str) -> list[Moment]:
    """For each cell style whether its number format shows a number, a date or a time."""
    custom: dict[str, Moment] = {}
    moments: list[Moment] = []
    inside = False

    def number_format(attributes: dict[str, str]) -> None:
        custom[attributes["numFmtId"]] = moment_of(attributes["formatCode"])

    def turn(to: bool) -> None:
        nonlocal inside
        inside = to

    def style(attributes: dict[str, str]) -> None:
        if inside:
            identity = attributes.get("numFmtId", "0")
            moments.append(custom.get(identity) or builtin_moment(_whole(identity)))

    if path:
        starts = {"numFmt": number_format, "cellXfs": lambda _: turn(True), "xf": style}
        parts.read(path, Handlers(starts, {"cellXfs": lambda: turn(False)}))
    return moments


class _Texts:
    """Gathers the text of ``t`` elements, but for those in ``rPh``: they only tell how the text is said aloud."""

    def __init__(self) -> None:
        self._pieces: list[str] = []
        self._inside = self._aloud = False
        self.starts = {"t": lambda _: self._turn(not self._aloud, self._aloud), "rPh": lambda _: self._turn(False, True)}
        self.ends = {"t": lambda: self._turn(False, self._aloud), "rPh": lambda: self._turn(False, False)}

    def _turn(self, inside: bool, aloud: bool) -> None:
        self._inside, self._aloud = inside, aloud

    def clear(self) -> None:
        """Begins anew."""
        self._pieces.clear()
        self._inside = self._aloud = False

    def text(self, piece: str) -> None:
        """Takes characters, wherever they stand."""
        if self._inside:
            self._pieces.append(piece)

    def joined(self) -> str:
        """All of it, unescaped."""
        return unescaped("".join(self._pieces))


def unescaped(text: str) -> str:
    """``text`` with ``_x000D_`` and its like turned into the characters they stand for, and LF line ends."""
    plain = _ESCAPED.sub(lambda found: chr(int(found[1], 16)), text) if "_x" in text else text
    return plain.replace("\r\n", "\n").replace("\r", "\n")


class _SheetReader:
    """Takes the elements of one sheet and gathers its rows."""

    def __init__(self, shared: list[str], moments: list[Moment], since_1904: bool, limits: Limits) -> None:
        self.collector = RowCollector(limits)
        self._shared, self._moments, self._since_1904 = shared, moments, since_1904
        self._row = self._column = 0
        self._cells: list[RawCell] = []
        self._attributes: dict[str, str] = {}
        self._texts = _Texts()
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
        number = _whole(attributes["r"]) if "r" in attributes else self._row + 1
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
            raise DamagedZipError(f"row {self._row} has more than {_WIDEST:,} cells, blank ones counted")
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
                f"Row {self._row:,} reaches to column {self._column:,}: the most is {MOST_COLUMNS}. Delete those not needed."
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
        moment = self._moments[_whole(style)]
        return number if moment is Moment.NONE else _day(number, moment, self._since_1904)

    def _shared_text(self, value: str) -> RawCell:
        return self._shared[_whole(value)]

    def _truth(self, value: str) -> RawCell:
        return "TRUE" if value == "1" else "FALSE"

    def _iso_day(self, value: str) -> RawCell:
        day, _, time = value.partition("T")
        if time.strip("0:.Z"):
            return Unusable("a time of day")
        return date.fromisoformat(day)

    def _plain(self, value: str) -> RawCell:
        return unescaped(value)

    def _error(self, value: str) -> RawCell:
        return Unusable(f"the error {value[:20]}")


_READERS: dict[str, Callable[[_SheetReader, str], RawCell]] = {
    "n": _SheetReader._number,
    "s": _SheetReader._shared_text,
    "str": _SheetReader._plain,
    "b": _SheetReader._truth,
    "d": _SheetReader._iso_day,
    "e": _SheetReader._error,
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


def _whole(text: str) -> int:
    if not _WHOLE.match(text):
        raise DamagedZipError(f"“{text[:20]}” stands where a whole number belongs")
    return int(text)


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
