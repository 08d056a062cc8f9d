"""Answering the dialogs a window opens."""

import tkinter as tk
from collections.abc import Callable


def while_asked(root: tk.Tk, act: Callable[[tk.Toplevel], None]) -> None:
    """Does ``act`` as soon as a dialog has the keyboard, since ``ask`` waits for its answer."""

    def look_for_it() -> None:
        found = [child for child in root.winfo_children() if isinstance(child, tk.Toplevel)]
        if found and found[0].grab_current() is found[0]:
            (found[0].focus_lastfor() or found[0]).focus_force()
            found[0].update()
            try:
                act(found[0])
            finally:
                found[0].destroy()
        else:
            root.after(5, look_for_it)

    root.after(5, look_for_it)
