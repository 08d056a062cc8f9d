"""The command ``logbook``: without a command the window, else one of the commands.

Exit: 0 done, 1 refused or failed by the logbook, the sheet or the arithmetic, 2 wrong from the arguments alone.
"""

import gc
import io
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from logbook.commands.output import print_text
from logbook.errors import LogbookError, RefusedError, UsageError
from logbook.tasks.error_log import error_log, write_down


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command line and returns its exit code. Answers go to standard output, errors as one line to standard error."""
    try:
        code = _run(sys.argv[1:] if arguments is None else arguments)
        sys.stdout.flush()
        return code
    except OSError as error:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # else leaving Python would try once more, and complain
        if isinstance(error, BrokenPipeError):  # whoever reads the answer has had enough of it, as “head” does
            return 1
        return _fail(f"The answer could not be written out ({error.strerror}). {write_down(error, error_log())}", 1)


def _run(arguments: Sequence[str]) -> int:
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            # A pipe on Windows would not take “−” or “¼”; a file's name may hold bytes that are no text.
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    try:
        if not arguments:
            return _window()  # the usual start, which need not wait for a parser
        from logbook.commands.line import parse

        parsed = parse(arguments)
        return int(parsed.run(parsed)) if parsed.run is not None else _window(parsed.book, sample=parsed.sample)
    except UsageError as error:
        return _fail(error, 2)
    except LogbookError as error:
        from logbook.craft.pieces.options import FirstStitchUnknownError

        if isinstance(error, FirstStitchUnknownError):
            return _fail(f"{error} Give --stitch NAME, or --extra-chains T.", 2)
        return _fail(error, 1)
    except OSError:  # files are seen to by the tasks, so this is the answer that nobody takes
        raise
    except KeyboardInterrupt:
        return _fail("Stopped; what was not finished was not written.", 1)
    except Exception as error:  # the outermost edge: said in a line and logged whole, never swallowed
        return _fail(f"Something went wrong that the program did not expect. {write_down(error, error_log())}", 1)


def _window(book: Path | None = None, *, sample: bool = False) -> int:
    if not sample and _is_shown(book):
        return 0
    gc.disable()  # until the window stands nothing that is made is garbage, and to look for it takes time
    try:
        return _runner()(book, sample=sample)
    finally:
        gc.enable()


def _is_shown(chosen: Path | None) -> bool:
    """Whether a window shows that logbook already, and has come to the front."""
    from logbook.tasks.keeping import usual_logbook
    from logbook.tasks.showing import brought_to_front

    path = chosen if chosen is not None else usual_logbook()
    if not brought_to_front(path):
        return False
    print_text(f"{path.name} is open already: its window is in front.")
    return True


def _runner() -> Callable[..., int]:
    """What runs the window; only here, for the commands need neither tkinter nor a screen."""
    try:
        from logbook.window.main import run
    except ImportError as error:
        if "tkinter" not in str(error):  # by its words: the one that Debian raises has no name
            raise
        raise RefusedError(
            "The window needs tkinter, which this Python lacks: install it (Debian and Ubuntu: sudo apt install python3-tk; "
            "Fedora: sudo dnf install python3-tkinter). The commands work without it: logbook --help lists them."
        ) from error
    return run


def _fail(error: object, code: int) -> int:
    print_text(f"logbook: {' '.join(str(error).split())}", sys.stderr)
    return code
