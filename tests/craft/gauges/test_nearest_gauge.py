from collections.abc import Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.gauges.nearest_gauge import Near, WantedGauge, gauge_like, wanted_gauge
from logbook.craft.gauges.nearest_gauge import nearest as nearest_measured
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading, gauges_of
from logbook.errors import RefusedError

BASE = Assumptions()


def swatch(tag: str, washed: str, multiple: int | None = 6) -> Swatch:
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings(washed))
    return Swatch(uid=tag, tag=tag, pattern=StitchPattern(multiple=multiple), readings=readings)


def nearest(swatches: Sequence[Swatch], wanted: WantedGauge, condition: Condition = Condition.WASHED) -> tuple[Near, ...]:
    return nearest_measured(((one, gauges_of(one, BASE)) for one in swatches), wanted, condition)


def test_off_by_hand() -> None:
    # Wanted 2.6 repeats and 9 rows in 10 cm. Has 38 mm a repeat: ln(38·2.6/100) = −0.0120726;
    # 11.5 mm a row: ln(11.5·9/100) = 0.0344014
    # off = √((0.00014575 + 0.00118346)/2) = 0.0257800
    has = swatch("A", "5 repeats = 19 cm; 10 rows = 11.5 cm")
    (found,) = nearest([has], wanted_gauge(100, 2.6, None, 9))
    assert found.off == pytest.approx(0.02578, abs=0.000001)


def test_nearest_first_and_only_those_measured_in_all_that_was_asked() -> None:
    near, far = swatch("near", "4 repeats = 15.4 cm"), swatch("far", "4 repeats = 17 cm")
    rows_only, plain = swatch("rows", "9 rows = 10 cm"), swatch("plain", "16 sts = 10 cm", multiple=None)
    everyone = [far, rows_only, plain, near]
    assert [f.swatch.tag for f in nearest(everyone, wanted_gauge(100, 2.6, None, None))] == ["near", "far"]
    assert [f.swatch.tag for f in nearest(everyone, wanted_gauge(100, None, 16, None))] == ["plain", "near", "far"]
    assert [f.swatch.tag for f in nearest(everyone, wanted_gauge(100, None, None, 9))] == ["rows"]
    assert nearest(everyone, wanted_gauge(100, 2.6, None, 9)) == ()
    assert nearest(everyone, wanted_gauge(100, 2.6, None, None), Condition.WORKED) == ()


def test_like_this_one_finds_itself_first() -> None:
    mine, other = swatch("mine", "4 repeats = 15.4 cm; 9 rows = 10 cm"), swatch("other", "4 repeats = 15.5 cm; 9 rows = 10 cm")
    found = nearest([other, mine], gauge_like(mine, Condition.WASHED, BASE))
    assert [near.swatch.tag for near in found] == ["mine", "other"]
    assert found[0].off == pytest.approx(0)
    assert gauge_like(swatch("plain", "16 sts = 10 cm", multiple=1), Condition.WASHED, BASE) == WantedGauge(stitch_mm=6.25)
    with pytest.raises(RefusedError, match="mine was not measured washed, pinned out"):
        gauge_like(mine, Condition.PINNED, BASE)


@pytest.mark.parametrize("asked", [(100, None, None, None), (0, 2, None, None), (100, -1, None, None), (100, 2, None, 0)])
def test_something_above_nought_must_be_asked(asked: tuple[float, float | None, float | None, float | None]) -> None:
    with pytest.raises(RefusedError, match="Give repeats or stitches, or rows, and the length they are over"):
        wanted_gauge(*asked)


def test_what_is_farther_off_than_a_quarter_is_left_out() -> None:
    # ln(1.284) = 0.24998, ln(1.285) = 0.25076
    inside, outside = swatch("inside", "10 sts = 12.84 cm"), swatch("outside", "10 sts = 12.85 cm")
    assert [f.swatch.tag for f in nearest([outside, inside], WantedGauge(stitch_mm=10))] == ["inside"]


@given(st.integers(60, 400), st.floats(0.79, 1.27))
def test_too_wide_is_as_far_off_as_too_narrow(one: int, ratio: float) -> None:
    other = round(one * ratio)
    (found,) = nearest([swatch("A", f"4 repeats = {one} mm")], WantedGauge(repeat_mm=other / 4))
    (turned,) = nearest([swatch("A", f"4 repeats = {other} mm")], WantedGauge(repeat_mm=one / 4))
    assert found.off == pytest.approx(turned.off)
