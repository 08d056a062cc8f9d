"""The slow check of a whole logbook, for the background and the command line: pages, tables, and every record read once."""

import sqlite3
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path

from logbook.book.assumptions import assumptions
from logbook.book.body_charts import chart_texts
from logbook.book.changes import changes_of_action
from logbook.book.checking import check_whole
from logbook.book.connection import connect
from logbook.book.garments import garments
from logbook.book.gauges import row_of_gauges
from logbook.book.kept_twice import require_kept_alike
from logbook.book.pieces import made_pieces, planned_pieces
from logbook.book.rows import rows_of
from logbook.book.schema import STEPS
from logbook.book.search import words_agree
from logbook.book.swatch_lists import newest_first
from logbook.book.swatches import swatches
from logbook.book.trouble import DamagedError, as_sentences
from logbook.book.undo import undo_state
from logbook.craft.swatches.gauge import ARITHMETIC

IN_MEMORY_BYTES = 64_000_000
AT_ONCE = 2_000
"""Swatches that are read at one go."""
STEPS_A_LOOK = 50_000
"""SQLite's steps, some milliseconds, between two looks whether the check is to go on."""


def check_thoroughly(path: Path, patience: float = 2.0, go_on: Callable[[], object] = lambda: None) -> int:
    """Checks the logbook at ``path``, which may be open here and elsewhere, over its own connection. How many swatches it holds.

    It is copied, page by page as it is, and checked there: nobody who wants to write has to wait meanwhile. A large one is copied
    to a file that goes with the check, not into memory. ``go_on`` is called all the while; what it raises ends the check. Raises
    DamagedError, saying what is wrong.
    """
    place = "" if path.exists() and path.stat().st_size > IN_MEMORY_BYTES else ":memory:"
    with as_sentences(path), closing(sqlite3.connect(place, isolation_level=None)) as copy:
        with closing(connect(path, "ro", patience)) as connection:
            connection.backup(copy, pages=256, progress=lambda *_: go_on())
        copy.execute("PRAGMA cell_size_check = ON")
        with _ended_by(go_on, copy):
            check_whole(copy, path, len(STEPS))
            return check_records(copy)


@contextmanager
def _ended_by(go_on: Callable[[], object], connection: sqlite3.Connection) -> Iterator[None]:
    """SQLite stops at what ``go_on`` raises, but makes an error of its own of it."""
    raised: list[Exception] = []

    def stops() -> bool:
        try:
            go_on()
        except Exception as error:  # raised again below
            raised.append(error)
        return bool(raised)

    connection.set_progress_handler(stops, STEPS_A_LOOK)
    try:
        yield
    except Exception:
        if raised:
            raise raised[0] from None
        raise
    finally:
        connection.set_progress_handler(None, 0)


def check_records(connection: sqlite3.Connection) -> int:
    """Reads every record, every kept change and the search text. How many swatches there are. Raises DamagedError."""
    uids = newest_first(connection)
    gauges_agree = True
    for start in range(0, len(uids), AT_ONCE):
        gauges_agree &= _gauges_agree(connection, uids[start : start + AT_ONCE])
    planned_pieces(connection)
    made_pieces(connection)
    garments(connection)
    chart_texts(connection)
    assumptions(connection)
    undo_state(connection)
    for (action,) in connection.execute("SELECT uid FROM action").fetchall():
        changes_of_action(connection, action)
    require_kept_alike(connection)
    if not words_agree(connection):
        raise DamagedError("what it searches in does not agree with its swatches")
    if not gauges_agree:
        raise DamagedError("a gauge it keeps does not agree with its readings")
    return len(uids)


def _gauges_agree(connection: sqlite3.Connection, uids: Sequence[str]) -> bool:
    """Reads these swatches, and whether what is kept of their gauges is what their readings give."""
    found = swatches(connection, uids)
    kept = {uid: tuple(row) for uid, *row in rows_of(connection, "swatch_gauges", "swatch", ("*",), uids)}
    return all(row[0] != ARITHMETIC or row == row_of_gauges(one) for one in found if (row := kept.get(one.uid)))
