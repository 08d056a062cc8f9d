"""Reading a sheet that a person chose: a workbook or a CSV file, told by what it holds and not by its name."""

import os
from pathlib import Path
from typing import BinaryIO

from logbook.errors import RefusedError
from logbook.sheets.csv_file import read_csv, read_own_csv
from logbook.sheets.kept_sheets import is_kept
from logbook.sheets.limits import FOREIGN, Limits, RawSheet, limits_of_export, read_bytes
from logbook.sheets.own_export import is_export_of_log
from logbook.sheets.progress import Progress
from logbook.sheets.workbook_reading import read_first_and, read_sheets, read_workbook

_ZIP = b"PK\x03\x04"
_OLD_OR_LOCKED = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_LOGBOOK = b"SQLite format 3\0"


def read_sheet(path: Path) -> RawSheet:
    """The rows of a CSV file or of a workbook's first sheet. Raises RefusedError, one sentence, for all that can't be taken."""
    content, limits = read_bytes(path, _limits)
    if content.startswith(_ZIP):
        return read_workbook(content, path.name, limits)
    _refuse_others(content, path)
    return read_csv(content, path.name, limits)


def read_log(path: Path, progress: Progress | None = None) -> tuple[RawSheet, tuple[RawSheet, ...]]:
    """The same, and of a workbook of the log its sheets that hold what is not a swatch. ``progress`` hears of rows."""
    content, limits = read_bytes(path, _limits)
    if content.startswith(_ZIP):
        return read_first_and(content, path.name, is_kept, limits, progress)
    _refuse_others(content, path)
    return read_csv(content, path.name, limits, progress), ()


def read_own_sheets(path: Path, wanted: str | None = None, progress: Progress | None = None) -> tuple[RawSheet, ...]:
    """Every sheet of a file that a maker keeps in their own way, or the one called ``wanted``. Raises RefusedError."""
    content, _ = read_bytes(path)
    if content.startswith(_ZIP):
        return read_sheets(content, path.name, wanted, progress)
    _refuse_others(content, path)
    if wanted is not None:
        raise RefusedError(f"“{path.name}” is not a workbook, so it has no sheet “{wanted[:40]}”: leave that out.")
    return (read_own_csv(content, path.name, progress),)


def is_export(path: Path) -> bool:
    """Whether the file is an export of the log, as its first lines tell. Raises OSError if it can't be read."""
    with path.open("rb") as file:
        return is_export_of_log(file)


def _limits(file: BinaryIO) -> Limits:
    return limits_of_export(os.fstat(file.fileno()).st_size) if is_export_of_log(file) else FOREIGN


def _refuse_others(content: bytes, path: Path) -> None:
    if content.startswith(_OLD_OR_LOCKED):
        raise RefusedError(
            f"“{path.name}” is locked with a password or of an old kind (.xls): save it as .xlsx or CSV, without a password."
        )
    if content.startswith(_LOGBOOK):
        raise RefusedError(f"“{path.name}” is a logbook, not a sheet: open it as a logbook instead.")
    if path.suffix.casefold() in (".xlsx", ".xlsm"):
        raise RefusedError(f"“{path.name}” is not a workbook that can be read: save it again as .xlsx or CSV.")
