"""Undo and redo, and the history of a record in words."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from logbook.book import swatches as stored
from logbook.book.changes import Change, changes_of_record, readings_of_swatch
from logbook.book.logbook import Logbook
from logbook.book.undo import Action, redo, undo
from logbook.craft.stitch_pattern import StitchPattern
from logbook.craft.yarn import Yarn

__all__ = ["Action", "HistoryLine", "history", "redo", "undo"]


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
        named: list[Yarn | StitchPattern] = [*stored.yarns(connection).values(), *stored.stitch_patterns(connection).values()]
    names = {one.uid: one.name for one in named}
    lines = [line for change in changes for line in _lines(change, names)]
    return sorted(lines, key=lambda line: line.at, reverse=True)


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
        if old != new and not (old in (None, "") and new in (None, "")):
            yield HistoryLine(change.at, change.label, column.replace("_", " "), _shown(old, names), _shown(new, names))


def _shown(value: Any, names: dict[str, str]) -> str:
    if value is None:
        return ""
    return names.get(value, value) if isinstance(value, str) else f"{value:g}"
