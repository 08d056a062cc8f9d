"""The records beside the swatches that a workbook of the log brings along: read, compared, written in the same step."""

import sqlite3
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from logbook.book.kept_records import TABLES, ColumnKind, KeptRow, columns_of, differing, goes_by_its_own, kinds
from logbook.book.tables import PARTS
from logbook.craft.swatches.fields import clean_text, exact
from logbook.craft.words.counting import counted, listed
from logbook.errors import LogbookError, UnreadableError
from logbook.sheets.kept_sheets import NAMES, KeptCells, kept_cells
from logbook.sheets.limits import RawCell, RawSheet, Unusable
from logbook.sheets.swatch_rows import SheetProblem


@dataclass(frozen=True, slots=True)
class KeptPlan:
    """All rows read, those that would be written, and what stands in the way; ``note``: what the maker should know, or "".

    ``unread``: those of the problems that are of rows which could not be read, whatever the logbook holds.
    """

    rows: tuple[KeptRow, ...] = ()
    written: tuple[KeptRow, ...] = ()
    problems: tuple[SheetProblem, ...] = ()
    note: str = ""
    unread: tuple[SheetProblem, ...] = ()

    def sentence(self) -> str:
        """``3 pieces and 2 made pieces``; "" for nothing. Sizes belong to their pieces."""
        tables = [row.table for row in self.written]
        kinds = [table for table in TABLES if table in tables and table not in PARTS]
        said = [counted(tables.count(table), table.replace("_", " ")) for table in kinds]
        return listed(said) if said else ""


def kept_rows_of(sheets: Sequence[RawSheet]) -> tuple[tuple[KeptRow, ...], tuple[SheetProblem, ...]]:
    """The rows of a workbook's kept sheets. What is wrong in a row is a problem."""
    rows, problems = [], []
    for cells in kept_cells(sheets):
        values, wrong = _values(cells)
        problems += wrong
        if not wrong:
            rows.append(KeptRow(cells.table, cells.row, values))
    return tuple(rows), tuple(problems)


def plan_kept(
    connection: sqlite3.Connection | None, rows: tuple[KeptRow, ...], wrong: tuple[SheetProblem, ...], swatches: Collection[str]
) -> KeptPlan:
    """Compares them with the logbook (None: a new one); ``swatches`` are the uids that there are or will be."""
    written, troubles = differing(connection, rows, swatches)
    order = sorted(written, key=lambda row: TABLES.index(row.table))
    said = tuple(
        SheetProblem(NAMES[t.table], t.row, f"{NAMES[t.table]}, {t.column.replace('_', ' ')}", t.says, t.says) for t in troubles
    )
    return KeptPlan(rows, tuple(order), (*wrong, *said), _note(connection, rows), wrong)


_NOT_TAKEN = "The assumptions in the sheet are not imported: this logbook goes by its own (Logbook → Assumptions)."


def _note(connection: sqlite3.Connection | None, rows: tuple[KeptRow, ...]) -> str:
    said = {row.values["uid"]: row.values["value"] for row in rows if row.table == "assumption"}
    if connection is None or not goes_by_its_own(connection):
        return ""
    own = dict(connection.execute("SELECT uid, value FROM assumption").fetchall())
    return "" if said.items() <= own.items() else _NOT_TAKEN


def _values(cells: KeptCells) -> tuple[dict[str, Any], list[SheetProblem]]:
    values: dict[str, Any] = {}
    problems = []
    for column in columns_of(cells.table):
        try:
            values[column] = _value(cells.cells.get(column), kinds()[cells.table][column])
        except LogbookError as error:
            words = f"{NAMES[cells.table]}, {column.replace('_', ' ')}"
            problems.append(SheetProblem(NAMES[cells.table], cells.row, words, "the cell as it was written", str(error)))
    return values, problems


def _value(cell: RawCell, kind: ColumnKind) -> Any:
    if isinstance(cell, Unusable):
        raise UnreadableError(f"The cell holds {cell}: the “Kept” sheets must stay as they were exported.")
    if cell is None:
        return None if kind.may_be_unknown or kind.of != "TEXT" else ""
    if kind.of == "TEXT":
        return _text(cell)
    try:
        number = float(str(cell))
    except ValueError:
        raise UnreadableError(f"“{str(cell)[:40]}” is not a number: the “Kept” sheets must stay as they were exported.") from None
    if kind.of == "INTEGER" and not number.is_integer():
        raise UnreadableError(f"“{str(cell)[:40]}” is not a whole number: the “Kept” sheets must stay as they were exported.")
    return int(number) if kind.of == "INTEGER" else number


def _text(cell: RawCell) -> str:
    if isinstance(cell, date):
        return cell.isoformat()
    return clean_text(cell) if isinstance(cell, str) else exact(cell)  # type: ignore[arg-type]


NOTHING_KEPT = KeptPlan()
"""Of a sheet that holds swatches alone."""
