"""Ends asked for from outside: a logout, a closed terminal, a shutdown. Nobody can be asked then, so what is typed is kept."""

import os
import signal
import tkinter as tk
from collections.abc import Callable
from types import FrameType

TICK_MS = 200
"""Python runs a handler only between its own steps, and an idle window takes none: so it takes one this often."""
SIGNALS = ("SIGTERM", "SIGHUP", "SIGINT", "SIGBREAK")


class Ending:
    """From now on, and until ``over``, such an end first calls ``before``, then ends the process as the signal would have."""

    def __init__(self, root: tk.Tk, before: Callable[[], object]) -> None:
        self._root, self._before = root, before
        self._asked = 0
        known = [getattr(signal, name) for name in SIGNALS if hasattr(signal, name)]
        heeded = [number for number in known if signal.getsignal(number) != signal.SIG_IGN]
        self._found = {number: signal.signal(number, self._take) for number in heeded}
        self._timer = root.after(TICK_MS, self._tick)

    def over(self) -> None:
        """The signals are left as they were found."""
        for number, handler in self._found.items():
            signal.signal(number, handler)

    def _take(self, number: int, frame: FrameType | None) -> None:
        """It may come in the middle of a write, so it is only noted."""
        self._asked = number

    def _tick(self) -> None:
        if not self._asked:
            self._timer = self._root.after(TICK_MS, self._tick)
            return
        try:
            self._before()
        finally:  # not by leaving the main loop: a dialog or a write that waits would have to be left first
            signal.signal(self._asked, signal.SIG_DFL)
            os.kill(os.getpid(), self._asked)
