"""Saving a copy of the logbook that is open, and going on with it where the open one can't be written to any more."""

from pathlib import Path

from logbook.errors import RefusedError
from logbook.pages.drafts import CHAIN
from logbook.pages.session import Session
from logbook.tasks.keeping import SUFFIX, open_book
from logbook.tasks.pictures import along_with, how_many_beside
from logbook.window.background import Report
from logbook.window.file_dialogs import ask_where_to_save, named_today
from logbook.window.message import Answer, ask, say_foreseen, tell
from logbook.window.open_window import OpenWindow
from logbook.window.progress import run_with_progress

AT_ONCE = 12
"""Pictures that are copied while one waits."""
KINDS = [("Logbooks", f"*{SUFFIX}"), ("All files", "*")]


def save_copy(window: OpenWindow) -> None:
    """Asks where to and saves a verified copy; what is typed on the pages can be taken along into it."""
    session = window.session
    if session is None:
        return
    chosen = ask_where_to_save(
        parent=window.root,
        title="Save a copy",
        kinds=KINDS,
        name=named_today(session.book.path.stem),
        confirmoverwrite=False,
    )
    if not chosen:
        return
    target = Path(chosen)
    try:
        session.book.save_copy(target)
    except RefusedError as error:
        if not window.watch.deal_with(error, again=True):
            tell(window.root, window.look, str(error))
        return
    source = session.book.path

    def bring(report: Report) -> str:
        return along_with(source, target, report)

    def give_up(error: Exception) -> None:
        say_foreseen(window.root, window.look, error)
        _saved(window, session, target, "")

    if how_many_beside(source) <= AT_ONCE:
        _saved(window, session, target, along_with(source, target))
    else:
        run_with_progress(
            window.root, window.look, "Copying the pictures …", bring, lambda left: _saved(window, session, target, left), give_up
        )


def _saved(window: OpenWindow, session: Session, target: Path, left: str) -> None:
    """Says so, and offers to go on with the copy where there is something that can't be saved here."""
    window.say(" ".join(filter(None, (f"A copy was saved as {target}.", left))))
    try:
        stuck, typed = _can_not_go_on(session), _is_something_typed(window)
        if (stuck or typed) and _wants_to_go_on(window, target, stuck=stuck, typed=typed):
            window.go_on_with(open_book(target))
    except RefusedError as error:
        if not window.watch.deal_with(error, again=True):
            tell(window.root, window.look, str(error))


def _can_not_go_on(session: Session) -> bool:
    return bool(session.why_not_writable) or session.is_sample or not session.book.is_at(session.book.path)


def _is_something_typed(window: OpenWindow) -> bool:
    """Whether there is something to save: a wanted width is not."""
    return any(draft.page != CHAIN for page in window.pages for draft in page.drafts())


def _wants_to_go_on(window: OpenWindow, target: Path, *, stuck: bool, typed: bool) -> bool:
    answers = [Answer("go on", "&Go on with the copy"), Answer("stay", "&Keep editing")]
    sentence = f"A copy was saved as {target}{', without what is typed and not saved yet' if typed else ''}."
    details = "If you go on with the copy, what is typed on the pages comes along and can be saved there."
    return ask(window.root, window.look, sentence, answers, "go on" if stuck else "stay", "stay", details) == "go on"
