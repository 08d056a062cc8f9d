"""``logbook chain``: how many to chain for a width, from a gauge said by hand or a logged swatch."""

import argparse
from collections.abc import Callable, Sequence

from logbook.commands.answers import chain_json, gauge_sentence, give_or_take, print_json, table
from logbook.commands.books import book_of
from logbook.commands.parser import Parser, Subparsers, UsageError, add_common, reading_with, units_of
from logbook.craft.conditions import Direction
from logbook.craft.lengths import NO_EASE, Units, read_ease, read_length, read_size, show_difference, show_length
from logbook.craft.numbers import read_whole, show_number
from logbook.craft.readings import Reading, read_readings
from logbook.craft.starting_chain import Choose, Parity
from logbook.craft.stitch_pattern import StitchPattern
from logbook.errors import LogbookError, UnreadableError
from logbook.tasks.chain import ChainAnswer, ChainWish, chain_by_hand, chain_for_tag
from logbook.tasks.chain_words import apart_words, repeats_words, sureness_words


def add(commands: Subparsers) -> None:
    """Adds the command."""
    parser = commands.add_parser("chain", help="how many to chain for a width", description=__doc__)
    add_common(parser, lengths=True)
    add_gauge_options(parser)
    add_target_options(parser)
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Answers the question."""
    wish = wish_of(arguments)
    answer = answer_of(arguments, wish)
    if arguments.json:
        print_json(chain_json(answer))
    else:
        print(chain_text(answer, units_of(arguments)))
    return 0


def add_gauge_options(parser: Parser) -> None:
    """A gauge by hand, or a logged swatch."""
    gauge = parser.add_argument_group("the gauge, by hand or of a logged swatch")
    gauge.add_argument("--swatch", metavar="TAG", help="a swatch of the logbook")
    gauge.add_argument(
        "--gauge",
        metavar="READING",
        action="append",
        default=[],
        type=reading_with(lambda text: read_readings(text, Direction.STITCHES)),
        help="a reading such as “4 repeats = 15.1 cm”; again for more",
    )
    gauge.add_argument("--multiple", metavar="M", type=_count("a multiple", 1), help="stitches in a repeat")
    gauge.add_argument("--plus", metavar="B", type=_count("a plus", 0), help="base stitches beside whole repeats (0)")
    gauge.add_argument(
        "--extra-chains", metavar="T", type=_count("a number of extra chains", 0), help="chains beside base stitches"
    )
    gauge.add_argument(
        "--first-stitch", metavar="J", type=_count("a chain", 1), help="chain from the hook the first stitch goes into"
    )
    gauge.add_argument("--cover", metavar="V", type=_count("a number of chains", 0), help="base chains the skipped chains cover")
    gauge.add_argument(
        "--rows-gauge",
        metavar="READING",
        action="append",
        default=[],
        type=reading_with(lambda text: read_readings(text, Direction.ROWS)),
        help="a reading of rows, such as “22 rows = 15 cm”; again for more",
    )


def add_target_options(parser: Parser) -> None:
    """What is wanted."""
    target = parser.add_argument_group("what is wanted")
    size = reading_with(read_size)
    target.add_argument("--width", metavar="LEN", type=size, help="the finished width")
    target.add_argument("--body", metavar="LEN", type=size, help="instead of the width: round the body")
    target.add_argument("--ease", metavar="EASE", type=reading_with(read_ease), help="as 5 cm, -5 cm or “-6 %%”")
    target.add_argument("--panels", metavar="N", type=_count("a number of panels", 1), help="equal panels round the body (2)")
    target.add_argument("--seam", metavar="LEN", type=reading_with(_not_negative), help="width each joined edge takes")
    target.add_argument("--edging", metavar="LEN", type=reading_with(_not_negative), help="edging at each side")
    target.add_argument("--round", action="store_true", help="worked in the round: the width is the whole girth")
    target.add_argument("--round-plus", metavar="B", type=_count("a plus", 0), help="base stitches beside repeats in the round")
    target.add_argument("--joined-after-row-1", action="store_true", help="row 1 worked flat, then joined")
    target.add_argument("--foundation-stitches", action="store_true", help="chain and row one made at once")
    choose = target.add_mutually_exclusive_group()
    choose.add_argument("--at-least", action="store_true", help="not narrower than asked")
    choose.add_argument("--at-most", action="store_true", help="not wider than asked")
    parity = target.add_mutually_exclusive_group()
    parity.add_argument("--odd", action="store_true", help="an odd count of plain stitches (sideways: of rows)")
    parity.add_argument("--even", action="store_true", help="an even count")
    target.add_argument("--sideways", action="store_true", help="the chain runs along the length, rows make the width")
    target.add_argument("--length", metavar="LEN", type=size, help="the finished length")


def wish_of(arguments: argparse.Namespace) -> ChainWish:
    """The wish the options speak of. Raises UsageError if they don't go together."""
    if (arguments.width is None) == (arguments.body is None):
        raise UsageError("say either --width, or --body with --ease" + ("" if arguments.width is None else ", not both"))
    _require_together(arguments)
    return ChainWish(
        width_mm=arguments.width,
        body_mm=arguments.body,
        ease=arguments.ease or NO_EASE,
        panels=arguments.panels or 2,
        seam_mm=arguments.seam or 0.0,
        edging_mm=arguments.edging or 0.0,
        in_round=arguments.round,
        round_plus=arguments.round_plus or 0,
        joined_after_row_1=arguments.joined_after_row_1,
        foundation_stitches=arguments.foundation_stitches,
        parity=Parity.ODD if arguments.odd else Parity.EVEN if arguments.even else Parity.ANY,
        choose=Choose.AT_LEAST if arguments.at_least else Choose.AT_MOST if arguments.at_most else Choose.NEAREST,
        sideways_length_mm=arguments.length if arguments.sideways else None,
    )


