"""``logbook nearest``: the swatches nearest to a wanted gauge."""

import argparse

from logbook.commands.answers import per_cent, swatch_json, table
from logbook.commands.books import book_of
from logbook.commands.find import GAUGE_HEADINGS, add_filters, filters_of, found_row
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with
from logbook.craft.gauges.nearest_gauge import wanted_gauge
from logbook.craft.words.lengths import read_size
from logbook.craft.words.numbers import read_positive
from logbook.errors import UsageError
from logbook.tasks.at_home import as_at_home
from logbook.tasks.nearest import nearest_to


def fill_nearest(parser: Parser) -> None:
    """Its options."""
    add_common(parser)
    add_filters(parser)
    along = parser.add_mutually_exclusive_group()
    along.add_argument("--repeats", metavar="N", type=reading_with(_number), help="this many repeats")
    along.add_argument("--stitches", metavar="N", type=reading_with(_number), help="this many stitches")
    parser.add_argument("--rows", metavar="N", type=reading_with(_number), help="this many rows")
    parser.add_argument("--over", metavar="LEN", type=reading_with(read_size), default=100.0, help="over this length (10 cm)")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Lists them, nearest first."""
    if arguments.repeats is None and arguments.stitches is None and arguments.rows is None:
        raise UsageError("give the gauge wanted: --repeats or --stitches, --rows, or both")
    wanted = wanted_gauge(arguments.over, arguments.repeats, arguments.stitches, arguments.rows)
    with book_of(arguments) as book, as_at_home():  # a date is read as it is written there
        near = nearest_to(book, wanted, filters_of(arguments))
    if arguments.json:
        print_json([{**swatch_json(one.found), "off": one.off} for one in near])
    elif not near:
        print_text("No swatch has a gauge to compare with that.")
    else:
        headings = ("off", "tag", "date", "yarn", "colour", "hook", "stitch pattern", *GAUGE_HEADINGS, "washing")
        rows = [(per_cent(one.off), *found_row(one.found), one.washing.value) for one in near]
        print_text(table(headings, rows, right=[0]))
    return 0


def _number(text: str) -> float:
    return read_positive(text, "a number")
