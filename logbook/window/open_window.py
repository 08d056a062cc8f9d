"""What a menu, a dialog or a watch needs of the main window, so that it knows nothing else of it."""

import tkinter as tk
from collections.abc import Collection
from typing import Any, Protocol

from logbook.errors import LogbookError
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.keeping import Logbook
from logbook.window.look import Look
from logbook.window.page import Page


class Unsaved(Protocol):
    """What is typed and not saved."""

    def offer(self) -> None:
        """Offers what was left behind, or says that there is nothing."""


class Dealing(Protocol):
    """What looks after the logbook under the window."""

    def deal_with(self, error: LogbookError, *, again: bool = False) -> bool:
        """Offers what can be done when it is damaged, gone or another; False: it is none of these."""


class OpenWindow(Protocol):
    """The main window and the session of the logbook it shows."""

    root: tk.Tk
    look: Look
    settings: Settings
    session: Session | None
    tabs: Any

    @property
    def drafts(self) -> Unsaved:
        """What is typed and not saved."""

    @property
    def watch(self) -> Dealing:
        """Looks after the logbook."""

    @property
    def pages(self) -> Collection[Page]:
        """Those that were looked at yet."""

    def page_at(self, number: int) -> Page:
        """Shows a page."""

    def made_page(self, number: int) -> Page:
        """A page of the logbook that is shown, made now if it was not looked at yet."""

    def page_in_hand(self) -> Page | None:
        """The page that is shown, or the part of it that is."""

    def show(self, book: Logbook, *, is_sample: bool = False) -> None:
        """Shows a logbook; the one shown before is closed."""

    def go_on_with(self, book: Logbook) -> None:
        """Goes on with a copy or a backup of the logbook that is shown; what is typed on the pages stays."""

    def show_none(self, why: str) -> None:
        """Shows that no logbook is open, and why."""

    def say(self, sentence: str) -> None:
        """Shows a sentence in the line at the foot of the window."""

    def settle(self) -> bool:
        """Lets every page see to what is typed and not saved; False: the user stays."""

    def leave(self) -> None:
        """Ends the program, if nothing typed would be lost by it."""
