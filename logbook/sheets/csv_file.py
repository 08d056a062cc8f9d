"""The log as CSV: UTF-8 with a byte order mark, commas, CRLF, every cell quoted.

A text that a spreadsheet would take for a formula (after any apostrophes it begins with one of = + - @, a tab or a carriage
return) gets one apostrophe in front; reading takes that one off again.
"""

import codecs
import csv
import io
import re
from collections.abc import Iterator, Sequence
from typing import BinaryIO

from logbook.craft.swatches.fields import clean_text
from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError, UnreadableError
from logbook.sheets.cells import cell_text
from logbook.sheets.columns import COLUMNS, Cell, cells_of, columns_for
from logbook.sheets.limits import FOREIGN, Limits, RawSheet, RowCollector
from logbook.sheets.progress import Progress, counted

_LIKE_A_FORMULA = re.compile(r"'*[=+\-@\t\r]")
_GUARDED = re.compile(r"'+[=+\-@\t\r]")
_DELIMITERS = ",;\t|"
_KNOWN = {column.name for column in COLUMNS}


def guarded(text: str) -> str:
    """``text`` with the apostrophe that keeps a spreadsheet from working it out."""
    return "'" + text if _LIKE_A_FORMULA.match(text) else text


def unguarded(text: str) -> str:
    """``text`` without that apostrophe."""
    return text[1:] if _GUARDED.match(text) else text


def write_csv(stream: BinaryIO, swatches: Sequence[Swatch], progress: Progress | None = None) -> None:
    """Writes the heading and one row a swatch. Raises RefusedError for text that can't be kept, naming swatch and column."""
    text = io.TextIOWrapper(stream, encoding="utf-8-sig", newline="", write_through=True)
    try:
        writer = csv.writer(text, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
        columns = columns_for(swatches)
        writer.writerow([column.name for column in columns])
        for swatch in counted(swatches, progress):
            writer.writerow([_shown(cell, swatch, place) for place, cell in enumerate(cells_of(swatch)[: len(columns)])])
        text.flush()
    finally:
        text.detach()


def _shown(cell: Cell, swatch: Swatch, place: int) -> str:
    if not isinstance(cell, str):
        return cell_text(cell)
    try:
        return guarded(clean_text(cell))
    except UnreadableError as error:
        raise RefusedError(f"Swatch “{swatch.tag}”, {COLUMNS[place].name}: {error}") from error


def count_csv_rows(stream: BinaryIO) -> int:
    """How many rows lie beneath the heading of a CSV written here."""
    text = io.TextIOWrapper(stream, encoding="utf-8-sig", newline="")
    try:
        return sum(1 for _ in csv.reader(text, strict=True)) - 1
    finally:
        text.detach()


def read_csv(content: bytes, name: str, limits: Limits = FOREIGN) -> RawSheet:
    """The rows of a CSV file, its delimiter found from the heading line.

    Read are UTF-8, with or without a byte order mark, and UTF-16 with one. Raises RefusedError otherwise and past a limit.
    """
    encoding = _encoding(content, name)
    return _rows(content, name, encoding, _delimiter(content, encoding), limits)


def read_own_csv(content: bytes, name: str) -> RawSheet:
    """The same of a sheet whose heading may stand anywhere; what is not UTF-8 is taken for the old Windows code page.

    Raises RefusedError past a limit, and for what is no text.
    """
    try:
        encoding = "utf-16-le" if _is_wide(content) else _encoding(content, name)
    except RefusedError:
        encoding = "cp1252"
        if b"\0" in content:
            raise
    start = io.TextIOWrapper(io.BytesIO(content), encoding=encoding, errors="replace", newline="").read(20_000)

    def merit(delimiter: str) -> tuple[int, int]:
        widths = [len(row) for row in csv.reader(io.StringIO(start, newline=""), delimiter=delimiter) if any(map(str.strip, row))]
        usual = max(set(widths), key=lambda width: (widths.count(width), width), default=0)
        return (widths.count(usual) if usual > 1 else 0), usual

    return _rows(content, name, encoding, max(_DELIMITERS, key=merit))


def _is_wide(content: bytes) -> bool:
    """UTF-16 without its mark: every second byte of plain letters is nought."""
    some = content[:200]
    return (
        len(some) > 3 and not some.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)) and some[1::2].count(0) > len(some) // 3
    )


def _rows(content: bytes, name: str, encoding: str, delimiter: str, limits: Limits = FOREIGN) -> RawSheet:
    collector = RowCollector(limits)
    text = io.TextIOWrapper(
        io.BytesIO(content), encoding=encoding, errors="replace" if encoding == "cp1252" else None, newline=""
    )
    number = 0
    try:
        for number, row in enumerate(csv.reader(text, delimiter=delimiter, strict=True), start=1):
            collector.add(number, [unguarded(cell).replace("\r\n", "\n").replace("\r", "\n") for cell in row])
    except csv.Error as error:
        raise RefusedError(f"“{name}” can't be read beyond row {number}: {error}. Save it as “CSV UTF-8” again.") from error
    return RawSheet(name, tuple(collector.rows))


def _encoding(content: bytes, name: str) -> str:
    wide = content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
    encoding = "utf-16" if wide else "utf-8-sig"
    advice = "open it in a spreadsheet and save it as “CSV UTF-8”"
    try:
        nought = any("\0" in some for some in codecs.iterdecode(_pieces(content), encoding))
    except UnicodeDecodeError as error:
        raise RefusedError(f"“{name}” is not written in UTF-8, so its accents can't be told: {advice}.") from error
    if nought:
        raise RefusedError(f"“{name}” is no text that can be read as CSV: {advice}.")
    return encoding


def _pieces(content: bytes) -> Iterator[bytes]:
    return (content[start : start + 1_000_000] for start in range(0, len(content), 1_000_000))


def _delimiter(content: bytes, encoding: str) -> str:
    """The delimiter under which the heading shows most known columns; then most columns; then the comma."""
    start = io.TextIOWrapper(io.BytesIO(content), encoding=encoding, newline="").read(20_000)

    def merit(delimiter: str) -> tuple[int, int]:
        heading = next(csv.reader(io.StringIO(start, newline=""), delimiter=delimiter), [])
        return len(_KNOWN.intersection(cell.strip().casefold() for cell in heading)), len(heading)

    return max(_DELIMITERS, key=merit)
