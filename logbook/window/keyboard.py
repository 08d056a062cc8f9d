"""Which of the program's own widgets has the keyboard, and putting it there.

Tk makes windows by itself, the list of a drop-down and the shown copy of a menu among them, that tkinter does not know and
raises KeyError on. Here they count as elsewhere. Nothing else in the window may ask Tk for the focus or the grab.
"""

import tkinter as tk
from collections.abc import Callable

GIVEN_AWAY_MS = (20, 100, 300)
"""After a click the window manager takes about so long to give the keyboard to another window."""


def focused(place: tk.Misc) -> tk.Misc | None:
    """What has the keyboard on the screen of ``place``; None if it is elsewhere."""
    return _known(place.focus_displayof)


def last_focused(window: tk.Misc) -> tk.Misc | None:
    """What has the keyboard, or would get it back, in the window of ``window``; None if that is none of ours."""
    return _known(window.focus_lastfor)


def holder(place: tk.Misc) -> tk.Misc | None:
    """The dialog that holds pointer and keyboard; None if none of ours does."""
    return _known(place.grab_current)


def install_keyboard(root: tk.Misc) -> None:
    """Once a program: a dialog that holds the pointer keeps the keyboard as well.

    A click on a window behind comes to the dialog, but the window manager gives the keyboard to that window, which may not use
    it: Escape, Tab and Return would do nothing any more.
    """

    def take_back(path: str) -> None:
        held = root.tk.call("winfo", "exists", path) and str(root.tk.call("grab", "current", path)) == path
        if held and not root.tk.call("focus"):
            root.tk.call("focus", "-force", root.tk.call("focus", "-lastfor", path))

    def clicked(event: "tk.Event[tk.Misc]") -> None:
        path = str(event.widget)
        size = (int(root.tk.call("winfo", what, path)) for what in ("width", "height"))
        if not all(0 <= at < most for at, most in zip((event.x, event.y), size, strict=True)):
            for soon in GIVEN_AWAY_MS:
                root.after(soon, take_back, path)

    for kind in ("Toplevel", "TkFDialog", "TkChooseDir"):
        root.bind_class(kind, "<Button>", clicked, add="+")


def list_is_open(widget: tk.Misc) -> bool:
    """Whether ``widget`` is a drop-down whose list is open."""
    shown = f"{widget}.popdown"
    return bool(widget.tk.call("winfo", "exists", shown) and widget.tk.call("winfo", "ismapped", shown))


def take_keyboard(widget: tk.Misc) -> None:
    """Puts the focus on ``widget`` as Tab does: the text of a field is marked, to be typed over."""
    widget.focus_set()
    widget.event_generate("<<TraverseIn>>")


def _known(look_up: Callable[[], tk.Misc | None]) -> tk.Misc | None:
    try:
        return look_up()
    except KeyError:
        return None
