"""The logbook a command works on."""

import argparse
from pathlib import Path

from logbook.tasks.keeping import Logbook, open_book, usual_logbook


def path_of(arguments: argparse.Namespace) -> Path:
    """The logbook chosen with --book, else the usual one."""
    chosen: Path | None = arguments.book
    return chosen if chosen is not None else usual_logbook()


def book_of(arguments: argparse.Namespace) -> Logbook:
    """That logbook, opened. Raises RefusedError in one sentence."""
    return open_book(path_of(arguments))
