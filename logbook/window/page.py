"""What the main window asks of each of its pages."""

from collections.abc import Iterable, Mapping, Sequence
from tkinter import ttk
from typing import Protocol

from logbook.tasks.drafts import Draft
from logbook.window.table import Entry


class Page(Protocol):
    """A page of the window. It subscribes to its session for changes of records and settings by itself."""

    @property
    def frame(self) -> ttk.Frame:
        """Its widget."""

    @property
    def part(self) -> "Page":
        """The part of it that is shown; itself, where it has none."""

    def entries(self) -> Sequence[Entry]:
        """All that can be done with its records, as entries of a menu."""

    def first_focus(self) -> None:
        """Puts the keyboard where work on the page begins."""

    def record_in_hand(self) -> tuple[str, str] | None:
        """(name, uid) of the saved record in hand, whose changes can be listed; None if there is none."""

    def drafts(self) -> Iterable[Draft]:
        """What is typed on it and not saved, to be kept in case the program ends."""

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of a draft's record as the logbook has it; of a new one, of the record that goes by its name. None: none."""

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """Takes a draft's record in hand with these texts typed; False: what is typed now is to stay."""

    def settle(self) -> bool:
        """Before the page or the logbook is left: sees to what is typed and not saved (asks: save, throw away, stay).

        False: the user wants to stay.
        """
