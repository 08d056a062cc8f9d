"""What can be done when the logbook to begin with can't be opened."""

from pathlib import Path

from logbook.errors import RefusedError
from logbook.tasks.keeping import DamagedError, Logbook, open_book
from logbook.window.file_dialogs import ask_what_to_open
from logbook.window.message import Answer, ask
from logbook.window.open_window import OpenWindow
from logbook.window.rescue import offer_rescue
from logbook.window.save_copy import KINDS


def another_book(window: OpenWindow, path: Path, trouble: RefusedError) -> Logbook | None:
    """A backup of the logbook at ``path`` if that is damaged, else the one the user chooses instead.

    Asks again while there is ``trouble`` with that too. None, or RefusedError: the user gave up.
    """
    while True:
        if isinstance(trouble, DamagedError):
            return offer_rescue(window.root, window.look, path, trouble)
        answers = [Answer("open", "&Open another logbook…"), Answer("quit", "&Quit")]
        if ask(window.root, window.look, str(trouble), answers, "open", "quit") == "quit":
            raise trouble
        chosen = ask_what_to_open(parent=window.root, title="Open a logbook", filetypes=KINDS)
        path = Path(chosen) if chosen else path
        try:
            return open_book(path)
        except RefusedError as error:
            trouble = error
