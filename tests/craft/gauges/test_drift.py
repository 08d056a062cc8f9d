import math

import pytest

from logbook.craft.gauges.drift import combined, drift_of
from logbook.craft.swatches.assumptions import Assumptions


def test_before_any_experience_it_is_the_assumption() -> None:
    # t(97.5 %, 4) = 2.7764; 2.7764·2 % = 5.553 %
    found = drift_of(Assumptions())
    assert found.give_or_take == pytest.approx(0.05553, abs=0.00001)
    assert found.pieces == 0


def test_one_made_piece_three_percent_wider() -> None:
    # d = ln 1.03 = 0.0295588; s² = (4·0.0004 + 0.00087372)/5 = 0.00049474, s = 2.2243 %; t(5) = 2.5706; U = 5.718 %
    found = drift_of(Assumptions(), [(465.0, 465.0 * 1.03)])
    assert found.give_or_take == pytest.approx(0.05718, abs=0.00001)
    assert found.pieces == 1


def test_faithful_pieces_narrow_it_and_wide_and_narrow_ones_count_alike() -> None:
    # M = 6 pieces without any drift: s² = 0.0016/10, s = 1.2649 %; t(10) = 2.2281; U = 2.818 %
    assert drift_of(Assumptions(), [(100, 100)] * 6).give_or_take == pytest.approx(0.02818, abs=0.00001)
    wide, narrow = drift_of(Assumptions(), [(1, 1.05)]), drift_of(Assumptions(), [(1.05, 1)])
    assert wide.give_or_take == pytest.approx(narrow.give_or_take)


def test_parts_combine_as_the_root_of_the_sum_of_squares() -> None:
    assert combined(3, 4) == 5
    assert combined() == 0
    assert combined(0.0249, 0.0555) == pytest.approx(math.sqrt(0.0249**2 + 0.0555**2))
    assert combined(3, None) is None
