"""``logbook proofread``: a finished pattern's text against the numbers of its garment."""

import argparse
from pathlib import Path
from typing import Any

from logbook.commands.books import book_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common
from logbook.craft.proofreading.judging import FoundQuantity, Verdict
from logbook.errors import UsageError
from logbook.tasks.garments import needs_book, read_plan, work_out
from logbook.tasks.proofreading import (
    Held,
    Proofread,
    agreement_words,
    expected_words,
    held_called,
    of_garment,
    proofread,
    read_text,
    what_words,
)


def fill_proofread(parser: Parser) -> None:
    """Its options."""
    parser.add_argument("text", metavar="TEXT", type=Path, help="the finished pattern as a text file")
    parser.add_argument("plan", metavar="PLAN.json", type=Path, nargs="?", help="the file of the garment's plan")
    parser.add_argument(
        "--name",
        metavar="NAME",
        help="a garment of the logbook, or a piece with published sizes; once published, its published numbers count",
    )
    add_common(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Proofreads and answers; 1 if anything differs or is a problem."""
    if (arguments.plan is None) == (arguments.name is None):
        raise UsageError("name the garment: the file of its plan, or --name NAME of one in the logbook")
    text = read_text(arguments.text)
    read = proofread(text, _held(arguments))
    if arguments.json:
        print_json(proofread_json(read))
    else:
        print_text(proofread_text(read))
    return 0 if read.faultless else 1


def _held(arguments: argparse.Namespace) -> Held:
    plan = None if arguments.plan is None else read_plan(arguments.plan)
    if plan is not None and not needs_book(plan):
        return of_garment(work_out(plan))
    with book_of(arguments) as book:
        return of_garment(work_out(plan, book)) if plan is not None else held_called(book, arguments.name)


def proofread_json(read: Proofread) -> dict[str, Any]:
    """``found`` and ``problems``."""
    return {
        "found": [
            {
                "line": one.quantity.line,
                "text": one.quantity.text,
                "verdict": one.verdict.value,
                "what": what_words(one),
                "expected": expected_words(one) or None,
                "entries": [place + 1 for place in one.entries],
            }
            for one in read.found
        ],
        "problems": [{"line": problem.line, "says": problem.says} for problem in read.problems],
    }


def proofread_text(read: Proofread) -> str:
    """What differs, what is a problem, what is not known; then how much agrees."""
    lines = [(one.quantity.line, _sentence(one)) for one in read.found if one.verdict is not Verdict.AGREES]
    lines += [(problem.line, problem.says) for problem in read.problems]
    return "\n".join([*(f"Line {line}: {says}" for line, says in sorted(lines)), agreement_words(read)])


def _sentence(one: FoundQuantity) -> str:
    if one.verdict is Verdict.UNKNOWN:
        return f"“{one.quantity.text}” is not in the logbook."
    return f"“{one.quantity.text}” differs: the logbook has {expected_words(one)} ({what_words(one)})."