def _require_together(arguments: argparse.Namespace) -> None:
    """Raises UsageError if an option is given that would not be heeded, or one is missing that another needs."""
    if arguments.width is not None:
        _refuse(arguments, ("ease", "panels", "seam"), "goes with --body, not with --width")
    if arguments.round:
        _refuse(arguments, ("sideways",), "goes with a flat piece, not with --round")
        _refuse(arguments, ("panels", "seam", "edging"), "goes with a flat piece: in the round there are no sides")
    else:
        _refuse(arguments, ("round_plus", "joined_after_row_1"), "goes with --round")
    if not arguments.sideways:
        _refuse(arguments, ("length", "rows_gauge"), "goes with --sideways")
    elif arguments.length is None:
        raise UsageError("--sideways needs --length: the chain runs along it")


def _refuse(arguments: argparse.Namespace, names: Sequence[str], why: str) -> None:
    for name in names:
        value = getattr(arguments, name)
        if not (value is None or value is False or value == []):
            raise UsageError(f"--{name.replace('_', '-')} {why}")


def answer_of(arguments: argparse.Namespace, wish: ChainWish) -> ChainAnswer:
    """The answer by hand, or from the logbook."""
    by_hand = hand_pattern(arguments)
    if by_hand is None:
        with book_of(arguments) as book:
            return chain_for_tag(book, arguments.swatch, wish)
    gauge, rows_gauge = _all(arguments.gauge), _all(arguments.rows_gauge)
    if arguments.sideways and not rows_gauge:
        raise UsageError("--sideways needs --rows-gauge, for example --rows-gauge “22 rows = 15 cm”")
    return chain_by_hand(gauge, by_hand, wish, rows_gauge)


def hand_pattern(arguments: argparse.Namespace) -> StitchPattern | None:
    """The stitch pattern said by hand; None if a logged swatch is asked for. Raises UsageError if it is neither or both."""
    names = ("gauge", "rows_gauge", "multiple", "plus", "extra_chains", "first_stitch", "cover")
    if arguments.swatch is not None:
        _refuse(arguments, names, "is said by hand, --swatch takes it from the logbook: leave one of them out")
        return None
    if not arguments.gauge:
        raise UsageError("say the gauge: --gauge “4 repeats = 15.1 cm”, or --swatch TAG of a logged one")
    if arguments.multiple is None and any(r.counted.whole_repeats for r in _all(arguments.gauge)):
        raise UsageError("--gauge is in repeats: say how many stitches a repeat has with --multiple")
    pattern = StitchPattern(
        multiple=arguments.multiple or 1,
        plus=arguments.plus or 0,
        extra_chains=arguments.extra_chains,
        first_stitch=arguments.first_stitch,
        skip_cover=arguments.cover,
    )
    try:
        pattern.extra()
    except LogbookError as error:
        raise UsageError(str(error)) from error
    return pattern


def chain_text(answer: ChainAnswer, units: Units) -> str:
    """The answer as a maker would say it, then the options."""
    best = answer.recommended
    sure = sureness_words(best.gauge_give_or_take_mm, best.give_or_take_mm, units)
    lines = [
        f"Chain {best.chain}: {show_length(best.width_mm, units)} "
        f"({repeats_words(best.repeats, answer.pattern.multiple or 1)}{best.stitches} base stitches; "
        f"{apart_words(best.difference_mm, units)}).",
        f"{sure[0].upper()}{sure[1:]}.",
        gauge_sentence(answer.finished, answer.pattern.multiple or 1),
        "",
        _options(answer, units),
    ]
    if answer.rows:
        row = next(option for option in answer.rows if option.recommended)
        lines[0] = (
            f"Chain {best.chain} for the length: {show_length(best.width_mm, units)} ({best.stitches} base stitches); "
            f"{row.rows} rows for the width: {show_length(row.length_mm, units)}."
        )
        lines += ["", _rows(answer, units)]
    return "\n".join([*lines, "", *answer.notes])


def _options(answer: ChainAnswer, units: Units) -> str:
    headings = ("", "chain", "repeats", "base stitches", "width", "difference", "swatch", "whole piece", "before washing")
    rows = [
        (
            "→" if option.recommended else "",
            str(option.chain),
            show_number(option.repeats),
            str(option.stitches),
            show_length(option.width_mm, units),
            show_difference(option.difference_mm, units),
            give_or_take(option.gauge_give_or_take_mm, units),
            give_or_take(option.give_or_take_mm, units),
            "–" if option.before_washing_mm is None else show_length(option.before_washing_mm, units),
        )
        for option in answer.options
    ]
    return table(headings, rows, right=range(1, len(headings)))


def _rows(answer: ChainAnswer, units: Units) -> str:
    headings = ("", "rows", "width", "difference", "swatch", "whole piece")
    rows = [
        (
            "→" if option.recommended else "",
            str(option.rows),
            show_length(option.length_mm, units),
            show_difference(option.difference_mm, units),
            give_or_take(option.gauge_give_or_take_mm, units),
            give_or_take(option.give_or_take_mm, units),
        )
        for option in answer.rows
    ]
    return table(headings, rows, right=range(1, len(headings)))


def _all(given: list[tuple[Reading, ...]]) -> tuple[Reading, ...]:
    return tuple(reading for group in given for reading in group)


def _not_negative(text: str) -> float:
    length = read_length(text)
    if length < 0:
        raise UnreadableError(f"“{text}” is below 0: type 0 or more.")
    return length


def _count(what: str, least: int) -> Callable[[str], int]:
    return reading_with(lambda text: read_whole(text, what, least))
