"""What is kept beside the records and follows from them: brought up to date with every writing."""

import sqlite3
from collections.abc import Collection

from logbook.book.gauges import refresh_gauges
from logbook.book.search import refresh_words


def refresh_derived(connection: sqlite3.Connection, touched: Collection[tuple[str, str]]) -> None:
    """Brings search words and gauges up to date after the records ``touched`` (table, uid) were written."""
    refresh_words(connection, touched)
    refresh_gauges(connection, touched)
