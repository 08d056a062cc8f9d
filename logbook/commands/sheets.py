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
from logbook.tasks.importing import ImportPlan, ImportResult, import_into, import_into_new, plan_import
from logbook.tasks.own_sheets import SheetChoices, field_of, read_choice, read_over


def fill_import(parser: Parser) -> None:
    """The options of ``import``."""
    add_common(parser)
    parser.add_argument("sheet", type=Path, metavar="SHEET", help="the sheet to import")
    parser.add_argument("--new", action="store_true", help="make the logbook first; it must not be there yet")
    parser.add_argument("--good-rows-only", action="store_true", help="import the good rows even if others have problems")
    own = parser.add_argument_group("a sheet in your own words")
    choice = reading_with(read_choice)
    own.add_argument(
        "--map",
        type=choice,
        action="append",
        default=[],
        metavar="HEADING=COLUMN",
        help="which column of the log a heading means; may be repeated",
    )
    own.add_argument("--sheet", dest="sheet_name", metavar="NAME", help="which sheet of the workbook")
    own.add_argument(
        "--per", type=reading_with(read_over), metavar="LEN", help="what stitches and rows were counted over, such as 10 cm"
    )
    own.add_argument("--show", action="store_true", help="show what each column would be taken as, and write nothing")
    parser.set_defaults(run=_import)


def fill_export(parser: Parser) -> None:
    """The options of ``export``."""
    add_common(parser)
    parser.add_argument("target", type=reading_with(_target), metavar="TARGET", help="the file to write, .xlsx or .csv")
    parser.set_defaults(run=_export)


def _import(arguments: argparse.Namespace) -> int:
    own = _said(arguments)
    if arguments.show:
        return _show(arguments, own or SheetChoices())
    if arguments.new:
        plan, result = import_into_new(path_of(arguments), arguments.sheet, good_rows_only=arguments.good_rows_only, own=own)
    else:
        with book_of(arguments) as book:
            plan, result = import_into(book, arguments.sheet, good_rows_only=arguments.good_rows_only, own=own)
    if arguments.json:
        print_json(_import_json(plan, result))
    else:
        _print_import(plan, result)
    _print_remarks(arguments, plan)
    if result is None:
        raise RefusedError(
            f"{counted(len(plan.problems), 'problem')} in {plan.name}, so nothing was imported: correct the sheet, or import the "
            "rest with --good-rows-only."
        )
    return 0


def _said(arguments: argparse.Namespace) -> SheetChoices | None:
    """What is said of a sheet in the maker's own words; None: it is a sheet of the log."""
    if not (arguments.map or arguments.sheet_name or arguments.per):
        return None
    return SheetChoices(dict(arguments.map), arguments.sheet_name, arguments.per)


def _show(arguments: argparse.Namespace, own: SheetChoices) -> int:
    """What each column would be taken as, what would come of it, and nothing written."""
    if arguments.new or (arguments.book is None and not path_of(arguments).exists()):
        plan = plan_import(None, arguments.sheet, own)
    else:
        with book_of(arguments) as book:
            plan = plan_import(book, arguments.sheet, own)
    assert plan.own is not None
    table, pairs = plan.own.table, list(zip(plan.own.table.headings, plan.own.choices, strict=True))
    if arguments.json:
        print_json(
            _import_json(plan, None)
            | {
                "table": {
                    "sheet": table.sheet,
                    "heading_row": table.heading_row,
                    "set_aside": [{"row": row, "why": why} for row, why in table.aside],
                },
                "map": [
                    {"heading": heading, "column": field_of(choice) or None} for heading, choice in pairs if heading or choice
                ],
            }
        )
    else:
        print_text(f"The table of “{table.sheet}”, headed in row {table.heading_row}:")
        for heading, choice in pairs:
            if heading or choice:
                print_text(f"  {heading} → {choice or 'not used'}")
        _print_import(plan, None)
        print_text(f"It would add {counted(len(plan.added), 'swatch')}, and change {len(plan.changed)}. Nothing was written.")
    _print_remarks(arguments, plan)
    return 0


def _print_remarks(arguments: argparse.Namespace, plan: ImportPlan) -> None:
    """What was left; in JSON ``--show`` tells it."""
    for remark in plan.own.remarks if plan.own and not arguments.json else ():
        print_text(remark)


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
        if result.others:
            print_text(f"Also: {result.others}.")
    if plan.kept.note:
        print_text(plan.kept.note)


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
