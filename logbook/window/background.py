"""Long work beside the window: in a thread, heard of through a queue, and cancelled when the user says so."""

import queue
import threading
import tkinter as tk
from collections.abc import Callable
from contextvars import copy_context
from typing import Generic, TypeVar

Result = TypeVar("Result")
Report = Callable[[int, int], None]
"""Told how much is done and of how much, 0 while that is unknown; raises ``Cancelled`` once the work is to stop."""
POLL_MS = 30


class Cancelled(Exception):
    """Raised in the work, out of its report; the work tidies up and lets it pass."""


class Background(Generic[Result]):
    """Runs ``work(report)`` in a thread; the other functions are called in the window's own thread.

    ``done`` gets the result and ``failed`` the exception, ``Cancelled`` too; exactly one of them is called, once,
    unless ``owner`` is gone by then: that cancels the work. The work must touch no widget and open its own connection.
    """

    def __init__(
        self,
        owner: tk.Misc,
        work: Callable[[Report], Result],
        done: Callable[[Result], object],
        failed: Callable[[Exception], object],
        progress: Callable[[int, int], object],
    ) -> None:
        self._owner, self._work = owner, work
        self._done, self._failed, self._progress = done, failed, progress
        self._stop = threading.Event()
        self._latest: tuple[int, int] | None = None
        self._outcome: queue.SimpleQueue[Callable[[], object]] = queue.SimpleQueue()
        owner.bind("<Destroy>", self._owner_gone, add="+")
        # Not a daemon: a cancelled export still puts its temporary file away when the window closes.
        self._thread = threading.Thread(target=copy_context().run, args=(self._run,), name="background work")
        self._thread.start()
        self._timer = owner.after(POLL_MS, self._poll)

    def cancel(self) -> None:
        """Asks the work to stop at its next report."""
        self._stop.set()

    def join(self) -> None:
        """Waits until the work has ended, however it ends."""
        self._thread.join()

    def _run(self) -> None:
        try:
            result = self._work(self._report)
        # Not swallowed but carried over to the window's thread, where ``failed`` deals with it.
        except Exception as error:
            self._outcome.put(lambda error=error: self._failed(error))  # type: ignore[misc]
        else:
            self._outcome.put(lambda: self._done(result))

    def _report(self, done: int, total: int) -> None:
        if self._stop.is_set():
            raise Cancelled
        self._latest = (done, total)

    def _poll(self) -> None:
        try:
            deliver = self._outcome.get_nowait()
        except queue.Empty:
            self._timer = self._owner.after(POLL_MS, self._poll)
            if (latest := self._latest) is not None:
                self._latest = None
                self._progress(*latest)
        else:
            self._thread.join()
            self._timer = ""
            deliver()

    def _owner_gone(self, event: "tk.Event[tk.Misc]") -> None:
        if event.widget is self._owner:
            self.cancel()
            if self._timer:
                self._owner.after_cancel(self._timer)
