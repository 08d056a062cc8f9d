"""Shapings spread evenly over rows: d at an edge over R rows.

    g = ⌊R/d⌋, e = R − g·d: the first in row ⌈g/2⌉, then d − 1 − e gaps of g rows, then e gaps of g + 1; the last ⌊g/2⌋ rows plain

Of more than R, ⌊d/R⌋ are in every row and one more in d mod R rows so spread. In right-side rows only, they are spread over the
⌈R/2⌉ pairs of rows, in the first of each. At the end of any row the edge is at most ½ + d²/4R stitches off the straight line.
"""

from collections import Counter
from collections.abc import Sequence

from logbook.errors import RefusedError


def spread(times: int, rows: int, *, right_side_only: bool = False) -> tuple[int, ...]:
    """The row (from 1) of each shaping at one edge, in order; a row stands as often as it is shaped.

    Raises RefusedError if there are shapings and no row to put them in.
    """
    if times < 0 or (times and rows < 1):
        raise RefusedError("There is no row to shape in: make it longer, or leave the shaping out.")
    if right_side_only:
        return tuple(2 * pair - 1 for pair in spread(times, (rows + 1) // 2))
    if not times:
        return ()
    every, more = divmod(times, rows)
    at = list(range(1, rows + 1)) * every + (_spaced(more, rows) if more else [])
    return tuple(sorted(at))


def _spaced(times: int, rows: int) -> list[int]:
    gap, longer = divmod(rows, times)
    row = (gap + 1) // 2
    at = [row]
    for step in [gap] * (times - 1 - longer) + [gap + 1] * longer:
        row += step
        at.append(row)
    return at


def off_line(at: Sequence[int], rows: int) -> float:
    """How far the edge strays, at the end of any row, from the straight line over ``rows`` rows; in stitches."""
    shaped, done, most = Counter(at), 0, 0.0
    for row in range(1, rows + 1):
        done += shaped[row]
        most = max(most, abs(done - len(at) * row / rows))
    return most
