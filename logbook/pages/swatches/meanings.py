"""What readings mean, in words, as they are typed."""

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.readings import Counted, Reading
from logbook.craft.swatches.swatch import Swatch, gauge_in
from logbook.craft.words.lengths import show_mm
from logbook.errors import RefusedError
from logbook.pages.swatches.form_texts import ReadingLine

ONE = {
    Counted.STITCHES: "one stitch",
    Counted.REPEATS: "one repeat",
    Counted.ROWS: "one row",
    Counted.ROW_REPEATS: "one row repeat",
}


def meaning(line: ReadingLine) -> str:
    """``one repeat 37.8 mm``; "" for an empty line or one that can't be read."""
    return ", ".join(_one(reading) for reading in line.readings)


def _one(reading: Reading) -> str:
    return f"{ONE[reading.counted]} {show_mm(reading.unit_mm)}"


def together(swatch: Swatch, condition: Condition, assumptions: Assumptions) -> str:
    """What all readings of a condition give: ``One repeat 38.2 mm, give or take 2.5 %; one row 6.8 mm, give or take 3.2 %.``

    "" without readings; where a repeat's length in stitches or rows is not said, what to say.
    """
    parts = []
    for direction in Direction:
        try:
            gauge = gauge_in(swatch, condition, direction, assumptions)
        except RefusedError as error:
            return str(error)
        if gauge is not None:
            parts.append(_gauge(gauge, direction, swatch.per_repeat(direction) or 1))
    said = "; ".join(parts)
    return f"{said[0].upper()}{said[1:]}." if said else ""


def _gauge(gauge: Gauge, direction: Direction, per_repeat: int) -> str:
    repeat, stitch = ("one repeat", "one stitch") if direction is Direction.STITCHES else ("one row repeat", "one row")
    said = f"{repeat} {show_mm(gauge.pitch_mm * per_repeat)}, " if direction is Direction.STITCHES and per_repeat > 1 else ""
    sure = "too coarse for a give or take" if gauge.give_or_take is None else f"give or take {gauge.give_or_take * 100:.1f} %"
    return f"{said}{stitch} {show_mm(gauge.pitch_mm)}, {sure}"
