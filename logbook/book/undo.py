"""Undo and redo of everything, also after reopening. An undo is itself an action, so that history is never rewritten."""

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass

from logbook.book.changes import Writing, changes_of_action
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
    """Replays the list of actions: a new one makes what was undone final. Raises DamagedError if it does not hang together."""
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
                raise DamagedError(f"its list of actions does not hang together at {at}")
            give.append(take.pop())
    return UndoState(tuple(done), tuple(undone))


def undo(book: Logbook) -> Action:
    """Undoes the last action and says which it was. Raises RefusedError if there is nothing to undo."""
    with book.reading() as connection:
        state = undo_state(connection)
    if not state.done:
        raise RefusedError("There is nothing to undo.")
    action = state.done[-1]
    with book.writing(f"undo: {action.label}", "undo", action.uid) as writing:
        _require_last(writing.connection, action, undone=False)
        for change in reversed(changes_of_action(writing.connection, action.uid)):
            _put_back(writing, change.table, change.record, change.before)
    return action


def redo(book: Logbook) -> Action:
    """Does again what was undone last. Raises RefusedError if there is nothing to redo."""
    with book.reading() as connection:
        state = undo_state(connection)
    if not state.undone:
        raise RefusedError("There is nothing to redo.")
    action = state.undone[-1]
    with book.writing(f"redo: {action.label}", "redo", action.uid) as writing:
        _require_last(writing.connection, action, undone=True)
        for change in changes_of_action(writing.connection, action.uid):
            _put_back(writing, change.table, change.record, change.after)
    return action


def _require_last(connection: sqlite3.Connection, action: Action, *, undone: bool) -> None:
    """Another window may have written between the look and the write."""
    state = undo_state(connection)
    stack: Iterable[Action] = state.undone if undone else state.done
    if action not in list(stack)[-1:]:
        raise RefusedError("Another window has just changed this logbook: look at what is there now, then try again.")


def _put_back(writing: Writing, table: str, record: str, values: dict[str, object] | None) -> None:
    if values is None:
        writing.remove(table, record)
    else:
        writing.put(table, record, values)
