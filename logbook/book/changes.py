"""Every change to a record goes through here, and is kept: what the user did, and each record before and after."""

import json
import math
import sqlite3
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from logbook.book.running_digest import next_digest
from logbook.book.tables import NAMES, PARTS, RECORDS, SWATCH_OF_TAKEN, lifted
from logbook.book.trouble import as_damage
from logbook.craft.swatches.fields import clean_text
from logbook.errors import RefusedError

Row = Mapping[str, Any]
_KEEP = "INSERT INTO change (uid, record_table, record, before, after, action, digest) VALUES (?, ?, ?, ?, ?, ?, ?)"
States = Sequence[tuple[Row | None, str | None]]
"""States of a record one after the other (None: not there), each with the uid of the change that led to it (None: a new one)."""


def new_uid() -> str:
    """A uid of 36 characters that no other logbook has."""
    import uuid  # slow to import, and who only reads needs none

    return str(uuid.uuid4())


def utc_now() -> str:
    """The time now as ISO text in UTC, to the millisecond."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


@dataclass(slots=True)
class Writing:
    """One action being written: put and remove records; the action is kept as soon as one of them really changes.

    ``kind`` is ``do``, ``undo`` or ``redo``; ``of`` is the uid of the action undone or done again; ``touched`` are the records
    changed (table, uid), in order. Lives inside one transaction.
    """

    connection: sqlite3.Connection
    label: str
    kind: str = "do"
    of: str | None = None
    now: Callable[[], str] = utc_now
    action: tuple[Any, ...] | None = None
    digest: bytes = b""
    touched: dict[tuple[str, str], None] = field(default_factory=dict)

    def put(self, table: str, uid: str, values: Row) -> None:
        """Writes a record, new or known. ``values`` holds all its columns. Raises RefusedError for what a file can't hold."""
        after = {column: _storable(column, values[column]) for column in RECORDS[table]}
        before = self._row(table, uid)
        if before != after:
            self._write(table, uid, after, new=before is None)
            self._keep(table, uid, before, after)

    def put_new(self, table: str, records: Sequence[tuple[str, Row]]) -> None:
        """Writes new records (uid and all its columns) at one go, none of which may be there. Raises as ``put``."""
        columns = RECORDS[table]
        rows = [(uid, {column: _storable(column, values[column]) for column in columns}) for uid, values in records]
        self.connection.executemany(_insert(table), [(uid, *row.values()) for uid, row in rows])
        self.connection.executemany(_KEEP, [self._kept(table, uid, None, row) for uid, row in rows])

    def remove(self, table: str, uid: str) -> None:
        """Takes a record out; what is not there is left so."""
        before = self._row(table, uid)
        if before is not None:
            self.connection.execute(f"DELETE FROM {table} WHERE uid = ?", (uid,))
            self._keep(table, uid, before, None)

    def put_together(self, records: Iterable[tuple[str, str, States]]) -> None:
        """Takes several records (table, uid) each through states, of which the last is written and all are kept.

        Names may go from one record to another, whatever their order. A state that changes nothing is passed over.
        """
        wanted = [(table, uid, self._row(table, uid), states) for table, uid, states in records]
        changed = [one for one in wanted if any(state != one[2] for state, _ in one[3])]
        for table, uid, there, _ in changed:
            if table in NAMES and there is not None:
                self.connection.execute(f"UPDATE {table} SET {NAMES[table]} = uid WHERE uid = ?", (uid,))
        for table, uid, there, states in changed:
            last = states[-1][0]
            if last is None:
                self.connection.execute(f"DELETE FROM {table} WHERE uid = ?", (uid,))
            else:
                self._write(table, uid, last, new=there is None)
        for table, uid, was, states in changed:
            before: Row | None = was
            for after, change in states:
                if after != before:
                    self._keep(table, uid, before, after, change)
                before = after

    def _write(self, table: str, uid: str, row: Row, *, new: bool) -> None:
        columns = RECORDS[table]
        values = [row[column] for column in columns]
        if new:
            self.connection.execute(_insert(table), (uid, *values))
        else:
            pairs = ", ".join(f"{column} = ?" for column in columns)
            self.connection.execute(f"UPDATE {table} SET {pairs} WHERE uid = ?", (*values, uid))

    def _row(self, table: str, uid: str) -> dict[str, Any] | None:
        columns = RECORDS[table]
        found = self.connection.execute(f"SELECT {', '.join(columns)} FROM {table} WHERE uid = ?", (uid,)).fetchone()
        return None if found is None else dict(zip(columns, found, strict=True))

    def _keep(self, table: str, uid: str, before: Row | None, after: Row | None, change: str | None = None) -> None:
        self.connection.execute(_KEEP, self._kept(table, uid, before, after, change))

    def _kept(self, table: str, uid: str, before: Row | None, after: Row | None, change: str | None = None) -> tuple[Any, ...]:
        """The next row of the kept changes."""
        if self.action is None:
            (schema,) = self.connection.execute("PRAGMA user_version").fetchone()
            self.action = (new_uid(), self.now(), self.label, self.kind, self.of, schema)
            self.connection.execute(
                "INSERT INTO action (uid, at, label, kind, of, schema) VALUES (?, ?, ?, ?, ?, ?)", self.action
            )
            (self.digest,) = self.connection.execute("SELECT digest FROM logbook").fetchone()
        kept = (change or new_uid(), table, uid, _as_json(before), _as_json(after))
        self.digest = next_digest(self.digest, (*kept, *self.action))
        if not self._follows(table, before, after):
            self.touched[table, uid] = None
        return (*kept, self.action[0], self.digest)

    def _follows(self, table: str, before: Row | None, after: Row | None) -> bool:
        """Whether it is a new part of a record that was touched itself: what follows from that is brought up to date anyway."""
        whole = PARTS.get(table)
        return whole is not None and before is None and after is not None and (whole, after[whole]) in self.touched

    def seal(self) -> None:
        """Ends the action: the logbook says how often it was written to, and the digest of its last change."""
        if self.action is not None:
            self.connection.execute("UPDATE logbook SET counter = counter + 1, digest = ?", (self.digest,))


