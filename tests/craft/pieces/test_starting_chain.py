from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from logbook.craft.pieces.options import Choose, Option, Parity, Pitch, whole_around
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.errors import RefusedError

LACE = ChainRule(multiple=6, plus=1, extra_chains=1)
WASHED = Pitch(mm=420 / 66, gauge_give_or_take=0.02493, drift_give_or_take=0.05553, before_washing_mm=6.5)
PLAIN = Pitch(mm=7.0, gauge_give_or_take=0.03, drift_give_or_take=0.05)


def best(options: tuple[Option, ...]) -> Option:
    (found,) = [option for option in options if option.recommended]
    return found


def test_the_lace_of_46_cm() -> None:
    # stitch 38.1818/6 = 6.36364 mm; W = 67·p = 42.636, 73·p = 46.455, 79·p = 50.273 cm; exact k = (460/p − 1)/6 = 11.88
    options = starting_chains(460, WASHED, LACE)
    assert [o.chain for o in options] == [62, 68, 74, 80]
    assert [o.repeats for o in options] == [10, 11, 12, 13]
    assert [o.mm for o in options] == pytest.approx([388.18, 426.36, 464.55, 502.73], abs=0.01)
    found = best(options)
    assert (found.chain, found.count, found.repeats) == (74, 73, 12)
    assert found.difference_mm == pytest.approx(4.55, abs=0.01)
    assert found.gauge_give_or_take_mm == pytest.approx(11.58, abs=0.01)  # 464.55·2.493 %: "1.2 cm"
    assert found.give_or_take_mm == pytest.approx(28.28, abs=0.01)  # √(11.58² + (464.55·5.553 %)²): "2.8 cm"
    assert found.before_washing_mm == pytest.approx(474.5)  # 73·6.5


def test_at_least_and_at_most() -> None:
    assert best(starting_chains(460, WASHED, replace(LACE, choose=Choose.AT_MOST))).chain == 68
    assert best(starting_chains(480, WASHED, replace(LACE, choose=Choose.NEAREST))).chain == 74
    assert best(starting_chains(480, WASHED, replace(LACE, choose=Choose.AT_LEAST))).chain == 80
    exactly = Pitch(mm=0.1 * 3, gauge_give_or_take=None, drift_give_or_take=0)
    for choose in Choose:  # 0.3·100 is not 30 in binary, and still neither too narrow nor too wide
        assert best(starting_chains(30, exactly, ChainRule(choose=choose))).count == 100


def test_on_a_tie_the_narrower() -> None:
    assert best(starting_chains(35, Pitch(mm=10, gauge_give_or_take=0, drift_give_or_take=0), ChainRule())).count == 3


def test_an_edging_is_no_stitch() -> None:
    # 46 cm with 1.5 cm of edging at each side: 43 cm of fabric, nearest 67 stitches (42.636): 45.636 cm in all
    found = best(starting_chains(460, replace(WASHED, ends_mm=30), LACE))
    assert found.chain == 68
    assert found.mm == pytest.approx(456.36, abs=0.01)
    assert found.gauge_give_or_take_mm == pytest.approx(426.36 * 0.02493, abs=0.01)
    assert found.before_washing_mm == pytest.approx(67 * 6.5 + 30)


def test_in_the_round_the_flat_plus_is_not_used() -> None:
    ring = replace(LACE, in_round=True)
    assert {o.count % 6 for o in starting_chains(920, WASHED, ring)} == {0}
    assert all(o.chain == o.count for o in starting_chains(920, WASHED, ring))
    joined_later = replace(ring, joined_after_row_1=True, round_plus=2)
    assert all(o.chain == o.count + 1 and o.count % 6 == 2 for o in starting_chains(920, WASHED, joined_later))


def test_foundation_stitches_need_no_extra_chains() -> None:
    assert all(o.chain == o.count for o in starting_chains(460, WASHED, replace(LACE, foundation_stitches=True)))


def test_half_repeats_where_the_pattern_has_them() -> None:
    # 6·11 + 3 + 1 = 70 stitches (44.545 cm) lie between 67 and 73; 44.5 cm is nearest to them
    halves = replace(LACE, half_plus=1)
    found = best(starting_chains(445, WASHED, halves))
    assert (found.count, found.repeats, found.chain) == (70, 11.5, 71)
    assert not any(o.repeats % 1 for o in starting_chains(445, WASHED, replace(halves, in_round=True)))


@pytest.mark.parametrize(("parity", "rest"), [(Parity.ODD, 1), (Parity.EVEN, 0)])
@given(target=st.floats(1, 3000), plus=st.integers(0, 3))
def test_parity_of_plain_stitches(parity: Parity, rest: int, target: float, plus: int) -> None:
    options = starting_chains(target, PLAIN, ChainRule(plus=plus, extra_chains=1, parity=parity))
    assert {o.count % 2 for o in options} == {rest}
    assert all(o.count >= 1 + plus for o in options)


