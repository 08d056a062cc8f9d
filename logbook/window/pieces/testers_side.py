"""The entry that opens the testers of what is in hand, for single pieces and for garments alike."""

from collections.abc import Callable, Mapping
from tkinter import ttk
from typing import NamedTuple

from logbook.pages.pieces.tester_form import TesterForm, tested_pattern
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft
from logbook.tasks.garments import garments
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.testers import Pattern
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Item


class TestersOnPage(NamedTuple):
    """What the page gives: the saved record in hand, None for a new one; and how it hears of changes."""

    saved: Callable[[], Pattern | None]
    changed: Callable[[], object]


class TestersSide:
    """``entries`` of the menu; the dialog is made when it is opened."""

    def __init__(self, frame: ttk.Frame, look: Look, session: Session, page: TestersOnPage) -> None:
        self._frame, self.look, self._session, self._page = frame, look, session, page
        self._form: TesterForm | None = None
        self.entries = (Item("&Testers…", "Mod-Shift-m", self.open, lambda: page.saved() is not None),)
        bind_keys(frame.winfo_toplevel(), "Mod-Shift-m", self.open, while_shown=frame)

    def open(self) -> None:
        """Opens those who try what is in hand."""
        pattern = self._page.saved()
        if pattern is None:
            self._session.say("Save it first: its testers are kept with it.")
            return
        self._show(TesterForm(self._session, pattern))

    def draft(self) -> Draft | None:
        """What is typed for a tester."""
        return self._form.draft() if self._form is not None else None

    def texts(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of a draft's tester as the logbook has them; None if it has none."""
        pattern = self._pattern(draft)
        form = None if pattern is None else TesterForm(self._session, pattern)
        if form is None or draft.record not in form.testers:
            return None
        form.show(draft.record)
        return form.texts

    def take_up(self, draft: Draft, texts: Mapping[str, str]) -> bool:
        """Opens the draft's tester, or a new one, with these texts typed; False if what they try is not there any more."""
        pattern = self._pattern(draft)
        if pattern is None:
            return False
        form = self._form = TesterForm(self._session, pattern)
        form.take_up("" if draft.is_new else draft.record, texts)
        self._frame.after_idle(self._show, form)
        return True

    def _pattern(self, draft: Draft) -> Pattern | None:
        uid, book = tested_pattern(draft), self._session.book
        known: list[Pattern] = [*planned_pieces(book), *garments(book)]
        return next((one for one in known if one.uid == uid), None)

    def _show(self, form: TesterForm) -> None:
        from logbook.window.pieces.testers_dialog import show_testers

        self._form = form
        try:
            show_testers(self._frame.winfo_toplevel(), self.look, self._session, form, self._written)
        finally:
            self._form = None

    def _written(self, said: str) -> None:
        self._page.changed()
        self._session.say(said)
