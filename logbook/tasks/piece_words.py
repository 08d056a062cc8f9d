"""A piece in a maker's words: how many, how large, where to mark, how much yarn."""

from collections.abc import Iterator

from logbook.craft.gauges.washing import Washing
from logbook.craft.pieces.marks import Mark
from logbook.craft.pieces.options import Option
from logbook.craft.pieces.time_and_money import price_of, yarn_cost
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_length
from logbook.craft.words.numbers import show_number, show_percent
from logbook.tasks.chain_words import LONG, WIDE, apart_words, begin_words, repeats_words, sureness_words
from logbook.tasks.money_words import price_words, sentence_of, time_words
from logbook.tasks.pieces import PieceAnswer


def headline(answer: PieceAnswer) -> str:
    """``Chain 76, 62 rows``."""
    numbers = answer.numbers
    begin = begin_words(numbers.chain, foundation_stitches=answer.plan.foundation_stitches)
    return begin + ("" if numbers.rows is None else f", {counted(numbers.rows, _row(answer))}")


def _row(answer: PieceAnswer) -> str:
    return "round" if answer.plan.in_round else "row"


def sentences(answer: PieceAnswer, units: Units) -> Iterator[str]:
    """What the numbers come to: width, length, stitches and rows, marks, yarn; without the notes beside them."""
    numbers = answer.numbers
    across, along = answer.gauges.stitches, answer.gauges.rows or answer.gauges.stitches
    if answer.plan.sideways:
        across, along = along, across
    yield size_sentence("round" if answer.plan.in_round else "wide", numbers.width, units, across.washing)
    if numbers.length is not None:
        yield size_sentence("long", numbers.length, units, along.washing)
    yield from counts(answer, units)


def counts(answer: PieceAnswer, units: Units) -> Iterator[str]:
    """Stitches and rows, marks, yarn, time and what it costs."""
    yield stitches_sentence(answer)
    yield from rows_sentence(answer)
    yield from mark_sentences(answer, units)
    yield from yarn_sentence(answer)
    yield from time_and_money(answer)


def sizes_in_short(answer: PieceAnswer, units: Units) -> str:
    """``51.8 cm wide, 55.8 cm long.``"""
    numbers = answer.numbers
    long = "" if numbers.length is None else f", {show_length(numbers.length.mm, units)} long"
    return f"{show_length(numbers.width.mm, units)} {'round' if answer.plan.in_round else 'wide'}{long}."


def size_sentence(how: str, size: Option, units: Units, washing: Washing) -> str:
    """``51.8 cm wide, 0.3 cm narrower than asked; … Before washing it measures 53.3 cm.``"""
    apart = apart_words(size.difference_mm, units, LONG if how == "long" else WIDE)
    sure = sureness_words(size.gauge_give_or_take_mm, size.give_or_take_mm, units, washing)
    said = f"{show_length(size.mm, units)} {how}, {apart}; {sure}."
    if size.before_washing_mm is not None:
        said += f" Before washing it measures {show_length(size.before_washing_mm, units)}."
    return said


def stitches_sentence(answer: PieceAnswer) -> str:
    """``89 stitches: 5 repeats, and 4 edge stitches at each side.``"""
    numbers = answer.numbers
    along = " up the body" if answer.plan.sideways else ""
    said = f"{counted(numbers.stitches, 'stitch')}{along}"
    parts = [repeats_words(numbers.repeats, answer.gauges.pattern.multiple or 1).removesuffix(", ")]
    if numbers.edge_stitches:
        parts.append(f"{counted(numbers.edge_stitches, 'edge stitch')} at each side")
    told = ", and ".join(part for part in parts if part)
    return f"{said}: {told}." if told else f"{said}."


