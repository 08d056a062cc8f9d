"""Starts the window: on the usual logbook, a chosen one, or a fresh copy of the sample."""

import gc
import tkinter as tk
from pathlib import Path
from tkinter import filedialog

from logbook.errors import RefusedError
from logbook.settings import load_settings
from logbook.tasks.keeping import DamagedError, Logbook, new_book, open_book, usual_logbook
from logbook.window.look import be_sharp_on_windows
from logbook.window.main_window import MainWindow
from logbook.window.message import Answer, ask
from logbook.window.rescue import offer_rescue
from logbook.window.save_copy import KINDS

STANDS_MS = 1000


def run(chosen: Path | None, *, sample: bool = False) -> int:
    """Opens the window and returns the exit code when it is closed. Raises RefusedError if there is no screen or no logbook."""
    be_sharp_on_windows()
    try:
        root = tk.Tk(className="Logbook")
    except tk.TclError as error:
        raise RefusedError(
            f"There is no screen to open the window on ({error}). The commands work without one: logbook --help lists them."
        ) from error
    root.withdraw()
    settings, note = load_settings()
    window = MainWindow(root, settings)
    root.after(STANDS_MS, _look_for_garbage)
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


def _look_for_garbage() -> None:
    """From now on, and not among what the program itself is made of: of that nothing ever goes."""
    gc.freeze()
    gc.enable()


def _book(window: MainWindow, chosen: Path | None) -> Logbook | None:
    """The logbook to begin with; while it can't be opened, another is asked for. None, or RefusedError: the user gave up."""
    path = chosen if chosen is not None else usual_logbook()
    while True:
        try:
            if chosen is None and path == usual_logbook() and not path.exists():
                return new_book(path)
            return open_book(path, quick=True)
        except DamagedError as error:
            return offer_rescue(window.root, window.look, path, error)
        except RefusedError as error:
            answers = [Answer("open", "&Open another logbook…"), Answer("quit", "&Quit")]
            if ask(window.root, window.look, str(error), answers, "open", "quit") == "quit":
                raise
        another = filedialog.askopenfilename(parent=window.root, title="Open a logbook", filetypes=KINDS)
        path = Path(another) if another else path
