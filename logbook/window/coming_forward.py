"""The window comes to the front when its logbook is opened a second time."""

import tkinter as tk
from contextlib import suppress

from logbook.tasks.keeping import Logbook
from logbook.tasks.showing import ShownBook, shown_folder
from logbook.window.keyboard import last_focused
from logbook.window.own_events import on_itself

EVERY_MS = 200


class ComingForward:
    """Of one window and the logbook that it shows."""

    def __init__(self, root: tk.Tk) -> None:
        self._root = root
        self._shown: ShownBook | None = None
        self._timer = ""
        on_itself(root, "<Destroy>", self.end)

    def book_shown(self, book: Logbook | None) -> None:
        """This logbook is shown from now on; None: none that anybody could open a second time."""
        self.end()
        if book is not None:
            with suppress(OSError):  # then a second start opens a window of its own
                self._shown = ShownBook(shown_folder(), book.path)
                self._look()

    def end(self) -> None:
        """Nothing is shown any more."""
        if self._timer:
            self._root.after_cancel(self._timer)
            self._timer = ""
        if self._shown is not None:
            self._shown.close()
            self._shown = None

    def _look(self) -> None:
        if self._shown is not None:
            self._timer = self._root.after(EVERY_MS, self._look)
            if self._shown.asked():
                self._come()

    def _come(self) -> None:
        """A window manager may refuse to let a window push itself before others; one that stands on top it does not."""
        self._root.deiconify()
        self._root.attributes("-topmost", True)
        self._root.lift()
        self._root.after_idle(self._root.attributes, "-topmost", False)
        (last_focused(self._root) or self._root).focus_force()
