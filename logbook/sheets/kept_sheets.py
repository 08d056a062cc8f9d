"""The hidden sheets of a workbook that are there to be taken in again, one for each kind of record beside the swatches.

A text longer than a cell goes on in further columns, called ``plan (2)`` and so on.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Content, Heading
from logbook.sheets.limits import RawCell, RawSheet

NAMES = {
    "yarn": "Kept yarns", "stitch_pattern": "Kept patterns", "piece": "Kept pieces", "size": "Kept sizes",
    "made_piece": "Kept made pieces", "body_chart": "Kept body charts", "garment": "Kept garments",
    "tester": "Kept testers", "assumption": "Kept assumptions",
}  # fmt: skip
_TABLES = {name: table for table, name in NAMES.items()}
TOP = 4
_CHUNK = 16_000
_FURTHER = re.compile(r"(.+) \((\d+)\)\Z")
_WIDE = ("plan", "published", "sizes", "rows_text", "notes", "changed", "wear", "said")


class KeptCells(NamedTuple):
    """A row as it was read: its table, its number in the sheet, and its cells by column."""

    table: str
    row: int
    cells: Mapping[str, RawCell]


def write_kept(book: BookWriter, kept: Mapping[str, Sequence[Mapping[str, Any]]]) -> None:
    """A sheet for each kind of which there are any."""
    for table, rows in kept.items():
        if rows:
            _write(book, NAMES[table], rows)


def _write(book: BookWriter, name: str, rows: Sequence[Mapping[str, Any]]) -> None:
    parts = {column: max(len(_chunks(row[column])) for row in rows) for column in rows[0]}
    headings = [heading for column, count in parts.items() for heading in _headings(column, count)]
    sheet = book.sheet(name, headings, landscape=True, top=TOP, freeze=1)
    sheet.raw.sheet_state = "hidden"  # nothing to read; the sheets for people say it
    sheet.head(
        name,
        "For bringing all of it back by an import: leave it as it is. The other sheets are for reading.",
    )
    cells = ([part for column, count in parts.items() for part in _padded(_chunks(row[column]), count)] for row in rows)
    sheet.table(headings, cells, len(rows))


def _headings(column: str, count: int) -> Iterator[Heading]:
    words = column.replace("_", " ")
    wide = column in _WIDE
    for number in range(1, count + 1):
        yield Heading(words if number == 1 else f"{words} ({number})", 40 if wide else 26 if column == "name" else 13)


def _chunks(value: Any) -> list[Content]:
    if not isinstance(value, str) or len(value) <= _CHUNK:
        return [value]
    return [value[start : start + _CHUNK] for start in range(0, len(value), _CHUNK)]


def _padded(parts: list[Content], count: int) -> list[Content]:
    return [*parts, *[None] * (count - len(parts))]


def kept_cells(sheets: Sequence[RawSheet]) -> Iterator[KeptCells]:
    """Every row of the sheets that are such ones."""
    for sheet in sheets:
        table = _TABLES.get(sheet.name)
        heading = next((row for row in sheet.rows if row.number == TOP), None)
        if table is None or heading is None:
            continue
        names = [" ".join(str(cell).split()).casefold().replace(" ", "_") if cell else "" for cell in heading.cells]
        for row in sheet.rows:
            if row.number > TOP:
                yield KeptCells(table, row.number, _joined(names, row.cells))


def _joined(names: Sequence[str], cells: Sequence[RawCell]) -> dict[str, RawCell]:
    found: dict[str, RawCell] = {}
    for name, cell in zip(names, cells, strict=False):
        further = _FURTHER.match(name.replace("_", " "))
        if further and cell is not None:
            first = further[1].replace(" ", "_")
            found[first] = f"{found.get(first) or ''}{cell}"
        elif name and not further:
            found[name] = cell
    return found


def is_kept(sheet_name: str) -> bool:
    """Whether a sheet is one of these."""
    return sheet_name in _TABLES
