"""Whether a file is an export of the log, told by its first lines without reading it.

Such a file is taken in at any size: its limits go by how large it is on the disk, not by numbers that hold for any sheet.
"""

import csv
import io
import re
import zipfile
import zlib
from collections.abc import Sequence
from typing import BinaryIO

from logbook.sheets.columns import COLUMNS
from logbook.sheets.limits import MOST_ZIP_ENTRIES

_NAMES = [column.name for column in COLUMNS]
_FIRST_RELEASED = 45
"""So many columns the first exports had; later ones come behind."""
_START = 65_536
_CHUNK = 1_048_576
_ENTRY_MARK = b"PK\x01\x02"
_ROW_1 = re.compile(rb'<row [^>]*?r="1"[^>]*>(.*?)</row>', re.DOTALL)
_TEXT = re.compile(rb"<t[^>]*>([^<]*)</t>")
_SHEET = "xl/worksheets/sheet1.xml"


def is_export_of_log(stream: BinaryIO) -> bool:
    """Whether the headings are all those of the log, in its order; ``stream`` is left at its start."""
    try:
        start = stream.read(_START)
        names = _headings_of_workbook(stream) if start.startswith(b"PK") else _headings_of_csv(start)
    finally:
        stream.seek(0)
    return len(names) >= _FIRST_RELEASED and names == _NAMES[: len(names)]


def _headings_of_csv(start: bytes) -> Sequence[str]:
    line, end, _ = start.partition(b"\n")
    if not end:
        return []
    text = line.decode("utf-8-sig", "replace")
    try:
        rows = [next(csv.reader(io.StringIO(text, newline=""), delimiter=one), []) for one in ",;\t"]
    except csv.Error:  # no CSV at all
        return []
    return max(rows, key=len)


def _headings_of_workbook(stream: BinaryIO) -> Sequence[str]:
    if _entries(stream) > MOST_ZIP_ENTRIES:
        return []
    try:
        with zipfile.ZipFile(stream) as parts, parts.open(_SHEET) as sheet:
            row = _ROW_1.search(sheet.read(_START))
    except (zipfile.BadZipFile, zlib.error, KeyError, NotImplementedError, RuntimeError, ValueError, EOFError, OSError):
        return []  # reading it says what it is
    return [text.decode("utf-8", "replace") for text in _TEXT.findall(row[1])] if row else []


def _entries(stream: BinaryIO) -> int:
    """How many parts the zip file seems to have, without building its directory, which can be a bomb."""
    stream.seek(0)
    found, rest = 0, b""
    while chunk := stream.read(_CHUNK):
        found += (rest + chunk).count(_ENTRY_MARK)
        rest = chunk[-len(_ENTRY_MARK) + 1 :]
    return found