def rows_sentence(answer: PieceAnswer) -> Iterator[str]:
    """``54 rows: 1 set-up row, 13 repeats of 4 rows, 1 closing row; the last is a wrong-side row.`` Nothing without rows."""
    numbers = answer.numbers
    if numbers.rows is None or numbers.groups is None:
        return
    row = _row(answer)
    said = counted(numbers.rows, row) + (" round the body" if answer.plan.sideways else "")
    group = answer.gauges.pattern.rows_in_repeat or 1
    inside = numbers.rows - numbers.set_up - numbers.closing - numbers.groups * group
    parts = [
        counted(numbers.set_up, f"set-up {row}") if numbers.set_up else "",
        f"{counted(numbers.groups, 'repeat')} of {group} {row}s" if group > 1 else "",
        f"{counted(inside, row)} of the next" if inside else "",
        counted(numbers.closing, f"closing {row}") if numbers.closing else "",
    ]
    if any(parts):
        said += ": " + ", ".join(part for part in parts if part)
    if answer.plan.in_round:
        yield f"{said}."
    else:
        yield f"{said}; the last is a {'right' if numbers.last_row_is_right_side else 'wrong'}-side row."


def mark_sentences(answer: PieceAnswer, units: Units) -> Iterator[str]:
    """``Armhole: mark the end of row 40; it is 19.8 cm deep.`` and the neck between its two shoulders."""
    numbers, neck = answer.numbers, answer.numbers.neck
    for name, mark, how in (("Slit", numbers.slit, "long"), ("Armhole", numbers.armhole, "deep")):
        if mark:
            the = "the " if mark.direction is Direction.ROWS else ""
            yield f"{name}: mark {the}{mark_place(mark)}; it is {_true(mark, how, units)}."
    if neck:
        one = neck.begins.direction.one
        shoulder_mm = (numbers.width.mm - neck.begins.true_mm) / 2
        yield (
            f"Neck: the middle {counted(neck.units, one)}, {_true(neck.begins, 'wide', units)}; shoulders of "
            f"{counted(neck.shoulder, one)}, {show_length(shoulder_mm, units)} each."
        )


def _true(mark: Mark, how: str, units: Units) -> str:
    true, wanted = show_length(mark.true_mm, units), show_length(mark.wanted_mm, units)
    return f"{true} {how}" if true == wanted else f"{true} {how} ({wanted} asked)"


def yarn_sentence(answer: PieceAnswer) -> Iterator[str]:
    """``Yarn: 231 g, give or take 16 g; 554 m; 6 balls with 10 % in reserve.`` Nothing where the swatch was not weighed."""
    yarn = answer.numbers.yarn
    if yarn is None:
        return
    said = (
        f"Yarn for {pieces_of(answer)}: {show_number(yarn.grams, 0)} g, give or take {show_number(yarn.give_or_take_grams, 0)} g"
    )
    if yarn.metres is not None:
        said += f"; {show_number(yarn.metres, 0)} m"
    if yarn.balls is not None:
        said += f"; {counted(yarn.balls, 'ball')} with {show_percent(answer.gauges.assumptions.reserve)} in reserve"
    yield f"{said}."


def time_and_money(answer: PieceAnswer) -> Iterator[str]:
    """``About 41 hours, give or take 9.`` and what it costs; nothing where that is not known."""
    time, yarn, gauges = answer.numbers.time, answer.numbers.yarn, answer.gauges
    if time is not None:
        yield sentence_of(time_words(time))
    rate, costs = gauges.assumptions.hourly_rate, answer.plan.other_costs or 0.0
    price = price_of(yarn_cost(gauges.yarn, yarn.balls if yarn else None), gauges.yarn.currency, time, rate or 0.0, costs)
    yield from price_words(price, time.hours if time else None, rate)


def pieces_of(answer: PieceAnswer) -> str:
    """What the yarn is for: ``2 panels and their seams``."""
    if answer.plan.in_round:
        return "the whole piece"
    return counted(answer.plan.panels, "panel") + (" and the seams" if answer.plan.seam else "")


def mark_place(mark: Mark) -> str:
    """``end of row 40`` or ``after stitch 57``."""
    return f"end of row {mark.at}" if mark.direction is Direction.ROWS else f"after stitch {mark.at}"
