"""Two logbooks brought together: what a merge would do, what must be asked, and doing it in one step of undo."""

import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from logbook.book.logbook import Logbook, open_logbook
from logbook.book.merge_plan import Conflict, Merging, Point, Prefer, Side, Taken, undecided
from logbook.book.merge_sides import MERGE
from logbook.book.merging import carry_out, plan_merge
from logbook.book.pictures import bring_along, names_in
from logbook.book.tables import NAMES, PARTS
from logbook.craft.words.dates import date_words
from logbook.craft.words.numbers import in_mark
from logbook.errors import RefusedError

__all__ = ["MergeAnswer", "Point", "Prefer", "Question", "Side", "merge"]


@dataclass(frozen=True, slots=True)
class Question:
    """One thing both sides have otherwise, in words; ``point`` is what an answer to it is given for."""

    record: str
    field: str
    ours: str
    theirs: str
    point: Point


@dataclass(frozen=True, slots=True)
class MergeAnswer:
    """What a merge did, or would do: records added, changed, deleted, alike; what must be asked; whether it was written."""

    added: int
    changed: int
    deleted: int
    alike: int
    questions: tuple[Question, ...]
    written: bool


def merge(book: Logbook, other: Path, prefer: Prefer | None = None) -> MergeAnswer:
    """Merges the logbook at ``other`` into ``book``. Nothing is written while anything must be asked that ``prefer`` leaves open:
    the questions are then those; else they are all that were decided.

    Raises RefusedError, in one sentence, if the other one can't be read or is the same file; it is never written.
    """
    if book.is_at(other):
        raise RefusedError(f"“{other.name}” is the logbook that is open: choose the other one.")
    with _copy_of(other) as theirs:
        with book.reading() as connection, theirs.reading() as there:
            plan = plan_merge(connection, there, prefer)
            left = undecided(plan, prefer)
            questions = tuple(_question((connection, there), conflict) for conflict in left or plan.conflicts)
        if left:
            return _answer(plan, questions, written=False)
        if plan.taken:
            book.back_up_first()
            with book.writing(f"merge {other.name}", of=MERGE) as writing, theirs.reading() as there:
                plan = plan_merge(writing.connection, there, prefer)
                if undecided(plan, prefer):  # another window may have written between the look and the write
                    raise RefusedError("Another window has just changed this logbook: look at what is there now, then try again.")
                carry_out(writing, plan)
        if plan.taken:
            with theirs.reading() as there:
                pictures = names_in(there)
            bring_along(pictures, other, book.path)
        return _answer(plan, questions, written=bool(plan.taken))


@contextmanager
def _copy_of(other: Path) -> Iterator[Logbook]:
    """The other logbook, read from a copy, so that an older one can be lifted and none is ever written."""
    if not other.is_file():
        raise RefusedError(f"There is no logbook {other}: check the name.")
    with tempfile.TemporaryDirectory(prefix="logbook-merge-") as folder:
        copy = Path(folder) / other.name
        try:
            shutil.copyfile(other, copy)
            journal = other.with_name(other.name + "-journal")
            if journal.exists():
                shutil.copyfile(journal, copy.with_name(copy.name + "-journal"))
        except OSError as error:
            raise RefusedError(f"“{other.name}” could not be read ({error.strerror}).") from error
        with open_logbook(copy) as theirs:
            yield theirs


def _answer(plan: Merging, questions: tuple[Question, ...], *, written: bool) -> MergeAnswer:
    kinds: dict[tuple[str, str], str] = {}
    for one in plan.taken:
        place = _whole(one)
        kind = "changed" if place != (one.table, one.record) else _kind(one)
        if kind and kinds.get(place) in (None, "changed"):
            kinds[place] = kind
    counts = list(kinds.values())
    return MergeAnswer(
        added=counts.count("added"),
        changed=counts.count("changed"),
        deleted=counts.count("deleted"),
        alike=plan.alike,
        questions=questions,
        written=written,
    )


def _kind(one: Taken) -> str:
    if one.ours is None:
        return "added" if one.result is not None else ""
    return "deleted" if one.result is None else "changed" if one.result != one.ours else ""


def _whole(one: Taken) -> tuple[str, str]:
    """The record itself, or the one it is part of: a reading belongs to its swatch, a size to its piece."""
    column = PARTS.get(one.table)
    row = one.result or one.ours or one.theirs
    return (one.table, one.record) if column is None or row is None else (column, str(row[column]))


def _question(sides: tuple[sqlite3.Connection, ...], conflict: Conflict) -> Question:
    ours, other = conflict.ours, conflict.theirs
    field = conflict.field.replace("_", " ")
    if field and conflict.table == "assumption":
        field = _ASSUMED.get(conflict.record, conflict.record)
    if conflict.twice:
        name = str(ours[conflict.field])
        called = f"{_word(conflict.table)} “{name}”"
        return Question(called, field, f"{called} is here already", f"another {called}", conflict.point)
    record = _called(sides, conflict)
    if not conflict.field:
        return Question(
            record, "", "deleted" if ours is None else "there", "deleted" if other is None else "there", conflict.point
        )
    if field == "date":
        ours, other = (date_words(day or "") for day in (ours, other))
    return Question(record, field, _shown(ours), _shown(other), conflict.point)


def _called(sides: tuple[sqlite3.Connection, ...], conflict: Conflict) -> str:
    """``swatch LC-02``, ``yarn Fennel``; of a reading or a size that of the record it is part of as well."""
    table, parent = conflict.table, PARTS.get(conflict.table)
    if table == "assumption":
        return table
    for connection in sides:
        if parent is not None:
            whole = f"SELECT {parent} FROM {table} WHERE uid = ?"
            names = connection.execute(f"SELECT {NAMES[parent]} FROM {parent} WHERE uid = ({whole})", (conflict.record,))
            called = f"{_word(parent)} %s, {table}"
        else:
            column = NAMES.get(table, "name" if table in ("made_piece", "tester") else "uid")
            names = connection.execute(f"SELECT {column} FROM {table} WHERE uid = ?", (conflict.record,))
            called = f"{_word(table)} %s"
        if row := names.fetchone():
            return str(called % row[0])
    return _word(table)


_ASSUMED = {
    "tape_mm": "how finely a tape in cm is read (mm)",
    "tape_inch_mm": "how finely a tape in inches is read (mm)",
    "count_step": "how finely a count is read",
    "variation": "how much a fabric varies from place to place",
    "drift": "how much a finished piece differs from its swatch",
    "count_lean": "whether each maker’s own pieces are counted in",
    "reserve": "the yarn kept in reserve",
    "most_edge_stitches": "the most edge stitches at each side",
    "hourly_rate": "what an hour of work is counted at",
}


def _word(table: str) -> str:
    return table.replace("_", " ")


def _shown(value: Any) -> str:
    if value is None:
        return ""
    return in_mark(f"{value:g}") if isinstance(value, float) else str(value)