def test_unknown_parts_stay_unknown() -> None:
    found = best(starting_chains(460, Pitch(mm=6, gauge_give_or_take=None, drift_give_or_take=0.05), LACE))
    assert (found.gauge_give_or_take_mm, found.give_or_take_mm, found.before_washing_mm) == (None, None, None)


@pytest.mark.parametrize(
    ("target", "rule", "says"),
    [
        (0, LACE, "width must be more than 0"),
        (float("nan"), LACE, "width must be more than 0"),
        (100, ChainRule(multiple=0), "multiple must be at least 1"),
        (100, ChainRule(plus=-1), "plus and the extra chains at least 0"),
        (100, replace(LACE, parity=Parity.ODD), "odd count goes with plain stitches only, not with a multiple of 6"),
        (100, ChainRule(multiple=5, half_plus=1), "multiple of 5 has no half repeat"),
    ],
)
def test_what_cannot_be_is_refused(target: float, rule: ChainRule, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        starting_chains(target, WASHED, rule)


rules = st.builds(
    ChainRule,
    multiple=st.integers(1, 40),
    plus=st.integers(0, 9),
    extra_chains=st.integers(0, 4),
    in_round=st.booleans(),
    joined_after_row_1=st.booleans(),
    foundation_stitches=st.booleans(),
    choose=st.sampled_from(Choose),
)
widths = st.builds(
    Pitch,
    mm=st.floats(0.5, 40),
    gauge_give_or_take=st.floats(0, 0.1),
    drift_give_or_take=st.floats(0, 0.1),
    ends_mm=st.floats(0, 60),
)


@given(st.floats(1, 3000), widths, rules)
def test_no_other_number_of_repeats_beats_the_recommended_one(target: float, width: Pitch, rule: ChainRule) -> None:
    options = starting_chains(target, width, rule)
    found = best(options)
    assert [o.count for o in options] == sorted({o.count for o in options})
    every = [k * rule.multiple + rule.stitches_beside for k in range(1, int(target / width.mm / rule.multiple) + 4)]
    off = {s: s * width.mm + width.ends_mm - target for s in every}
    allowed = {
        Choose.NEAREST: every,
        Choose.AT_LEAST: [s for s in every if off[s] >= 0],
        Choose.AT_MOST: [s for s in every if off[s] <= 0],
    }
    assume(allowed[rule.choose])
    assert abs(found.difference_mm) <= min(abs(off[s]) for s in allowed[rule.choose]) + 1e-5


@given(st.floats(1, 3000), widths, rules)
def test_the_chain_is_whole_repeats_and_what_stands_beside_them(target: float, width: Pitch, rule: ChainRule) -> None:
    for option in starting_chains(target, width, rule):
        assert (option.chain - rule.chains_beside - rule.stitches_beside) % rule.multiple == 0
        assert option.repeats == (option.count - rule.stitches_beside) / rule.multiple >= 1
        assert option.mm - target == pytest.approx(option.difference_mm)


@given(st.floats(-5, 500), st.integers(0, 5))
def test_whole_numbers_around(exact: float, least: int) -> None:
    found = whole_around(exact, least)
    assert found == list(range(found[0], found[-1] + 1))
    assert found[0] >= least
    assert found[0] <= max(exact, least)
    assert found[-1] >= exact


def test_the_plus_for_half_a_repeat_is_its_own() -> None:
    """Of 12 and 11 with 4 for the half: 12k + 11 and 12k + 6 + 4."""
    halves = ChainRule(multiple=12, plus=11, extra_chains=1, half_plus=4)
    counts = {option.count for option in starting_chains(400, Pitch(mm=6, gauge_give_or_take=None, drift_give_or_take=0), halves)}
    assert {count % 12 for count in counts} == {10, 11}


def test_at_most_takes_the_widest_though_it_has_fewer_repeats() -> None:
    """One and a half repeats are 22 stitches here, one is 23: 23 · 8.85 mm is no more than 203.6."""
    width = Pitch(mm=8.85, gauge_give_or_take=None, drift_give_or_take=0)
    halves = ChainRule(multiple=12, plus=11, extra_chains=1, half_plus=4, choose=Choose.AT_MOST)
    found = starting_chains(203.6, width, halves)
    assert best(found).count == 23
    assert [option.count for option in found] == sorted(option.count for option in found)


def test_a_whole_piece_strays_with_all_its_width_not_with_its_fabric_alone() -> None:
    """Drift is a part of the width shown, edgings and all."""
    drift = Pitch(mm=10, ends_mm=100, gauge_give_or_take=0.0, drift_give_or_take=0.1)
    found = best(starting_chains(300, drift, ChainRule(extra_chains=1)))
    assert (found.count, found.mm) == (20, 300)
    assert found.give_or_take_mm == pytest.approx(0.1 * 300)
