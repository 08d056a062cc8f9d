"""Finding the table in a sheet that was made for people: where its heading stands, where it ends, what stands beside it.

The heading may be in any row, in one row or two (a merged cell over several), and a second table may follow.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from logbook.sheets.limits import RawCell, RawRow, RawSheet
from logbook.sheets.own_cells import is_date, is_gauge, is_hook, number_cell
from logbook.sheets.own_words import COLUMN_OF, GAUGE, ROWS, STITCHES, TOTALS, folded_heading

_SEARCHED = 200
"""Rows from the top in which a table must begin."""
_LONGEST_HEADING = 60
_UNITS = frozenset(("mm", "cm", "in", "inch", "inches", "g", "gr", "grams", "yds", "min"))
_NUMBER = re.compile(r"[\d.,\s/+-]*\d[\d.,\s/½¼¾]*\Z")


@dataclass(frozen=True, slots=True)
class OwnTable:
    """A table as it was found: its sheet, the row and texts of its heading ("" for none), its rows, and the rows set aside.

    ``aside``: row and why.
    """

    sheet: str
    heading_row: int
    headings: tuple[str, ...]
    rows: tuple[RawRow, ...]
    aside: tuple[tuple[int, str], ...]

    def column(self, place: int) -> list[RawCell]:
        """The cells beneath a heading, blank ones left out."""
        cells = (row.cells[place] for row in self.rows if place < len(row.cells))
        return [cell for cell in cells if cell is not None and cell != ""]


@dataclass(frozen=True, slots=True)
class _Heading:
    place: int
    texts: tuple[str, ...]
    known: int
    height: int


def find_table(sheets: Sequence[RawSheet]) -> OwnTable | None:
    """The table with most headings that are known, of all sheets; None if there is no heading at all."""
    found = [table for sheet in sheets for table in _tables(sheet)]
    best = max(found, key=lambda one: (one[0], len(one[1].rows)), default=None)
    return best[1] if best else None


def _tables(sheet: RawSheet) -> Iterator[tuple[int, OwnTable]]:
    rows = sheet.rows
    headings = list(_headings(rows))
    for heading in headings:
        after = heading.place + heading.height
        others = {
            h.place for h in headings if h.place >= after and h.known > 1 and h.texts != heading.texts and _apart(rows, h.place)
        }
        end = min((place for place in others), default=len(rows))
        yield heading.known, _table(sheet, heading, rows[after:end], rows[end:])


def _apart(rows: Sequence[RawRow], place: int) -> bool:
    """Whether a blank row or a title by itself stands before a row."""
    before = rows[place - 1]
    return rows[place].number > before.number + 1 or _filled(before) <= 1


def _headings(rows: Sequence[RawRow]) -> Iterator[_Heading]:
    for place, row in enumerate(rows[:_SEARCHED]):
        if not _is_heading(row):
            continue
        texts = _texts(row)
        one = _Heading(place, texts, _known(texts), 1)
        if place + 1 < len(rows) and rows[place + 1].number == row.number + 1 and _goes_on(rows[place + 1]):
            both = _joined(texts, _texts(rows[place + 1]))
            if (two := _known(both)) > one.known:
                yield _Heading(place, both, two, 2)
                continue
        yield one


def _is_heading(row: RawRow) -> bool:
    """Short texts alone, one at least, and none that says a number, a date, a hook or a gauge."""
    cells = [cell for cell in row.cells if cell is not None and cell != ""]
    return (
        bool(cells)
        and all(isinstance(cell, str) and len(cell) <= _LONGEST_HEADING for cell in cells)
        and not any(map(_says, cells))
    )


def _goes_on(row: RawRow) -> bool:
    """Whether it is the second row of a heading: most of its texts are words of headings. Those of an answer are not, though a
    size may be called M and a remark speak of rows.
    """
    words = [folded_heading(text) for text in _texts(row) if text]
    return _is_heading(row) and 2 * sum(is_known(word) or word in _UNITS for word in words) > len(words)


def _says(cell: RawCell) -> bool:
    number = number_cell(cell)
    return isinstance(number, str) and (bool(_NUMBER.match(number)) or is_date(cell) or is_hook(cell) or is_gauge(cell))


def _texts(row: RawRow) -> tuple[str, ...]:
    return tuple("" if cell is None else " ".join(str(cell).split()) for cell in row.cells)


def _joined(above: Sequence[str], below: Sequence[str]) -> tuple[str, ...]:
    """A heading of two rows: what stands above reaches over the blanks to its right, as merged cells do."""
    width, over, joined = max(len(above), len(below)), "", []
    for place in range(width):
        own = above[place] if place < len(above) else ""
        under = below[place] if place < len(below) else ""
        over = own or over
        joined.append(" ".join(part for part in ((over, under) if under else (own,)) if part))
    return tuple(joined)


def _known(texts: Sequence[str]) -> int:
    """How many headings say what they are."""
    return len({folded for folded in map(folded_heading, texts) if folded and is_known(folded)})


def is_known(folded: str) -> bool:
    """Whether the words of a heading are known."""
    return folded in COLUMN_OF or bool(GAUGE.search(folded)) or bool(STITCHES.search(folded)) or bool(ROWS.search(folded))


def _filled(row: RawRow) -> int:
    return sum(cell is not None and cell != "" for cell in row.cells)


def _table(sheet: RawSheet, heading: _Heading, rows: Sequence[RawRow], beyond: Sequence[RawRow]) -> OwnTable:
    kept, aside = [], []
    for row in rows:
        texts = _texts(row) if _is_heading(row) else ()
        if texts and texts == heading.texts:
            aside.append((row.number, "the heading again"))
        elif _is_total(row):
            aside.append((row.number, "a total or a mean"))
        elif _filled(row) == 1 and len(heading.texts) > 2 and isinstance(next(c for c in row.cells if c not in (None, "")), str):
            aside.append((row.number, "a line of text by itself"))
        else:
            kept.append(row)
    aside += [(row.number, "beyond the table, in another one") for row in beyond]
    first = sheet.rows[heading.place].number + heading.height - 1
    aside = [(row.number, "above the table") for row in sheet.rows[: heading.place]] + aside
    return OwnTable(sheet.name, first, heading.texts, tuple(kept), tuple(aside))


def _is_total(row: RawRow) -> bool:
    """A row that sums up: a word for it in its first cell, and no date."""
    cells = [cell for cell in row.cells if cell is not None and cell != ""]
    first = cells[0] if cells else None
    return (
        isinstance(first, str)
        and bool(TOTALS.match(folded_heading(first)) or first.strip() in ("Σ", "Ø", "∑"))
        and not any(isinstance(cell, date) for cell in cells)
        and all(not isinstance(cell, str) or len(cell) < _LONGEST_HEADING for cell in cells)
    )
