"""Backups that nobody waits for: when the window has been idle for a minute, and when it closes."""

import time
from typing import TYPE_CHECKING

from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.tasks.error_log import error_log, write_down
from logbook.tasks.keeping import InUseError, NoBackupError
from logbook.window.open_window import OpenWindow

if TYPE_CHECKING:
    from logbook.window.background import Background

IDLE_MS = 60_000
"""How long no key and no button may have been pressed."""


class IdleBackups:
    """The backups of one window."""

    def __init__(self, window: OpenWindow) -> None:
        self._window = window
        self._timer = ""
        self._last = time.monotonic()
        self._work: Background[object] | None = None
        self._said = ""
        for event in ("<KeyPress>", "<ButtonPress>"):
            window.root.bind(event, self._used, add="+")

    def book_shown(self) -> None:
        """Begins to wait for a minute without a key or a button."""
        self._said = ""
        self._wait(IDLE_MS)

    def end(self) -> None:
        """Waits for a backup that is under way, and makes one of what was written since."""
        if self._work is not None:
            self._work.join()
        session = self._window.session
        if session is None or session.damage or session.book.read_only:
            return
        try:
            session.book.back_up()
        except RefusedError as error:
            write_down(error, error_log())

    def _used(self, _: object) -> None:
        self._last = time.monotonic()

    def _wait(self, milliseconds: int) -> None:
        if self._timer:
            self._window.root.after_cancel(self._timer)
        self._timer = self._window.root.after(milliseconds, self._look)

    def _look(self) -> None:
        self._timer = ""
        idle = round((time.monotonic() - self._last) * 1000)
        if idle < IDLE_MS:
            self._wait(IDLE_MS - idle)
            return
        session = self._window.session
        if session is not None and self._work is None and self._is_due(session):
            self._begin(session)
        self._wait(IDLE_MS)

    def _is_due(self, session: Session) -> bool:
        if session.damage or session.waiting or session.book.read_only:
            return False
        try:
            return not session.book.is_backed_up()
        except RefusedError:  # moved, replaced or in use: who looks for that says so
            return False

    def _begin(self, session: Session) -> None:
        from logbook.window.background import Background  # what is imported here, the start need not wait for

        self._work = Background(
            self._window.root, lambda _: session.book.back_up(), lambda _: self._done(), self._failed, lambda *_: None
        )

    def _done(self) -> None:
        self._work = None
        self._said = ""

    def _failed(self, error: Exception) -> None:
        self._work = None
        if not isinstance(error, RefusedError):
            raise error
        if not isinstance(error, InUseError) and str(error) != self._said and not self._window.watch.deal_with(error):
            self._said = str(error)
            self._window.say(self._said)
            if isinstance(error, NoBackupError):
                from logbook.window.no_backup import offer_other_folder

                offer_other_folder(self._window, error)
