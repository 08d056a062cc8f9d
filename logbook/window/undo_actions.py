"""Undo, redo, and what has happened to a record."""

import tkinter as tk
from collections.abc import Callable
from typing import TYPE_CHECKING, Literal

from logbook.errors import LogbookError, RefusedError
from logbook.window.open_window import OpenWindow

if TYPE_CHECKING:
    from logbook.tasks.undoing import Action


class UndoActions:
    """The entries of the Edit menu for the logbook shown."""

    menu: tk.Menu

    def __init__(self, window: OpenWindow) -> None:
        self._window = window

    def undo(self) -> None:
        """Takes the last change back."""
        from logbook.tasks.undoing import undo

        self._step(undo, "Undone", "undo")

    def redo(self) -> None:
        """Does again what was taken back last."""
        from logbook.tasks.undoing import redo

        self._step(redo, "Redone", "redo")

    def history(self) -> None:
        """Shows the changes of the record in hand."""
        from logbook.window.history_dialog import show_history

        page, session = self._window.page_in_hand(), self._window.session
        record = page.record_in_hand() if page is not None else None
        if session is None or record is None:
            self._window.say("Choose a saved record first: then its changes are listed here.")
        else:
            show_history(self._window.root, self._window.look, session, *record)

    def can_undo(self) -> bool:
        """Whether there is something to undo."""
        return self._can("undo")

    def can_redo(self) -> bool:
        """Whether there is something to do again."""
        return self._can("redo")

    def has_history(self) -> bool:
        """Whether a saved record is in hand."""
        page = self._window.page_in_hand()
        return self._window.session is not None and page is not None and page.record_in_hand() is not None

    def _can(self, kind: Literal["undo", "redo"]) -> bool:
        """Where that can't be told it is left to be tried, which says why."""
        session = self._window.session
        if session is None:
            return False
        from logbook.tasks.undoing import next_action

        try:
            return next_action(session.book, kind) is not None
        except LogbookError:
            return True

    def _typed(self) -> int:
        """In how many forms something is typed that is not saved."""
        return sum(1 for page in self._window.pages for _ in page.drafts())

    def _step(self, step: "Callable[..., Action]", done: str, kind: Literal["undo", "redo"]) -> None:
        """With something typed and not saved, what was chosen for that is all that is done."""
        session = self._window.session
        if session is None:
            return
        before, typed = session.writes, self._typed()
        if not self._window.settle():
            return
        if session.writes != before:
            self._window.say("What you typed is saved now. Do it once more to undo or redo.")
            return
        if self._typed() != typed:
            self._window.say(f"What you typed is discarded, and nothing else yet. To {kind} a saved change, do it once more.")
            return
        try:
            action = session.write(lambda: step(session.book))
        except RefusedError as error:
            self._window.say(str(error))
            return
        session.records_changed(self)
        self._window.say(f"{done}: {action.label}.")
