"""``logbook find``: look up past swatches and their gauges."""

import argparse

from logbook.commands.answers import gauge_words, swatch_json, table
from logbook.commands.books import book_of
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.words.counting import counted
from logbook.craft.words.dates import date_words
from logbook.craft.words.hooks import read_hook, show_hook
from logbook.craft.words.lengths import show_length
from logbook.craft.words.numbers import read_whole
from logbook.errors import UnreadableError
from logbook.tasks.at_home import as_at_home
from logbook.tasks.find import Filters, FoundSwatch, find
from logbook.tasks.made_pieces import find_made

GAUGE_HEADINGS = ("sts in 10 cm", "rows in 10 cm")


def fill_find(parser: Parser) -> None:
    """Its options."""
    add_common(parser)
    add_filters(parser)
    parser.set_defaults(run=run)


def add_filters(parser: Parser) -> None:
    """What is looked for."""
    parser.add_argument("words", nargs="*", metavar="WORDS", help="words or parts of words, found anywhere in a swatch")
    parser.add_argument("--yarn", default="", metavar="NAME", help="a part of the yarn's name")
    parser.add_argument("--stitch", default="", metavar="NAME", help="a part of the stitch pattern's name")
    parser.add_argument("--hook", type=reading_with(read_hook), metavar="MM", help="the hook in mm")
    parser.add_argument(
        "--class",
        dest="yarn_class",
        type=reading_with(_yarn_class),
        metavar="0–7",
        help="class of the yarn, 0 (lace) to 7 (jumbo)",
    )
    parser.add_argument("--condition", type=reading_with(read_condition), metavar="CONDITION", help=", ".join(Condition))


def filters_of(arguments: argparse.Namespace) -> Filters:
    """The filters the options speak of."""
    return Filters(
        words=" ".join(arguments.words),
        yarn=arguments.yarn,
        stitch=arguments.stitch,
        hook_mm=arguments.hook,
        yarn_class=arguments.yarn_class,
        condition=arguments.condition,
    )


def run(arguments: argparse.Namespace) -> int:
    """Lists what is found."""
    with book_of(arguments) as book, as_at_home():  # a date is read as it is written there
        filters = filters_of(arguments)
        found, made = find(book, filters), find_made(book, filters)
    if arguments.json:
        print_json([swatch_json(one) for one in found])
    else:
        print_text("\n\n".join([found_text(found), *([made_text(made)] if made else [])]))
    return 0


def found_text(found: list[FoundSwatch]) -> str:
    """The swatches as a table, and how many they are."""
    count = f"{counted(len(found), 'swatch')} found."
    if not found:
        return count
    headings = ("tag", "date", "yarn", "colour", "hook", "stitch pattern", *GAUGE_HEADINGS)
    return table(headings, [found_row(one) for one in found]) + f"\n\n{count}"


def found_row(found: FoundSwatch) -> tuple[str, ...]:
    """One swatch as a row of the table."""
    swatch = found.swatch
    return (
        swatch.tag,
        date_words(swatch.date),
        swatch.yarn.name if swatch.yarn else "",
        swatch.colour,
        show_hook(swatch.hook_mm) if swatch.hook_mm else "",
        swatch.pattern.name if swatch.pattern else "",
        _best_gauge(found, Direction.STITCHES),
        _best_gauge(found, Direction.ROWS),
    )


def made_text(made: list[MadePiece]) -> str:
    """What was really made, as a table: what was chained for it, and predicted beside measured."""
    headings = ("made piece", "size", "date", "chain", "rows", "hook", "width predicted", "measured", "how it fits")
    rows = [
        (
            one.name,
            one.size,
            date_words(one.date),
            "–" if one.chain is None else str(one.chain),
            "–" if one.rows is None else str(one.rows),
            show_hook(one.hook_mm) if one.hook_mm else "–",
            _or_dash(one.predicted_width_mm),
            _or_dash(one.washed_width_mm),
            " ".join(one.fits.split()),
        )
        for one in made
    ]
    count = counted(len(made), "made piece")
    return f"{table(headings, rows, right=range(3, 8))}\n\n{count} found."


def _or_dash(mm: float | None) -> str:
    return "–" if mm is None else show_length(mm)


def _best_gauge(found: FoundSwatch, direction: Direction) -> str:
    """The gauge of the finished fabric, else as worked, said to be so."""
    for condition in (Condition.WASHED, Condition.PINNED, Condition.WORKED):
        gauge = found.gauges.get((condition, direction))
        if gauge is not None:
            return gauge_words(gauge) + ("" if condition is Condition.WASHED else f" ({condition.words.split(', ')[-1]})")
    return "–"


def _yarn_class(text: str) -> int:
    return read_whole(text, "a yarn class", 0, 7)


def read_condition(text: str) -> Condition:
    """One of the conditions. Raises UnreadableError otherwise."""
    if text not in list(Condition):
        raise UnreadableError(f"“{text}” is not a condition: choose {', '.join(Condition)}.")
    return Condition(text)
