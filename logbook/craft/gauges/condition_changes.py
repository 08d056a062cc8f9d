"""How the fabric changes from one condition to another: by how much a stitch widens and a row rises.

change = p/p0 − 1, give or take (p/p0)·√(U² + U0²). Both gauges come off one piece of cloth, whose unevenness they share, so
this is rather too wide than too narrow.
"""

from dataclasses import dataclass

from logbook.craft.gauges.drift import combined
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauges_of


@dataclass(frozen=True, slots=True)
class ConditionChange:
    """From ``since`` to ``condition``: ``change`` is −0.03 for 3 % less; ``give_or_take`` likewise, None if unknown."""

    direction: Direction
    since: Condition
    condition: Condition
    change: float
    give_or_take: float | None


def condition_changes(
    swatch: Swatch, assumptions: Assumptions, since: Condition = Condition.WORKED
) -> tuple[ConditionChange, ...]:
    """The changes from ``since`` to every other condition measured in that direction, where ``since`` was measured too."""
    gauges = gauges_of(swatch, assumptions)
    return tuple(
        _change(direction, since, condition, gauges[since, direction], gauges[condition, direction])
        for condition in Condition
        for direction in Direction
        if condition is not since and (since, direction) in gauges and (condition, direction) in gauges
    )


def _change(direction: Direction, since: Condition, condition: Condition, before: Gauge, after: Gauge) -> ConditionChange:
    ratio = after.pitch_mm / before.pitch_mm
    half_width = combined(before.give_or_take, after.give_or_take)
    return ConditionChange(direction, since, condition, ratio - 1, None if half_width is None else ratio * half_width)
