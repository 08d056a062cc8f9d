"""What the main window asks of each of its pages."""

from tkinter import ttk
from typing import Protocol


class Page(Protocol):
    """A page of the window. It subscribes to its session for changes of records and settings by itself."""

    @property
    def frame(self) -> ttk.Frame:
        """Its widget."""

    def first_focus(self) -> None:
        """Puts the keyboard where work on the page begins."""

    def record_in_hand(self) -> tuple[str, str] | None:
        """(name, uid) of the saved record in hand, whose changes can be listed; None if there is none."""

    def settle(self) -> bool:
        """Before the page or the logbook is left: sees to what is typed and not saved (asks: save, throw away, stay).

        False: the user wants to stay.
        """
