"""Gauges kept beside the swatches, so that a listing need not reckon them anew: their pitches and the sums behind them.

They follow from the readings and are no records: no change of them is kept, and no merge takes them. What is not there, or was
reckoned by another version of the arithmetic, is reckoned when it is asked for. The give or take is not kept: it follows from
what is assumed.
"""

import json
import sqlite3
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields
from operator import attrgetter

from logbook.book.rows import rows_of
from logbook.book.swatches import swatches
from logbook.book.tables import SWATCH_OF_TAKEN
from logbook.book.trouble import as_damage
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import ARITHMETIC, Gauge, GaugeSums
from logbook.craft.swatches.swatch import Swatch, gauge_sums_of, gauges_of

Gauges = Mapping[tuple[Condition, Direction], Gauge]


def refresh_gauges(connection: sqlite3.Connection, touched: Iterable[tuple[str, str]]) -> None:
    """Brings the kept gauges up to date after the records ``touched`` (table, uid) were written."""
    stale: dict[str, None] = {}
    for table, uid in touched:
        if table == "swatch":
            gone = "swatch = ? AND NOT EXISTS (SELECT 1 FROM swatch WHERE swatch.uid = swatch_gauges.swatch)"
            connection.execute(f"DELETE FROM swatch_gauges WHERE {gone}", (uid,))
            stale[uid] = None
        elif table == "reading":
            found = connection.execute("SELECT swatch FROM reading WHERE uid = ?", (uid,)).fetchone()
            found = found or connection.execute(_TAKEN_FROM, (uid,)).fetchone()
            stale.update([(found[0], None)] if found else ())
        elif table == "stitch_pattern":
            stale.update((swatch, None) for (swatch,) in connection.execute(_REPEATS_CHANGED, (uid,)))
    if stale:
        put_gauges(connection, list(stale))


_TAKEN_FROM = f"""SELECT {SWATCH_OF_TAKEN} FROM change WHERE record = ? AND record_table = 'reading' AND after IS NULL
    ORDER BY position DESC LIMIT 1"""
_REPEATS_CHANGED = """SELECT swatch.uid FROM swatch JOIN stitch_pattern ON stitch_pattern.uid = swatch.stitch_pattern
    LEFT JOIN swatch_gauges AS kept ON kept.swatch = swatch.uid WHERE swatch.stitch_pattern = ?
    AND (kept.multiple IS NOT stitch_pattern.multiple OR kept.rows_in_repeat IS NOT stitch_pattern.rows_in_repeat)"""


def put_gauges(connection: sqlite3.Connection, uids: Sequence[str] | None = None) -> None:
    """Reckons and keeps the gauges of these swatches, or of all."""
    if uids is None:
        connection.execute("DELETE FROM swatch_gauges")
        uids = [uid for (uid,) in connection.execute("SELECT uid FROM swatch ORDER BY rowid")]
    for start in range(0, len(uids), _AT_A_TIME):
        _put(connection, swatches(connection, uids[start : start + _AT_A_TIME]))


_AT_A_TIME = 1000


def _put(connection: sqlite3.Connection, some: Iterable[Swatch]) -> None:
    connection.executemany(
        """INSERT INTO swatch_gauges (swatch, arithmetic, multiple, rows_in_repeat, sums) VALUES (?, ?, ?, ?, ?)
        ON CONFLICT (swatch) DO UPDATE SET arithmetic = excluded.arithmetic, multiple = excluded.multiple,
        rows_in_repeat = excluded.rows_in_repeat, sums = excluded.sums""",
        ((swatch.uid, *row_of_gauges(swatch)) for swatch in some),
    )


_numbers = attrgetter(*(field.name for field in fields(GaugeSums)))


def row_of_gauges(swatch: Swatch) -> tuple[int, int | None, int | None, str]:
    """What is kept of a swatch: the version of the arithmetic, the repeats it went by, and the sums of each gauge as JSON."""
    sums = [[*key, *_numbers(one)] for key, one in gauge_sums_of(swatch).items()]
    pattern = swatch.pattern
    repeats = (pattern.multiple, pattern.rows_in_repeat) if pattern else (None, None)
    return (ARITHMETIC, *repeats, json.dumps(sums, separators=(",", ":")))


def gauges_in(connection: sqlite3.Connection, uids: Sequence[str], assumed: Assumptions) -> dict[str, Gauges]:
    """Every gauge of each of these swatches, as ``gauges_of`` gives them, but without the deviations of single readings."""
    found: dict[str, Gauges] = {}
    with as_damage("The gauges kept of a swatch"):
        for swatch, arithmetic, text in rows_of(connection, "swatch_gauges", "swatch", ("swatch", "arithmetic", "sums"), uids):
            if arithmetic == ARITHMETIC:
                sums = {(Condition(one[0]), Direction(one[1])): GaugeSums(*one[2:]) for one in json.loads(text)}
                if all(one.holds(assumed) for one in sums.values()):
                    found[swatch] = {key: one.gauge(assumed) for key, one in sums.items()}
    missing = [uid for uid in uids if uid not in found]
    for swatch in swatches(connection, missing) if missing else ():
        found[swatch.uid] = gauges_of(swatch, assumed)
    return found
