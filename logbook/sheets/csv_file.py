"""The log as CSV: UTF-8 with a byte order mark, commas, CRLF, every cell quoted.

A text that a spreadsheet would take for a formula (after any apostrophes it begins with one of = + - @, a tab or a carriage
return) gets one apostrophe in front; reading takes that one off again.
"""

import codecs
import csv
import io
import re
import zlib
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import islice
from typing import BinaryIO

from logbook.craft.swatches.fields import clean_text
from logbook.errors import RefusedError, UnreadableError
from logbook.sheets.cells import cell_text
from logbook.sheets.columns import COLUMNS, Cell
from logbook.sheets.limits import FOREIGN, Limits, RawSheet, RowCollector
from logbook.sheets.log import LoggedSwatches
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


def write_csv(stream: BinaryIO, swatches: LoggedSwatches, progress: Progress | None = None) -> int:
    """Writes the heading and one row a swatch, and returns the checksum of the whole, as ``checksum`` finds it.

    Raises RefusedError for text that can't be kept, naming swatch and column.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    stream.write(codecs.BOM_UTF8)
    found = zlib.crc32(codecs.BOM_UTF8)
    writer.writerow([column.name for column in swatches.columns])
    rows = counted(swatches.rows(), len(swatches), progress)
    while content := text.getvalue().encode():
        stream.write(content)
        found = zlib.crc32(content, found)
        text.seek(0)
        text.truncate()
        writer.writerows(map(_shown, islice(rows, _AT_ONCE)))
    return found


def checksum(stream: BinaryIO) -> int:
    """The CRC-32 of all that is in a file."""
    found = 0
    while some := stream.read(1_000_000):
        found = zlib.crc32(some, found)
    return found


_AT_ONCE = 500
_APART = "\x1f"
"""Between the texts of a row while they are looked at; a text that has it itself can't be kept."""
_ASK_A_LOOK = re.compile("[\x00-\x08\x0b-\x1e\x7f\ud800-\udfff\ufffe\uffff]")
_ASK_A_GUARD = re.compile(_APART + _LIKE_A_FORMULA.pattern)


def _shown(cells: Sequence[Cell]) -> Sequence[str]:
    """The texts of a row. They are looked at together, since nearly all are written as they are."""
    texts = [cell if isinstance(cell, str) else _number(cell) for cell in cells]
    together = _APART + _APART.join(texts)
    if together.count(_APART) == len(texts) and not _ASK_A_GUARD.search(together) and not _ASK_A_LOOK.search(together):
        return texts
    return [_kept(cell, text, cells, place) for place, (cell, text) in enumerate(zip(cells, texts, strict=True))]


_number = lru_cache(maxsize=4096)(cell_text)


def _kept(cell: Cell, text: str, cells: Sequence[Cell], place: int) -> str:
    if not isinstance(cell, str):
        return text
    try:
        return guarded(clean_text(text))
    except UnreadableError as error:
        raise RefusedError(f"Swatch “{cells[1]}”, {COLUMNS[place].name}: {error}") from error


def read_csv(content: bytes, name: str, limits: Limits = FOREIGN, progress: Progress | None = None) -> RawSheet:
    """The rows of a CSV file, its delimiter found from the heading line.

    Read are UTF-8, with or without a byte order mark, and UTF-16 with one. Raises RefusedError otherwise and past a limit.
    """
    encoding = _encoding(content, name)
    return _rows(content, name, encoding, _delimiter(content, encoding), limits, progress)


def read_own_csv(content: bytes, name: str, progress: Progress | None = None) -> RawSheet:
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

    return _rows(content, name, encoding, max(_DELIMITERS, key=merit), FOREIGN, progress)


def _is_wide(content: bytes) -> bool:
    """UTF-16 without its mark: every second byte of plain letters is nought."""
    some = content[:200]
    return (
        len(some) > 3 and not some.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)) and some[1::2].count(0) > len(some) // 3
    )


def _rows(content: bytes, name: str, encoding: str, delimiter: str, limits: Limits, progress: Progress | None) -> RawSheet:
    collector = RowCollector(limits, progress)
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
        raise RefusedError(f"“{name}” is not written in UTF-8, so its accents can't be read for sure: {advice}.") from error
    if nought:
        raise RefusedError(f"“{name}” can't be read as CSV: {advice}.")
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
