"""What a hand uses, learnt from what it made: worked examples, reckoned by hand before the code.

One made piece that used 8 % more yarn than planned: d = ln 1.08 = 0.076961. With the swatch worth one piece::

    μ = d/2 = 0.038481, so the next plan is multiplied by √1.08 = 1.039230
    s² = (4·0.02²·1/2 + d² − d²/2)/5 = (0.0008 + 0.0029615)/5 = 0.00075230, s = 0.027428
    U = t(97.5 %, 5)·s·√(1 + 1/2) = 2.570582·0.027428·1.224745 = 8.635 %

A second one that used 4 % more: Σd = 0.116182, Σd² = 0.0074613, μ = 0.116182/3 = 0.038727, times 1.039487.
"""

import math

import pytest

from logbook.craft.gauges.drift import Taught, hands_drift, used_of
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn

LINEN, WOOL = Yarn(uid="linen", name="linen"), Yarn(uid="wool", name="wool")
FANS, PLAIN = StitchPattern(uid="fans", name="fans"), StitchPattern(uid="plain", name="plain")
MORE = Taught("Noémie", yarn="linen", stitch="fans", grams=(250.0, 270.0))


def swatch(yarn: Yarn = LINEN, pattern: StitchPattern = FANS, hand: str = "Noémie", **more: object) -> Swatch:
    return Swatch(yarn=yarn, pattern=pattern, worked_by=hand, **more)  # type: ignore[arg-type]


def test_one_piece_that_used_8_per_cent_more_changes_the_next_plan_by_half_of_it() -> None:
    grams = hands_drift(Assumptions(), [MORE]).of_swatch(swatch()).grams
    assert grams.pieces == 1
    assert grams.factor == pytest.approx(1.0392305, abs=1e-7)
    assert grams.give_or_take == pytest.approx(0.08635, abs=5e-6)


def test_two_pieces_and_the_swatch_are_worth_one_each() -> None:
    grams = used_of(Assumptions(), [math.log(1.08), math.log(1.04)])
    assert grams.factor == pytest.approx(1.039487, abs=1e-6)


def test_without_pieces_it_is_as_a_whole_piece_is_assumed_to_differ() -> None:
    known = hands_drift(Assumptions(), []).of_swatch(swatch())
    assert known.grams.factor == 1
    assert known.grams.give_or_take == pytest.approx(known.stitches.give_or_take)
    assert known.minutes.factor == 1


@pytest.mark.parametrize("other", [swatch(hand="Tove"), swatch(yarn=WOOL), swatch(pattern=PLAIN), Swatch(worked_by="Noémie")])
def test_hands_yarns_and_stitches_are_kept_apart(other: Swatch) -> None:
    known = hands_drift(Assumptions(), [MORE])
    assert known.of_swatch(other).grams.factor == 1
    assert known.of_swatch(swatch(hand=" noémie")).grams.factor > 1


def test_for_other_hands_it_is_left_out_and_covered() -> None:
    own = hands_drift(Assumptions(), [MORE]).of_swatch(swatch())
    others = own.for_other_hands().grams
    assert others.factor == 1
    # s² = (4·0.02² + d²)/5 = (0.0016 + 0.0059230)/5, U = 2.570582·0.038789
    assert others.give_or_take == pytest.approx(0.099711, abs=5e-6)


def test_nothing_is_counted_in_where_the_maker_switched_it_off() -> None:
    known = hands_drift(Assumptions(count_lean=False), [MORE]).of_swatch(swatch())
    assert known.grams.factor == 1


def test_the_pace_is_learnt_from_other_swatches_of_the_hand_as_well() -> None:
    own = swatch(uid="a", minutes=60.0, swatch_stitches=20.0, swatch_rows=20.0)
    quick = swatch(uid="b", minutes=48.0, swatch_stitches=20.0, swatch_rows=20.0)
    others = (own, quick, swatch(uid="c", hand="Tove", minutes=20.0, swatch_stitches=20.0, swatch_rows=20.0))
    pace = hands_drift(Assumptions(), []).of_swatch(own, others).minutes
    assert pace.pieces == 1
    assert pace.factor == pytest.approx(math.sqrt(0.8))
    # s0 = 15 %: s² = (4·0.15²/2 + (ln 0.8)²/2)/5 = (0.045 + 0.0248965)/5, U = 2.570582·0.118233·1.224745
    assert pace.give_or_take == pytest.approx(0.372233, abs=5e-6)
