"""A sheet that a maker kept in their own way: the guess of what its columns are, corrected, and its rows as those of the log."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from logbook.errors import RefusedError, UnreadableError
from logbook.sheets.csv_file import read_own_csv
from logbook.sheets.limits import RawSheet
from logbook.sheets.own_cells import Over, read_over
from logbook.sheets.own_guess import BY_NAME, CHOICES, field_of, guesses, with_choices
from logbook.sheets.own_sheet import OwnRows, as_log
from logbook.sheets.own_table import OwnTable, find_table
from logbook.sheets.progress import Progress
from logbook.sheets.reading import is_export, read_own_sheets, read_sheet
from logbook.sheets.swatch_rows import SheetProblem, SheetSwatches, swatches_of

__all__ = [
    "CHOICES",
    "Over",
    "OwnSheet",
    "OwnTable",
    "RawSheet",
    "SheetChoices",
    "SheetProblem",
    "field_of",
    "own_sheet",
    "read_choice",
    "read_over",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class SheetChoices:
    """What the maker says of the sheet: columns of the log by heading (small letters; "": not to be taken), which sheet, and the
    length of counts that state none."""

    columns: Mapping[str, str] = field(default_factory=dict)
    sheet: str | None = None
    over: Over | None = None


@dataclass(frozen=True, slots=True)
class OwnSheet:
    """The table that was found, what each column is taken as ("": not), the rows as the log's, and the swatches in them."""

    table: OwnTable
    choices: tuple[str, ...]
    rows: OwnRows
    swatches: SheetSwatches

    @property
    def remarks(self) -> tuple[str, ...]:
        """What is not taken, as sentences."""
        said = [f"Not used: the column “{heading}”." for heading in self.rows.not_taken]
        return (*said, *(f"Row {row} is set aside: {why}." for row, why in self.rows.aside))


def own_sheet(path: Path, said: SheetChoices) -> OwnSheet:
    """Reads the sheet and guesses. Raises RefusedError if no table is in it or a heading is not in the table."""
    return own_table(found_table(path.name, read_own_sheets(path, said.sheet)), said)


def raw_sheets(path: Path, progress: Progress | None = None) -> tuple[RawSheet, ...]:
    """Every sheet of the file; ``progress`` hears of rows, and may raise to cancel. Raises RefusedError if it can't be read."""
    return read_own_sheets(path, None, progress)


def pasted_sheets(text: str) -> tuple[RawSheet, ...]:
    """What was copied in a spreadsheet: lines of cells parted by tabs, the headings first. Raises RefusedError past a limit."""
    return (read_own_csv(text.encode("utf-8", "replace"), "what was copied"),)


def found_table(name: str, sheets: Sequence[RawSheet]) -> OwnTable:
    """The table in them. Raises RefusedError if there is none."""
    table = find_table(sheets)
    if table is None:
        raise RefusedError(f"“{name}” has no row of headings: give its columns names such as yarn, hook and gauge.")
    return table


_NEARLY_ALL = 0.9


def is_of_the_log(path: Path) -> bool:
    """Whether the first sheet is one of the log, so that nothing need be asked: all or nearly all its headings are columns of it.

    A heading that is not is named as a problem when the sheet is read.
    """
    try:
        if is_export(path):
            return True
        rows = read_sheet(path).rows
    except (RefusedError, OSError):
        return False
    headings = [" ".join(str(cell).split()).casefold() for cell in rows[0].cells if cell not in (None, "")] if rows else []
    return bool(headings) and sum(heading in BY_NAME for heading in headings) >= _NEARLY_ALL * len(headings)


def own_table(table: OwnTable, said: SheetChoices) -> OwnSheet:
    """The same of a table that was found already."""
    there = {" ".join(heading.casefold().split()) for heading in table.headings}
    missing = next((heading for heading in said.columns if heading not in there), None)
    if missing is not None:
        names = ", ".join(f"“{heading}”" for heading in table.headings if heading)
        raise RefusedError(f"There is no heading “{missing[:40]}” in row {table.heading_row}: the headings are {names}.")
    choices = with_choices(table, guesses(table), said.columns)
    rows = as_log(table, choices, said.over)
    return OwnSheet(table, choices, rows, _by_their_headings(swatches_of(rows.sheet), rows))


def read_choice(text: str) -> tuple[str, str]:
    """``Garn = yarn`` as heading (small letters) and column; an empty column: not to be taken. Raises UnreadableError."""
    heading, equals, column = text.rpartition("=")
    plain = " ".join(column.split()).casefold()
    if not equals or not heading.strip():
        raise UnreadableError(f"“{text[:60]}” names no heading and column: write it like “Garn = yarn”.")
    if plain and plain not in CHOICES:
        raise UnreadableError(f"“{plain[:40]}” is not a column of the log: it has {', '.join(CHOICES)}.")
    return " ".join(heading.casefold().split()), plain


def _by_their_headings(found: SheetSwatches, rows: OwnRows) -> SheetSwatches:
    """Problems named by the headings of the sheet itself."""
    problems = tuple(replace(one, column=rows.headings.get(one.column, one.column)) for one in found.problems)
    return replace(found, problems=problems)
