"""The page of pieces: single pieces, and garments of several, each with a list of their own; a switch above it."""

import tkinter as tk
from collections.abc import Callable, Iterable, Mapping, Sequence
from tkinter import ttk
from typing import TYPE_CHECKING

from logbook.pages.drafts import GARMENTS
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.window.flat_choice import FlatChoice
from logbook.window.look import Look
from logbook.window.pieces.page import PiecesPage
from logbook.window.record_page import RecordPage
from logbook.window.table import Entry

if TYPE_CHECKING:
    from logbook.window.garments.page import GarmentsPage

SINGLE, SEVERAL = "single", "garments"
REMEMBERED = "pieces.garments"
WORDS = {SINGLE: "Single pieces", SEVERAL: "Garments"}


class PiecesAndGarments:
    """A page of the window; the part that is not looked at is not made."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.frame = ttk.Frame(parent)
        self.frame.columnconfigure(0, weight=1)
        self.frame.rowconfigure(0, weight=1)
        self.look, self.session = look, session
        self._switches: dict[str, FlatChoice] = {}
        self._parts: dict[str, RecordPage] = {}
        self._shown = SEVERAL if REMEMBERED in session.settings.opened else SINGLE
        self.show(self._shown)

    @property
    def part(self) -> RecordPage:
        """The part that is shown."""
        return self._parts[self._shown]

    def entries(self) -> Sequence[Entry]:
        """Those of the part that is shown."""
        return self.part.entries()

    @property
    def pieces(self) -> PiecesPage:
        """Single pieces; made, if they were not yet."""
        part = self._made(SINGLE)
        assert isinstance(part, PiecesPage)
        return part

    @property
    def garments(self) -> "GarmentsPage":
        """Garments; made, if they were not yet."""
        from logbook.window.garments.page import GarmentsPage

        part = self._made(SEVERAL)
        assert isinstance(part, GarmentsPage)
        return part

    def show(self, which: str) -> None:
        """Shows single pieces or garments."""
        part = self._made(which)
        for name, other in self._parts.items():
            if name != which:
                other.frame.grid_remove()
        part.frame.grid(row=0, column=0, sticky="nsew")
        self._shown = which
        for switch in self._switches.values():
            switch.show(WORDS, which)

    def first_focus(self) -> None:
        """Where work on the part that is shown begins."""
        self.part.first_focus()

    def record_in_hand(self) -> tuple[str, str] | None:
        """That of the part that is shown."""
        return self.part.record_in_hand()

    def drafts(self) -> Iterable[Draft]:
        """What is typed on either."""
        for part in self._parts.values():
            yield from part.drafts()

    def kept(self, draft: Draft) -> Mapping[str, str] | None:
        """As the part that the draft is of."""
        return self._of(draft).kept(draft)

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """Shows the part that the draft is of, and takes it up there."""
        part = self._of(draft)
        self.show(SEVERAL if draft.page == GARMENTS else SINGLE)
        self.session.change_settings(self.session.settings.with_opened(REMEMBERED, draft.page == GARMENTS))
        return part.take_up(draft, texts)

    def settle(self) -> bool:
        """Sees to what is typed on either; the part that the user wants to stay on is shown."""
        for name, part in self._parts.items():
            if not part.settle():
                self.show(name)
                return False
        return True

    def _of(self, draft: Draft) -> RecordPage:
        return self.garments if draft.page == GARMENTS else self.pieces

    def _made(self, which: str) -> RecordPage:
        if which not in self._parts:
            if which == SEVERAL:
                from logbook.window.garments.page import GarmentsPage

                self._parts[which] = GarmentsPage(self.frame, self.look, self.session, self._switch(SEVERAL))
            else:
                self._parts[which] = PiecesPage(self.frame, self.look, self.session, self._switch(SINGLE))
        return self._parts[which]

    def _switch(self, which: str) -> Callable[[tk.Misc], tk.Widget]:
        def make(parent: tk.Misc) -> tk.Widget:
            switch = self._switches[which] = FlatChoice(parent, self.look, self._chosen)
            switch.show(WORDS, which)
            return switch

        return make

    def _chosen(self, which: str) -> None:
        self.show(which)
        self.session.change_settings(self.session.settings.with_opened(REMEMBERED, which == SEVERAL))
        self._switches[which].buttons[which].focus_set()
