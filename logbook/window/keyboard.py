"""Which of the program's own widgets has the keyboard, and putting it there.

Tk makes windows by itself, the list of a drop-down and the shown copy of a menu among them, that tkinter does not know: by its
version it raises KeyError, says None, or names the menu that was copied. Here they count as elsewhere, whatever the version.
Nothing else in the window may ask Tk for the focus or the grab.
"""

import tkinter as tk
from collections.abc import Callable

from logbook.window.own_events import on_all

GIVEN_MS = (0, 20, 100, 300)
"""The word that the keyboard was given may come so long before it is."""

HELD_ELSEWHERE_MS = 100
"""Between tries to hold the pointer while another program does."""
DRAWN_MS = 200
"""What takes the keyboard while its page is still to be drawn is in sight by then."""
POSTED = ("Menu", "ComboboxPopdown")
"""The kinds of what Tk opens for a moment and shuts again."""


def focused(place: tk.Misc) -> tk.Misc | None:
    """What has the keyboard on the screen of ``place``; None if it is elsewhere."""
    return _known(place, "focus", "-displayof", place)


def last_focused(window: tk.Misc) -> tk.Misc | None:
    """What has the keyboard, or would get it back, in the window of ``window``; None if that is none of ours."""
    return _known(window, "focus", "-lastfor", window)


def holder(place: tk.Misc) -> tk.Misc | None:
    """The dialog that holds pointer and keyboard; None if none of ours does."""
    return _known(place, "grab", "current", place)


def install_keyboard(root: tk.Misc, begin: Callable[[], object]) -> None:
    """Once a program: what is not in sight keeps no keyboard. ``begin`` puts it where work in the window begins.

    A card or section that goes out of sight keeps the keyboard in its field. A list that is shut as soon as it opens takes the
    keyboard all the same, and Tk thinks that it keeps it. A click that the window manager hands on late comes to a page that was
    left meanwhile: its field takes the keyboard, its list opens over the next page.
    """
    waiting = ""

    def at_once(_: object) -> None:
        root.after_idle(_bring_back, root, begin)

    def looked() -> None:
        nonlocal waiting
        waiting = ""
        _bring_back(root, begin)

    def once_drawn(_: object) -> None:
        nonlocal waiting
        waiting = waiting or root.after(DRAWN_MS, looked)

    def came(path: str) -> None:
        if not root.tk.call("winfo", "viewable", path):
            once_drawn(path)

    on_all(root, "<FocusIn>", came)
    on_all(root, "<Unmap>", once_drawn)
    for kind in POSTED:
        root.bind_class(kind, "<Unmap>", at_once, add="+")
    root.bind_class("ComboboxListbox", "<Map>", at_once, add="+")
    # Tkinter does not know the list: its event has but the path.
    root.bind_class("ComboboxPopdown", "<Map>", lambda event: _shut_unseen(root, str(event.widget).rpartition(".")[0]), add="+")
    root.bind_class("TCombobox", "<Unmap>", lambda event: _shut_unseen(root, str(event.widget)), add="+")


def _shut_unseen(root: tk.Misc, box: str) -> None:
    """The list of a drop-down that is not in sight is shut."""
    if root.tk.call("winfo", "exists", f"{box}.popdown") and not root.tk.call("winfo", "viewable", box):
        root.tk.call("ttk::combobox::Unpost", box)


