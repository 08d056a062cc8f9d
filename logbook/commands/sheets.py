"""``logbook import`` and ``export``: sheets in and out."""

import argparse
import sys
from pathlib import Path
from typing import Any

from logbook.commands.books import book_of, path_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with
from logbook.craft.words.counting import counted
from logbook.errors import RefusedError, UnreadableError
from logbook.tasks.exporting import export
from logbook.tasks.importing import ImportPlan, ImportResult, import_into, import_into_new


def fill_import(parser: Parser) -> None:
    """The options of ``import``."""
    add_common(parser)
    parser.add_argument("sheet", type=Path, metavar="SHEET")
    parser.add_argument("--new", action="store_true", help="make the logbook first; it must not be there yet")
    parser.add_argument("--good-rows-only", action="store_true", help="take in the good rows though others have problems")
    parser.set_defaults(run=_import)


def fill_export(parser: Parser) -> None:
    """The options of ``export``."""
    add_common(parser)
    parser.add_argument("target", type=reading_with(_target), metavar="TARGET")
    parser.set_defaults(run=_export)


def _import(arguments: argparse.Namespace) -> int:
    if arguments.new:
        plan, result = import_into_new(path_of(arguments), arguments.sheet, good_rows_only=arguments.good_rows_only)
    else:
        with book_of(arguments) as book:
            plan, result = import_into(book, arguments.sheet, good_rows_only=arguments.good_rows_only)
    if arguments.json:
        print_json(_import_json(plan, result))
    else:
        _print_import(plan, result)
    if result is None:
        raise RefusedError(
            f"{counted(len(plan.problems), 'problem')} in {plan.name}, so nothing of it was taken in: mend that, or take the "
            "rest with --good-rows-only."
        )
    return 0


def _import_json(plan: ImportPlan, result: ImportResult | None) -> dict[str, Any]:
    return {
        "added": result.added if result else 0,
        "changed": result.changed if result else 0,
        "problems": [{"row": p.row, "column": p.column, "expected": p.expected} for p in plan.problems],
    }


def _print_import(plan: ImportPlan, result: ImportResult | None) -> None:
    for problem in plan.problems:
        column = f", {problem.column}" if problem.column else ""
        print_text(f"Row {problem.row}{column}: {' '.join(problem.says.split())}")
    if result is not None:
        print_text(f"{counted(result.added, 'swatch')} added, {result.changed} changed.")


def _export(arguments: argparse.Namespace) -> int:
    with book_of(arguments) as book:
        result = export(book, arguments.target)
    if arguments.json:
        print_json({"rows": result.rows, "target": str(result.target)})
    else:
        print_text(f"{counted(result.rows, 'swatch')} written to {result.target}.")
    for note in result.notes:
        print_text(note, file=sys.stderr if arguments.json else sys.stdout)
    return 0


def _target(text: str) -> Path:
    path = Path(text)
    if path.suffix.casefold() not in (".xlsx", ".csv"):
        raise UnreadableError(f"“{text}” must end in .xlsx or .csv: name it so.")
    return path
