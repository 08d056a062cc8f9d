"""Student's t: how many standard deviations hold 95 % when the deviation itself is known from few degrees of freedom."""

import math
from functools import cache


def probability_within(t: float, degrees: int) -> float:
    """P(|T| ≤ t) for ``degrees`` ≥ 1 degrees of freedom: the finite sums of Abramowitz & Stegun, 26.7.3 and 26.7.4."""
    angle = math.atan(t / math.sqrt(degrees))
    sine, cosine = math.sin(angle), math.cos(angle)
    odd = degrees % 2
    term = cosine if odd else 1.0
    total = term if degrees > 1 or not odd else 0.0
    for j in range(2 + odd, degrees - 1, 2):
        term *= cosine * cosine * (j - 1) / j
        total += term
    if odd:
        return 2 / math.pi * (angle + sine * total * (degrees > 1))
    return sine * total


@cache
def t_within(probability: float, degrees: int) -> float:
    """The t for which ±t holds that probability (below 1). Raises ValueError for less than 1 degree of freedom."""
    if degrees < 1:
        raise ValueError(f"Student's t needs at least 1 degree of freedom, not {degrees}")
    low, high = 0.0, 13.0  # t(97.5 %, 1) = 12.71
    while probability_within(high, degrees) < probability:
        high *= 2
    while high - low > 1e-12 * high:
        middle = (low + high) / 2
        low, high = (middle, high) if probability_within(middle, degrees) < probability else (low, middle)
    return (low + high) / 2


def t_975(degrees: int) -> float:
    """The 97.5 % quantile of Student's t, so that ±t holds 95 %. Raises ValueError for less than 1 degree of freedom."""
    return t_within(0.95, degrees)
