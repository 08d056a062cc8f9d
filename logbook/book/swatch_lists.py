"""Which swatches there are: their lines in a list, their uids in an order, and what uses what. No record is made of them."""

import sqlite3
from collections import defaultdict
from collections.abc import Sequence
from typing import Any

from logbook.book.rows import rows_of
from logbook.craft.swatches.readings import Counted

_LINE = (
    "swatch.uid",
    "swatch.tag",
    "swatch.date",
    "coalesce(yarn.name, '')",
    "coalesce(stitch_pattern.name, '')",
    "swatch.hook_mm",
    "swatch.colour",
)
WORKED_OF = """swatch LEFT JOIN yarn ON yarn.uid = swatch.yarn
    LEFT JOIN stitch_pattern ON stitch_pattern.uid = swatch.stitch_pattern"""
"""The swatches, each beside its yarn and its stitch pattern, where it has them."""
_LINES = f"SELECT {', '.join(_LINE)} FROM {WORKED_OF}"
NEWEST_FIRST = "ORDER BY swatch.date DESC, swatch.rowid DESC"


def lines(connection: sqlite3.Connection, pattern: str | None = None) -> list[tuple[Any, ...]]:
    """(uid, tag, date, yarn, stitch pattern, hook mm, colour) of every swatch, or of those of one pattern; newest first."""
    where, values = ("", ()) if pattern is None else ("WHERE swatch.stitch_pattern = ?", (pattern,))
    return connection.execute(f"{_LINES} {where} {NEWEST_FIRST}", values).fetchall()


def first_lines(connection: sqlite3.Connection, most: int) -> list[tuple[Any, ...]]:
    """The first ``most`` of all ``lines``; quicker than all, of which each would be joined before they are sorted."""
    first = f"(SELECT uid FROM swatch {NEWEST_FIRST} LIMIT ?)"
    return connection.execute(f"{_LINES} WHERE swatch.uid IN {first} {NEWEST_FIRST}", (most,)).fetchall()


def lines_of(connection: sqlite3.Connection, uids: Sequence[str]) -> list[tuple[Any, ...]]:
    """The ``lines`` of these swatches, in any order."""
    return rows_of(connection, WORKED_OF, "swatch.uid", _LINE, uids, "swatch.rowid")


def as_logged(connection: sqlite3.Connection) -> list[str]:
    """The uids of all swatches in the order they were logged."""
    return [uid for (uid,) in connection.execute("SELECT uid FROM swatch ORDER BY rowid")]


def newest_first(connection: sqlite3.Connection) -> list[str]:
    """The uids of all ``lines``."""
    return [uid for (uid,) in connection.execute(f"SELECT uid FROM swatch {NEWEST_FIRST}")]


def tags_of(connection: sqlite3.Connection, uids: Sequence[str]) -> dict[str, str]:
    """The tags of these swatches, by uid."""
    return dict(rows_of(connection, "swatch", "uid", ("uid", "tag"), uids))


def by_yarn(connection: sqlite3.Connection) -> dict[str | None, list[str]]:
    """The uids of all swatches by that of their yarn (None: they have none)."""
    found: dict[str | None, list[str]] = defaultdict(list)
    for yarn, uid in connection.execute("SELECT yarn, uid FROM swatch ORDER BY rowid"):
        found[yarn].append(uid)
    return found


def owner_of_tag(connection: sqlite3.Connection, tag: str) -> str | None:
    """The uid of the swatch with this tag; None if none has it."""
    row = connection.execute("SELECT uid FROM swatch WHERE tag = ?", (tag,)).fetchone()
    return str(row[0]) if row else None


def pattern_uses(connection: sqlite3.Connection) -> dict[str, int]:
    """How many swatches use each stitch pattern, by its uid."""
    return _uses(connection, "stitch_pattern")


def yarn_uses(connection: sqlite3.Connection) -> dict[str, int]:
    """How many swatches use each yarn, by its uid."""
    return _uses(connection, "yarn")


def _uses(connection: sqlite3.Connection, column: str) -> dict[str, int]:
    return dict(connection.execute(f"SELECT {column}, count(*) FROM swatch WHERE {column} <> '' GROUP BY {column}"))


def tags_read_in(connection: sqlite3.Connection, pattern: str, counted: Counted) -> list[str]:
    """The tags of the swatches of one stitch pattern that have readings in ``counted``."""
    rows = connection.execute(
        """SELECT DISTINCT swatch.tag FROM swatch JOIN reading ON reading.swatch = swatch.uid
        WHERE swatch.stitch_pattern = ? AND reading.counted = ? ORDER BY swatch.tag""",
        (pattern, counted.value),
    )
    return [tag for (tag,) in rows]


def used(connection: sqlite3.Connection, column: str) -> tuple[str, ...]:
    """The texts that stand in one text column of the swatches."""
    rows = connection.execute(f"SELECT DISTINCT {column} FROM swatch WHERE {column} <> '' ORDER BY {column}")
    return tuple(text for (text,) in rows)


def swatches_of_yarn(connection: sqlite3.Connection, yarn: str) -> list[str]:
    """The uids of the swatches of one yarn."""
    return [uid for (uid,) in connection.execute("SELECT uid FROM swatch WHERE yarn = ? ORDER BY rowid", (yarn,))]


def swatches_of_pattern(connection: sqlite3.Connection, pattern: str) -> list[str]:
    """The uids of the swatches of one stitch pattern."""
    return [uid for (uid,) in connection.execute("SELECT uid FROM swatch WHERE stitch_pattern = ? ORDER BY rowid", (pattern,))]
