"""What readings mean, in words, as they are typed."""

from logbook.craft.gauges.over_length import number_over, over_length
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauge_in
from logbook.craft.words.lengths import Units
from logbook.craft.words.numbers import fixed
from logbook.errors import RefusedError


def together(swatch: Swatch, condition: Condition, assumptions: Assumptions, units: Units = Units.CM) -> str:
    """What all readings of a condition give, in two lines: ``15.7 sts × 11.0 rows to 10 cm`` and ``give or take 2.5 %``.

    "" without readings; where a repeat's length in stitches or rows is not said, what to say.
    """
    gauges: dict[Direction, Gauge] = {}
    for direction in Direction:
        try:
            gauge = gauge_in(swatch, condition, direction, assumptions)
        except RefusedError as error:
            return str(error)
        if gauge is not None:
            gauges[direction] = gauge
    counts = " × ".join(f"{number_over(gauge.pitch_mm, units)} {direction.short}" for direction, gauge in gauges.items())
    return f"{counts} to {over_length(units)[1]}\n{_sure(list(gauges.values()))}" if counts else ""


def _sure(gauges: list[Gauge]) -> str:
    """One give or take where it is the same for both."""
    said = dict.fromkeys(
        "too coarse to say" if one.give_or_take is None else f"{fixed(one.give_or_take * 100, 1)} %" for one in gauges
    )
    return "give or take " + ", ".join(said)
