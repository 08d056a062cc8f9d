"""Undo and redo of everything, also after reopening. An undo is itself an action, so that history is never rewritten."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Literal

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
    with _turning(book, "undo") as (writing, action):
        first = {(change.table, change.record): change for change in reversed(changes_of_action(writing.connection, action.uid))}
        writing.put_together((change.table, change.record, [(change.before, None)]) for change in first.values())
    return action


def redo(book: Logbook) -> Action:
    """Does again what was undone last. Raises RefusedError if there is nothing to redo."""
    with _turning(book, "redo") as (writing, action):
        last = {(change.table, change.record): change for change in changes_of_action(writing.connection, action.uid)}
        writing.put_together((change.table, change.record, [(change.after, None)]) for change in last.values())
    return action


@contextmanager
def _turning(book: Logbook, kind: Literal["undo", "redo"]) -> Iterator[tuple[Writing, Action]]:
    """The writing of the undo or redo, and the action that is the next for it."""
    with book.reading() as connection:
        action = _next(connection, kind)
    if action is None:
        raise RefusedError(f"There is nothing to {kind}.")
    with book.writing(f"{kind}: {action.label}", kind, action.uid) as writing:
        if _next(writing.connection, kind) != action:  # another window may have written between the look and the write
            raise RefusedError("Another window has just changed this logbook: look at what is there now, then try again.")
        yield writing, action


def _next(connection: sqlite3.Connection, kind: Literal["undo", "redo"]) -> Action | None:
    state = undo_state(connection)
    actions = state.done if kind == "undo" else state.undone
    return actions[-1] if actions else None
