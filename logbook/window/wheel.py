"""The wheel scrolls what lies under the pointer, and never does anything else.

Tk has it choose in a drop-down that is not open, count in a spin box, turn the pages of a notebook (Tk 9) and, on X11, take the
entry of an open menu. Here it moves the innermost thing that can still move that way: a table inside a form first, then the form.
"""

import tkinter as tk

LINES = 3
"""A notch goes so many lines or rows."""
WHEELS = ("MouseWheel", "Button-4", "Button-5", "TouchpadScroll")
CHANGED_BY_IT = ("TCombobox", "TSpinbox", "Spinbox", "TEntry", "Entry", "TNotebook", "TScale", "Scale")
SCROLLED_BY_IT = ("Canvas", "Text", "Treeview", "Listbox")
BY_THEMSELVES = ("Menu", "TScrollbar", "Scrollbar")
LEFT, RIGHT = 6, 7
"""Buttons of X11 that are the wheel sideways; 8 and 9 are at the side of the mouse."""


def install_wheel(root: tk.Misc) -> None:
    """Once a program."""
    for kind in CHANGED_BY_IT + SCROLLED_BY_IT:
        for sequence in root.tk.splitlist(root.tk.call("bind", kind)):
            gliding = "Touchpad" in sequence and kind in SCROLLED_BY_IT  # Tk scrolls these to the pixel
            if any(wheel in sequence for wheel in WHEELS) and not gliding:
                root.unbind_class(kind, sequence)
    for ways, shift in (("y", ""), ("x", "Shift-")):
        _bind_ways(root, ways, shift)
    if float(root.tk.call("package", "present", "Tk").split(".")[0]) >= 9:
        root.bind_all("<TouchpadScroll>", lambda event: _glide(root, str(event.widget), event.delta), add="+")
    if root.tk.call("tk", "windowingsystem") == "x11":
        _tame_further_buttons(root)


def _bind_ways(root: tk.Misc, way: str, shift: str) -> None:
    def turn(event: "tk.Event[tk.Misc]", lines: int) -> None:
        scroll(root, str(event.widget), way, lines)

    root.bind_all(f"<{shift}MouseWheel>", lambda event: turn(event, notches(event.delta)), add="+")
    if root.tk.call("tk", "windowingsystem") == "x11":
        root.bind_all(f"<{shift}Button-4>", lambda event: turn(event, -LINES), add="+")
        root.bind_all(f"<{shift}Button-5>", lambda event: turn(event, LINES), add="+")


def _tame_further_buttons(root: tk.Misc) -> None:
    """Tk 8.6 has no names for the buttons of a wheel that goes sideways (the last ones make them Shift and the wheel), and a menu
    takes any button as a click."""

    def sideways(path: str, button: str) -> None:
        scroll(root, path, "x", -LINES if int(button) == LEFT else LINES)

    root.tk.call("bind", "all", "<Button>", f"+if {{%b == {LEFT} || %b == {RIGHT}}} {{{root.register(sideways)} %W %b}}")
    for event in ("<Button>", "<ButtonRelease>"):
        script = root.tk.call("bind", "Menu", event)
        root.tk.call("bind", "Menu", event, f"if {{%b < 4}} {{{script}}}")


def scroll(root: tk.Misc, path: str, way: str, lines: int) -> None:
    """Moves the innermost widget at or above ``path`` that can move so many lines along ``way``, ``x`` or ``y``."""
    for one in _upwards(root, path):
        first, last = _view(root, one, way)
        if first > 0 if lines < 0 else last < 1:
            root.tk.call(one, f"{way}view", "scroll", lines, "units")
            return


def _glide(root: tk.Misc, path: str, delta: int) -> None:
    """A touchpad tells the way to go in pixels: sideways in the upper half of ``delta``, down in the lower, both signed."""
    pixels = ((delta & 0xFFFF) ^ 0x8000) - 0x8000
    for one in _upwards(root, path):
        first, last = _view(root, one, "y")
        if (first, last) != (0, 1):
            if root.tk.call("winfo", "class", one) == "Canvas":
                whole = int(root.tk.call("winfo", "height", one)) / (last - first)
                root.tk.call(one, "yview", "moveto", max(0.0, first - pixels / whole))
            return


def _upwards(root: tk.Misc, path: str) -> list[str]:
    """What can scroll at ``path`` and around it in its window, the innermost first; nothing where it is seen to already."""
    found = []
    while path:
        kind = str(root.tk.call("winfo", "class", path))
        if kind in BY_THEMSELVES:
            return []
        if kind in SCROLLED_BY_IT:
            found.append(path)
        path = "" if str(root.tk.call("winfo", "toplevel", path)) == path else str(root.tk.call("winfo", "parent", path))
    return found


def _view(root: tk.Misc, path: str, way: str) -> tuple[float, float]:
    first, last = root.tk.splitlist(root.tk.call(path, f"{way}view"))
    return float(first), float(last)


def notches(delta: int) -> int:
    """Lines. Windows and Tk 9 count 120 a notch, Tk 8.6 on macOS small numbers."""
    return -round(delta * LINES / 120) if abs(delta) >= 40 else -delta
