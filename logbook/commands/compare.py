"""``logbook compare``: two to six swatches side by side."""

import argparse

from logbook.commands.answers import swatch_json, table
from logbook.commands.books import book_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common
from logbook.craft.gauges.comparison import Difference
from logbook.errors import UsageError
from logbook.tasks.compare import Comparison, compare, difference_sentence


def fill_compare(parser: Parser) -> None:
    """Its options."""
    add_common(parser)
    parser.add_argument("tags", nargs="+", metavar="TAG", help="the tags of the swatches")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Shows what differs."""
    if not 2 <= len(set(arguments.tags)) <= 6:
        raise UsageError("name two to six different tags")
    with book_of(arguments) as book:
        comparison = compare(book, arguments.tags)
    if arguments.json:
        print_json(
            {
                "swatches": [swatch_json(one) for one in comparison.swatches],
                "differences": [_difference_json(one) for one in comparison.differences],
            }
        )
    else:
        print_text(_text(comparison))
    return 0


def _difference_json(one: Difference) -> dict[str, object]:
    return {
        "condition": one.condition.value,
        "direction": one.direction.value,
        "tags": list(one.tags),
        "ratio": one.ratio,
        "give_or_take": one.give_or_take,
        "differ": one.differ,
    }


def _text(comparison: Comparison) -> str:
    headings = ("", "field", *(one.swatch.tag for one in comparison.swatches))
    rows = [
        ("≠" if field.differs else "", field.name, *(" / ".join(value.splitlines()) or "–" for value in field.values))
        for field in comparison.fields
        if field.name != "tag"
    ]
    sentences = [difference_sentence(one) for one in comparison.differences] or [
        "No two of them were measured in the same state and direction, so their gauges can't be compared."
    ]
    return "\n".join([table(headings, rows), "", *sentences])
