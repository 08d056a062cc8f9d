"""Undo and redo, and the history of a record in words."""

import json
import sqlite3
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from logbook.book.changes import Change, changes_of_record, readings_of_swatch
from logbook.book.logbook import Logbook
from logbook.book.undo import Action, next_action, redo, undo
from logbook.craft.swatches.picture_names import picture_names
from logbook.craft.words.counting import counted
from logbook.craft.words.dates import date_words
from logbook.craft.words.numbers import in_mark
from logbook.tasks.garment_history import plan_changes

__all__ = ["Action", "HistoryLine", "history", "next_action", "redo", "undo"]


@dataclass(frozen=True, slots=True)
class HistoryLine:
    """One field that changed: when (ISO, UTC), by which action, which field, and what was and is there."""

    at: str
    action: str
    field: str
    before: str
    after: str


def history(book: Logbook, record: str) -> list[HistoryLine]:
    """Every change of a record and, of a swatch, of its readings; the newest first."""
    with book.reading() as connection:
        changes = list(changes_of_record(connection, record))
        for reading in readings_of_swatch(connection, record):
            changes.extend(changes_of_record(connection, reading))
        names = _names(connection, changes)
        if any(change.table == "garment" for change in changes):
            names |= dict(connection.execute("SELECT uid, tag FROM swatch"))
    lines = [line for change in changes for line in _lines(change, names)]
    return sorted(lines, key=lambda line: line.at, reverse=True)


def _names(connection: sqlite3.Connection, changes: Iterable[Change]) -> dict[str, str]:
    """The names of the yarns and stitch patterns that ``changes`` speak of by uid, also of those that are gone."""
    rows = [row for change in changes for row in (change.before, change.after) if row and change.table == "swatch"]
    uids = {row[table] for row in rows for table in ("yarn", "stitch_pattern") if row[table]}
    last = {uid: changes_of_record(connection, uid)[-1] for uid in uids}
    return {uid: (change.after or change.before or {})["name"] for uid, change in last.items()}


def _lines(change: Change, names: dict[str, str]) -> Iterator[HistoryLine]:
    before, after = change.before or {}, change.after or {}
    if change.table == "reading":
        old, new = before.get("text", ""), after.get("text", "")
        where = (after or before)["condition"]
        if old != new or before.get("condition") != after.get("condition"):
            yield HistoryLine(change.at, change.label, f"reading, {where}", old, new)
        return
    for column in after or before:
        old, new = before.get(column), after.get(column)
        if change.table == "garment" and column == "plan":
            for field, was, is_now in plan_changes(old or "", new or "", names):
                yield HistoryLine(change.at, change.label, field, was, is_now)
            continue
        if change.table == "garment" and column == "published":
            old, new = (date_words(json.loads(text)["date"]) if text else "" for text in (old, new))
        if column == "date":
            old, new = (date_words(day or "") for day in (old, new))
        if column == "pictures" and old != new:
            old, new = _pictures(old or "", ""), _pictures(new or "", old or "")
        if old != new and not (old in (None, "") and new in (None, "")):
            yield HistoryLine(change.at, change.label, column.replace("_", " "), _shown(old, names), _shown(new, names))


def _pictures(names: str, before: str) -> str:
    """How many; that they are others, where there are as many."""
    now, then = picture_names(names), picture_names(before)
    return counted(len(now), "other picture" if len(now) == len(then) else "picture") if now else ""


def _shown(value: Any, names: dict[str, str]) -> str:
    if value is None:
        return ""
    return names.get(value, value) if isinstance(value, str) else in_mark(f"{value:g}")
