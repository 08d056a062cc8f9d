"""How far whole pieces stray from their swatches, as the made pieces of a logbook teach it."""

import sqlite3

from logbook.book.assumptions import assumptions
from logbook.book.logbook import Logbook
from logbook.book.pieces import predicted_and_measured
from logbook.craft.gauges.drift import Drift, drift_of


def learnt_drift(connection: sqlite3.Connection) -> Drift:
    """The drift assumed at first, taught by every made piece that was measured."""
    return drift_of(assumptions(connection), predicted_and_measured(connection))


def drift_in(book: Logbook) -> Drift:
    """``learnt_drift`` of an open logbook."""
    with book.reading() as connection:
        return learnt_drift(connection)
