"""Those who try a pattern: from the file's rows to the records of the craft and back."""

import sqlite3
from typing import Any

from logbook.book.changes import Writing, new_uid
from logbook.book.tables import RECORDS
from logbook.craft.sizes.tester import Tester
from logbook.errors import RefusedError

_COLUMNS = RECORDS["tester"]


def testers(connection: sqlite3.Connection, of: str) -> list[Tester]:
    """Those who try the piece or garment of that uid, in the order they were put in."""
    rows = connection.execute(
        f"SELECT uid, {', '.join(_COLUMNS)} FROM tester WHERE piece = :of OR garment = :of ORDER BY rowid", {"of": of}
    )
    return [_tester(uid, dict(zip(_COLUMNS, rest, strict=True))) for uid, *rest in rows]


def _tester(uid: str, values: dict[str, Any]) -> Tester:
    return Tester(uid=uid, **values | {name: values[name] or "" for name in ("piece", "garment")})


def put_tester(writing: Writing, tester: Tester) -> str:
    """Writes one and returns the uid. Raises RefusedError without a name, or if what is tried is not there any more."""
    uid = tester.uid or new_uid()
    if not tester.name.strip():
        raise RefusedError("Give the name or initials of who tries it, and save again.")
    if any(mm is not None and mm <= 0 for mm in (tester.width_mm, tester.length_mm)):
        raise RefusedError(f"The width and length that {tester.name} measured must be more than 0.")
    table, of = ("piece", tester.piece) if tester.piece else ("garment", tester.garment)
    if not writing.connection.execute(f"SELECT 1 FROM {table} WHERE uid = ?", (of,)).fetchone():
        raise RefusedError(f"The {table} that is tried is not in the logbook any more.")
    values = {column: getattr(tester, column) for column in _COLUMNS}
    writing.put("tester", uid, values | {"piece": tester.piece or None, "garment": tester.garment or None})
    return uid


def remove_testers(writing: Writing, of: str) -> None:
    """Takes out all who try a piece or garment, with it."""
    for tester in testers(writing.connection, of):
        writing.remove("tester", tester.uid)
