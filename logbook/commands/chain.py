"""``logbook chain``: how many to chain for a width, from a gauge said by hand or a logged swatch."""

import argparse
from functools import partial

from logbook.commands.answers import chain_json, gauge_sentence, give_or_take, table
from logbook.commands.books import book_of
from logbook.commands.chain_options import (
    add_gauge_options,
    add_target_options,
    all_of,
    first_stitch_of,
    hand_gauges,
    hand_pattern,
    readings,
    refuse,
    require_together,
    target_plan,
)
from logbook.commands.output import print_json, print_text
from logbook.commands.parser import Parser, add_common, reading_with, units_of
from logbook.craft.pieces.options import recommended
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_difference, show_length
from logbook.craft.words.numbers import show_number
from logbook.craft.words.typed_counts import read_count
from logbook.errors import UsageError
from logbook.tasks.chain import ChainAnswer, Theirs, chain_by_hand, chain_for_tag, their_gauge
from logbook.tasks.chain_words import apart_words, begin_words, repeats_words, sureness_words
from logbook.tasks.note_words import said


def fill_chain(parser: Parser) -> None:
    """Its options."""
    add_common(parser, lengths=True)
    add_gauge_options(parser)
    add_target_options(parser)
    other = parser.add_argument_group("instead of a width")
    other.add_argument(
        "--chain",
        metavar="N",
        type=reading_with(partial(read_count, what="a chain")),
        help="the other way round: how wide so many chains (or “113 sts”) come out",
    )
    other.add_argument("--their-gauge", **readings(Direction.STITCHES, "the gauge of another pattern, such as “20 sts = 10 cm”"))
    other.add_argument(
        "--their-count",
        metavar="N",
        type=reading_with(partial(read_count, what="a count")),
        help="how many stitches (or repeats) their pattern has, or its chain: “ch 115”",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Answers the question."""
    answer = answer_of(arguments, plan_of(arguments))
    _ = answer.recommended.known_chain  # raises if there is none
    if arguments.json:
        print_json(chain_json(answer))
    else:
        print_text(chain_text(answer, units_of(arguments)))
    return 0


def plan_of(arguments: argparse.Namespace) -> PiecePlan:
    """The plan the options speak of. Raises UsageError if they don't go together."""
    require_together(arguments, instead=_instead(arguments))
    if not arguments.sideways:
        refuse(arguments, ("length", "rows_gauge"), "goes with --sideways")
    return target_plan(arguments)


def _instead(arguments: argparse.Namespace) -> str:
    """The option that says what is wanted instead of a width; "" for none. Raises UsageError if half of it is missing."""
    if arguments.chain is not None:
        refuse(arguments, ("their_gauge", "their_count", "at_least", "at_most"), "does not go with --chain")
        return "--chain"
    if bool(arguments.their_gauge) != (arguments.their_count is not None):
        missing = "--their-count" if arguments.their_gauge else "--their-gauge"
        raise UsageError(f"--their-gauge and --their-count go together: {missing} is missing")
    return "--their-count" if arguments.their_gauge else ""


def answer_of(arguments: argparse.Namespace, plan: PiecePlan) -> ChainAnswer:
    """The answer by hand, or from the logbook."""
    by_hand, theirs = hand_pattern(arguments), None
    if arguments.their_gauge:
        theirs = Theirs(their_gauge(all_of(arguments.their_gauge)), arguments.their_count)
    if by_hand is None:
        with book_of(arguments) as book:
            begins = first_stitch_of(arguments)
            return chain_for_tag(book, arguments.swatch, plan, begins=begins, chain=arguments.chain, theirs=theirs)
    gauge, rows_gauge = hand_gauges(arguments)
    return chain_by_hand(gauge, by_hand, plan, rows_gauge, arguments.chain, theirs)


def chain_text(answer: ChainAnswer, units: Units) -> str:
    """The answer as a maker would say it, then the options."""
    best = answer.recommended
    sure = sureness_words(best.gauge_give_or_take_mm, best.give_or_take_mm, units, answer.finished.washing)
    counts = f"{repeats_words(best.repeats, answer.pattern.multiple or 1)}{best.count} base stitches"
    width, notes = show_length(best.mm, units), said(answer.notes, units)
    begin = begin_words(best.chain, foundation_stitches=answer.foundation_stitches)
    told = f"{begin}: {width} ({counts}; {apart_words(best.difference_mm, units)})."
    if answer.chain is not None:
        what = "foundation stitches" if answer.foundation_stitches else "chains"
        told = f"{best.chain} {what} make {width} ({counts})."
    if not answer.allowed:
        told, notes = f"{notes[0]} {told}", notes[1:]
    lines = [
        told,
        f"{sure[0].upper()}{sure[1:]}.",
        gauge_sentence(answer.finished, answer.pattern.multiple or 1, units),
        "",
        _options(answer, units),
    ]
    if answer.rows:
        row = recommended(answer.rows)
        lines[0] = (
            f"{begin} for the length: {show_length(best.mm, units)} ({best.count} base stitches); "
            f"{counted(row.count, 'row')} for the width: {show_length(row.mm, units)}."
        )
        lines += ["", _rows(answer, units)]
    return "\n".join([*lines, "", *notes])


def _options(answer: ChainAnswer, units: Units) -> str:
    size = "length" if answer.rows else "width"
    headings = ("", "chain", "repeats", "base stitches", size, "difference", "swatch", "whole piece", "before washing")
    rows = [
        (
            "→" if option.recommended else "",
            str(option.chain),
            show_number(option.repeats),
            str(option.count),
            show_length(option.mm, units),
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
            str(option.count),
            show_length(option.mm, units),
            show_difference(option.difference_mm, units),
            give_or_take(option.gauge_give_or_take_mm, units),
            give_or_take(option.give_or_take_mm, units),
        )
        for option in answer.rows
    ]
    return table(headings, rows, right=range(1, len(headings)))