def _bring_back(root: tk.Misc, begin: Callable[[], object], tries: int = 10, held_before: str = "") -> None:
    """What a list, a menu or a field out of sight has goes to the drop-down, to where it was before, or where work begins."""
    ask = root.tk.call
    path = str(ask("focus"))
    held = str(ask("grab", "current", "."))
    if not path or ask("winfo", "viewable", path) or (held and str(ask("winfo", "class", held)) in POSTED):
        return  # along the bar Tk shows one menu while another has the keyboard
    window = held or "."
    for place in (path.partition(".popdown.")[0], str(ask("focus", "-lastfor", window))):
        if place != held and ask("winfo", "viewable", place) and str(ask("winfo", "class", place)) not in POSTED:
            ask("focus", "-force", place)
            return
    if held and held == held_before:
        ask("focus", "-force", held)
    elif tries and ask("winfo", "viewable", "."):
        if not held:  # a dialog takes the keyboard into its field by itself, when that is drawn
            begin()
        root.after(DRAWN_MS, _bring_back, root, begin, tries - 1, held)  # the page may still have to be drawn


def keep_behind(window: tk.Tk | tk.Toplevel, close: Callable[[], object]) -> None:
    """``close`` is what the window's own button does. While a dialog above holds the pointer, that button does nothing, and the
    window takes no keyboard.

    The window manager gives the keyboard to a window that is clicked, or whose title is, though Tk lets it do nothing then:
    Escape, Tab and Return would be dead. It says that it did to windows that ask for it, by the protocol of that name.
    """
    ask = window.tk.call

    def above() -> str:
        held = str(ask("grab", "current", "."))  # the window itself may be gone
        own = not held or str(ask("winfo", "class", held)) in POSTED
        return "" if own or str(ask("winfo", "toplevel", held)) == str(window) else held

    def given() -> None:
        if held := above():
            take_back(window, held, lambda: above() == held)

    def closed() -> None:
        held = above()
        if held:
            ask("raise", held)
            given()
        else:
            close()

    window.protocol("WM_DELETE_WINDOW", closed)
    window.protocol("WM_TAKE_FOCUS", given)


def take_back(place: tk.Misc, window: str = "", still: Callable[[], bool] = lambda: True) -> None:
    """Gives the keyboard to the ``window``, that of ``place`` if none is named, in the field that had it before, if nobody has it
    a moment from now; as long as it is ``still`` to have it."""
    ask = place.tk.call
    window = window or str(ask("winfo", "toplevel", place))

    def look(last: bool) -> None:
        if still() and not ask("focus") and ask("winfo", "exists", window) and ask("winfo", "viewable", window):
            field = ask("focus", "-lastfor", window)
            if str(field) != window or last:  # its field may still be waiting to be drawn
                ask("focus", "-force", field)

    for soon in GIVEN_MS:
        place.nametowidget(".").after(soon, look, soon == GIVEN_MS[-1])  # the place may be gone by then


class Hold:
    """Pointer and keyboard for one dialog alone."""

    def __init__(self, dialog: tk.Misc) -> None:
        self._dialog, self._waiting = dialog, ""

    def take(self) -> None:
        """At once; where the window manager holds the pointer, as while a window is being moved, as soon as it lets go."""
        self.leave_off()
        try:
            self._dialog.grab_set()
        except tk.TclError:
            if self._dialog.winfo_exists():
                self._waiting = self._dialog.after(HELD_ELSEWHERE_MS, self.take)

    def leave_off(self) -> None:
        """It waits no more: Tk stands still for a second at each try, two that try would leave no time for anything else."""
        if self._waiting:
            self._dialog.after_cancel(self._waiting)
        self._waiting = ""


def list_is_open(widget: tk.Misc) -> bool:
    """Whether ``widget`` is a drop-down whose list is open."""
    shown = f"{widget}.popdown"
    return bool(widget.tk.call("winfo", "exists", shown) and widget.tk.call("winfo", "ismapped", shown))


def take_keyboard(widget: tk.Misc) -> None:
    """Puts the focus on ``widget`` as Tab does: the text of a field is marked, to be typed over."""
    widget.focus_set()
    widget.event_generate("<<TraverseIn>>")


def _known(place: tk.Misc, *question: object) -> tk.Misc | None:
    path = str(place.tk.call(*question))
    try:
        widget = place.nametowidget(path) if path else None
    except KeyError:
        return None
    return widget if str(widget) == path else None
