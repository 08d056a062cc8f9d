"""An error nobody expected: shown in one sentence, written to a file, never swallowed."""

import platform
import tkinter as tk
import traceback
from datetime import datetime
from pathlib import Path
from types import TracebackType

from logbook.errors import LogbookError
from logbook.window.look import Look
from logbook.window.message import tell

LARGEST_LOG = 1_000_000


def report_unexpected(root: tk.Tk, look: Look, log: Path) -> None:
    """From now on an exception in a callback is shown, and its whereabouts are added to the file ``log``.

    The file gets the lines of the program and the kinds of error, not their words, in which the maker's data could be.
    An error the program foresaw is shown in its own words alone.
    """
    showing = False

    def report(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        nonlocal showing
        foreseen = isinstance(error, LogbookError)
        where = "" if foreseen else _write(log, error)
        if showing:
            return
        showing = True
        try:
            if foreseen:
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

    root.report_callback_exception = report


def whereabouts(error: BaseException) -> str:
    """The lines that led to ``error`` and to those it came from, without any message."""
    parts = []
    link: BaseException | None = error
    while link is not None:
        lines = "".join(traceback.format_tb(link.__traceback__))
        parts.append(f"{lines}{type(link).__module__}.{type(link).__qualname__}\n")
        link = link.__cause__ or (None if link.__suppress_context__ else link.__context__)
    return "which led to:\n".join(reversed(parts))


def _write(log: Path, error: BaseException) -> str:
    """What to tell the user about the file."""
    head = f"{datetime.now().isoformat(' ', 'seconds')}, Python {platform.python_version()}, {platform.system()}\n"
    try:
        log.parent.mkdir(parents=True, exist_ok=True)
        mode = "a" if not log.exists() or log.stat().st_size < LARGEST_LOG else "w"
        with log.open(mode, encoding="utf-8") as file:
            file.write(f"{head}{whereabouts(error)}\n")
    except OSError as problem:
        return f"The details could not be written to {log}: {problem.strerror}. It was: {type(error).__name__}."
    return f"Where it happened is written down in {log}."
