"""A backup folder that can't be written to: what is typed can be saved all the same, and another folder is offered."""

from dataclasses import replace
from pathlib import Path

from logbook.errors import RefusedError
from logbook.tasks.keeping import NoBackupError
from logbook.window.file_dialogs import ask_folder
from logbook.window.message import Answer, ask, tell
from logbook.window.open_window import OpenWindow


def offer_other_folder(window: OpenWindow, error: NoBackupError) -> None:
    """Says that no backup could be made, and asks for another folder until one takes it or the user goes on without."""
    session = window.session
    if session is None:
        return
    while True:
        answers = [Answer("folder", "&Choose another folder…"), Answer("without", "&Go on without backups")]
        details = "What you save still goes into the logbook; only no backups of it are made for now."
        if ask(window.root, window.look, str(error), answers, "folder", "without", details) == "without":
            return
        chosen = ask_folder(parent=window.root, title="Keep backups in", mustexist=True)
        if not chosen:
            return
        session.book.backup_folder = Path(chosen)
        try:
            session.book.back_up()
        except NoBackupError as again:
            error = again
            continue
        except RefusedError as other:
            tell(window.root, window.look, str(other))
            return
        session.change_settings(replace(session.settings, backups=chosen))
        window.say(f"Backups are kept in {chosen} from now on.")
        return
