"""Rows of one table by a list of keys of any length."""

import sqlite3
from collections.abc import Sequence
from typing import Any

_MOST_MARKS = 500  # well under SQLite's least limit of values in one statement


def rows_of(
    connection: sqlite3.Connection, table: str, key: str, columns: Sequence[str], uids: Sequence[str] | None, order: str = "rowid"
) -> list[tuple[Any, ...]]:
    """The rows of a table whose ``key`` is one of ``uids``, or all; in that order, of ``uids`` a few hundred at a time."""
    select = f"SELECT {', '.join(columns)} FROM {table}"
    if uids is None:
        return connection.execute(f"{select} ORDER BY {order}").fetchall()
    found: list[tuple[Any, ...]] = []
    for start in range(0, len(uids), _MOST_MARKS):
        some = uids[start : start + _MOST_MARKS]
        marks = ", ".join("?" * len(some))
        found.extend(connection.execute(f"{select} WHERE {key} IN ({marks}) ORDER BY {order}", tuple(some)))
    return found
