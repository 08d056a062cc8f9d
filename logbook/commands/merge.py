"""``logbook merge``: another logbook taken into this one."""

import argparse
from pathlib import Path

from logbook.commands.books import book_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common
from logbook.craft.words.counting import counted
from logbook.errors import RefusedError
from logbook.tasks.merging import MergeAnswer, merge


def fill_merge(parser: Parser) -> None:
    """Its options."""
    add_common(parser)
    parser.add_argument("other", metavar="OTHER", type=Path, help="the other logbook; it is only read")
    parser.add_argument("--prefer", choices=("ours", "theirs"), help="which logbook wins where both changed the same thing")
    parser.set_defaults(run=_merge)


def _merge(arguments: argparse.Namespace) -> int:
    with book_of(arguments) as book:
        answer = merge(book, arguments.other, arguments.prefer)
    if arguments.json:
        _print_json(answer)
    else:
        _print(answer)
    if answer.questions and arguments.prefer is None:
        raise RefusedError(
            f"{counted(len(answer.questions), 'difference')} to decide, so nothing was written: say --prefer ours, or --prefer "
            "theirs."
        )
    return 0


def _print_json(answer: MergeAnswer) -> None:
    conflicts = [{"record": q.record, "field": q.field, "ours": q.ours, "theirs": q.theirs} for q in answer.questions]
    counts = {"added": answer.added, "changed": answer.changed, "deleted": answer.deleted, "alike": answer.alike}
    print_json({**counts, "conflicts": conflicts})


def _print(answer: MergeAnswer) -> None:
    for question in answer.questions:
        field = f", {question.field}" if question.field else ""
        print_text(f"{question.record}{field}: ours {question.ours or '(empty)'}; theirs {question.theirs or '(empty)'}")
    if answer.written or not answer.questions:
        print_text(f"{answer.added} added, {answer.changed} changed, {answer.deleted} deleted, {answer.alike} the same.")
