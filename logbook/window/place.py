"""Where the window was, kept so that it opens there again, and can always be reached."""

import tkinter as tk

from logbook.settings import WindowPlace
from logbook.window.own_events import on_itself

GRAB = 120
"""Pixels of the title bar that must lie on the screen."""
TITLE_BAR = 40
SMALLEST = (700, 450)
"""Pixels."""


def reachable(place: WindowPlace, left: int, top: int, width: int, height: int) -> WindowPlace:
    """``place`` moved and shrunk until it fits the screen and its title bar can be grabbed; zoomed stays zoomed."""
    wide, high = min(max(place.width, SMALLEST[0]), width), min(max(place.height, SMALLEST[1]), height)
    x = min(max(place.x, left + GRAB - wide), left + width - GRAB)
    y = min(max(place.y, top), top + height - TITLE_BAR)
    return WindowPlace(wide, high, x, y, place.zoomed)


class PlaceKeeper:
    """Opens ``window`` at ``place``, or zoomed for None, and knows its ``place`` later, the size apart from zoomed."""

    def __init__(self, window: tk.Tk, place: WindowPlace | None) -> None:
        self._window = window
        left, top = window.winfo_vrootx(), window.winfo_vrooty()
        width, height = window.winfo_vrootwidth(), window.winfo_vrootheight()
        usual = WindowPlace(width * 9 // 10, height * 8 // 10, left + width // 20, top + height // 20, True)
        self.place = reachable(place or usual, left, top, width, height)
        window.minsize(min(SMALLEST[0], width), min(SMALLEST[1], height))
        window.geometry(f"{self.place.width}x{self.place.height}+{self.place.x}+{self.place.y}")
        if self.place.zoomed:
            self._zoom()
        on_itself(window, "<Configure>", self._follow)

    def _follow(self) -> None:
        size, _, offset = self._window.geometry().partition("+")
        width, height = (int(part) for part in size.split("x"))
        x, y = (int(part) for part in offset.split("+"))
        if self._zoomed():
            self.place = WindowPlace(self.place.width, self.place.height, self.place.x, self.place.y, True)
        elif self._window.state() == "normal":
            self.place = WindowPlace(width, height, x, y, False)

    def _on_x11(self) -> bool:
        return str(self._window.tk.call("tk", "windowingsystem")) == "x11"

    def _zoom(self) -> None:
        if self._on_x11():
            self._window.attributes("-zoomed", True)
        else:
            self._window.state("zoomed")

    def _zoomed(self) -> bool:
        return bool(self._window.attributes("-zoomed")) if self._on_x11() else self._window.state() == "zoomed"
