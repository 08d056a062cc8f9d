"""The sheet that goes round among those who try a pattern, and what the columns of one that comes back are."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, BinaryIO

from logbook.craft.sizes.tester import TESTER_FIELDS, Tester
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.fields import LogField
from logbook.craft.words.lengths import Units
from logbook.errors import LogbookError
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import Heading, cell_text
from logbook.sheets.limits import RawCell, RawRow, Unusable
from logbook.sheets.own_cells import CellReadings, Over, gauge_cell, over_of
from logbook.sheets.own_table import OwnTable
from logbook.sheets.own_words import GAUGE, ROWS, STITCHES, folded_heading
from logbook.sheets.swatch_rows import SheetProblem

STITCHES_GAUGE, ROWS_GAUGE = "gauge of stitches", "gauge of rows"
CHOICES: tuple[str, ...] = (*(field.name for field in TESTER_FIELDS), STITCHES_GAUGE, ROWS_GAUGE)
"""What a column of such a sheet may be taken as."""
_BY_NAME = {field.name: field for field in TESTER_FIELDS}
_WORDS = (
    ("said", r"sa(?:y|id)|comments?|notes?|remarks?|feedback|fit|think|change"),
    ("state", r"state|status|progress|how far"),
    ("size", r"size|grosse|taille|storlek"),
    ("width cm", r"width|wide|breadth|breite|largeur|bredd"),
    ("length cm", r"length|long|lange|longueur|langd"),
    ("part", r"part|piece"),
    ("name", r"name|initials|tester|who"),
)
_HEADINGS = (
    Heading("name", 20), Heading("size", 9), Heading("state", 11), Heading("gauge of stitches", 34, wraps=True),
    Heading("gauge of rows", 34, wraps=True), Heading("piece measured", 18), Heading("width cm", 11), Heading("length cm", 11),
    Heading("what you say", 50, wraps=True),
)  # fmt: skip
TOP = 4
_BLANK = 6


def write_round_sheet(stream: BinaryIO, name: str, testers: Sequence[Tester], sizes: Sequence[str], date: str) -> None:
    """Writes the workbook to send round: a line for each of them with what is known, and blank ones."""
    with BookWriter(name, date) as book:
        sheet = book.sheet("Testers", _HEADINGS, landscape=True, top=TOP, freeze=1)
        sheet.head(
            f"{name}: trying it out",
            "Measure what you made, washed and lying flat. Gauge: at five places of it, not of a swatch, how far whole stitches "
            "or repeats reach, with semicolons between (20 sts = 12.4 cm; 20 sts = 12.6 cm …), and rows likewise. Width and "
            f"length of the same piece. Sizes: {', '.join(sizes)}. State: asked, working or done.",
        )
        rows = [[one.name, one.size, one.state, "", "", one.part, None, None, one.said] for one in testers]
        blank = [[None] * len(_HEADINGS)] * _BLANK
        sheet.table(_HEADINGS, [*rows, *blank], len(rows) + _BLANK)
        book.save(stream)


def guesses(table: OwnTable) -> tuple[str, ...]:
    """What each column is taken as by the words over it ("": not), each once."""
    found: list[str] = []
    for heading in table.headings:
        choice = _guess(folded_heading(heading))
        found.append("" if choice in found else choice)
    return tuple(found)


def _guess(folded: str) -> str:
    if GAUGE.search(folded):
        stitches, rows = STITCHES.search(folded), ROWS.search(folded)
        return STITCHES_GAUGE if stitches and not rows else ROWS_GAUGE if rows and not stitches else "gauge"
    for choice, words in _WORDS:
        if re.search(rf"\b(?:{words})\b", folded):
            return choice
    return ""


@dataclass(frozen=True, slots=True)
class TesterRows:
    """The testers in a sheet by the rows they stand in, and what could not be read."""

    good: Mapping[int, Tester]
    problems: tuple[SheetProblem, ...]


def testers_of(table: OwnTable, choices: Sequence[str], over: Over | None) -> TesterRows:
    """Every row that names someone; ``over`` is the length of counts that state none."""
    good: dict[int, Tester] = {}
    problems: list[SheetProblem] = []
    for row in table.rows:
        values, wrong = _values(table, row, choices, over)
        if not any(values.values()) and not wrong:
            continue
        if not values.get("name") and not wrong:
            said = "There is no name: give a name or initials."
            wrong = [SheetProblem(table.sheet, row.number, "name", "a name or initials", said)]
        problems += wrong
        if not wrong:
            good[row.number] = Tester(**values)
    return TesterRows(good, tuple(problems))


def _values(table: OwnTable, row: RawRow, choices: Sequence[str], over: Over | None) -> tuple[dict[str, Any], list[SheetProblem]]:
    values: dict[str, Any] = {}
    problems = []
    gauge: dict[Direction | None, str] = {}
    for place, choice in enumerate(choices):
        cell = row.cells[place] if choice and place < len(row.cells) else None
        if cell is None or cell == "":
            continue
        heading = table.headings[place]
        try:
            if choice in (STITCHES_GAUGE, ROWS_GAUGE, "gauge"):
                gauge[_WAYS[choice]] = _gauge(cell, _WAYS[choice], over_of(heading) or over)
            else:
                field = _BY_NAME[choice]
                values[field.attribute] = _value(field, cell, heading)
        except LogbookError as error:
            problems.append(SheetProblem(table.sheet, row.number, heading, choice, str(error)))
    if any(gauge.values()):
        values["readings"] = "; ".join(filter(None, gauge.values()))
    return values, problems


_WAYS = {STITCHES_GAUGE: Direction.STITCHES, ROWS_GAUGE: Direction.ROWS, "gauge": None}


def _value(field: LogField, cell: RawCell, heading: str) -> Any:
    if isinstance(cell, Unusable):
        raise LogbookError(f"The cell holds {cell.why}: type {field.expected}.")
    if not field.in_cm:
        return field.value(cell_text(cell) if isinstance(cell, str | float | int) else str(cell))
    inches = bool(re.search(r"\b(?:in|inch|inches)\b|[\"″”]", heading.casefold()))
    return field.typed(cell_text(cell) if isinstance(cell, str | float | int) else "", Units.INCHES if inches else Units.CM)


def _gauge(cell: RawCell, way: Direction | None, over: Over | None) -> str:
    """Readings as a cell of the log has them: as written, or counts over a length that is said elsewhere."""
    text = cell_text(cell) if isinstance(cell, str | float | int) else ""
    try:
        return str(_BY_NAME["gauge"].value(text))
    except LogbookError as error:
        found = gauge_cell(cell, way or Direction.STITCHES, over)
        if not isinstance(found, CellReadings):
            raise error
        return "; ".join(part for part in (cell_text(found.stitches or ""), cell_text(found.rows or "")) if part)
