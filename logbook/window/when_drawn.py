"""Work that can wait until what is there has been drawn."""

import tkinter as tk
from collections.abc import Callable

SETTLED_MS = 5
"""Sizes that follow from sizes are settled within this time."""


def when_drawn(widget: tk.Misc, action: Callable[[], object]) -> None:
    """Runs ``action`` once, soon after ``widget`` was first drawn on the screen."""
    timer = ""

    def on_screen(_: object) -> None:
        nonlocal timer
        # What was drawn on comes when nothing else is to be done, and a timer that begins then ends after it.
        timer = timer or widget.after_idle(settled)

    def settled() -> None:
        nonlocal timer
        timer = widget.after(SETTLED_MS, action)

    def gone(event: "tk.Event[tk.Misc]") -> None:
        if event.widget is widget and timer:
            widget.after_cancel(timer)

    widget.bind("<Expose>", on_screen, add="+")
    widget.bind("<Destroy>", gone, add="+")
