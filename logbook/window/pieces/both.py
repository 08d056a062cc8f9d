"""The page of pieces: garments of several and single pieces in one list, each kind with a form of its own beside it."""

import tkinter as tk
from collections.abc import Iterable, Mapping, Sequence
from tkinter import ttk
from typing import TYPE_CHECKING

from logbook.pages.drafts import GARMENTS
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.window.keyboard import focused
from logbook.window.look import Look
from logbook.window.pieces.one_list import OneList
from logbook.window.pieces.page import PiecesPage
from logbook.window.table import Entry

if TYPE_CHECKING:
    from logbook.window.garments.page import GarmentsPage

SINGLE, SEVERAL = "single", "garments"
REMEMBERED = "pieces.garments"


class PiecesAndGarments:
    """A page of the window; the part that is not looked at is not made. Each part has the one list at its left."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session) -> None:
        self.frame = ttk.Frame(parent)
        self.frame.columnconfigure(0, weight=1)
        self.frame.rowconfigure(0, weight=1)
        self.look, self.session = look, session
        self._one = OneList(session)
        self._parts: dict[str, PiecesPage | GarmentsPage] = {}
        lines = self._one.lines
        several = REMEMBERED in session.settings.opened and bool(lines.garments)
        self._shown = SEVERAL if several or (lines.garments and not lines.pieces) else SINGLE
        self._one.opened = self._open
        self._one.begin_single, self._one.begin_garment = self._begin_single, self._begin_garment
        self._one.garments_shown = lambda: self._turn_to(SEVERAL)
        self.show(self._shown)

    @property
    def part(self) -> "PiecesPage | GarmentsPage":
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
        part.share_panes()
        self._shown = which

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

    def _open(self, key: str) -> bool:
        """Takes in hand what was chosen in the list of the other kind; the keyboard stays where it was in the list."""
        here, which = self.part, SINGLE if key in self._one.lines.pieces else SEVERAL
        place = focused(self.frame)
        if not here.settle() or not self._made(which).settle():
            return False
        other = self._made(which)
        other.find.find.text = here.find.find.text
        self._turn_to(which)
        other.panes.bring(0)
        other.open_line(key)
        self.frame.update_idletasks()  # what takes the keyboard is in sight
        if place is here.find.find.input:
            other.find.find.input.focus_set()
            other.find.find.input.event_generate("<End>")
        elif place is here.find.table.tree:
            other.find.table.tree.focus_set()
        return True

    def _begin_garment(self) -> None:
        if self.part.settle():
            self.garments.new()

    def _begin_single(self) -> None:
        if self.part.settle():
            self._turn_to(SINGLE)
            self.pieces.new()

    def _turn_to(self, which: str) -> None:
        self.show(which)
        self.session.change_settings(self.session.settings.with_opened(REMEMBERED, which == SEVERAL))

    def _of(self, draft: Draft) -> "PiecesPage | GarmentsPage":
        return self.garments if draft.page == GARMENTS else self.pieces

    def _made(self, which: str) -> "PiecesPage | GarmentsPage":
        if which not in self._parts:
            if which == SEVERAL:
                from logbook.window.garments.page import GarmentsPage

                self._parts[which] = GarmentsPage(self.frame, self.look, self.session, self._one)
            else:
                self._parts[which] = PiecesPage(self.frame, self.look, self.session, self._one)
            self._parts[which].find.tree_table.in_front = lambda: self.part.find.tree_table
        return self._parts[which]
