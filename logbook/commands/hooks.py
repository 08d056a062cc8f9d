"""``logbook hooks``: which hook gives which gauge with a yarn and a stitch."""

import argparse

from logbook.commands.answers import table
from logbook.commands.books import book_of
from logbook.commands.find import read_condition
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with
from logbook.craft.gauges.which_hook import HookGauge
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.hooks import hook_names, show_hook
from logbook.craft.words.lengths import show_small
from logbook.tasks.find import Filters
from logbook.tasks.hooks import HookAnswer, hooks_for


def fill_hooks(parser: Parser) -> None:
    """Its options."""
    add_common(parser)
    parser.add_argument("--yarn", default="", metavar="NAME", help="a part of the yarn's name")
    parser.add_argument("--stitch", default="", metavar="NAME", help="a part of the stitch pattern's name")
    parser.add_argument(
        "--condition",
        default=Condition.WASHED,
        type=reading_with(read_condition),
        metavar="CONDITION",
        help=f"the state of the fabric: {', '.join(Condition)} (washed)",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Shows the table over the trade's hooks."""
    with book_of(arguments) as book:
        answer = hooks_for(book, Filters(yarn=arguments.yarn, stitch=arguments.stitch), arguments.condition)
    if arguments.json:
        print_json({"hooks": [_json(gauge, answer.multiple) for gauge in answer.line.table()], "notes": list(answer.notes)})
    else:
        print_text(_text(answer))
    return 0


def _json(gauge: HookGauge, multiple: int) -> dict[str, object]:
    repeat = gauge.pitch_mm * multiple
    return {
        "hook_mm": gauge.hook_mm,
        "repeat_mm": repeat if gauge.known else None,
        "give_or_take_mm": repeat * gauge.give_or_take if gauge.known else None,
        "tried": gauge.tried,
        "known": gauge.known,
    }


def _text(answer: HookAnswer) -> str:
    unit = "stitch" if answer.multiple == 1 else "repeat"
    rows = []
    for gauge in answer.line.table():
        repeat = gauge.pitch_mm * answer.multiple
        shown = f"{show_small(repeat)} ± {show_small(repeat * gauge.give_or_take)}" if gauge.known else "not known: try it"
        rows.append((show_hook(gauge.hook_mm), hook_names(gauge.hook_mm), "tried" if gauge.tried else "", shown))
    return "\n".join([table(("hook", "names", "", f"one {unit}"), rows, right=[0]), "", *answer.notes])
