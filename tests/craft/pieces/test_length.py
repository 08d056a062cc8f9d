from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.length import FOUNDATION_MM, RowRule, row_counts
from logbook.craft.pieces.options import Choose, Option, Parity, Pitch
from logbook.errors import RefusedError

ROW = Pitch(mm=10.0, gauge_give_or_take=0.03, drift_give_or_take=0.04, before_washing_mm=10.5, ends_mm=FOUNDATION_MM)


def best(options: tuple[Option, ...]) -> Option:
    (found,) = [option for option in options if option.recommended]
    return found


def test_set_up_rows_groups_and_closing_rows() -> None:
    # 55 cm less 4 mm is 54.6 rows of 1 cm; 2 + 4·j + 1: j = 12 → 51 rows, 13 → 55 (55.4 cm), the nearest
    rule = RowRule(set_up=2, in_repeat=4, closing=1)
    options = row_counts(550, ROW, rule)
    assert [o.count for o in options] == [47, 51, 55, 59]
    found = best(options)
    assert (found.repeats, found.count) == (13, 55)
    assert found.mm == pytest.approx(554)
    assert found.difference_mm == pytest.approx(4)
    assert found.gauge_give_or_take_mm == pytest.approx(16.5)  # 3 % of 550 mm of rows
    assert found.give_or_take_mm == pytest.approx((16.5**2 + (0.04 * 554) ** 2) ** 0.5)
    assert found.before_washing_mm == pytest.approx(55 * 10.5 + 4)


def test_the_last_row_odd_or_even() -> None:
    assert best(row_counts(550, ROW, RowRule(parity=Parity.EVEN))).count == 54  # 54.6: 54 or 56
    assert best(row_counts(550, ROW, RowRule(parity=Parity.ODD))).count == 55
    # 1 + 3·j is even for odd j only: 52 or 58 rows
    assert [o.count for o in row_counts(550, ROW, RowRule(set_up=1, in_repeat=3, parity=Parity.EVEN))] == [46, 52, 58, 64]


def test_a_parity_that_can_never_be_is_refused() -> None:
    with pytest.raises(RefusedError, match="with 1 set-up and closing rows and 2 in a repeat never ends on an even row"):
        row_counts(550, ROW, RowRule(set_up=1, in_repeat=2, parity=Parity.EVEN))
    assert {o.count % 2 for o in row_counts(550, ROW, RowRule(set_up=1, in_repeat=2, parity=Parity.ODD))} == {1}


def test_stopping_inside_a_group_goes_by_the_heights_of_its_rows() -> None:
    # A group of a dc row (3) and two sc rows (1): mean 5/3. 9 rows are 9 mean rows; 10 are 9 + 1.8 = 10.8; 11 are 11.4.
    rule = RowRule(in_repeat=3, any_row=True, row_shares=(3, 1, 1))
    ten = next(o for o in row_counts(110, ROW, rule) if o.count == 10)
    assert ten.mm == pytest.approx(112)
    assert best(row_counts(118, ROW, rule)).count == 11


def test_rows_of_very_different_heights_do_not_hide_the_nearest() -> None:
    # Four rows of 1, then four of 4: mean 2.5. 8 rows are 80 mm, 12 are 80 + 1.6·10 = 96 mm, 13 are 112;
    # the foundation chain's 4 mm come on top.
    rule = RowRule(in_repeat=8, any_row=True, row_shares=(1, 1, 1, 1, 4, 4, 4, 4))
    found = best(row_counts(100, ROW, rule))
    assert (found.count, round(found.mm)) == (12, 100)


@pytest.mark.parametrize(
    ("target", "rule", "says"),
    [
        (0, RowRule(), "length must be more than 0"),
        (100, RowRule(in_repeat=0), "rows in a repeat must be at least 1"),
        (100, RowRule(in_repeat=3, any_row=True, row_shares=(1, 2)), "heights of all 3 rows"),
        (100, RowRule(set_up=-1), "set-up and closing rows at least 0"),
    ],
)
def test_what_cannot_be_is_refused(target: float, rule: RowRule, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        row_counts(target, ROW, rule)


shares = st.lists(st.sampled_from([1.0, 1.5, 2.0, 3.0, 4.0]), min_size=2, max_size=6)


@given(st.floats(5, 2000), st.floats(2, 30), shares, st.sampled_from(Choose))
def test_inside_groups_no_other_row_count_beats_the_recommended_one(
    target: float, row: float, heights: list[float], choose: Choose
) -> None:
    rule = RowRule(set_up=1, in_repeat=len(heights), any_row=True, row_shares=tuple(heights), choose=choose)
    height = Pitch(mm=row, gauge_give_or_take=0, drift_give_or_take=0)
    mean = sum(heights) / len(heights)
    stacked, ends = row, []
    for n in range(int(target / row * 3) + 3 * len(heights)):
        stacked += heights[n % len(heights)] / mean * row
        ends.append(stacked)
    allowed = {
        Choose.NEAREST: ends,
        Choose.AT_LEAST: [end for end in ends if end >= target],
        Choose.AT_MOST: [end for end in ends if end <= target] or ends[:1],
    }[choose]
    found = best(row_counts(target, height, rule))
    assert abs(found.difference_mm) <= min(abs(end - target) for end in allowed) + 1e-5


rules = st.builds(
    RowRule,
    set_up=st.integers(0, 5),
    in_repeat=st.integers(1, 9),
    closing=st.integers(0, 3),
    parity=st.sampled_from(Parity),
    choose=st.sampled_from(Choose),
)


@given(st.floats(5, 3000), rules)
def test_rows_are_whole_groups_and_as_asked(target: float, rule: RowRule) -> None:
    try:
        options = row_counts(target, ROW, rule)
    except RefusedError:
        assert rule.in_repeat % 2 == 0
        return
    for option in options:
        assert option.count == rule.set_up + rule.in_repeat * option.repeats + rule.closing
        assert rule.parity.fits(option.count)
        assert option.repeats >= 1
    if rule.choose is Choose.NEAREST and rule.parity is Parity.ANY:
        whole = range(1, int(target / 10 / rule.in_repeat) + 3)
        lengths = [(rule.set_up + rule.in_repeat * j + rule.closing) * 10 + FOUNDATION_MM for j in whole]
        assert abs(best(options).difference_mm) <= min(abs(mm - target) for mm in lengths) + 1e-5


def test_at_least_and_at_most() -> None:
    assert best(row_counts(550, ROW, replace(RowRule(), choose=Choose.AT_LEAST))).count == 55
    assert best(row_counts(550, ROW, replace(RowRule(), choose=Choose.AT_MOST))).count == 54
