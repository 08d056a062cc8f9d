"""A gauge as makers say it: how many stitches, repeats or rows lie in 10 cm, or in 4 in."""

from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted, plural
from logbook.craft.words.lengths import MM_PER_INCH, Units
from logbook.craft.words.numbers import fixed


def over_length(units: Units) -> tuple[float, str]:
    """The length a gauge is quoted over, in mm and in words: 10 cm, or 4 inches."""
    return (100.0, "10 cm") if units is Units.CM else (4 * float(MM_PER_INCH), "4 in")


def number_over(pitch_mm: float, units: Units) -> str:
    """``15.7``: how many of that pitch lie there."""
    return fixed(over_length(units)[0] / pitch_mm, 1)


def counted_over(pitch_mm: float, direction: Direction, multiple: int | None, units: Units) -> str:
    """``2.62 repeats in 10 cm`` or 4 in; in stitches where there is no repeat of several."""
    return f"{counted(*_how_many(pitch_mm, direction, multiple, units))} in {over_length(units)[1]}"


def counted_in_a_column(pitch_mm: float, direction: Direction, multiple: int | None, units: Units) -> str:
    """``11.00 rows``: as ``counted_over``, with as many decimals in every line."""
    number, one = _how_many(pitch_mm, direction, multiple, units)
    return f"{fixed(number, 2)} {plural(one)}"


def _how_many(pitch_mm: float, direction: Direction, multiple: int | None, units: Units) -> tuple[float, str]:
    """How many lie in 10 cm or 4 in, and what they are, as one is called."""
    over_mm, _ = over_length(units)
    if direction is Direction.STITCHES and multiple is not None and multiple > 1:
        return over_mm / (pitch_mm * multiple), "repeat"
    return over_mm / pitch_mm, direction.one
