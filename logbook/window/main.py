"""Starts the window: on the usual logbook, a chosen one, or a fresh copy of the sample."""

import gc
import tkinter as tk
from pathlib import Path

from logbook.craft.words.notation import write_in
from logbook.errors import RefusedError
from logbook.settings import load_settings
from logbook.tasks.at_home import notation_of, sort_as_at_home
from logbook.tasks.keeping import Logbook, new_book, open_book, usual_logbook
from logbook.window.ending import Ending
from logbook.window.look import be_sharp_on_windows
from logbook.window.main_window import MainWindow

STANDS_MS = 1000


class Root(tk.Tk):
    """The window that all others belong to."""

    def readprofile(self, baseName: str, className: str) -> None:
        """Nothing: tkinter would run a Python file of the user's named after the program, and without HOME one that lies in
        whatever folder it was started in."""


def run(chosen: Path | None, *, sample: bool = False) -> int:
    """Opens the window and returns the exit code when it is closed. Raises RefusedError if there is no screen or no logbook."""
    be_sharp_on_windows()
    try:
        root = Root(className="Logbook")
    except tk.TclError as error:
        raise RefusedError(
            f"There is no screen to open the window on ({error}). The commands work without one: logbook --help lists them."
        ) from error
    root.withdraw()
    settings, note = load_settings()
    write_in(notation_of(settings))
    sort_as_at_home()
    window = MainWindow(root, settings)
    root.after(STANDS_MS, _look_for_garbage)
    ending = Ending(root, window.cut_short)
    try:
        if sample:
            import tempfile  # only here: the sample wants a good part of the program, which no other start is to wait for

            from logbook.tasks.sampling import new_sample

            with tempfile.TemporaryDirectory(prefix="logbook-sample-", ignore_cleanup_errors=True) as folder:
                window.show(new_sample(Path(folder)), is_sample=True)
                return window.work(note)
        book = _book(window, chosen)
        if book is None:
            return 1
        window.show(book)
        return window.work(note)
    finally:
        window.close_down()
        ending.over()


def _look_for_garbage() -> None:
    """From now on, and not among what the program itself is made of: of that nothing ever goes."""
    gc.freeze()
    gc.enable()


def _book(window: MainWindow, chosen: Path | None) -> Logbook | None:
    """The logbook to begin with. None, or RefusedError: it can't be opened, and the user gave up."""
    path = chosen if chosen is not None else usual_logbook()
    try:
        return new_book(path) if chosen is None and not path.exists() else open_book(path)
    except RefusedError as error:
        from logbook.window.another_book import another_book

        return another_book(window, path, error)
