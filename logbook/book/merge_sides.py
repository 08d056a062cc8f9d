"""One of two logbooks that are brought together: what it knows of every record, and what is there."""

import sqlite3
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.book.changes import row_of
from logbook.book.merge_plan import Place, Row
from logbook.book.tables import NAMES, PARTS, RECORDS, USES

MERGE = "merge"
"""What the ``of`` of a merge's action says."""


@dataclass(frozen=True, slots=True)
class Step:
    """A change a side knows: the uid it has everywhere, and the state after it."""

    uid: str
    after: Row | None


class BookSide:
    """One logbook: what it knows of every record, and what is there now."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        self._connection = connection
        gone = _undone_merges(connection)
        self.last: dict[Place, str] = {}
        for table, record, uid, action in connection.execute(
            "SELECT record_table, record, uid, action FROM change ORDER BY position"
        ):
            if action not in gone:
                self.last[table, record] = _plain(uid)
        self._gone = gone

    def steps(self, place: Place) -> list[Step]:
        """The changes of a record, in order, without those of undone merges."""
        rows = self._connection.execute(
            """SELECT change.uid, change.after, change.action, action.schema FROM change JOIN action ON action.uid = change.action
            WHERE change.record = ? AND change.record_table = ? ORDER BY change.position""",
            (place[1], place[0]),
        )
        return [
            Step(_plain(uid), row_of(place[0], after, schema)) for uid, after, action, schema in rows if action not in self._gone
        ]

    def now(self, place: Place) -> Row | None:
        """The record as it is."""
        columns = RECORDS[place[0]]
        row = self._connection.execute(f"SELECT {', '.join(columns)} FROM {place[0]} WHERE uid = ?", (place[1],)).fetchone()
        return None if row is None else dict(zip(columns, row, strict=True))

    def places(self) -> Iterator[Place]:
        """Every record there is or ever was."""
        for table in RECORDS:
            yield from ((table, uid) for (uid,) in self._connection.execute(f"SELECT uid FROM {table}"))
        yield from self.last

    def parts(self, part: str, whole: str) -> list[str]:
        """The uids of the readings of a swatch, or the sizes of a piece."""
        return [uid for (uid,) in self._connection.execute(f"SELECT uid FROM {part} WHERE {PARTS[part]} = ?", (whole,))]

    def names(self, table: str) -> dict[str, str]:
        """The uid of every name in a table."""
        return dict(self._connection.execute(f"SELECT {NAMES[table]}, uid FROM {table}"))

    def users(self, table: str, uid: str) -> Iterator[Place]:
        """The records that speak of one."""
        for user, uses in USES.items():
            for column, used in uses:
                if used == table:
                    rows = self._connection.execute(f"SELECT uid FROM {user} WHERE {column} = ?", (uid,))
                    yield from ((user, found) for (found,) in rows)


def last_alike(ours: Sequence[Step], theirs: Sequence[Step]) -> tuple[bool, Row | None]:
    """The latest state that both know: an equal one that both came to since the latest changes both have, or that of those."""
    there = {step.uid: number for number, step in enumerate(theirs)}
    here = {step.uid: number for number, step in enumerate(ours)}
    shared = [uid for uid in here if uid in there]
    if not shared:
        return False, None
    mine, yours = max(here[uid] for uid in shared), max(there[uid] for uid in shared)
    pairs = [
        (min(i, j), i + j, str(a.after), a.after)
        for i, a in enumerate(ours[mine:])
        for j, b in enumerate(theirs[yours:])
        if a.after == b.after
    ]
    if pairs:  # both sides find the same one, whichever of them merges
        return True, max(pairs, key=lambda pair: pair[:3])[3]
    best = max(shared, key=lambda uid: (here[uid] + there[uid], uid))
    return True, ours[here[best]].after


def _undone_merges(connection: sqlite3.Connection) -> frozenset[str]:
    """The merges that were undone and not done again, and every undoing and doing again of a merge."""
    merges = {uid for (uid,) in connection.execute("SELECT uid FROM action WHERE kind = 'do' AND of = ?", (MERGE,))}
    if not merges:
        return frozenset()
    last: dict[str, str] = {}
    turned = set()
    for uid, of, kind in connection.execute("SELECT uid, of, kind FROM action WHERE kind != 'do' ORDER BY position"):
        if of in merges:
            turned.add(uid)
            last[of] = kind
    return frozenset(turned | {uid for uid, kind in last.items() if kind == "undo"})


def _plain(uid: str) -> str:
    """The uid a change has everywhere."""
    return uid.partition("+")[0]
