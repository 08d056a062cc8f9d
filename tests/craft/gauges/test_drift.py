import math

import pytest

from logbook.craft.gauges.drift import Taught, combined, drift_of, hands_drift
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Direction


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
    # M = 6 pieces without any drift: s² = 0.0012/10, s = 1.0954 %; t(10) = 2.2281, √(1 + 1/9) = 1.0541; U = 2.573 %
    assert drift_of(Assumptions(), [(100, 100)] * 6).give_or_take == pytest.approx(0.02573, abs=0.00001)
    wide, narrow = drift_of(Assumptions(), [(1, 1.05)]), drift_of(Assumptions(), [(1.05, 1)])
    assert wide.give_or_take == pytest.approx(narrow.give_or_take)


LEANING = [(100.0, 100 * math.exp(d)) for d in (0.03, 0.04, 0.02, 0.05)]


def test_a_hand_that_leans_is_followed_part_of_the_way() -> None:
    # Σd = 0.14, Σd² = 0.0054: μ = 0.14/7 = 2.0 %; s² = (0.0012 + 0.0054 − 0.0196/7)/8 = 0.000475, s = 2.1794 %;
    # t(8) = 2.3060, √(1 + 1/7) = 1.0690; U = 5.373 %
    found = drift_of(Assumptions(), LEANING)
    assert found.lean == pytest.approx(0.02)
    assert found.factor == pytest.approx(1.0202013)
    assert found.give_or_take == pytest.approx(0.05373, abs=0.00001)


def test_a_lean_is_counted_in_from_two_pieces_on_and_can_be_switched_off() -> None:
    assert [drift_of(Assumptions(), LEANING[:count]).lean > 0 for count in range(4)] == [False, False, True, True]
    # not counted in, the give or take has to reach over it: s² = (0.0016 + 0.0054)/8, s = 2.9580 %, t(8): 6.821 %
    off = drift_of(Assumptions(count_lean=False), LEANING)
    assert (off.lean, off.factor) == (0, 1)
    assert off.give_or_take == pytest.approx(0.06821, abs=0.00001)


def test_each_hand_is_taught_by_its_own_pieces_stitches_and_rows_apart() -> None:
    mine = [Taught("", pair) for pair in LEANING]
    theirs = [Taught("Noémie ", None, (100, 99)), Taught("noémie", None, (100, 98))]
    known = hands_drift(Assumptions(), [*mine, *theirs])
    assert known.of("").stitches.lean == pytest.approx(0.02)
    assert known.of("").rows == drift_of(Assumptions(), (), Direction.ROWS)
    assert known.of("NOÉMIE").rows.lean == pytest.approx((math.log(0.99) + math.log(0.98)) / 5)
    assert (known.of("noémie").rows.pieces, known.of("Noémie").rows.hand) == (2, "Noémie")
    assert known.of("noémie").stitches.pieces == 0
    assert known.of("Aveline").stitches == drift_of(Assumptions(), hand="Aveline")


def test_parts_combine_as_the_root_of_the_sum_of_squares() -> None:
    assert combined(3, 4) == 5
    assert combined() == 0
    assert combined(0.0249, 0.0555) == pytest.approx(math.sqrt(0.0249**2 + 0.0555**2))
    assert combined(3, None) is None
