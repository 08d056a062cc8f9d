"""Work that is done a step at a time while nobody types, so that no key waits for it."""

import tkinter as tk
from collections.abc import Callable

REST_MS = 150
"""After the last change so long the work begins."""


class AtRest:
    """Does ``step`` again and again, ``every_ms``, until it gives False, and then ``done``; nothing any more once ``widget`` is
    gone.
    """

    def __init__(
        self,
        widget: tk.Misc,
        step: Callable[[], bool],
        done: Callable[[], object] = lambda: None,
        *,
        after_ms: int = REST_MS,
        every_ms: int = 1,
    ) -> None:
        self._widget, self._step, self._done = widget, step, done
        self._after_ms, self._every_ms = after_ms, every_ms
        self._timer = ""
        widget.bind("<Destroy>", self._gone, add="+")

    def soon(self) -> None:
        """Begins anew when this was not called for a while."""
        self._stop()
        self._timer = self._widget.after(self._after_ms, self.now)

    def now(self) -> None:
        """Does the next step at once."""
        self._stop()
        if self._step():
            self._timer = self._widget.after(self._every_ms, self.now)
        else:
            self._done()

    def _stop(self) -> None:
        if self._timer:
            self._widget.after_cancel(self._timer)
        self._timer = ""

    def _gone(self, event: "tk.Event[tk.Misc]") -> None:
        if event.widget is self._widget:
            self._stop()
