"""``logbook check``, ``backup`` and ``restore``: keeping years of measurements safe."""

import argparse
import sys
from pathlib import Path

from logbook.commands.books import book_of, path_of, warn
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common
from logbook.craft.words.counting import counted
from logbook.errors import RefusedError, UsageError
from logbook.tasks.keeping import back_up, check, restore


def fill_check(parser: Parser) -> None:
    """The options of ``check``."""
    add_common(parser)
    parser.add_argument("--deep", action="store_true", help="also read every record, reading and backup")
    parser.set_defaults(run=_check)


def fill_backup(parser: Parser) -> None:
    """The options of ``backup``."""
    add_common(parser)
    parser.set_defaults(run=_back_up)


def fill_restore(parser: Parser) -> None:
    """The options of ``restore``."""
    add_common(parser, book=False)
    parser.add_argument("backup", type=Path, metavar="BACKUP", help="the file of the backup")
    parser.add_argument("--to", type=Path, required=True, metavar="NEW", help="the new logbook file to write")
    parser.set_defaults(run=_restore)


def _check(arguments: argparse.Namespace) -> int:
    result = check(path_of(arguments), deep=arguments.deep)
    several = len(result.problems) > 1
    warn(result.warning)
    if arguments.json:
        print_json({"ok": result.ok, "swatches": result.swatches, "problems": list(result.problems)})
    elif result.ok:
        print_text(f"{path_of(arguments).name} is sound: {counted(result.swatches or 0, 'swatch')}.")
    elif several:
        print_text("\n".join(result.problems))
    if not result.ok:
        name = path_of(arguments).name
        raise RefusedError(f"{name} has {counted(len(result.problems), 'problem')}." if several else result.problems[0])
    return 0


def _back_up(arguments: argparse.Namespace) -> int:
    with book_of(arguments) as book:
        target = back_up(book)
    _say(arguments, target, f"Backed up to {target}.")
    return 0


def _restore(arguments: argparse.Namespace) -> int:
    if arguments.book is not None:
        raise UsageError("restore takes no --book: give the backup, and the new logbook with --to")
    target, set_right = restore(arguments.backup, arguments.to)
    _say(arguments, target, f"Restored to {target}.")
    for one in set_right:
        print(f"Repaired: {one}.", file=sys.stderr if arguments.json else sys.stdout)
    return 0


def _say(arguments: argparse.Namespace, target: Path, sentence: str) -> None:
    if arguments.json:
        print_json({"target": str(target)})
    else:
        print_text(sentence)
