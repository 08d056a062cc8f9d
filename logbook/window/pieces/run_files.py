"""What can be done with a size run: print it, copy or save its lines, hand it on as a workbook, set it."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from tkinter import ttk

from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.errors import RefusedError
from logbook.pages.pieces.run_card import RunCard
from logbook.pages.session import Session
from logbook.tasks.printed.cautions import cautions
from logbook.tasks.printed.run_page import run_page
from logbook.tasks.set_runs import set_run, unset_run
from logbook.tasks.size_runs import save_lines, save_run_workbook
from logbook.tasks.written_rows import charts_for
from logbook.window.keys import bind_keys
from logbook.window.menu_entries import Item
from logbook.window.pieces.file_actions import FileActions

NOTHING = "There are no sizes to print or save yet: the page says what is missing."


@dataclass(frozen=True, slots=True)
class RunOnPage:
    """What the page says of this moment: the run, the saved piece in hand; and how it saves and hears of changes."""

    card: Callable[[], RunCard]
    saved: Callable[[], PlannedPiece | None]
    name: Callable[[], str]
    notes: Callable[[], str]
    source: Callable[[], str]
    save: Callable[[], bool]
    changed: Callable[[], object]


class RunFiles:
    """The entries that a piece with sizes adds to the menu, each with its key."""

    def __init__(self, frame: ttk.Frame, session: Session, files: FileActions, page: RunOnPage) -> None:
        self._frame, self._session, self._files, self._page = frame, session, files, page
        self._pasted: dict[str, str] = {}  # by piece: the text that was proofread last
        self.entries = (
            Item("Print &all sizes", "Mod-Shift-p", self.print, lambda: bool(page.card().sizes)),
            Item("Copy the pattern &lines", "Mod-l", self.copy_lines, self._has_lines),
            Item("Save the l&ines…", "", self.save_lines, self._has_lines),
            Item("Save all sizes as a work&book…", "", self.save_workbook, self._is_worked_out),
            Item("Proofread a te&xt…", "", self.proofread, self._has_lines),
            Item("&Mark as published", "Mod-t", self.set, lambda: self._is_worked_out() and not session.why_not_writable),
            Item("&No longer published", "", self.unset, lambda: self._is_published() and not session.why_not_writable),
        )
        for entry in self.entries:
            if entry.keys:
                bind_keys(frame.winfo_toplevel(), entry.keys, entry.action, while_shown=frame)

    def _has_lines(self) -> bool:
        return bool(self._page.card().lines)

    def _is_worked_out(self) -> bool:
        return self._page.card().answer is not None

    def _is_published(self) -> bool:
        piece = self._page.saved()
        return piece is not None and piece.published is not None

    def print(self) -> None:
        """Opens the page of the run in the browser."""
        card = self._page.card()
        if not card.sizes:
            self._session.say(NOTHING)
            return
        names = (self._page.name(), *(str(size["size"]) for size in card.sizes))
        minded = cautions(card.answer.gauges.yarn.fibre if card.answer else "", names, self._page.notes())
        said = (*(card.set_words if card.set_run else ()), *minded)
        charts = charts_for(card.answer.plan, card.answer.gauges.pattern) if card.answer else ()
        html = run_page(self._page.name(), card.sizes, card.lines, self._session.units, f"{self._page.source()}.", said, charts)
        self._files.printer.show_page(html, "sizes.html")

    def copy_lines(self) -> None:
        """Puts the lines of the pattern on the clipboard."""
        lines = self._page.card().lines
        if lines:
            self._frame.clipboard_clear()
            self._frame.clipboard_append(lines)
        self._session.say("The pattern lines are copied." if lines else NOTHING)

    def save_lines(self) -> None:
        """Asks where to, and writes the lines there."""
        lines, book = self._page.card().lines, self._session.book
        if lines:
            self._files.save("Save the lines", ".txt", "Text", lambda to: save_lines(lines, to, book))
        else:
            self._session.say(NOTHING)

    def proofread(self) -> None:
        """A window for the maker's finished text, held against the lines of the run; against those published, if they were."""
        from logbook.tasks.proofreading import of_run
        from logbook.window.proofreading_dialog import ProofreadingDialog

        card, name = self._page.card(), self._page.name()
        if not card.lines:
            self._session.say(NOTHING)
            return
        held = of_run((str(size["size"]) for size in card.sizes), card.lines)
        keep = partial(self._pasted.__setitem__, name)
        ProofreadingDialog(self._frame.winfo_toplevel(), self._files.look, name, held, self._pasted.get(name, ""), keep)

    def save_workbook(self) -> None:
        """Asks where to, and writes the run there."""
        card, terms, book = self._page.card(), self._session.terms, self._session.book
        answer, published = card.answer, card.set_run
        if answer is None:
            self._session.say(NOTHING)
            return

        def write(to: Path) -> None:
            save_run_workbook(answer, terms, to, book, published)

        self._files.save("Save all sizes", ".xlsx", "Workbook", write)

    def set(self) -> None:
        """Keeps the run as published; what is typed is saved with it."""
        answer = self._page.card().answer
        if answer is None:
            self._session.say(NOTHING)
            return
        piece = self._page.saved() if self._page.save() else None
        if piece is not None:
            self._put(lambda: set_run(self._session.book, piece, answer, self._session.terms))
            self._session.say(f"“{piece.name}” is marked as published: its numbers stay as they are, whatever is measured later.")

    def unset(self) -> None:
        """Forgets what was published."""
        piece = self._page.saved()
        if piece is None or piece.published is None:
            self._session.say("This piece is not marked as published.")
            return
        self._put(lambda: unset_run(self._session.book, piece))
        self._session.say(f"“{piece.name}” is no longer marked as published. Undo marks it again.")

    def _put(self, action: Callable[[], object]) -> None:
        try:
            self._session.write(action)
        except RefusedError as error:
            self._session.say(str(error))
            return
        self._page.changed()
