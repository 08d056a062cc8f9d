"""The records beside the swatches as plain rows, to travel in a workbook and to be taken in again.

Pieces with their sizes and set runs, made pieces, body charts, garments, what is assumed, and what yarns and stitch patterns
say beside the columns of the swatches. Yarns, stitch patterns and body charts go by their names, since a logbook knows each
name once; the others by their uids.
"""

import sqlite3
from collections.abc import Collection, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from logbook.book import garments, pieces
from logbook.book.body_charts import put_chart
from logbook.book.changes import Writing, new_uid
from logbook.book.schema import STEPS, take_steps
from logbook.book.tables import RECORDS, USES
from logbook.errors import LogbookError, RefusedError

BY_NAME = ("yarn", "stitch_pattern", "body_chart")
BY_UID = ("piece", "size", "made_piece", "garment", "tester", "assumption")
TABLES = ("yarn", "stitch_pattern", "piece", "size", "made_piece", "body_chart", "garment", "tester", "assumption")
"""In the order in which they can be written."""
_FILLED_ONLY = ("yarn", "stitch_pattern")

Row = Mapping[str, Any]


class KeptRow(NamedTuple):
    """One record: its table, the row of the sheet it stood in, and its columns (with ``uid`` where it goes by that)."""

    table: str
    row: int
    values: Row


class ColumnKind(NamedTuple):
    """What a column holds: TEXT, INTEGER or REAL, and whether it may be unknown."""

    of: str
    may_be_unknown: bool


class RecordTrouble(NamedTuple):
    """A record that can't be taken in: which, and why."""

    table: str
    row: int
    column: str
    says: str


def columns_of(table: str) -> tuple[str, ...]:
    """The columns that travel."""
    return (*RECORDS[table], "uid") if table in BY_UID else RECORDS[table]


@lru_cache(maxsize=1)
def kinds() -> Mapping[str, Mapping[str, ColumnKind]]:
    """What the columns of each table hold."""
    connection = sqlite3.connect(":memory:", isolation_level=None)
    try:
        take_steps(connection, STEPS)
        return {
            table: {
                name: ColumnKind(of, not needed) for _, name, of, needed, *_ in connection.execute(f"PRAGMA table_info({table})")
            }
            for table in TABLES
        }
    finally:
        connection.close()


def kept_rows(connection: sqlite3.Connection) -> dict[str, list[Row]]:
    """Every record, by table."""
    return {table: [row for _, row in _rows(connection, table)] for table in TABLES}


def differing(
    connection: sqlite3.Connection | None, rows: Sequence[KeptRow], swatches: Collection[str]
) -> tuple[list[KeptRow], list[RecordTrouble]]:
    """Those of ``rows`` that say something the logbook (None: a new one) does not hold, and those that can't be taken in.

    ``swatches`` are the uids that there are or will be.
    """
    known = {table: {} if connection is None else dict(_rows(connection, table)) for table in TABLES}
    there = {"swatch": set(swatches), "piece": set(known["piece"]), "garment": set(known["garment"])}
    for row in rows:
        if row.table in ("piece", "garment"):
            there[row.table].add(str(row.values["uid"]))
    changed, troubles = [], []
    for row in rows:
        if row.table == "assumption" and goes_by_its_own(connection):
            continue
        trouble = _trouble(row, known, there)
        if trouble:
            troubles.append(trouble)
        elif _says_more(row, known[row.table].get(str(row.values[_key(row.table)]))):
            changed.append(row)
    return changed, troubles


def goes_by_its_own(connection: sqlite3.Connection | None) -> bool:
    """Whether a logbook (None: a new one) has swatches whose numbers go by what it assumes: another's would change them."""
    return connection is not None and connection.execute("SELECT 1 FROM swatch LIMIT 1").fetchone() is not None


def put_rows(writing: Writing, rows: Sequence[KeptRow]) -> None:
    """Writes them. Raises RefusedError, in one sentence, if what is then in the logbook could not be made out."""
    known = {table: dict(_rows(writing.connection, table)) for table in BY_NAME}
    try:
        for table in TABLES:
            for row in (row for row in rows if row.table == table):
                _put(writing, row, known.get(table, {}))
        pieces.planned_pieces(writing.connection)
        garments.garments(writing.connection)
    except (LogbookError, sqlite3.Error, ValueError) as error:
        raise RefusedError(f"The pieces, charts or garments of the workbook can't be imported: {error}") from error


def _put(writing: Writing, row: KeptRow, known: Mapping[str, Row]) -> None:
    if row.table == "body_chart":
        put_chart(writing, row.values["name"], row.values["sizes"])
        return
    values = {column: row.values[column] for column in RECORDS[row.table]}
    if row.table not in _FILLED_ONLY:
        writing.put(row.table, row.values["uid"], values)
        return
    before = known.get(row.values["name"])
    found = writing.connection.execute(f"SELECT uid FROM {row.table} WHERE name = ?", (row.values["name"],)).fetchone()
    filled = (
        values if before is None else {name: before[name] if before[name] not in (None, "") else values[name] for name in values}
    )
    writing.put(row.table, found[0] if found else new_uid(), filled)


def _says_more(row: KeptRow, before: Row | None) -> bool:
    if before is None:
        return True
    if row.table in _FILLED_ONLY:
        return any(before[name] in (None, "") and row.values[name] not in (None, "") for name in RECORDS[row.table])
    return any(before[name] != row.values[name] for name in RECORDS[row.table])


def _trouble(row: KeptRow, known: Mapping[str, Mapping[str, Row]], there: Mapping[str, Collection[str]]) -> RecordTrouble | None:
    what, values = row.table.replace("_", " "), row.values
    if not str(values[_key(row.table)] or "").strip():
        return RecordTrouble(
            row.table,
            row.row,
            _key(row.table),
            f"This {what} has no {_key(row.table)}: the “Kept” sheets must stay as they were exported.",
        )
    if row.table == "assumption" and (values["value"] is None or values["value"] < 0):
        return RecordTrouble(
            row.table,
            row.row,
            "value",
            "An assumption is a number, not below 0: the “Kept” sheets must stay as they were exported.",
        )
    for column, table in USES.get(row.table, ()):
        if values[column] and values[column] not in there[table]:
            return RecordTrouble(
                row.table, row.row, column, f"Its {table} is neither in the workbook nor in the logbook: import both together."
            )
    if row.table in ("piece", "garment"):
        for uid, other in known[row.table].items():
            if other["name"] == values["name"] and uid != values["uid"]:
                return RecordTrouble(
                    row.table, row.row, "name", f"The logbook has another {what} called “{values['name']}”: rename one."
                )
    return None


def _key(table: str) -> str:
    return "name" if table in BY_NAME else "uid"


def _rows(connection: sqlite3.Connection, table: str) -> Iterator[tuple[str, Row]]:
    columns = columns_of(table)
    order = {"size": "piece, place", "garment": "position", "assumption": "uid"}.get(table, "name")
    for found in connection.execute(f"SELECT {', '.join(columns)} FROM {table} ORDER BY {order}"):
        row = dict(zip(columns, found, strict=True))
        yield str(row[_key(table)]), row
