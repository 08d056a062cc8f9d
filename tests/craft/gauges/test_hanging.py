import pytest

from logbook.craft.gauges.hanging import HangingTrial, growth_of, weight_to_clip
from logbook.craft.swatches.gauge import Gauge

# A fabric of 250 g/m² = 0.00025 g/mm², a piece 600 mm long: mean load 0.00025·600/2 = 0.075 g/mm.
DENSITY, LENGTH = 0.00025, 600.0


def gauge(pitch: float, u: float | None = 0.02) -> Gauge:
    return Gauge(pitch, u, 0.0, 0.0, 3, ())


def test_the_weight_to_clip_on() -> None:
    # 0.075·120 mm − 10/2 = 4 g
    assert weight_to_clip(DENSITY, LENGTH, 120, 10) == pytest.approx(4)
    assert weight_to_clip(DENSITY, LENGTH, 60, 10) == 0


def test_growth_by_hand() -> None:
    # Load of the trial (4 + 5)/120 = 0.075, just the real one; ε = 10.5/10 − 1 = 5 %; κ = 0.05/0.075 = 0.66667
    # growth = 0.66667·0.00025·600²/2 = 30 mm; half-width 1.05·√(2² + 2²) % = 2.96985 % of 600: 17.82 mm
    trial = HangingTrial(swatch_grams=10, hung_grams=4, clip_mm=120, hung=gauge(10.5), washed=gauge(10))
    growth = growth_of(trial, DENSITY, LENGTH)
    assert growth.mm == pytest.approx(30)
    assert growth.give_or_take_mm == pytest.approx(17.82, abs=0.01)
    assert growth.near


def test_growth_goes_with_the_square_of_the_length() -> None:
    trial = HangingTrial(swatch_grams=10, hung_grams=4, clip_mm=120, hung=gauge(10.5), washed=gauge(10))
    assert growth_of(trial, DENSITY, 2 * LENGTH).mm == pytest.approx(4 * 30)
    assert not growth_of(trial, DENSITY, 2 * LENGTH).near  # the load is then twice the trial's


def test_an_unsure_gauge_leaves_the_growth_unsure() -> None:
    trial = HangingTrial(swatch_grams=10, hung_grams=4, clip_mm=120, hung=gauge(10.5, None), washed=gauge(10))
    assert growth_of(trial, DENSITY, LENGTH).give_or_take_mm is None
