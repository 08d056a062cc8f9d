"""Small sheets of the log, written with nothing but ``csv``; and a workbook as it is saved."""

import csv
from collections.abc import Mapping
from io import BytesIO
from pathlib import Path

from logbook.sheets.book_writer import BookWriter

LEAST = {"yarn": "Harbour", "hook mm": "4", "stitches washed": "20 sts = 10 cm"}
"""The least a row must say."""


def write_sheet(path: Path, *rows: Mapping[str, str]) -> Path:
    """Writes a sheet whose columns are all those that any row names; returns ``path``."""
    columns = list(dict.fromkeys(column for row in rows for column in row))
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, columns, restval="")
        writer.writeheader()
        writer.writerows(rows)
    return path


def read_rows(path: Path) -> list[dict[str, str]]:
    """The rows of a CSV by column, as they stand."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def written_book(book: BookWriter) -> BytesIO:
    """A workbook saved, to be read from its beginning."""
    stream = BytesIO()
    book.save(stream)
    stream.seek(0)
    return stream
