"""What the Logbook and Help menus do: make, open, copy, check; the dialogs they open are in files of their own.

Those are imported when they open, so that the window is there at once.
"""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.tasks.browsing import first_swatch_lines
from logbook.tasks.keeping import CheckResult, DamagedError, Logbook, ReplacedError, check_book, new_book, open_book
from logbook.window.background import Report
from logbook.window.file_dialogs import ask_what_to_open, ask_where_to_save
from logbook.window.message import say_foreseen, tell
from logbook.window.open_window import OpenWindow
from logbook.window.progress import run_with_progress
from logbook.window.rescue import offer_rescue
from logbook.window.save_copy import KINDS, save_copy

if TYPE_CHECKING:
    import tempfile
    import tkinter as tk

    from logbook.pages.session import Session
    from logbook.window.look import Look


class BookActions:
    """The entries of the menu for one window."""

    def __init__(self, window: OpenWindow) -> None:
        self._window = window
        self._sample_folders: list[tempfile.TemporaryDirectory[str]] = []

    def new(self) -> None:
        """Makes a new logbook where the user says, and shows it."""
        chosen = ask_where_to_save(parent=self._window.root, title="New logbook", kinds=KINDS, confirmoverwrite=False)
        if chosen:
            self._show(lambda: new_book(Path(chosen)))

    def open(self) -> None:
        """Opens the logbook the user chooses."""
        chosen = ask_what_to_open(parent=self._window.root, title="Open a logbook", filetypes=KINDS)
        if chosen:
            self.open_path(Path(chosen))

    def open_path(self, path: Path) -> None:
        """Opens a logbook and shows it; a damaged one is offered its newest good backup."""
        session = self._window.session
        if session is not None and session.book.is_at(path):
            if not _is_written_over(session.book):
                self._window.say(f"{path.name} is open already.")
                return
            if not self._window.settle():
                return
            # Its file may only be looked at anew while it is not open here.
            self._window.show_none(f"{path.name} was overwritten with something else.")

        def opened() -> Logbook | None:
            try:
                return _readable(open_book(path))
            except DamagedError as error:
                return offer_rescue(self._window.root, self._window.look, path, error)

        self._show(opened)

    def open_sample(self) -> None:
        """Shows a fresh copy of the sample, in a folder that goes with the program's end."""
        import tempfile

        from logbook.tasks.sampling import new_sample

        folder = tempfile.TemporaryDirectory(prefix="logbook-sample-", ignore_cleanup_errors=True)
        self._sample_folders.append(folder)
        self._show(lambda: new_sample(Path(folder.name)), is_sample=True)

    def save_copy(self) -> None:
        """Saves a verified copy of what is open under a new name."""
        save_copy(self._window)

    def check(self) -> None:
        """Checks the logbook that is open, wholly."""
        session = self._window.session
        if session is None:
            return
        root, look, name = self._window.root, self._window.look, session.book.path.name

        def work(report: Report) -> CheckResult:
            with session.book.again() as book:
                return check_book(book, deep=True)

        def show(result: CheckResult) -> None:
            if result.ok:
                self._window.say(f"{name} is sound: {counted(result.swatches or 0, 'swatch')}.")
            else:
                tell(root, look, "The logbook has problems:", "\n".join(result.problems))

        run_with_progress(root, look, f"Checking {name} …", work, show, lambda error: say_foreseen(root, look, error))

    def import_sheet(self) -> None:
        """Takes a sheet in, after showing what it would do."""
        from logbook.window.sheet_actions import import_sheet

        self._take_in(import_sheet)

    def paste_rows(self) -> None:
        """Takes in rows that were copied in a spreadsheet program, after showing what they would do."""
        from logbook.window.sheet_actions import paste_rows

        self._take_in(paste_rows)

    def _take_in(self, take: "Callable[[tk.Tk, Look, Session], object]") -> None:
        session = self._window.session
        if session is not None and session.why_not_writable:
            tell(self._window.root, self._window.look, session.why_not_writable)
        elif session is not None and self._window.settle():
            take(self._window.root, self._window.look, session)

    def merge(self) -> None:
        """Takes another logbook into this one, after asking whose word goes where both have changed the same."""
        from logbook.window.merge_actions import merge_logbook

        session = self._window.session
        if session is not None and session.why_not_writable:
            tell(self._window.root, self._window.look, session.why_not_writable)
        elif session is not None and self._window.settle():
            merge_logbook(self._window.root, self._window.look, session)

    def export_sheet(self) -> None:
        """Hands all swatches on as a sheet."""
        from logbook.window.sheet_actions import export_sheet

        if self._window.session is not None and self._window.settle():
            export_sheet(self._window.root, self._window.look, self._window.session)

    def yarns(self) -> None:
        """Lists the yarns, to rename, merge or delete them."""
        from logbook.tasks.known_names import NameOf
        from logbook.window.names_dialog import show_names

        session = self._window.session
        if session is not None and self._window.settle():
            show_names(self._window.root, self._window.look, session, NameOf.YARN)

    def backups(self) -> None:
        """Lists the backups with what each holds."""
        from logbook.window.backups_dialog import show_backups

        if self._window.session is not None:
            show_backups(self._window.root, self._window.look, self._window.session, self.open_path)

    def assumptions(self) -> None:
        """Shows what the arithmetic assumes, to be changed."""
        from logbook.window.assumptions_dialog import show_assumptions

        if self._window.session is not None:
            show_assumptions(self._window.root, self._window.look, self._window.session)

    def help(self) -> None:
        """Shows the first walk through."""
        from logbook.window.help_window import show_help

        show_help(self._window.root, self._window.look)

    def rows_help(self) -> None:
        """Shows how written rows are read and counted."""
        from logbook.window.help_window import ROWS, show_help

        show_help(self._window.root, self._window.look, ROWS)

    def keys(self) -> None:
        """Shows the keys."""
        from logbook.window.help_window import show_keys

        show_keys(self._window.root, self._window.look)

    def about(self) -> None:
        """Says what the program is."""
        from logbook.window.help_window import show_about

        show_about(self._window.root, self._window.look)

    def _show(self, opened: Callable[[], Logbook | None], *, is_sample: bool = False) -> None:
        if not self._window.settle():
            return
        books: list[Logbook | None] = []
        if self._tried(lambda: books.append(opened())) and books[0] is not None:
            self._window.show(books[0], is_sample=is_sample)

    def _tried(self, action: Callable[[], object]) -> bool:
        try:
            action()
        except RefusedError as error:
            tell(self._window.root, self._window.look, str(error))
            return False
        return True


def _readable(book: Logbook) -> Logbook:
    """The same, once what is shown first could be read: what is open stays open otherwise. Raises DamagedError."""
    try:
        first_swatch_lines(book, 1)
    except DamagedError:
        book.close()
        raise
    return book


def _is_written_over(book: Logbook) -> bool:
    try:
        with book.reading():
            return False
    except (ReplacedError, DamagedError):
        return True
