"""The command ``logbook``: without a command the window, else one of the commands.

Exit: 0 done, 1 refused or failed by the logbook, the sheet or the arithmetic, 2 wrong from the arguments alone.
"""

import argparse
import io
import os
import sys
from collections.abc import Sequence
from functools import cache, partial
from importlib import import_module
from pathlib import Path

from logbook import __version__
from logbook.commands.parser import Parser, UsageError, joined_minus_values
from logbook.errors import LogbookError
from logbook.tasks.error_log import error_log, write_down

COMMANDS = {
    "chain": ("chain", "how many to chain for a width"),
    "piece": ("piece", "a whole piece: chain, rows, marks, sizes, yarn"),
    "sizes": ("sizes", "a garment in several sizes, and its pattern lines"),
    "find": ("find", "look up swatches"),
    "nearest": ("nearest", "the swatches nearest to a wanted gauge"),
    "compare": ("compare", "two to six swatches side by side"),
    "hooks": ("hooks", "which hook gives which gauge"),
    "import": ("sheets", "take in a sheet of swatches (.xlsx or .csv)"),
    "export": ("sheets", "write all swatches to a sheet (.xlsx or .csv)"),
    "check": ("keeping", "see whether a logbook is sound"),
    "backup": ("keeping", "make a backup now"),
    "restore": ("keeping", "restore a backup under a new name"),
    "rows": ("rows", "whether written rows add up at every width"),
}
"""Each command's module here, imported only when it is asked for (the window needs none of them), and what it does."""


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
        parsed = build_parser().parse_words_anywhere(joined_minus_values(arguments))
        if parsed.sample and parsed.run is not _window:
            raise UsageError("--sample is for the window and goes with no command")
        return int(parsed.run(parsed))
    except UsageError as error:
        return _fail(error, 2)
    except LogbookError as error:
        return _fail(error, 1)
    except OSError:  # files are seen to by the tasks, so this is the answer that nobody takes
        raise
    except KeyboardInterrupt:
        return _fail("Stopped; what was not finished was not written.", 1)
    except Exception as error:  # the outermost edge: said in a line and logged whole, never swallowed
        return _fail(f"Something went wrong that the program did not expect. {write_down(error, error_log())}", 1)


@cache
def build_parser() -> Parser:
    """The parser of the whole command line."""
    parser = Parser(prog="logbook", description="The swatch and gauge logbook. Without a command it opens its window.")
    parser.add_argument("--version", action="version", version=f"logbook {__version__}")
    parser.add_argument("--book", type=Path, metavar="FILE", help="the logbook to use (else the usual one)")
    parser.add_argument("--sample", action="store_true", help="open the window on a fresh copy of the sample")
    parser.set_defaults(run=_window)
    commands = parser.add_subparsers(metavar="COMMAND", parser_class=Parser)
    for name, (module, does) in COMMANDS.items():
        commands.add_parser(name, help=does, fill=partial(_fill, name, module))
    return parser


def _fill(name: str, module: str, parser: Parser) -> None:
    getattr(import_module(f"logbook.commands.{module}"), f"fill_{name}")(parser)


def _window(arguments: argparse.Namespace) -> int:
    if arguments.sample and arguments.book is not None:
        raise UsageError("--sample opens a fresh copy of the sample, --book a logbook: leave one of them out")
    from logbook.window.main import run  # only here: the commands need neither tkinter nor a screen

    return run(arguments.book, sample=arguments.sample)


def _fail(error: object, code: int) -> int:
    print(f"logbook: {' '.join(str(error).split())}", file=sys.stderr)
    return code
