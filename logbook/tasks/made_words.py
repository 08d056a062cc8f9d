"""A made piece in words: planned beside what it measured and used, its own gauge, how it wears, and what it teaches."""

from collections.abc import Iterator
from dataclasses import replace

from logbook.book.logbook import Logbook
from logbook.book.swatches import swatches
from logbook.craft.gauges.over_length import number_over, over_length
from logbook.craft.pieces.made_fields import show_hours
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.wear import Worn, read_worn
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch, gauge_in
from logbook.craft.words.counting import counted
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units, show_difference, show_length
from logbook.craft.words.numbers import show_change, show_number, show_percent
from logbook.tasks.drift import learnt_drift
from logbook.tasks.drift_words import IN_SINGLE_PIECES, time_taken_words, whole_piece_words, yarn_used_words


def beside_each_other(made: MadePiece, units: Units) -> list[str]:
    """Planned beside measured and used, a sentence each for width, length, yarn, time and wear, as far as both are known."""
    return [*_sizes(made, units), *_used(made), *_wear(made, units)]


def own_gauge(made: MadePiece, swatch: Swatch, assumed: Assumptions, units: Units) -> list[str]:
    """Its own gauge beside that of the swatch it was planned from, a sentence for each direction that both were measured in."""
    own = Swatch(pattern=swatch.pattern, readings=made.own_readings())
    found = []
    for direction in Direction:
        for condition in (Condition.WASHED, Condition.WORKED):
            mine, theirs = (gauge_in(of, condition, direction, assumed) for of in (own, swatch))
            if mine is not None and theirs is not None:
                ratio = mine.pitch_mm / theirs.pitch_mm
                change = show_percent(abs(ratio - 1))
                found.append(
                    f"Its {direction.value}, {condition.words}: {number_over(mine.pitch_mm, units)} in {over_length(units)[1]}, "
                    f"on the swatch {number_over(theirs.pitch_mm, units)}"
                    f"{'' if change == '0 %' else f' ({change} {direction.than(ratio)})'}."
                )
                break
    return found


def what_it_teaches(book: Logbook, made: MadePiece) -> tuple[str, ...]:
    """What the logbook counts into the next piece of its swatch, by all made pieces of that hand: sizes, yarn, time."""
    with book.reading() as connection:
        own = swatches(connection, [made.swatch]) if made.swatch else []
        if not own:
            return ()
        worked = replace(own[0], worked_by=made.worked_by) if made.worked_by.strip() else own[0]
        drift = learnt_drift(connection).of_swatch(worked)
    where = IN_SINGLE_PIECES
    taught = [whole_piece_words(one, where) for one in (drift.stitches, drift.rows) if one.lean]
    taught += [yarn_used_words(drift.grams, where)] if drift.grams.pieces else []
    taught += [time_taken_words(drift.minutes, where)] if drift.minutes.pieces else []
    return tuple(taught)


def _sizes(made: MadePiece, units: Units) -> Iterator[str]:
    for what, before, after in (
        ("Width", made.predicted_width_mm, made.washed_width_mm),
        ("Length", made.predicted_length_mm, made.washed_length_mm),
    ):
        if before is not None and after is not None:
            yield (
                f"{what}: predicted {show_length(before, units)}, measured {show_length(after, units)} "
                f"({show_difference(after - before, units)}, {show_change(after / before - 1)})."
            )


def _used(made: MadePiece) -> Iterator[str]:
    before, after = made.predicted_grams, made.grams_used
    if before and after:
        planned, used = show_number(before, 0), show_number(after, 0)
        yield f"Yarn: planned {planned} g, used {used} g ({show_change(after / before - 1)})."
    before, after = made.predicted_minutes, made.minutes
    if before and after:
        yield f"Hours: planned {_hours(before)}, took {_hours(after)} ({show_change(after / before - 1)})."


def _hours(minutes: float) -> str:
    return show_hours(round(minutes))


def _wear(made: MadePiece, units: Units) -> Iterator[str]:
    """The latest day each of length and width was measured, beside what it was when washed, and what hanging said of it."""
    worn = read_worn(made.wear)
    longest = next((one for one in reversed(worn) if one.length_mm is not None), None)
    if longest is not None and longest.length_mm is not None and made.washed_length_mm is not None:
        grown = longest.length_mm - made.washed_length_mm
        told = ""
        if made.predicted_growth_mm is not None:
            told = f"; from its weight {show_length(made.predicted_growth_mm, units)} was expected"
        yield f"Worn ({_day(longest)}): {_apart(grown, units, 'longer', 'shorter')} than washed{told}."
    widest = next((one for one in reversed(worn) if one.width_mm is not None), None)
    if widest is not None and widest.width_mm is not None and made.washed_width_mm is not None:
        grown = widest.width_mm - made.washed_width_mm
        yield f"Worn ({_day(widest)}): {_apart(grown, units, 'wider', 'narrower')} than washed."


def _apart(mm: float, units: Units, more: str, less: str) -> str:
    shown = show_length(abs(mm), units)
    return f"no {more} or {less}" if shown == show_length(0.0, units) else f"{shown} {more if mm > 0 else less}"


def _day(worn: Worn) -> str:
    return date_words(worn.date) if worn.washes is None else f"{date_words(worn.date)}, {counted(worn.washes, 'wash')}"
