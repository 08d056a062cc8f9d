import pytest

from logbook.craft.gauges.drift import Drift
from logbook.craft.pieces.yarn_needed import balls_for, stitch_weight, together, yarn_needed
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError

YARN = Yarn(ball_grams=50, ball_metres=125)


def test_a_vest_by_hand() -> None:
    # 10 g over 25 stitches and 20 rows: 0.02 g each, ±0.5 g of 10 is 5 %. Two panels of 73 × 60: 8760 stitches, 175.2 g.
    # Seams of 5 m at 2.5 m a gram: 2 g. Together 177.2 g, 443 m; half-width √(5² + 5.5²) = 7.43 % of 175.2: 13.0 g
    # To buy: 177.2·1.1 = 194.9 g, 4 balls of 50 g
    weight = stitch_weight(10, 25, 20)
    assert weight is not None
    assert (weight.grams, weight.give_or_take) == (pytest.approx(0.02), pytest.approx(0.05))
    need = yarn_needed(weight, [(73, 60), (73, 60)], 5000, YARN, Drift(0.055, 0), 0.10)
    assert need.grams == pytest.approx(177.2)
    assert need.give_or_take_grams == pytest.approx(13.02, abs=0.01)
    assert need.metres == pytest.approx(443)
    assert need.balls == 4


def test_without_a_ball_there_are_only_grams() -> None:
    weight = stitch_weight(10, 25, 20)
    assert weight is not None
    need = yarn_needed(weight, [(100, 10)], 5000, Yarn(), Drift(0.05, 0), 0.1)
    assert (need.grams, need.balls, need.metres) == (pytest.approx(20), None, None)


def test_unweighed_swatches_say_nothing() -> None:
    assert stitch_weight(None, 25, 20) is None
    assert stitch_weight(10, None, 20) is None
    with pytest.raises(RefusedError, match="each be more than 0"):
        stitch_weight(10, 0, 20)


def test_balls_round_up_but_not_beyond() -> None:
    assert balls_for(100, 50, 0.0) == 2
    assert balls_for(100.1, 50, 0.0) == 3
    assert balls_for(100, 55, 0.10) == 2  # 110 g are just two balls of 55


def test_a_run_rounds_its_balls_once() -> None:
    weight = stitch_weight(10, 25, 20)
    assert weight is not None
    one = yarn_needed(weight, [(100, 30)], 0, YARN, Drift(0.05, 0), 0.1)  # 60 g: 66 with the reserve, 2 balls
    three = together([one, one, one], YARN, 0.1)  # 198 g: 4 balls
    assert (one.balls, three.balls) == (2, 4)
    assert three.grams == pytest.approx(180)
    assert three.give_or_take_grams == pytest.approx(3 * one.give_or_take_grams)
