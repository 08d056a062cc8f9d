"""Which size of a pattern is off beyond what the gauge of those who tried it explains.

Of a tester i in size s, along the width and up the length each by itself, U_i being the give or take of their gauge::

    r = ln(measured/told by the pattern) − ln(their gauge/the pattern's)         what their gauge does not explain
    w = 1/((U_i/2)² + 0.017²)                                                    how much it counts
    g = Σ_s w·r/Σ_s w − Σ_o w·r/(Σ_o w + 1/0.02²)                                o: all other sizes, and that none is off
    f = (4 + Σ w·(r − mean of its size)²)/(4 + Σ(n − 1))                         over width and length together
    U = t(97.5 %)·√f·√(1/Σ_s w + 1/(Σ_o w + 1/0.02²))

A size with two testers or more is named if |g| lies beyond the t that holds 1 − 0.04/(sizes × directions), so that of
patterns with nothing wrong at most one in twenty is said to be off (one in 25 would be, were every spread known); then it is
left out and the rest is weighed again. That and what is left beside the gauge before anything is known, 1.7 %, were chosen by
simulation (the bench of testers). Source: weighted
least squares, Student's t, Bonferroni's bound for several sizes at once.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from logbook.craft.swatches.assumptions import PRIOR_DEGREES, Assumptions
from logbook.craft.swatches.student import t_975, t_within

LEAST = 2
"""Testers of a size: of one alone nothing is said."""
_FALSE_ALARMS = 0.04
_BESIDE_GAUGE = 0.017


@dataclass(frozen=True, slots=True)
class TestedMeasure:
    """One tester's measure: the size, ``what`` it is (width or length), measured by told, their pitch by the pattern's, and the
    give or take of that, relative.
    """

    size: str
    what: str
    came_out: float
    gauge: float
    give_or_take: float

    @property
    def unexplained(self) -> float:
        """What their gauge does not explain, as a logarithm."""
        return math.log(self.came_out / self.gauge)

    @property
    def weight(self) -> float:
        """How much it counts."""
        return 1 / ((self.give_or_take / 2) ** 2 + _BESIDE_GAUGE**2)


@dataclass(frozen=True, slots=True)
class SizeOff:
    """A size that is off: by how much what was measured differs from what was told and how much of it their gauge explains
    (means), what is left beside the other sizes with its half-width, relative; how many of its testers came out that way.
    """

    size: str
    what: str
    came_out: float
    by_gauge: float
    left: float
    give_or_take: float
    alike: int
    testers: int


def sizes_off(tried: Sequence[TestedMeasure], assumptions: Assumptions) -> tuple[SizeOff, ...]:
    """The sizes that are off, the plainest first."""
    of: dict[tuple[str, str], list[TestedMeasure]] = {}
    for one in tried:
        of.setdefault((one.what, one.size), []).append(one)
    left = {key for key, those in of.items() if len(those) >= LEAST}
    if not left:
        return ()
    degrees = PRIOR_DEGREES + sum(len(those) - 1 for those in of.values())
    squares = math.fsum(one.weight * (one.unexplained - _mean(those)[0]) ** 2 for those in of.values() for one in those)
    spread = math.sqrt((PRIOR_DEGREES + squares) / degrees)
    beyond = t_within(1 - _FALSE_ALARMS / len(left), degrees)
    found: list[SizeOff] = []
    while left:
        off = {key: _beside(of, key, assumptions.drift) for key in left}
        worst = max(off, key=lambda key: (abs(off[key][0]) / off[key][1], key))
        apart, reach = off[worst]
        if abs(apart) <= beyond * spread * reach:
            break
        found.append(_said(of.pop(worst), apart, t_975(degrees) * spread * reach))
        left.discard(worst)
    return tuple(found)


def _beside(of: Mapping[tuple[str, str], Sequence[TestedMeasure]], key: tuple[str, str], drift: float) -> tuple[float, float]:
    """How far a size is from the others, and by what the spread is multiplied."""
    others = [one for other, those in of.items() if other[0] == key[0] and other != key for one in those]
    own, weight = _mean(of[key])
    worth = math.fsum(one.weight for one in others) + 1 / drift**2
    return own - math.fsum(one.weight * one.unexplained for one in others) / worth, math.sqrt(1 / weight + 1 / worth)


def _said(those: Sequence[TestedMeasure], apart: float, half_width: float) -> SizeOff:
    return SizeOff(
        size=those[0].size,
        what=those[0].what,
        came_out=_change([one.came_out for one in those]),
        by_gauge=_change([one.gauge for one in those]),
        left=math.expm1(apart),
        give_or_take=half_width,
        alike=sum(one.unexplained * apart > 0 for one in those),
        testers=len(those),
    )


def _mean(those: Sequence[TestedMeasure]) -> tuple[float, float]:
    """What the gauge of several leaves in the mean, and how much that counts."""
    weight = math.fsum(one.weight for one in those)
    return math.fsum(one.weight * one.unexplained for one in those) / weight, weight


def _change(ratios: Sequence[float]) -> float:
    return math.expm1(math.fsum(map(math.log, ratios)) / len(ratios))
