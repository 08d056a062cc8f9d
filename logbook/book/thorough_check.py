"""The slow check of a whole logbook, for the background and the command line: pages, tables, and every record read once."""

import sqlite3
from contextlib import closing
from pathlib import Path

from logbook.book.assumptions import assumptions
from logbook.book.body_charts import chart_texts
from logbook.book.changes import changes_of_action
from logbook.book.checking import check_whole
from logbook.book.connection import connect
from logbook.book.gauges import row_of_gauges
from logbook.book.kept_twice import require_kept_alike
from logbook.book.pieces import made_pieces, planned_pieces
from logbook.book.schema import STEPS
from logbook.book.search import words_of
from logbook.book.swatches import swatches
from logbook.book.trouble import DamagedError, as_sentences
from logbook.book.undo import undo_state
from logbook.craft.swatches.gauge import ARITHMETIC


def check_thoroughly(path: Path, patience: float = 2.0) -> int:
    """Checks the logbook at ``path``, which may be open here and elsewhere, over its own connection. How many swatches it holds.

    It is copied into memory, page by page as it is, and checked there: nobody who wants to write has to wait meanwhile. Raises
    DamagedError, saying what is wrong.
    """
    with as_sentences(path), closing(sqlite3.connect(":memory:", isolation_level=None)) as copy:
        with closing(connect(path, "ro", patience)) as connection:
            connection.backup(copy, pages=256)
        copy.execute("PRAGMA cell_size_check = ON")
        check_whole(copy, path, len(STEPS))
        return check_records(copy)


def check_records(connection: sqlite3.Connection) -> int:
    """Reads every record, every kept change and the search text. How many swatches there are. Raises DamagedError."""
    found = swatches(connection)
    planned_pieces(connection)
    made_pieces(connection)
    chart_texts(connection)
    assumptions(connection)
    undo_state(connection)
    for (action,) in connection.execute("SELECT uid FROM action").fetchall():
        changes_of_action(connection, action)
    require_kept_alike(connection)
    kept = dict(connection.execute("SELECT swatch, folded FROM swatch_words"))
    if kept != words_of(connection):
        raise DamagedError("what it searches in does not agree with its swatches")
    kept_gauges = {uid: tuple(row) for uid, *row in connection.execute("SELECT * FROM swatch_gauges")}
    if any(row[0] == ARITHMETIC and row != row_of_gauges(one) for one in found if (row := kept_gauges.get(one.uid))):
        raise DamagedError("a gauge it keeps does not agree with its readings")
    return len(found)
