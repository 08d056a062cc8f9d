"""Shapings spread over rows: examples worked out by hand, and what holds for all."""

from collections import Counter
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.spread import off_line, spread
from logbook.errors import RefusedError


@pytest.mark.parametrize(
    ("times", "rows", "at"),
    [
        (10, 90, (5, 14, 23, 32, 41, 50, 59, 68, 77, 86)),
        (10, 87, (4, 12, 20, 29, 38, 47, 56, 65, 74, 83)),
        (1, 1, (1,)),
        (3, 3, (1, 2, 3)),
        (0, 7, ()),
        (5, 3, (1, 1, 2, 3, 3)),
        (6, 3, (1, 1, 2, 2, 3, 3)),
    ],
)
def test_rows_of_shapings(times: int, rows: int, at: tuple[int, ...]) -> None:
    assert spread(times, rows) == at


def test_right_side_rows_are_the_first_of_each_pair() -> None:
    assert spread(3, 11, right_side_only=True) == (1, 5, 9)
    assert spread(7, 11, right_side_only=True) == (1, 3, 5, 5, 7, 9, 11)


def test_no_row_to_shape_in_is_refused() -> None:
    with pytest.raises(RefusedError, match="no row to shape in"):
        spread(2, 0)


@given(st.integers(1, 200), st.integers(1, 200), st.booleans())
def test_all_are_there_and_even(times: int, rows: int, right_side_only: bool) -> None:
    at = spread(times, rows, right_side_only=right_side_only)
    assert len(at) == times
    assert list(at) == sorted(at)
    assert 1 <= at[0] <= at[-1] <= rows
    in_a_row = Counter(at).values()
    assert max(in_a_row) - min(in_a_row) <= 1
    if max(in_a_row) == 1:
        gaps = {b - a for a, b in pairwise(at)}
        assert not gaps or max(gaps) - min(gaps) <= (2 if right_side_only else 1)
    if not right_side_only:
        assert off_line(at, rows) <= 0.5 + times**2 / (4 * rows) + 1e-9
