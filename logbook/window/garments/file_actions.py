"""What can be done with a garment: its pattern copied, saved, printed; its drawing and its plan as files; publishing."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from tkinter import ttk
from typing import NamedTuple, TypeVar

from logbook.craft.garments.published import Published
from logbook.errors import LogbookError, RefusedError
from logbook.pages.garments.garment_card import GarmentCard, GarmentMaker
from logbook.pages.garments.garment_form import GarmentForm
from logbook.pages.garments.other_yarn import OtherYarn
from logbook.pages.session import Session
from logbook.tasks.garment_files import (
    pattern_html,
    save_as_it_stands,
    save_bytes_as_they_stand,
    save_garment_svg,
    save_garment_workbook,
    save_pattern_page,
    save_plan,
)
from logbook.tasks.garment_publishing import (
    publish,
    published,
    published_drawing,
    published_page,
    published_workbook,
    take_back,
)
from logbook.tasks.garments import GarmentAnswer, read_plan
from logbook.window.file_dialogs import ask_what_to_open, ask_where_to_save
from logbook.window.garments.dialogs import ask_other_yarn
from logbook.window.keys import bind_keys
from logbook.window.look import Look
from logbook.window.menu_entries import Entry, Item
from logbook.window.message import tell
from logbook.window.printing import Printer

_Made = TypeVar("_Made")

PLANS = [("Plan of a garment", "*.json"), ("All files", "*")]


class GarmentOnPage(NamedTuple):
    """What the page gives: its card; saving; a plan that is taken in hand as a new garment; and how it hears of changes."""

    card: Callable[[], GarmentCard]
    save: Callable[[], bool]
    settle: Callable[[], bool]
    take_plan: Callable[[object], object]
    changed: Callable[[], object]
    pattern: Callable[[], str]


class FileActions:
    """``entries`` of the menu *Piece* while garments are shown."""

    def __init__(
        self, frame: ttk.Frame, look: Look, session: Session, form: GarmentForm, maker: GarmentMaker, page: GarmentOnPage
    ) -> None:
        self._frame, self.look, self._session, self._form, self._maker, self._page = frame, look, session, form, maker, page
        self.printer = Printer(session)
        self._pasted: dict[str, str] = {}  # by garment: the text that was proofread last
        self.entries: tuple[Entry, ...] = (
            Item("&Print the pattern", "Mod-p", self.print, self._is_something),
            Item("&Copy the pattern", "Mod-Shift-c", self.copy, self._is_something),
            Item("Copy the short &version", "", self.copy_short, self._is_something),
            Item("Save the pattern as a &text…", "", self.save_text, self._is_something),
            Item("Save the pattern as a web pa&ge…", "", self.save_page, self._is_something),
            Item("Save the &drawing…", "", self.save_drawing, self._is_something),
            Item("Save the &workbook…", "", self.save_workbook, self._is_something),
            Item("Proofread a te&xt…", "", self.proofread, self._is_something),
            None,
            Item("The same in another &yarn…", "", self.other_yarn, lambda: page.card().garment is not None),
            Item("&Mark it as published", "", self.publish, self._can_publish),
            Item("&No longer published", "", self.take_back, lambda: self._is_published() and not session.why_not_writable),
            None,
            Item("Save its p&lan as a file…", "", self.save_plan),
            Item("&Open a plan from a file…", "", self.take_in),
        )
        for entry in self.entries:
            if entry is not None and entry.keys:
                bind_keys(frame.winfo_toplevel(), entry.keys, entry.action, while_shown=frame)

    def _is_something(self) -> bool:
        """Whether the size shown is worked out, or was published; in the other sizes something may still be missing."""
        return self._page.card().garment is not None or self._is_published()

    def _can_publish(self) -> bool:
        return self._page.card().garment is not None and not self._session.why_not_writable

    def _is_published(self) -> bool:
        return self._form.saved is not None and self._form.saved.published is not None

    def copy(self) -> None:
        """Copies the whole pattern."""
        text = self._page.pattern()
        if not text:
            self._whole()
            return
        self._frame.clipboard_clear()
        self._frame.clipboard_append(text)
        self._session.say("The whole pattern is copied.")

    def copy_short(self) -> None:
        """Copies the lines for the box under a film: yarn, hook, gauge, chains, and a piece to practise on."""
        from logbook.tasks.garment_files import written
        from logbook.tasks.written.garment import short_version

        answer = self._whole()
        if answer is not None:
            self._frame.clipboard_clear()
            self._frame.clipboard_append("\n".join(short_version(written(answer, self._session.terms))))
            self._session.say("The short version is copied.")

    def print(self) -> None:
        """Opens the whole pattern, with its drawings, as a page in the browser; what was published as it was published."""
        terms, units = self._session.terms, self._session.units
        html = self._made(lambda before: published_page(before, terms, units), lambda answer: pattern_html(answer, terms, units))
        if html is not None:
            self.printer.show_page(html, "garment.html")

    def save_text(self) -> None:
        """Asks where to, and writes the whole pattern there as text; what was published as it was published."""
        text = self._page.pattern()
        if text:
            self._save_as(".txt", "Text", lambda to: save_as_it_stands(text, to, self._session.book))
        else:
            self._whole()

    def save_page(self) -> None:
        """Asks where to, and writes the whole pattern there as a page to print; what was published as it was published."""
        terms, units, book = self._session.terms, self._session.units, self._session.book
        self._save(
            ".html",
            "Web page",
            lambda before, to: save_as_it_stands(published_page(before, terms, units), to, book),
            lambda answer, to: save_pattern_page(answer, terms, units, to, book),
        )

    def save_drawing(self) -> None:
        """Asks where to, and writes the drawing of the size shown there; what was published as it was published."""
        shown, units, book = self._page.card().size, self._session.units, self._session.book

        def write(answer: GarmentAnswer, to: Path) -> None:
            size = next(size for size in answer.numbers if size.name == shown)
            save_garment_svg(answer, size, to, units, book)

        def write_published(before: Published, to: Path) -> None:
            save_as_it_stands(published_drawing(before, shown, units), to, book)

        self._save(".svg", "Drawing", write_published, write)

    def save_workbook(self) -> None:
        """Asks where to, and writes all numbers to a workbook there; what was published as it was published."""
        terms, book = self._session.terms, self._session.book
        self._save(
            ".xlsx",
            "Workbook",
            lambda before, to: save_bytes_as_they_stand(published_workbook(before, terms), to, book),
            lambda answer, to: save_garment_workbook(answer, terms, to, book),
        )

    def proofread(self) -> None:
        """A window for the maker's finished text, held against the garment; against what was published, if it was."""
        from logbook.tasks.proofreading import of_garment, of_published
        from logbook.window.proofreading_dialog import ProofreadingDialog

        held = self._made(of_published, of_garment)
        if held is not None:
            name, texts = self._form.read().plan.name or "this garment", self._pasted
            keep = partial(texts.__setitem__, self._form.uid)
            ProofreadingDialog(self._frame.winfo_toplevel(), self.look, name, held, texts.get(self._form.uid, ""), keep)

    def save_plan(self) -> None:
        """Asks where to, and writes the plan as typed there; the window and the command take it in again."""
        plan = self._form.read().plan
        self._save_as(".json", "Plan", lambda to: save_plan(plan, to, self._session.book))

    def take_in(self) -> None:
        """Asks for the file of a plan, and takes it in hand as a new garment, not saved."""
        if not self._page.settle():
            return
        chosen = ask_what_to_open(parent=self._frame, title="Open a plan", filetypes=PLANS)
        if not chosen:
            return
        try:
            plan = read_plan(Path(chosen))
        except LogbookError as error:
            tell(self._frame, self.look, str(error))
            return
        self._page.take_plan(plan)
        self._session.say(f"The plan of {Path(chosen).name} is shown; it is not saved yet.")

    def other_yarn(self) -> None:
        """The same garment from other swatches, as a new one."""
        if not self._page.settle():
            return
        other = OtherYarn(self._session, self._form)
        if not other.tags:
            self._session.say("Choose a garment whose pieces have swatches first.")
            return
        plan = ask_other_yarn(self._frame.winfo_toplevel(), self.look, other)
        if plan is not None:
            self._page.take_plan(plan)
            self._session.say("The garment in the other yarn is shown; it is not saved yet.")

    def publish(self) -> None:
        """Keeps what is saved as published today."""
        if self._whole() is None or not self._saved():
            return
        answer, saved = self._whole(), self._form.saved
        if answer is None or saved is None:
            return
        self._write(lambda: publish(self._session.book, saved, answer), f"“{saved.name}” is marked as published today.")

    def take_back(self) -> None:
        """Forgets what was published."""
        saved = self._form.saved
        if saved is None or saved.published is None:
            self._session.say("Nothing of this garment is marked as published.")
        else:
            self._write(lambda: take_back(self._session.book, saved), f"“{saved.name}” is not marked as published any more.")

    def _saved(self) -> bool:
        return (not self._form.is_dirty or self._page.save()) and self._form.saved is not None

    def _write(self, action: Callable[[], object], said: str) -> None:
        try:
            self._session.write(action)
        except RefusedError as error:
            tell(self._frame, self.look, str(error))
            return
        self._page.changed()
        self._session.say(said)

    def _whole(self) -> GarmentAnswer | None:
        try:
            return self._maker.whole()
        except LogbookError as error:
            self._session.say(f"There is no pattern yet: {error}")
            return None

    def _made(self, of_published: Callable[[Published], _Made], of_now: Callable[[GarmentAnswer], _Made]) -> _Made | None:
        """What was published of the garment in hand, else what it is now; None, and said, if it can't be."""
        try:
            before = None if self._form.saved is None else published(self._form.saved)
            if before is not None:
                return of_published(before)
        except RefusedError as error:
            tell(self._frame, self.look, str(error))
            return None
        answer = self._whole()
        return None if answer is None else of_now(answer)

    def _save(
        self,
        suffix: str,
        kind: str,
        of_published: Callable[[Published, Path], None],
        of_now: Callable[[GarmentAnswer, Path], None],
    ) -> None:
        def writing_published(before: Published) -> Callable[[Path], None]:
            return lambda to: of_published(before, to)

        write = self._made(writing_published, lambda answer: lambda to: of_now(answer, to))
        if write is not None:
            self._save_as(suffix, kind, write)

    def _save_as(self, suffix: str, kind: str, write: Callable[[Path], None]) -> None:
        name = self._form.texts["name"].strip() or "garment"
        chosen = ask_where_to_save(
            parent=self._frame,
            title=f"Save the {kind.lower()}",
            kinds=[(kind, f"*{suffix}")],
            name=name,
        )
        if not chosen:
            return
        try:
            write(Path(chosen))
        except RefusedError as error:
            tell(self._frame, self.look, str(error))
        else:
            self._session.say(f"Written to {chosen}.")
