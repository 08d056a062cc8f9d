"""The log as rows of values straight from the file: no record is made of what is only written down again."""

import sqlite3
from collections.abc import Iterator

from logbook.book.swatch_lists import WORKED_OF
from logbook.book.trouble import as_damage
from logbook.craft.swatches.fields import FIELDS, LogField, Owner

_TABLES = {Owner.SWATCH: "swatch", Owner.YARN: "yarn", Owner.PATTERN: "stitch_pattern"}
_READINGS = [place for place, field in enumerate(FIELDS) if field.owner is Owner.READINGS]
_FIRST = _READINGS[0]
_COUNTED = {"stitches": ("stitches", "repeats"), "rows": ("rows", "row repeats")}
_PLACES = {
    f"{FIELDS[place].condition} {counted}": place - _FIRST
    for place in _READINGS
    for counted in _COUNTED[str(FIELDS[place].direction)]
}


def _expression(field: LogField) -> str:
    column = f"{_TABLES[field.owner]}.{field.attribute}"
    if field.in_cm:
        return f"{column} / 10"
    return f"coalesce({column}, '')" if field.empty == "" else column


_ROWS = f"""SELECT swatch.rowid, (swatch.yarn IS NOT NULL AND yarn.uid IS NULL)
    OR (swatch.stitch_pattern IS NOT NULL AND stitch_pattern.uid IS NULL),
    {", ".join(_expression(field) for field in FIELDS if field.owner is not Owner.READINGS)}
    FROM {WORKED_OF}
    WHERE swatch.rowid > ? ORDER BY swatch.rowid LIMIT ?"""
_TEXTS = """SELECT swatch.rowid, reading.condition || ' ' || reading.counted, reading.text
    FROM swatch JOIN reading ON reading.swatch = swatch.uid
    WHERE swatch.rowid > ? AND swatch.rowid <= ? ORDER BY swatch.rowid, reading.place"""

Row = list[str | int | float | None]


def log_rows(connection: sqlite3.Connection, after: int, most: int) -> tuple[int, list[Row]]:
    """The next ``most`` swatches in the order they were logged, behind the place ``after``; the place of the last of them first.

    A row has a value for each of ``FIELDS``: text, a number (a clip in cm) or None; readings as they were typed, parted by ``;``.
    """
    with as_damage("What a swatch was worked of"):
        found = connection.execute(_ROWS, (after, most)).fetchall()
        if not found:
            return after, []
        if any(lost for _, lost, *_ in found):
            raise ValueError("a yarn or a stitch pattern is not there")
        texts = _reading_texts(connection, after, found[-1][0])
        none = [""] * len(_READINGS)
        return found[-1][0], [[*own[:_FIRST], *texts.get(place, none), *own[_FIRST:]] for place, _, *own in found]


def _reading_texts(connection: sqlite3.Connection, after: int, last: int) -> dict[int, list[str]]:
    """Of each swatch with readings the texts of its columns for readings."""
    found: dict[int, list[str]] = {}
    current = -1
    texts: list[str] = []
    for swatch, key, text in connection.execute(_TEXTS, (after, last)):
        if swatch != current:
            current = swatch
            texts = found[swatch] = [""] * len(_READINGS)
        if key not in _PLACES:
            raise ValueError(f"“{key}” is no state and unit")
        place = _PLACES[key]
        texts[place] = f"{texts[place]}; {text}" if texts[place] else text
    return found


def has_pictures(connection: sqlite3.Connection) -> bool:
    """Whether any swatch has."""
    return connection.execute("SELECT 1 FROM swatch WHERE pictures <> '' LIMIT 1").fetchone() is not None


def picture_texts(connection: sqlite3.Connection) -> Iterator[str]:
    """What names the pictures of each swatch that has any."""
    return (text for (text,) in connection.execute("SELECT pictures FROM swatch WHERE pictures <> '' ORDER BY rowid"))
