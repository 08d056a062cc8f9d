"""How far whole pieces stray from their swatches, as the made pieces of a logbook teach it."""

import sqlite3

from logbook.book.assumptions import assumptions
from logbook.book.logbook import Logbook
from logbook.book.pieces import predicted_and_measured
from logbook.craft.gauges.drift import HandsDrift, hands_drift


def learnt_drift(connection: sqlite3.Connection) -> HandsDrift:
    """The drift assumed at first, taught to each hand by what it made that was measured."""
    return hands_drift(assumptions(connection), predicted_and_measured(connection))


def drift_in(book: Logbook) -> HandsDrift:
    """``learnt_drift`` of an open logbook."""
    with book.reading() as connection:
        return learnt_drift(connection)
