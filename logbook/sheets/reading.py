"""Reading a sheet that a person chose: a workbook or a CSV file, told by what it holds and not by its name."""

from pathlib import Path

from logbook.errors import RefusedError
from logbook.sheets.csv_file import read_csv
from logbook.sheets.limits import RawSheet, read_bytes
from logbook.sheets.workbook_reading import read_workbook

_ZIP = b"PK\x03\x04"
_OLD_OR_LOCKED = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
_LOGBOOK = b"SQLite format 3\0"


def read_sheet(path: Path) -> RawSheet:
    """The rows of a CSV file or of a workbook's first sheet. Raises RefusedError, one sentence, for all that can't be taken."""
    content = read_bytes(path)
    if content.startswith(_ZIP):
        return read_workbook(content, path.name)
    if content.startswith(_OLD_OR_LOCKED):
        raise RefusedError(
            f"“{path.name}” is locked with a password or of an old kind (.xls): save it as .xlsx or CSV, without a password."
        )
    if content.startswith(_LOGBOOK):
        raise RefusedError(f"“{path.name}” is a logbook, not a sheet: open it as a logbook instead.")
    if path.suffix.casefold() in (".xlsx", ".xlsm"):
        raise RefusedError(f"“{path.name}” is not a workbook that can be read: save it again as .xlsx or CSV.")
    return read_csv(content, path.name)
