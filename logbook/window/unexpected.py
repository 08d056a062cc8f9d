"""An error nobody expected: shown in one sentence, written to a file, never swallowed."""

import sys
import tkinter as tk
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from types import TracebackType

from logbook.errors import LogbookError
from logbook.tasks.error_log import write_down
from logbook.window.look import Look
from logbook.window.message import tell


def report_unexpected(root: tk.Tk, look: Look, log: Path, dealt_with: Callable[[LogbookError], bool] = lambda _: False) -> None:
    """From now on an exception in a callback is shown, and its whereabouts are added to the file ``log``.

    The file gets the lines of the program and the kinds of error, not their words, in which the maker's data could be.
    An error the program foresaw is shown in its own words alone, unless it is ``dealt_with``. What goes wrong in showing it is
    written down as well and goes no further: an exception that left here would end the main loop, and with it the program.
    """
    showing = False

    def show(error: BaseException) -> None:
        nonlocal showing
        where = "" if isinstance(error, LogbookError) else write_down(error, log)
        if showing:
            return
        showing = True
        try:
            if isinstance(error, LogbookError):
                if not dealt_with(error):
                    tell(root, look, str(error))
            else:
                tell(
                    root,
                    look,
                    "Something went wrong that the program did not expect. What you typed is still there.",
                    where,
                )
        finally:
            showing = False

    def report(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        try:
            show(error)
        except Exception as problem:
            with suppress(Exception):
                _last_resort(root, problem, log)

    root.report_callback_exception = report


def _last_resort(root: tk.Tk, problem: Exception, log: Path) -> None:
    """Says what it can where no dialog can be shown: in the file, on the terminal if there is one, and by the bell."""
    where = write_down(problem, log)  # with what it came from
    if sys.stderr is not None:
        with suppress(OSError, ValueError):
            print(f"Something went wrong that could not be shown. {where}", file=sys.stderr, flush=True)
    root.bell()
