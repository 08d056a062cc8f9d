"""Rates as a maker says them: 3 stitches to 4 rows."""

MOST = 9
"""The largest number in a rate."""


def small_ratio(a: float, b: float) -> tuple[int, int]:
    """The ratio of numbers up to 9 nearest to a : b (both above 0), in smallest terms."""
    wanted = a / b
    pairs = ((x, y) for x in range(1, MOST + 1) for y in range(1, MOST + 1))
    return min(pairs, key=lambda pair: (round(abs(pair[0] / pair[1] - wanted), 9), sum(pair)))
