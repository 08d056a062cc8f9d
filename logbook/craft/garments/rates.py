"""Rates as a maker says them: 3 stitches to 4 rows."""

from functools import cache
from itertools import pairwise
from math import gcd

MOST = 9
"""The largest number in a rate."""
Rate = tuple[int, int]
"""So many of one edge to so many of the other."""


def small_ratio(a: float, b: float) -> Rate:
    """The ratio of numbers up to 9 nearest to a : b (both above 0), in smallest terms."""
    wanted = a / b
    pairs = ((x, y) for x in range(1, MOST + 1) for y in range(1, MOST + 1))
    return min(pairs, key=lambda pair: (round(abs(pair[0] / pair[1] - wanted), 9), sum(pair)))


@cache
def rates_by_share() -> tuple[tuple[float, Rate], ...]:
    """Every rate with the least a / b of which it is the ``small_ratio``, in their order; the first has 0."""
    numbers = range(1, MOST + 1)
    every = sorted(((a, b) for a in numbers for b in numbers if gcd(a, b) == 1), key=lambda rate: rate[0] / rate[1])
    found = [(0.0, every[0])]
    for before, rate in pairwise(every):
        halfway = (before[0] / before[1] + rate[0] / rate[1]) / 2
        found.append((halfway + (-5e-10 if sum(rate) < sum(before) else 5e-10), rate))
    return tuple(found)
