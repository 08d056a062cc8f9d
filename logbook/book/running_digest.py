"""The running digest of kept changes: each has one of its stored bytes and of the digest before it, in order of ``position``.

It goes by what is stored, never by what that is lifted to, so that a later schema changes none of it.
"""

import sqlite3
from collections.abc import Iterator, Sequence
from typing import Any

SIZE = 16
"""How many bytes a digest has, the first of a SHA-256."""

_STORED = """SELECT change.position, change.digest, change.uid, change.record_table, change.record, change.before, change.after,
    action.uid, action.at, action.label, action.kind, action.of, action.schema
    FROM change LEFT JOIN action ON action.uid = change.action WHERE change.position > ? ORDER BY change.position LIMIT 5000"""


def stored_changes(connection: sqlite3.Connection) -> Iterator[tuple[Any, ...]]:
    """Every change in order: its place, its digest, and the parts that its digest is of."""
    last = 0
    while some := connection.execute(_STORED, (last,)).fetchall():
        yield from some
        last = some[-1][0]


def next_digest(before: bytes, parts: Sequence[Any]) -> bytes:
    """The digest of one change with those parts (text, number or None), ``before`` being that of the change before it."""
    import hashlib  # only for who writes or checks: it brings a whole library with it

    said = [b"-" if part is None else b"%d:%b" % (len(data := str(part).encode()), data) for part in parts]
    return hashlib.sha256(before + b"".join(said)).digest()[:SIZE]


def reckon_anew(connection: sqlite3.Connection) -> None:
    """Gives every change that is there its digest, and the logbook that of the last."""
    before = b""
    for position, _, *parts in stored_changes(connection):
        before = next_digest(before, parts)
        connection.execute("UPDATE change SET digest = ? WHERE position = ?", (before, position))
    connection.execute("UPDATE logbook SET digest = ?", (before,))


def not_as_kept(connection: sqlite3.Connection) -> Iterator[int]:
    """The places of the changes whose bytes are not those that were kept; 0 if one is missing at the end."""
    before = b""
    for position, digest, *parts in stored_changes(connection):
        if next_digest(before, parts) != digest:
            yield position
        before = digest
    if connection.execute("SELECT digest FROM logbook").fetchone() != (before,):
        yield 0