_AS_KEPT = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"))


def _insert(table: str) -> str:
    columns = RECORDS[table]
    return f"INSERT INTO {table} (uid, {', '.join(columns)}) VALUES ({', '.join('?' * (len(columns) + 1))})"


def _as_json(row: Row | None) -> str | None:
    return None if row is None else _AS_KEPT.encode(row)


def _storable(column: str, value: Any) -> Any:
    if isinstance(value, str):
        return clean_text(value)
    if isinstance(value, bool):
        return int(value)
    if isinstance(value, float) and not math.isfinite(value):
        raise RefusedError(f"{column.replace('_', ' ')} must be a finite number.")
    return value


@dataclass(frozen=True, slots=True)
class Change:
    """One kept change of one record: when, by which action, and the record's values before and after (None: not there)."""

    at: str
    label: str
    kind: str
    table: str
    record: str
    before: dict[str, Any] | None
    after: dict[str, Any] | None


_CHANGES = """SELECT action.at, action.label, action.kind, change.record_table, change.record, change.before, change.after,
    action.schema FROM change JOIN action ON action.uid = change.action"""


def changes_of_action(connection: sqlite3.Connection, action: str) -> list[Change]:
    """What one action did, in order."""
    return _changes(connection.execute(f"{_CHANGES} WHERE action.uid = ? ORDER BY change.position", (action,)))


def changes_of_record(connection: sqlite3.Connection, record: str) -> list[Change]:
    """Everything that ever happened to one record, in order."""
    return _changes(connection.execute(f"{_CHANGES} WHERE change.record = ? ORDER BY change.position", (record,)))


def readings_of_swatch(connection: sqlite3.Connection, swatch: str) -> list[str]:
    """The uids of all readings a swatch has or ever had."""
    rows = connection.execute(
        f"""SELECT record FROM change WHERE record_table = 'reading' AND record IN (
            SELECT uid FROM reading WHERE swatch = :swatch
            UNION SELECT record FROM change WHERE record_table = 'reading' AND after IS NULL AND {SWATCH_OF_TAKEN} = :swatch
        ) GROUP BY record ORDER BY min(position)""",
        {"swatch": swatch},
    )
    return [uid for (uid,) in rows]


def _changes(rows: Iterable[tuple[Any, ...]]) -> list[Change]:
    return [
        Change(at, label, kind, table, record, row_of(table, before, schema), row_of(table, after, schema))
        for at, label, kind, table, record, before, after, schema in rows
    ]


def row_of(table: str, text: str | None, schema: int) -> dict[str, Any] | None:
    """A kept row as the present schema has it; None: it was not there. Raises DamagedError if it is none."""
    if text is None:
        return None
    with as_damage("A kept change"):
        if not isinstance(text, str) or not isinstance(schema, int):
            raise ValueError(f"{text!r:.40} is no text, or {schema!r:.40} no schema")
        row = json.loads(text)
        if table not in RECORDS or not isinstance(row, dict):
            raise ValueError(f"{text[:40]} is no {table}")
        return lifted(table, row, schema)
