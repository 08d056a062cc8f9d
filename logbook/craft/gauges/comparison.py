"""Whether gauges really differ or may be the same, and what else differs between two to six swatches.

Two pitches differ if |ln(p1/p2)| > √(U1² + U2²). Of several swatches at once some pair lies far apart by chance, so each U is
widened first, by 1.25, 1.41, 1.53 and 1.60 for three, four, five and six. These were found by simulation: of 60,000 sets of
swatches of one gauge, each read by one to four spans of some 15 cm, 5 % at most show some pair as different.
Only like is compared with like: the same condition and direction, each pitch that of one stitch or row.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.fields import FIELDS
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.swatches.swatch_fields import value_of
from logbook.errors import RefusedError

WIDENED = {2: 1.0, 3: 1.25, 4: 1.41, 5: 1.53, 6: 1.60}


@dataclass(frozen=True, slots=True)
class Difference:
    """Two swatches' gauges in one condition and direction: ``ratio`` of the first pitch to the second.

    ``give_or_take`` is the half-width of ln ratio, widened for the number compared; it is None, and so
    is ``differ``, where one gauge is too coarse to tell.
    """

    condition: Condition
    direction: Direction
    tags: tuple[str, str]
    ratio: float
    give_or_take: float | None

    @property
    def differ(self) -> bool | None:
        """Whether the two really differ."""
        return None if self.give_or_take is None else abs(math.log(self.ratio)) > self.give_or_take


@dataclass(frozen=True, slots=True)
class ComparedField:
    """One field of the log over all swatches compared, as shown text."""

    name: str
    values: tuple[str, ...]

    @property
    def differs(self) -> bool:
        """Whether those that say something do not all say the same."""
        return len(set(filter(None, self.values))) > 1


def gauge_differences(swatches: Sequence[Swatch], assumptions: Assumptions) -> tuple[Difference, ...]:
    """Every pair of ``swatches`` in every condition and direction both were measured in. Raises RefusedError unless 2 to 6."""
    if len(swatches) not in WIDENED:
        raise RefusedError(f"Two to six swatches can be compared, not {len(swatches)}: choose fewer or more.")
    gauges = [gauges_of(swatch, assumptions) for swatch in swatches]
    return tuple(
        _difference(condition, direction, (one, other), (swatches[one].tag, swatches[other].tag), gauges)
        for condition in Condition
        for direction in Direction
        for one, other in combinations(range(len(swatches)), 2)
        if (condition, direction) in gauges[one] and (condition, direction) in gauges[other]
    )


def _difference(
    condition: Condition,
    direction: Direction,
    pair: tuple[int, int],
    tags: tuple[str, str],
    gauges: Sequence[dict[tuple[Condition, Direction], Gauge]],
) -> Difference:
    first, second = (gauges[place][condition, direction] for place in pair)
    widened = None
    if first.give_or_take is not None and second.give_or_take is not None:
        widened = WIDENED[len(gauges)] * math.hypot(first.give_or_take, second.give_or_take)
    return Difference(condition, direction, tags, first.pitch_mm / second.pitch_mm, widened)


def compared_fields(swatches: Sequence[Swatch]) -> tuple[ComparedField, ...]:
    """Every field of the log that at least one of ``swatches`` fills in, except the uid, the rows in full and pictures."""
    rows = (
        ComparedField(field.name, tuple(field.in_form(value_of(swatch, field)) for swatch in swatches))
        for field in FIELDS
        if field.name not in ("uid", "written rows", "pictures")
    )
    return tuple(row for row in rows if any(row.values))
