import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.gauges.drift import Drift, drift_of
from logbook.craft.gauges.reading_advice import Advice, Cause, reading_advice, spans_reach
from logbook.craft.gauges.washing import FinishedGauge, Loan, Washing, borrowed_gauge
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.gauge import gauge_of
from logbook.craft.swatches.readings import read_readings

BASE = Assumptions()
USUAL = drift_of(BASE)
THREE = "4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm"


def advice(text: str, per_repeat: int | None = 6, drift: Drift = USUAL, loans: tuple[Loan, ...] | None = None) -> Advice:
    """With ``loans`` the readings are as worked and the washing is borrowed (of none: unknown)."""
    readings = read_readings(text)
    gauge = gauge_of(readings, per_repeat, BASE)
    finished = FinishedGauge(
        pitch_mm=gauge.pitch_mm,
        give_or_take=gauge.give_or_take,
        condition=Condition.WASHED,
        washing=Washing.MEASURED,
        gauge=gauge,
        before_washing_mm=None,
    )
    return reading_advice(finished if loans is None else borrowed_gauge(gauge, loans), readings, per_repeat, drift, BASE)


def test_three_places_are_enough_and_drift_is_never_read_away() -> None:
    found = advice(THREE)
    assert (found.cause, found.reach) == (Cause.DRIFT, None)
    assert found.sentences == (
        "The swatch says give or take 2.5 %; a finished piece usually differs from its swatch by up to 5.6 %, "
        "and that is the largest part. More readings do not make it smaller; only finished pieces, measured and logged, do.",
    )


def test_one_reading_asks_for_two_more_places() -> None:
    # t(6)·2 %/√3 = 2.44691·0.02/1.73205 = 2.82545 %; tape √(3/3)/(√6·151) = 0.27036 %; together 2.83835 %
    found = advice("4 repeats = 15.1 cm")
    assert found.cause is Cause.FEW_PLACES
    assert found.reach == pytest.approx(0.0283835, abs=1e-6)
    assert found.sentences == (
        "Most of the readings' give or take of 5.6 % comes from having measured one place: with 3 in all it would be about "
        "2.8 %.",
    )


def test_one_count_asks_for_places_measured_by_whole_repeats() -> None:
    (sentence,) = advice("2.75 repeats in 10 cm").sentences
    assert "having measured one place: with 3 in all, each by how far 3 whole repeats reach, it would be about 2.9 %" in sentence


def test_counting_asks_for_spans() -> None:
    found = advice("; ".join(["2.25 repeats in 10 cm"] * 4))
    assert found.cause is Cause.COUNTING
    assert found.reach is not None
    assert found.now is not None
    assert found.reach < found.now / 3
    assert "comes from counting: measure how far 2 whole repeats reach instead" in found.sentences[0]


def test_a_coarse_count_asks_for_whole_repeats() -> None:
    found = advice("1 repeat in 4 cm")
    assert (found.cause, found.now) == (Cause.COARSE_COUNT, None)
    assert found.sentences[0].startswith("Counted too coarsely to say how sure: measure how far 2 whole repeats reach")


def test_a_short_span_asks_for_a_longer_one() -> None:
    # r 5 mm over 4 cm: √3·5/(√6·40) = 8.84 % beside the fabric's 5.55 %;
    # 15 stitches over 10 cm to 1 mm: √(5.553² + 0.707²) = 5.60 %
    found = advice("6 sts = 4 cm to 1/2 cm", per_repeat=1)
    assert found.cause is Cause.SHORT_SPANS
    assert "so short a span: over 15 whole stitches it would be about 5.6 %" in found.sentences[0]


def test_enough_places_are_left_at_that() -> None:
    found = advice("; ".join([*["4 repeats = 15.1 cm"] * 8, "4 repeats = 15.9 cm"]), drift=Drift(0.005, 40))
    assert (found.cause, found.reach) == (Cause.FEW_PLACES, None)
    assert "9 places are plenty: leave it at that" in found.sentences[0]


def test_borrowed_washing_asks_for_washing() -> None:
    found = advice("; ".join(["4 repeats = 15.1 cm"] * 3), loans=(Loan("B", -0.03, 0.05, 0.05),))
    assert found.cause is Cause.BORROWED_WASHING
    assert "borrowing the washing: wash this swatch and measure it" in found.sentences[0]
    assert found.reach is not None
    assert found.now is not None
    assert found.reach < found.now


def test_no_washing_is_said_first() -> None:
    found = advice("4 repeats = 15.1 cm", loans=())
    assert found.now is None
    assert found.sentences[0].startswith("Not washed yet, and no other swatch tells how this yarn takes it")


def test_contradictory_readings_and_strays_are_pointed_out_not_dropped() -> None:
    # 151 and 180 mm: |ln(151/180)| = 17.57 %, √(5.57² + 5.57²) = 7.9 %; 151/180 − 1 = −16.1 %
    two = advice("4 repeats = 15.1 cm; 4 repeats = 18 cm")
    assert "The two readings contradict each other by 16 %" in two.sentences[-1]
    three = advice("4 repeats = 15.1 cm; 4 repeats = 18 cm; 4 repeats = 15.2 cm")
    assert three.sentences[-1].startswith("“4 repeats = 18 cm” lies 19 % above the others: measure there again")
    low = advice("4 repeats = 15.1 cm; 4 repeats = 12.5 cm; 4 repeats = 15.2 cm; 4 repeats = 15 cm")
    assert "“4 repeats = 12.5 cm” lies 17 % below the others" in low.sentences[-1]


def test_rows_are_spoken_of_as_rows() -> None:
    (sentence,) = advice("9 rows in 10 cm", per_repeat=None).sentences
    assert "9 whole rows" in sentence


@given(st.integers(1, 12), st.floats(20, 400), st.floats(0.005, 0.06))
def test_more_places_and_longer_spans_narrow_it(places: int, span: float, variation: float) -> None:
    now = spans_reach(places, span, variation, 1.0)
    assert spans_reach(places + 1, span, variation, 1.0) < now
    assert spans_reach(places, span * 2, variation, 1.0) < now


@given(st.lists(st.integers(140, 165), min_size=1, max_size=9), st.floats(0.01, 0.1))
def test_following_the_advice_never_promises_more_than_it_needs(lengths: list[int], drift: float) -> None:
    found = advice("; ".join(f"4 repeats = {mm} mm" for mm in lengths), drift=Drift(drift, 0))
    assert (found.reach is None) == (found.cause is Cause.DRIFT or len(lengths) >= 8)
    if found.reach is not None:
        assert found.now is not None
        assert found.reach < found.now
    if found.cause is Cause.DRIFT:
        assert drift >= (found.now or 0) * 0.9
