"""How sure the swatch in hand is: where its give or take comes from, what would narrow it, how large a swatch should be."""

from dataclasses import dataclass

from logbook.craft.gauges.reading_advice import reading_advice
from logbook.craft.gauges.swatch_size import swatch_size
from logbook.craft.gauges.washing import FinishedGauge, Washing, finished_gauge
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import show_length
from logbook.craft.words.numbers import show_percent
from logbook.errors import RefusedError
from logbook.pages.gauges.circumstances import Circumstances


@dataclass(frozen=True, slots=True)
class Advised:
    """Sentences under a heading."""

    heading: str
    sentences: tuple[str, ...]


def how_sure(swatch: Swatch, known: Circumstances) -> tuple[Advised, ...]:
    """What there is to say of stitches and of rows, and of the size of a swatch for the width wanted."""
    if not swatch.readings:
        return (Advised("Readings", ("There are none yet: measure how far some whole repeats or stitches reach.",)),)
    said = [Advised(direction.value.capitalize(), _about(swatch, direction, known)) for direction in Direction]
    size = _size(swatch, known)
    return (*said, size) if size else tuple(said)


def _about(swatch: Swatch, direction: Direction, known: Circumstances) -> tuple[str, ...]:
    try:
        finished = finished_gauge(swatch, direction, known.others, known.assumed, known.finish)
    except RefusedError as error:
        return (str(error),)
    taken = known.finish if finished.washing is Washing.MEASURED else Condition.WORKED
    readings = swatch.readings_of(taken, direction)
    advice = reading_advice(finished, readings, swatch.per_repeat(direction), known.drift.of(direction), known.assumed)
    return (*_about_borrowing(finished, direction), *advice.sentences)


def _about_borrowing(finished: FinishedGauge, direction: Direction) -> tuple[str, ...]:
    """Whose washing it is, and its part in the give or take."""
    if finished.washing is not Washing.BORROWED:
        return ()
    change = finished.change or 0.0
    amount = show_percent(abs(change))
    took = "no change" if amount == "0 %" else f"{amount} {direction.than(1 + change)}"
    lenders = counted(len(finished.lenders), "swatch")
    taken = f"Washing taken from {lenders} of this yarn ({', '.join(finished.lenders)}): {took}"
    if finished.give_or_take is None:
        return (f"{taken}.",)
    whole = show_percent(finished.give_or_take)
    alone = show_percent(finished.borrowed_part)
    return (f"{taken}. That alone makes the give or take {alone}; with the readings it is {whole}.",)


def _size(swatch: Swatch, known: Circumstances) -> Advised | None:
    if known.target_mm is None:
        return None
    try:
        finished = finished_gauge(swatch, Direction.STITCHES, known.others, known.assumed, known.finish)
    except RefusedError:
        return None  # said under "Stitches"
    multiple = swatch.per_repeat(Direction.STITCHES) or 1
    size = swatch_size(known.target_mm, finished.pitch_mm * multiple, known.drift.stitches, known.assumed, known.units)
    places = "one place" if size.places == 1 else f"{size.places} places"
    what = "stitches" if multiple == 1 else "repeats"
    sentence = (
        f"At least {show_length(size.side_mm, known.units)} square. Measured at {places}, each over {size.units} whole {what} "
        f"(about {show_length(size.span_mm, known.units)}), its give or take would be {show_percent(size.give_or_take)}; "
        f"a finished piece differs by {show_percent(known.drift.stitches.give_or_take)} more, whatever the swatch says."
    )
    return Advised(f"A swatch for {show_length(known.target_mm, known.units)}", (sentence,))
