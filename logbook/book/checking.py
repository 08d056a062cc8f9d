"""Whether an opened file is sound: its pages, its references, its tables."""

import sqlite3
from contextlib import closing
from functools import cache
from pathlib import Path

from logbook.book.schema import STEPS, take_steps
from logbook.book.trouble import DamagedError, as_sentences
from logbook.errors import RefusedError


def check_whole(connection: sqlite3.Connection, path: Path, step: int) -> None:
    """Raises DamagedError unless the tables are those of schema ``step``, and pages, indexes and references sound."""
    check_tables(connection, path, step)
    with as_sentences(path):
        problems = [row[0] for row in connection.execute("PRAGMA integrity_check(3)")]
        dangling = connection.execute("PRAGMA foreign_key_check").fetchone()
    if problems != ["ok"]:
        raise DamagedError(str(problems[0]).splitlines()[-1], path.name)
    if dangling is not None:
        raise DamagedError(f"a record of {dangling[0]} points to nothing", path.name)


def check_tables(connection: sqlite3.Connection, path: Path, step: int) -> None:
    """Raises DamagedError unless the tables are those of schema ``step``, RefusedError if another program has added some.

    It does not look at what is in them, and so takes no longer with a large logbook than with a small one.
    """
    wanted = _tables_made_by(STEPS[:step])
    with as_sentences(path):
        found = _tables(connection)
    for name, sql in wanted.items():
        if " ".join(found.get(name, "").split()) != " ".join(sql.split()):  # SQLite's own spaces, where columns were added
            raise DamagedError(f"its {name} is not as it was made", path.name)
    added = sorted(found.keys() - wanted.keys())
    if added:
        raise RefusedError(
            f"{path.name} holds {added[0]}, which no logbook has: another program put it in. Remove it there, or restore the "
            "newest backup under a new name."
        )


@cache
def _tables_made_by(steps: tuple[tuple[str, ...], ...]) -> dict[str, str]:
    with closing(sqlite3.connect(":memory:", isolation_level=None)) as model:
        take_steps(model, steps)
        return _tables(model)


def _tables(connection: sqlite3.Connection) -> dict[str, str]:
    """What was made by a statement, by kind and name. SQLite's own tables come and go with what other programs do."""
    rows = connection.execute("SELECT type || ' ' || name, sql FROM sqlite_schema WHERE sql IS NOT NULL").fetchall()
    return {name: sql for name, sql in rows if not name.startswith("table sqlite_")}
