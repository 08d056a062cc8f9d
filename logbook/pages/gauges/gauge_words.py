"""Gauges as a maker says them, and which of a swatch's gauges is meant where nothing else is said."""

from collections.abc import Mapping

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.words.counting import counted, plural
from logbook.craft.words.lengths import MM_PER_INCH, Units, show_mm
from logbook.craft.words.numbers import fixed, show_percent

Gauges = Mapping[tuple[Condition, Direction], Gauge]
FINISHED_FIRST = (Condition.WASHED, Condition.PINNED, Condition.WORKED)


def usual_condition(gauges: Gauges) -> Condition:
    """The condition a gauge is spoken of in: washed, else pinned, else as worked, whichever was measured (else washed)."""
    measured = {condition for condition, _ in gauges}
    return next((condition for condition in FINISHED_FIRST if condition in measured), Condition.WASHED)


def over_length(units: Units) -> tuple[float, str]:
    """The length a gauge is quoted over, in mm and in words: 10 cm, or 4 inches."""
    return (100.0, "10 cm") if units is Units.CM else (4 * float(MM_PER_INCH), "4 in")


def counted_over(pitch_mm: float, direction: Direction, multiple: int | None, units: Units) -> str:
    """``2.62 repeats in 10 cm`` or 4 in; in stitches where there is no repeat of several."""
    return f"{counted(*_how_many(pitch_mm, direction, multiple, units))} in {over_length(units)[1]}"


def counted_in_a_column(pitch_mm: float, direction: Direction, multiple: int | None, units: Units) -> str:
    """``11.00 rows``: as ``counted_over``, with as many decimals in every line."""
    number, one = _how_many(pitch_mm, direction, multiple, units)
    return f"{fixed(number, 2)} {plural(one)}"


def width_of(pitch_mm: float, multiple: int | None) -> str:
    """``38.2 mm a repeat``, ``6.4 mm a stitch``."""
    if multiple is not None and multiple > 1:
        return f"{show_mm(pitch_mm * multiple)} a repeat"
    return f"{show_mm(pitch_mm)} a stitch"


def sure_words(give_or_take: float | None) -> str:
    """``give or take 2.5 %``, or that a count is too coarse to say."""
    return "accuracy unknown, counted too coarsely" if give_or_take is None else f"give or take {show_percent(give_or_take)}"


def _how_many(pitch_mm: float, direction: Direction, multiple: int | None, units: Units) -> tuple[float, str]:
    """How many lie in 10 cm or 4 in, and what they are, as one is called."""
    over_mm, _ = over_length(units)
    if direction is Direction.STITCHES and multiple is not None and multiple > 1:
        return over_mm / (pitch_mm * multiple), "repeat"
    return over_mm / pitch_mm, direction.one
