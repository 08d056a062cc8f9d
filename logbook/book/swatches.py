"""Swatches, yarns and stitch patterns: from the file's rows to the records of the craft and back."""

import json
import sqlite3
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from typing import Any, TypeVar

from logbook.book.changes import Writing, new_uid
from logbook.book.rows import rows_of
from logbook.book.tables import RECORDS
from logbook.book.trouble import as_damage
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import Counted, Reading, as_read_today
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError

_Record = TypeVar("_Record", Yarn, StitchPattern)


def yarns(connection: sqlite3.Connection) -> dict[str, Yarn]:
    """All yarns by uid, in the order of their names."""
    return _records(connection, "yarn", Yarn)


def stitch_patterns(connection: sqlite3.Connection) -> dict[str, StitchPattern]:
    """All stitch patterns by uid, in the order of their names."""
    return _records(connection, "stitch_pattern", StitchPattern)


def yarn_named(connection: sqlite3.Connection, name: str) -> Yarn | None:
    """The yarn of that name; None if there is none."""
    return next(iter(_records(connection, "yarn", Yarn, [name], "name").values()), None)


def pattern_named(connection: sqlite3.Connection, name: str) -> StitchPattern | None:
    """The stitch pattern of that name; None if there is none."""
    return next(iter(_records(connection, "stitch_pattern", StitchPattern, [name], "name").values()), None)


def _records(
    connection: sqlite3.Connection, table: str, kind: type[_Record], wanted: Sequence[str] | None = None, key: str = "uid"
) -> dict[str, _Record]:
    """All of a table by uid, or those whose ``key`` is wanted."""
    rows = rows_of(connection, table, key, ("uid", *RECORDS[table]), wanted, "name")
    return {uid: kind(uid=uid, **values) for uid, values in ((row[0], _values(table, row[1:])) for row in rows)}


def _values(table: str, row: Sequence[Any]) -> dict[str, Any]:
    return dict(zip(RECORDS[table], row, strict=True))


def swatches(connection: sqlite3.Connection, uids: Sequence[str] | None = None, *, with_readings: bool = True) -> list[Swatch]:
    """The swatches of ``uids`` in that order (those not there are left out); with None all, in the order they were logged."""
    readings = _readings(connection, uids) if with_readings else {}
    columns = RECORDS["swatch"]
    found: dict[str, Swatch] = {}
    rows = rows_of(connection, "swatch", "uid", ("uid", *columns), uids)
    worked_of = [
        None if uids is None else sorted({row[place] for row in rows if row[place]})
        for place in (columns.index("yarn") + 1, columns.index("stitch_pattern") + 1)
    ]
    known_yarns = _records(connection, "yarn", Yarn, worked_of[0])
    known_patterns = _records(connection, "stitch_pattern", StitchPattern, worked_of[1])
    with as_damage("What a swatch was worked of"):
        for uid, *rest in rows:
            values = dict(zip(columns, rest, strict=True))
            yarn, pattern = values.pop("yarn"), values.pop("stitch_pattern")
            found[uid] = Swatch(
                uid=uid,
                yarn=_known(known_yarns, yarn),
                pattern=_known(known_patterns, pattern),
                readings=tuple(readings.get(uid, ())),
                **values,
            )
    return list(found.values()) if uids is None else [found[uid] for uid in uids if uid in found]


def _known(records: Mapping[str, _Record], uid: str | None) -> _Record | None:
    if not uid:
        return None
    if uid not in records:
        raise ValueError(f"{uid} is not there")
    return records[uid]


def swatch_of_tag(connection: sqlite3.Connection, tag: str) -> Swatch:
    """The swatch with that tag. Raises RefusedError, naming it, if there is none."""
    row = connection.execute("SELECT uid FROM swatch WHERE tag = ?", (tag.strip(),)).fetchone()
    if row is None:
        raise RefusedError(f"There is no swatch with the tag “{tag.strip()}”: look its tag up with find.")
    return swatches(connection, [row[0]])[0]


def swatch_there(connection: sqlite3.Connection, uid: str) -> Swatch:
    """The swatch of that uid. Raises RefusedError if it is not there any more."""
    found = swatches(connection, [uid])
    if not found:
        raise RefusedError("That swatch is not in the logbook any more: choose another one.")
    return found[0]


def put_yarn(writing: Writing, yarn: Yarn) -> str:
    """Writes a yarn and returns its uid, a new one if it had none. Raises RefusedError if another yarn has its name."""
    uid = yarn.uid or new_uid()
    _require_free(writing.connection, "yarn", "name", yarn.name, uid, "yarn of that name")
    writing.put("yarn", uid, {column: getattr(yarn, column) for column in RECORDS["yarn"]})
    return uid


def put_stitch_pattern(writing: Writing, pattern: StitchPattern) -> str:
    """Writes a stitch pattern and returns its uid. Raises RefusedError if its name is taken or its chains disagree."""
    pattern.extra()
    uid = pattern.uid or new_uid()
    _require_free(writing.connection, "stitch_pattern", "name", pattern.name, uid, "stitch pattern of that name")
    writing.put("stitch_pattern", uid, {column: getattr(pattern, column) for column in RECORDS["stitch_pattern"]})
    return uid


def put_swatch(writing: Writing, swatch: Swatch) -> str:
    """Writes a swatch with its readings and returns its uid.

    Raises RefusedError if another swatch has its tag, or its yarn or stitch pattern is not in the logbook (any more).
    """
    uid = swatch.uid or new_uid()
    _require_there(writing.connection, "yarn", swatch.yarn)
    _require_there(writing.connection, "stitch_pattern", swatch.pattern)
    _require_free(writing.connection, "swatch", "tag", swatch.tag, uid, "swatch with that tag")
    writing.put("swatch", uid, _swatch_row(swatch))
    _put_readings(writing, uid, swatch.readings)
    return uid


