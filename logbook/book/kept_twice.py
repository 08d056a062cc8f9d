"""Every record is kept twice: as it is, and in the last change kept of it. Where the two differ, one was damaged.

The running digest tells which: if the kept changes are as they were written, it is the record.
"""

import json
import sqlite3
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Any

from logbook.book.changes import row_of
from logbook.book.derived import refresh_derived
from logbook.book.running_digest import next_digest, not_as_kept, stored_changes
from logbook.book.tables import RECORDS
from logbook.book.trouble import AlteredError, DamagedError

MOST_NAMED = 50


@dataclass(frozen=True, slots=True)
class Differing:
    """A record that is not as the last change of it says; ``kept`` is what that says (None: it was taken out)."""

    table: str
    uid: str
    row: Mapping[str, Any] | None
    kept: Mapping[str, Any] | None
    swatch: str = ""

    def __str__(self) -> str:
        named = self.kept or self.row or {}
        what = f"{self.table.replace('_', ' ')} “{named.get('tag') or named.get('name') or named.get('text') or self.uid}”"
        what += f" of swatch {self.swatch}" if self.swatch else ""
        if self.row is None:
            return f"the {what} is missing"
        if self.kept is None:
            return f"the {what} should not be there"
        column = next(column for column in self.row if self.row[column] != self.kept[column])
        return f"the {column.replace('_', ' ')} of {what} is {self.row[column]!r}, but was kept as {self.kept[column]!r}"


def differing(connection: sqlite3.Connection) -> Iterator[Differing]:
    """The records that are not as the last change of each says. Raises DamagedError if a kept change can't be read."""
    for table, columns in RECORDS.items():
        shown = ", ".join(f"record.{column}" for column in columns)
        rows = connection.execute(
            f"""SELECT record.uid, {shown}, change.after, coalesce(action.schema, 1) FROM {table} AS record
            LEFT JOIN change ON change.position =
                (SELECT max(position) FROM change AS one WHERE one.record = record.uid AND one.record_table = '{table}')
            LEFT JOIN action ON action.uid = change.action"""
        )
        for uid, *values, after, schema in rows:
            row = dict(zip(columns, values, strict=True))
            kept = row_of(table, after, schema)
            if row != kept:
                yield Differing(table, uid, row, kept, _swatch_of(connection, table, row))
        lost = connection.execute(
            f"""SELECT change.record, change.after, coalesce(action.schema, 1) FROM change
            LEFT JOIN action ON action.uid = change.action WHERE change.after IS NOT NULL AND change.position IN
                (SELECT max(position) FROM change WHERE record_table = '{table}' GROUP BY record)
            AND NOT EXISTS (SELECT 1 FROM {table} WHERE {table}.uid = change.record)"""
        ).fetchall()
        for uid, after, schema in lost:
            yield Differing(table, uid, None, row_of(table, after, schema))


def _swatch_of(connection: sqlite3.Connection, table: str, row: Mapping[str, Any]) -> str:
    """The tag of a reading's swatch."""
    found = table == "reading" and connection.execute("SELECT tag FROM swatch WHERE uid = ?", (row["swatch"],)).fetchone()
    return str(found[0]) if found else ""


def require_kept_alike(connection: sqlite3.Connection) -> None:
    """Raises DamagedError, naming the first, if a kept change is not as it was written; AlteredError, naming some, if records
    are not as they were kept."""
    for position in not_as_kept(connection):
        where = f"no. {position}" if position else "at the end"
        raise DamagedError(f"a kept change, {where}, is not as it was written")
    if found := list(islice(differing(connection), MOST_NAMED)):
        raise AlteredError([str(one) for one in found])


def set_right(connection: sqlite3.Connection) -> list[str]:
    """Sets right, in the caller's transaction, what the other copy tells for sure; a sentence for each.

    Records follow the kept changes if those are as they were written. A kept change that is not gets back what the change before
    or after it of the same record, or the record, says, if with that its digest is the one that was written.
    """
    done = [f"kept change no. {position}" for position in list(not_as_kept(connection)) if _mended(connection, position)]
    if not list(not_as_kept(connection)):
        for one in list(differing(connection)):
            _as_kept(connection, one)
            done.append(str(one))
    if done:
        refresh_derived(connection, [("swatch", uid) for (uid,) in connection.execute("SELECT uid FROM swatch").fetchall()])
    return done


def _as_kept(connection: sqlite3.Connection, one: Differing) -> None:
    if one.kept is None:
        connection.execute(f"DELETE FROM {one.table} WHERE uid = ?", (one.uid,))
        return
    columns = tuple(one.kept)
    if one.row is None:
        marks = ", ".join("?" * (len(columns) + 1))
        names = f"uid, {', '.join(columns)}"
        connection.execute(f"INSERT INTO {one.table} ({names}) VALUES ({marks})", (one.uid, *one.kept.values()))
    else:
        pairs = ", ".join(f"{column} = ?" for column in columns)
        connection.execute(f"UPDATE {one.table} SET {pairs} WHERE uid = ?", (*one.kept.values(), one.uid))


def _mended(connection: sqlite3.Connection, wanted: int) -> bool:
    """Whether the change at that place could be given back what makes its digest right."""
    last = b""
    for position, digest, *parts in stored_changes(connection):
        if position == wanted:
            _, table, record, before, after, *_ = parts
            for new_before, new_after in _candidates(connection, position, table, record, before, after):
                said = [*parts[:3], new_before, new_after, *parts[5:]]
                if next_digest(last, said) == digest:
                    values = (new_before, new_after, position)
                    connection.execute("UPDATE change SET before = ?, after = ? WHERE position = ?", values)
                    return True
            return False
        last = digest
    return False


def _candidates(
    connection: sqlite3.Connection, position: int, table: str, record: str, before: str | None, after: str | None
) -> Iterator[tuple[str | None, str | None]]:
    earlier = connection.execute(
        "SELECT after FROM change WHERE record = ? AND position < ? ORDER BY position DESC LIMIT 1", (record, position)
    ).fetchone()
    later = connection.execute(
        "SELECT before FROM change WHERE record = ? AND position > ? ORDER BY position LIMIT 1", (record, position)
    ).fetchone()
    if earlier is not None:
        yield earlier[0], after
    if later is not None:
        yield before, later[0]
    elif table in RECORDS:
        columns = RECORDS[table]
        row = connection.execute(f"SELECT {', '.join(columns)} FROM {table} WHERE uid = ?", (record,)).fetchone()
        if row is not None:
            text = json.dumps(dict(zip(columns, row, strict=True)), ensure_ascii=False, separators=(",", ":"))
            yield before, text
