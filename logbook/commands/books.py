"""The logbook a command works on."""

import argparse
import sys
from pathlib import Path

from logbook.commands.output import print_text
from logbook.tasks.keeping import Logbook, open_book, usual_logbook


def path_of(arguments: argparse.Namespace) -> Path:
    """The logbook chosen with --book, else the usual one."""
    chosen: Path | None = arguments.book
    return chosen if chosen is not None else usual_logbook()


def book_of(arguments: argparse.Namespace) -> Logbook:
    """That logbook, opened. Raises RefusedError in one sentence."""
    book = open_book(path_of(arguments))
    warn(book.warning)
    return book


def warn(warning: str) -> None:
    """Says on standard error what is to be heeded with the logbook, if anything is."""
    if warning:
        print_text(f"logbook: {warning}", sys.stderr)
