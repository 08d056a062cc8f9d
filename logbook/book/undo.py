"""Undo and redo of everything, also after reopening. An undo is itself an action, so that history is never rewritten."""

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Literal

from logbook.book.changes import Row, Writing, changes_of_action
from logbook.book.logbook import Logbook
from logbook.book.trouble import DamagedError
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True)
class Action:
    """One thing the user did."""

    uid: str
    at: str
    label: str


@dataclass(frozen=True, slots=True)
class UndoState:
    """What can be undone and redone, the next one last."""

    done: tuple[Action, ...]
    undone: tuple[Action, ...]


def undo_state(connection: sqlite3.Connection) -> UndoState:
    """All that can be turned, by replaying the whole list of actions: a new one makes what was undone final.

    Long for who only wants the next one. Raises DamagedError if it does not hang together.
    """
    rows = connection.execute("SELECT uid, at, label, kind, of FROM action ORDER BY position")
    done: list[Action] = []
    undone: list[Action] = []
    for uid, at, label, kind, of in rows:
        if kind == "do":
            done.append(Action(uid, at, label))
            undone.clear()
        else:
            take, give = (done, undone) if kind == "undo" else (undone, done)
            if not take or take[-1].uid != of:
                raise DamagedError(f"its list of changes is broken at {at}")
            give.append(take.pop())
    return UndoState(tuple(done), tuple(undone))


def undo(book: Logbook) -> Action:
    """Undoes the last action and says which it was. Raises RefusedError if there is nothing to undo."""
    with _turning(book, "undo") as (writing, action):
        changes = reversed(changes_of_action(writing.connection, action.uid))
        _put_through(writing, ((change.table, change.record, change.before) for change in changes))
    return action


def redo(book: Logbook) -> Action:
    """Does again what was undone last. Raises RefusedError if there is nothing to redo."""
    with _turning(book, "redo") as (writing, action):
        changes = changes_of_action(writing.connection, action.uid)
        _put_through(writing, ((change.table, change.record, change.after) for change in changes))
    return action


def next_action(book: Logbook, kind: Literal["undo", "redo"]) -> Action | None:
    """What would be undone or done again next; None if there is nothing."""
    with book.reading() as connection:
        return _next(connection, kind)


def _put_through(writing: Writing, states: Iterable[tuple[str, str, Row | None]]) -> None:
    """Takes records (table, uid) through states one by one: a merge may end where it began, and is turned all the same."""
    of_record: dict[tuple[str, str], list[tuple[Row | None, None]]] = {}
    for table, uid, state in states:
        of_record.setdefault((table, uid), []).append((state, None))
    writing.put_together((*place, through) for place, through in of_record.items())


@contextmanager
def _turning(book: Logbook, kind: Literal["undo", "redo"]) -> Iterator[tuple[Writing, Action]]:
    """The writing of the undo or redo, and the action that is the next for it."""
    action = next_action(book, kind)
    if action is None:
        raise RefusedError(f"There is nothing to {kind}.")
    with book.writing(f"{kind}: {action.label}", kind, action.uid) as writing:
        if _next(writing.connection, kind) != action:  # another window may have written between the look and the write
            raise RefusedError("Another window has just changed this logbook: look at what is there now, then try again.")
        yield writing, action


def _next(connection: sqlite3.Connection, kind: Literal["undo", "redo"]) -> Action | None:
    """The next action to undo or redo, from the end of the list and not from its beginning."""
    last = _before(connection, None)
    return None if last is None else (_last_done if kind == "undo" else _last_undone)(connection, last)


_Listed = tuple[int, str, str, str, str, str | None]
"""An action as it is listed: its position, uid, time, label, kind, and the uid of the action it turns."""
_LISTED = "SELECT position, uid, at, label, kind, of FROM action"


def _last_done(connection: sqlite3.Connection, last: _Listed | None) -> Action | None:
    """What could be undone when ``last`` was the last action.

    What was undone leaves what had been done before it; that is so whenever it was done again and undone again.
    """
    while last is not None:
        turned = _turned(connection, last)
        if last[4] != "undo":
            return Action(*turned[1:4])
        last = _before(connection, turned[0])
    return None


def _last_undone(connection: sqlite3.Connection, last: _Listed | None) -> Action | None:
    """What could be done again when ``last`` was the last action.

    What was done again leaves what had been undone before the last undoing of it.
    """
    while last is not None and last[4] != "do":
        turned = _turned(connection, last)
        if last[4] == "undo":
            return Action(*turned[1:4])
        undoing: _Listed | None = connection.execute(
            f"{_LISTED} WHERE kind = 'undo' AND of = ? AND position < ? ORDER BY position DESC LIMIT 1", (turned[1], last[0])
        ).fetchone()
        if undoing is None:
            raise DamagedError(f"its list of changes is broken at {last[2]}")
        last = _before(connection, undoing[0])
    return None


def _before(connection: sqlite3.Connection, position: int | None) -> _Listed | None:
    """The action before that position; with None the last of all."""
    where, values = ("", ()) if position is None else ("WHERE position < ?", (position,))
    found: _Listed | None = connection.execute(f"{_LISTED} {where} ORDER BY position DESC LIMIT 1", values).fetchone()
    return found


def _turned(connection: sqlite3.Connection, action: _Listed) -> _Listed:
    """The action that one undid or did again; one of the user's own is itself. Raises DamagedError if there is none before it."""
    if action[4] == "do":
        return action
    found: _Listed | None = connection.execute(f"{_LISTED} WHERE uid = ? AND kind = 'do'", (action[5],)).fetchone()
    if found is None or found[0] >= action[0]:
        raise DamagedError(f"its list of changes is broken at {action[2]}")
    return found
