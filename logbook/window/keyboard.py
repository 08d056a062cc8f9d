"""Which of the program's own widgets has the keyboard.

Tk makes windows by itself, the list of a drop-down and the shown copy of a menu among them, that tkinter does not know and
raises KeyError on. Here they count as elsewhere. Nothing else in the window may ask Tk for the focus or the grab.
"""

import tkinter as tk
from collections.abc import Callable


def focused(place: tk.Misc) -> tk.Misc | None:
    """What has the keyboard on the screen of ``place``; None if it is elsewhere."""
    return _known(place.focus_displayof)


def last_focused(window: tk.Misc) -> tk.Misc | None:
    """What has the keyboard, or would get it back, in the window of ``window``; None if that is none of ours."""
    return _known(window.focus_lastfor)


def holder(place: tk.Misc) -> tk.Misc | None:
    """The dialog that holds pointer and keyboard; None if none of ours does."""
    return _known(place.grab_current)


def _known(look_up: Callable[[], tk.Misc | None]) -> tk.Misc | None:
    try:
        return look_up()
    except KeyError:
        return None
