"""Keeps what is typed as it is typed, and offers again what the windows before this one had to leave behind."""

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

from logbook.errors import RefusedError
from logbook.pages.drafts import PAGE_OF, Offer
from logbook.pages.session import Session
from logbook.tasks.drafts import Draft, DraftFile, LeftBehind, drafts_folder, left_behind
from logbook.window.open_window import OpenWindow

if TYPE_CHECKING:
    from logbook.window.background import Background

KEEP_MS = 700
"""How often is looked whether something else is typed; it is written in a thread, since a slow disk must not hold up typing."""
OFFER_MS = 300
"""Until what was left behind is offered: the window is drawn by then."""


class DraftKeeper:
    """The drafts of one window; of a copy of the sample there are none."""

    def __init__(self, window: OpenWindow) -> None:
        self._window, self._root = window, window.root
        self._file: DraftFile | None = None
        self._kept: list[Draft] = []
        self._writing: Background[None] | None = None
        self._failing = False
        self._timers: dict[str, str] = {}

    def book_shown(self, session: Session) -> None:
        """From now on drafts are kept beside those of this logbook; those left behind for it are offered soon."""
        before, self._file = self._file, self._new_file(session)
        self._kept = []
        self.keep_now()
        if before is not None:
            before.close()
        if self._file is not None:
            self._after("keep", KEEP_MS, self._look)
            self._after("offer", OFFER_MS, self.offer_what_is_left)

    def _new_file(self, session: Session) -> DraftFile | None:
        if session.is_sample:
            return None
        try:
            return DraftFile(drafts_folder(session.book))
        except RefusedError as error:  # nothing says where the user's folder is
            self._window.say(f"If the program ends unexpectedly, what you are typing is lost. {error}")
            return None

    def keep_now(self) -> None:
        """Keeps what is typed at this moment, before this returns, if the disk takes it."""
        self._wait_for_writing()
        if self._file is not None:
            drafts = self._drafts()
            try:
                self._file.keep(drafts)
            except OSError as error:
                self._failed(error)
            else:
                self._kept = drafts

    def end(self, *, leave: bool = False) -> None:
        """The window closes: everything is saved or thrown away by now; or with ``leave`` is left for the next window."""
        self._wait_for_writing()
        if self._file is not None:
            self._file.close(leave=leave)
            self._file = None

    def offer(self) -> None:
        """Offers what was left behind, or says that there is nothing."""
        if not self.offer_what_is_left():
            self._window.say("There is no unsaved work.")

    def offer_what_is_left(self) -> bool:
        """Offers what dead windows left behind for this logbook, the latest first; False if there is nothing."""
        session = self._window.session
        if session is None or self._file is None:
            return False
        left, unreadable = left_behind(drafts_folder(session.book))
        if unreadable:
            self._window.say(f"Unsaved work from before can't be read. It is still there: {unreadable[-1]}.")
        before = self._window.tabs.index("current") if left else 0
        taken = False
        try:
            for one, draft in [(its, draft) for its in reversed(left) for draft in its.drafts]:
                if self._window.session is session and draft.page in PAGE_OF:
                    taken = self._offer_one(session, one, draft) or taken
        finally:
            for one in left:
                one.let_go()
        if left and not taken and self._window.session is session:
            self._window.tabs.select(before)
        return bool(left)

    def _offer_one(self, session: Session, left: LeftBehind, draft: Draft) -> bool:
        """Whether it was taken up."""
        page = self._window.page_at(PAGE_OF[draft.page])
        offer = Offer(draft, page.kept(draft))
        if not offer.fields:  # saved just before the end
            left.drop(draft)
            return False
        from logbook.window.draft_dialog import DROP, LATER, offer_draft

        answer, keys = offer_draft(self._root, self._window.look, offer)
        if answer == LATER:
            return False
        if answer == DROP:
            left.drop(draft)
            return False
        if draft.units != session.settings.units:  # a length typed without a unit is in those
            session.change_settings(replace(session.settings, units=draft.units))
        if not page.take_up(draft, offer.texts(keys)):
            return False
        self.keep_now()
        left.drop(draft)
        self._window.say("What you typed is back in its form, not saved yet.")
        return True

    def _drafts(self) -> list[Draft]:
        return [draft for page in self._window.pages for draft in page.drafts()]

    def _look(self) -> None:
        if self._file is None:
            return
        if self._writing is None and (drafts := self._drafts()) != self._kept:
            self._write(self._file, drafts)
        self._after("keep", KEEP_MS, self._look)

    def _write(self, file: DraftFile, drafts: list[Draft]) -> None:
        from logbook.window.background import Background  # what is imported here, the start need not wait for

        def done(_: object) -> None:
            self._writing, self._failing, self._kept = None, False, drafts

        self._writing = Background(self._root, lambda _: file.keep(drafts), done, self._failed, lambda *_: None)

    def _failed(self, error: Exception) -> None:
        self._writing = None
        if not isinstance(error, OSError):
            raise error
        if not self._failing:
            self._window.say(f"If the program ends unexpectedly, what you are typing is lost ({error.strerror}): save often.")
        self._failing = True

    def _wait_for_writing(self) -> None:
        if self._writing is not None:
            self._writing.join()

    def _after(self, name: str, milliseconds: int, action: Callable[[], object]) -> None:
        if name in self._timers:
            self._root.after_cancel(self._timers[name])
        self._timers[name] = self._root.after(milliseconds, action)