def put_new_swatch(writing: Writing, swatch: Swatch) -> None:
    """Writes a swatch that is known to be new: neither its uid nor its tag is there, but its yarn and stitch pattern are."""
    uid = swatch.uid or new_uid()
    writing.put_new("swatch", [(uid, _swatch_row(swatch))])
    rows = [_reading_row(uid, place, taken) for place, taken in enumerate(swatch.readings)]
    writing.put_new("reading", [(new_uid(), row) for row in rows])


def _swatch_row(swatch: Swatch) -> dict[str, Any]:
    values = {column: getattr(swatch, column) for column in RECORDS["swatch"] if column not in ("yarn", "stitch_pattern")}
    values["yarn"] = swatch.yarn.uid if swatch.yarn else None
    values["stitch_pattern"] = swatch.pattern.uid if swatch.pattern else None
    return values


def remove_swatch(writing: Writing, uid: str) -> None:
    """Takes a swatch and its readings out. Raises RefusedError while a piece is reckoned from it."""
    if pieces := [*_pieces_of(writing.connection, uid), *_garments_of(writing.connection, uid)][:3]:
        raise RefusedError(f"Pieces are worked out from it ({', '.join(pieces)}): give those another swatch first.")
    _put_readings(writing, uid, ())
    writing.remove("swatch", uid)


def _pieces_of(connection: sqlite3.Connection, swatch: str) -> list[str]:
    """The names of the planned and made pieces that a swatch is needed for."""
    rows = connection.execute(
        """SELECT name FROM piece WHERE swatch = :swatch OR edge_swatch = :swatch
        UNION SELECT name FROM made_piece WHERE swatch = :swatch ORDER BY name""",
        {"swatch": swatch},
    )
    return [name for (name,) in rows]


def _garments_of(connection: sqlite3.Connection, swatch: str) -> list[str]:
    """The names of the garments that a swatch is needed for."""
    rows = connection.execute("SELECT name FROM garment WHERE instr(plan, ?) ORDER BY name", (json.dumps(swatch),))
    return [name for (name,) in rows]


def remove_stitch_pattern(writing: Writing, uid: str) -> None:
    """Takes a stitch pattern out. Raises RefusedError while a swatch uses it."""
    _remove_unused(writing, "stitch_pattern", uid)


def remove_yarn(writing: Writing, uid: str) -> None:
    """Takes a yarn out. Raises RefusedError while a swatch uses it."""
    _remove_unused(writing, "yarn", uid)


def _remove_unused(writing: Writing, table: str, uid: str) -> None:
    users = writing.connection.execute(f"SELECT tag FROM swatch WHERE {table} = ? ORDER BY tag LIMIT 3", (uid,))
    if tags := [tag for (tag,) in users]:
        raise RefusedError(f"Swatches still use it ({', '.join(tags)}): give those another one first.")
    writing.remove(table, uid)


def _put_readings(writing: Writing, swatch: str, readings: Iterable[TakenReading]) -> None:
    """Readings keep their uid by their place in the list, so that history can tell an edit from a new one."""
    rows = writing.connection.execute("SELECT uid FROM reading WHERE swatch = ? ORDER BY place", (swatch,)).fetchall()
    known = [uid for (uid,) in rows]
    wanted = list(readings)
    for place, taken in enumerate(wanted):
        uid = known[place] if place < len(known) else new_uid()
        writing.put("reading", uid, _reading_row(swatch, place, taken))
    for uid in known[len(wanted) :]:
        writing.remove("reading", uid)


def _reading_row(swatch: str, place: int, taken: TakenReading) -> dict[str, Any]:
    one = taken.reading
    return {
        "swatch": swatch,
        "place": place,
        "condition": taken.condition.value,
        "number": one.number,
        "counted": one.counted.value,
        "length_mm": one.length_mm,
        "is_count": one.is_count,
        "inches": one.inches,
        "finest": one.finest,
        "text": one.text,
    }


def _readings(connection: sqlite3.Connection, uids: Sequence[str] | None) -> dict[str, list[TakenReading]]:
    columns = ("swatch", "condition", "number", "counted", "length_mm", "is_count", "inches", "finest", "text")
    found: dict[str, list[TakenReading]] = defaultdict(list)
    rows = rows_of(connection, "reading", "swatch", columns, uids, "swatch, place")
    with as_damage("A reading"):
        for swatch, condition, number, counted, length, is_count, inches, finest, text in rows:
            reading = Reading(number, Counted(counted), length, bool(is_count), bool(inches), finest, text)
            found[swatch].append(TakenReading(Condition(condition), as_read_today(reading)))
    return found


def _require_there(connection: sqlite3.Connection, table: str, record: Yarn | StitchPattern | None) -> None:
    if record and not connection.execute(f"SELECT 1 FROM {table} WHERE uid = ?", (record.uid,)).fetchone():
        raise RefusedError(f"The {table.replace('_', ' ')} “{record.name}” is not in the logbook any more: choose it again.")


def _require_free(connection: sqlite3.Connection, table: str, column: str, value: str, uid: str, what: str) -> None:
    if not value.strip():
        raise RefusedError(f"A {table.replace('_', ' ')} needs a {column}: type one and save again.")
    row = connection.execute(f"SELECT uid FROM {table} WHERE {column} = ?", (value,)).fetchone()
    if row is not None and row[0] != uid:
        raise RefusedError(f"There is another {what}, “{value}”: choose another {column}.")
