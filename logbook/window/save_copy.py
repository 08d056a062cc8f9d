"""Saving a copy of the logbook that is open, and going on with it where the open one can't be written to any more."""

from pathlib import Path
from tkinter import filedialog
from typing import TYPE_CHECKING

from logbook.errors import RefusedError
from logbook.pages.session import Session
from logbook.tasks.keeping import SUFFIX, open_book
from logbook.window.message import Answer, ask, tell

if TYPE_CHECKING:
    from logbook.window.main_window import MainWindow

KINDS = [("Logbooks", f"*{SUFFIX}"), ("All files", "*")]


def save_copy(window: "MainWindow") -> None:
    """Asks where to and saves a verified copy; what is typed on the pages can be taken along into it."""
    session = window.session
    if session is None:
        return
    chosen = filedialog.asksaveasfilename(
        parent=window.root, title="Save a copy", defaultextension=SUFFIX, filetypes=KINDS, confirmoverwrite=False
    )
    if not chosen:
        return
    target = Path(chosen)
    try:
        session.book.save_copy(target)
        window.say(f"A copy was saved as {target}.")
        if _can_not_go_on(session) and _wants_to_go_on(window, target):
            window.go_on_with(open_book(target))
    except RefusedError as error:
        tell(window.root, window.look, str(error))


def _can_not_go_on(session: Session) -> bool:
    return bool(session.why_not_writable) or session.is_sample or not session.book.is_at(session.book.path)


def _wants_to_go_on(window: "MainWindow", target: Path) -> bool:
    answers = [Answer("go on", "&Go on with the copy"), Answer("stay", "Sta&y here")]
    details = "What is typed on the pages comes along."
    return ask(window.root, window.look, f"A copy was saved as {target}.", answers, "go on", "stay", details) == "go on"
