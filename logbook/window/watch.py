"""Watches over the logbook that is open: others who write to it, its file gone or replaced, damage found after opening."""

import tkinter as tk
from functools import partial
from typing import TYPE_CHECKING

from logbook.errors import LogbookError, RefusedError
from logbook.pages.session import Session
from logbook.tasks.keeping import DamagedError, ReplacedError, WrittenOverError, check_thoroughly
from logbook.window.open_window import OpenWindow

if TYPE_CHECKING:
    from logbook.window.background import Background

CHECK_AFTER_MS = 1500
"""The thorough check follows the look at the tables when the window is there and has come to rest."""


class Watch:
    """The watch of one window."""

    def __init__(self, window: OpenWindow) -> None:
        self._window = window
        self._timer = ""
        self._check: Background[int] | None = None
        self._told_gone: Session | None = None
        self._dealing = False
        window.root.bind("<FocusIn>", self._come_back, add="+")

    def book_shown(self) -> None:
        """Checks the logbook just shown thoroughly, soon and beside the window."""
        if self._timer:
            self._window.root.after_cancel(self._timer)
        self._timer = self._window.root.after(CHECK_AFTER_MS, self._check_thoroughly)

    def end(self) -> None:
        """Stops a check that is under way, and waits for that: its thread must not outlive the window."""
        if self._check is not None:
            self._check.cancel()
            self._check.join()

    def deal_with(self, error: LogbookError, *, again: bool = False) -> bool:
        """Offers what can be done when the logbook under the window is damaged, gone or another; False: it is none of these.

        What was declined once is offered no more, unless ``again``: the user asks for a way out.
        """
        session = self._window.session
        if session is None or self._dealing or (session.damage and not again):
            return False
        self._dealing = True
        try:
            if isinstance(error, DamagedError | WrittenOverError):
                self._offer_backup(session, error)
            elif isinstance(error, ReplacedError):
                self._offer_copy(session, error)
            else:
                return False
        finally:
            self._dealing = False
        return True

    def _come_back(self, event: "tk.Event[tk.Misc]") -> None:
        session = self._window.session
        if session is None or event.widget is not self._window.root or session.damage or session.waiting:
            return
        try:
            session.notice_others()
        except RefusedError as error:
            self._window.say(str(error))
            self.deal_with(error)

    def _offer_backup(self, session: Session, error: DamagedError | WrittenOverError) -> None:
        from logbook.window.rescue import offer_rescue

        session.damage = str(error)
        self._window.say(session.damage)
        restored = offer_rescue(self._window.root, self._window.look, session.book.path, error, session.book.uid)
        if restored is not None:
            self._window.go_on_with(restored)

    def _offer_copy(self, session: Session, error: ReplacedError) -> None:
        if self._told_gone is session:
            self._window.say(str(error))
            return
        from logbook.window.message import Answer, ask
        from logbook.window.save_copy import save_copy

        self._told_gone = session
        answers = [Answer("copy", "&Save a copy…"), Answer("leave", "&Not now")]
        details = "What is typed stays where it is."
        if ask(self._window.root, self._window.look, str(error), answers, "copy", "leave", details) == "copy":
            save_copy(self._window)

    def _check_thoroughly(self) -> None:
        from logbook.window.background import Background  # what is imported here, the start need not wait for

        self._timer = ""
        session = self._window.session
        if session is not None and self._check is None:
            path = session.book.path
            failed = partial(self._check_failed, session)
            self._check = Background(
                self._window.root,
                lambda report: check_thoroughly(path, go_on=lambda: report(0, 0)),
                lambda _: self._checked(),
                failed,
                lambda *_: None,
            )

    def _checked(self) -> None:
        self._check = None

    def _check_failed(self, session: Session, error: Exception) -> None:
        self._checked()
        if not isinstance(error, RefusedError):
            raise error
        if session is not self._window.session:
            self._window.say(str(error))
        elif not self.deal_with(_gone(session) or error):
            self._window.say(f"The thorough check could not be done: {error}")


def _gone(session: Session) -> ReplacedError | None:
    """What was checked may be another file by now than the one that is open."""
    try:
        with session.book.reading():
            return None
    except ReplacedError as error:
        return error
    except RefusedError:
        return None
