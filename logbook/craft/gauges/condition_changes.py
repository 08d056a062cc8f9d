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
from logbook.craft.words.numbers import show_percent


@dataclass(frozen=True, slots=True)
class Change:
    """From ``since`` to ``condition``: ``change`` is −0.03 for 3 % less; ``give_or_take`` likewise, None if unknown."""

    direction: Direction
    since: Condition
    condition: Condition
    change: float
    give_or_take: float | None

    @property
    def sentence(self) -> str:
        """``Washed, laid flat: stitches 3.1 % narrower than as worked, give or take 3.4 %.``"""
        more, less = ("wider", "narrower") if self.direction is Direction.STITCHES else ("higher", "lower")
        amount = show_percent(abs(self.change))
        said = f"{amount} {more if self.change > 0 else less} than" if amount != "0 %" else "no different from"
        sure = "" if self.give_or_take is None else f", give or take {show_percent(self.give_or_take)}"
        words = self.condition.words
        return f"{words[0].upper()}{words[1:]}: {self.direction.value} {said} {self.since.words}{sure}."


def condition_changes(swatch: Swatch, assumptions: Assumptions, since: Condition = Condition.WORKED) -> tuple[Change, ...]:
    """The changes from ``since`` to every other condition measured in that direction, where ``since`` was measured too."""
    gauges = gauges_of(swatch, assumptions)
    return tuple(
        _change(direction, since, condition, gauges[since, direction], gauges[condition, direction])
        for condition in Condition
        for direction in Direction
        if condition is not since and (since, direction) in gauges and (condition, direction) in gauges
    )


def _change(direction: Direction, since: Condition, condition: Condition, before: Gauge, after: Gauge) -> Change:
    ratio = after.pitch_mm / before.pitch_mm
    half_width = combined(before.give_or_take, after.give_or_take)
    return Change(direction, since, condition, ratio - 1, None if half_width is None else ratio * half_width)
