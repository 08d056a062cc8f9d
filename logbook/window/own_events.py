"""Events that come by the hundred where a window is closed: every widget in it is destroyed, and out of sight before.

Tkinter reads nineteen values of an event before it asks what is bound to it, and a window is told of all that is in it.
"""

import tkinter as tk
from collections.abc import Callable


def on_all(root: tk.Misc, event: str, then: Callable[[str], object]) -> None:
    """Calls ``then`` with the path of each widget that has the event, which is all that is read of it. For a program's life."""
    root.tk.call("bind", "all", event, f"+{root.register(then)} %W")


def on_itself(window: tk.Tk, event: str, then: Callable[[], object]) -> None:
    """Calls ``then`` when the window itself has the event, and not for what is in it. For the window's life."""
    tag = f"Only{window}"
    if tag not in window.bindtags():
        window.bindtags((tag, *window.bindtags()))
    window.bind_class(tag, event, lambda _: then(), add="+")
