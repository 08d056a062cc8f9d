"""The words of a command line: which command, and its options."""

import argparse
from collections.abc import Sequence
from functools import cache, partial
from importlib import import_module
from pathlib import Path

from logbook import __version__
from logbook.commands.parser import Parser, joined_minus_values
from logbook.errors import UsageError
from logbook.tasks.keeping import SUFFIX

COMMANDS = {
    "chain": ("chain", "how many to chain for a width"),
    "piece": ("piece", "a whole piece: chain, rows, where to mark, measurements, yarn"),
    "sizes": ("sizes", "a garment in several sizes, and its pattern lines"),
    "garment": ("garment", "a garment of several pieces in all its sizes, from a plan"),
    "proofread": ("proofread", "check a finished pattern's text against the numbers of its garment"),
    "find": ("find", "look up swatches and their gauges"),
    "nearest": ("nearest", "find the swatches nearest to a gauge"),
    "compare": ("compare", "compare two to six swatches"),
    "hooks": ("hooks", "which hook gives which gauge"),
    "picture": ("picture", "add a picture to a swatch or a made piece"),
    "import": ("sheets", "import a sheet of swatches (.xlsx or .csv)"),
    "export": ("sheets", "write all swatches to a sheet (.xlsx or .csv)"),
    "merge": ("merge", "bring another logbook into this one"),
    "check": ("keeping", "check that a logbook is undamaged"),
    "backup": ("keeping", "make a backup now"),
    "restore": ("keeping", "restore a backup under a new name"),
    "rows": ("rows", "check whether written rows add up at every width"),
}
"""Each command's module here, imported only when it is asked for (the window needs none of them), and what it does."""

MENU = (
    ("--add-to-menu", "add", "put the program in the desktop's menu, and open logbooks by a double click (Linux)"),
    ("--remove-from-menu", "remove", "remove it from the menu again"),
)


def parse(arguments: Sequence[str]) -> argparse.Namespace:
    """What the words say; ``run`` is the command's function, or None for the window. Raises UsageError."""
    if arguments and arguments[0].endswith(SUFFIX) and not arguments[0].startswith("-"):
        arguments = ["--book", *arguments]  # a logbook that was double-clicked, or named alone
    parsed = build_parser().parse_words_anywhere(joined_minus_values(arguments))
    if parsed.sample and parsed.run is not None:
        raise UsageError("--sample is for the window and goes with no command")
    if parsed.sample and parsed.book is not None:
        raise UsageError("--sample opens a fresh copy of the sample, --book a logbook: leave one of them out")
    return parsed


@cache
def build_parser() -> Parser:
    """The parser of the whole command line."""
    parser = Parser(prog="logbook", description="The swatch and gauge logbook. Without a command it opens its window.")
    parser.add_argument("--version", action="version", version=f"logbook {__version__}", help="show the version")
    parser.add_argument("--book", type=Path, metavar="FILE", help="the logbook to use (else the usual one)")
    parser.add_argument("--sample", action="store_true", help="open the window on a fresh copy of the sample")
    for option, name, does in MENU:
        parser.add_argument(option, dest="run", action="store_const", const=partial(_menu, name), help=does)
    parser.set_defaults(run=None)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", parser_class=Parser)
    for name, (module, does) in COMMANDS.items():
        commands.add_parser(name, help=does, description=f"{does[0].upper()}{does[1:]}.", fill=partial(_fill, name, module))
    return parser


def _menu(name: str, _: argparse.Namespace) -> int:
    return int(getattr(import_module("logbook.commands.menu"), name)())


def _fill(name: str, module: str, parser: Parser) -> None:
    getattr(import_module(f"logbook.commands.{module}"), f"fill_{name}")(parser)
