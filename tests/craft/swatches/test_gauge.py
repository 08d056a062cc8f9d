"""Worked by hand, with t(97.5 %, 6) = 2.4469 and t(97.5 %, 4) = 2.7764.

Spans of 4 repeats = 15.1 cm, 4 = 15.4 cm, 3 = 11.5 cm: p = 420/11 = 38.1818 mm.
    d = 37.75/p − 1, 38.5/p − 1, 38.3333/p − 1 = −0.011310, +0.008333, +0.003968; mean 0.000331; SS = 0.00021285
    s² = (4·0.0004 + 0.00021285)/6 = 0.00030214;  Σw² = (16 + 16 + 9)/121 = 0.338843
    fabric: 2.4469²·0.00030214·0.338843 = 0.00061298, root 2.4758 %
    tape: w·b = (4/11)/(√6·151), (4/11)/(√6·154), (3/11)/(√6·115) = 0.00098315, 0.00096400, 0.00096817
          3·(0.96658 + 0.92930 + 0.93735)·10⁻⁶ = 8.4997·10⁻⁶, root 0.2915 %
    U = √(0.00061298 + 0.0000085) = 2.493 %
One count of 2.75 repeats in 10 cm: p = 100/2.75 = 36.364 mm;
    fabric 2.7764·2 % = 5.553 %; b = 0.25/(√12·2.75) = 0.026243, √3·b = 4.545 %; U = 7.176 %
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.gauge import gauge_of
from logbook.craft.swatches.readings import read_readings
from logbook.errors import RefusedError

BASE = Assumptions()


def gauge(text: str, per_repeat: int | None = None, assumptions: Assumptions = BASE):
    return gauge_of(read_readings(text), per_repeat, assumptions)


def test_three_spans() -> None:
    found = gauge("4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm", per_repeat=6)
    assert found.pitch_mm * 6 == pytest.approx(38.1818, abs=0.0001)
    assert found.fabric_part == pytest.approx(0.024758, abs=0.000001)
    assert found.tape_part == pytest.approx(0.002915, abs=0.000001)
    assert found.give_or_take == pytest.approx(0.02493, abs=0.00001)
    assert found.deviations == pytest.approx((-0.011310, 0.008333, 0.003968), abs=0.000001)
    assert found.readings == 3
    assert not found.too_coarse


def test_one_count() -> None:
    found = gauge("2.75 repeats in 10 cm", per_repeat=6)
    assert found.pitch_mm * 6 == pytest.approx(36.364, abs=0.001)
    assert found.fabric_part == pytest.approx(0.05553, abs=0.00001)
    assert found.tape_part == pytest.approx(0.04545, abs=0.00001)
    assert found.give_or_take == pytest.approx(0.07176, abs=0.00001)


def test_counts_round_alike_but_spans_do_not() -> None:
    one, four = gauge("16 sts in 10 cm"), gauge("16 sts in 10 cm; 16 sts in 10 cm; 16 sts in 10 cm; 16 sts in 10 cm")
    assert four.tape_part == pytest.approx(one.tape_part)
    one, four = gauge("16 sts = 10.0 cm"), gauge("; ".join(["16 sts = 10.0 cm"] * 4))
    assert four.tape_part == pytest.approx(one.tape_part / 2)


@pytest.mark.parametrize(("short", "long"), [("10 mm", "10 millimetres"), ("10 cm", "10 centimeters"), ("4 in", "4 inches")])
def test_a_unit_written_out_makes_neither_a_count_nor_a_span_of_the_other(short: str, long: str) -> None:
    assert gauge(f"4 sts = {long}") == gauge(f"4 sts = {short}")


def test_a_coarse_count_states_no_give_or_take() -> None:
    assert gauge("1 repeat in 10 cm", 6).give_or_take is None  # 0.25/1 > 0.2
    assert gauge("1.25 repeats in 10 cm", 6).give_or_take is not None  # 0.25/1.25 = 0.2
    assert gauge("1 repeat in 10 cm; 4 repeats = 40 cm", 6).too_coarse
    assert gauge("1 repeat = 10 cm", 6).give_or_take is not None  # a span is never coarse


def test_readings_that_make_no_gauge_are_refused_with_what_to_do() -> None:
    with pytest.raises(RefusedError, match=r"“4 repeats = 15.1 cm” is in repeats: give the multiple"):
        gauge("4 repeats = 15.1 cm")
    with pytest.raises(RefusedError, match="give the rows in a repeat"):
        gauge("4 row repeats = 15.1 cm")
    for text in ("", "4 sts = 3 cm; 4 rows = 3 cm"):
        with pytest.raises(RefusedError, match="at least one, of stitches or of rows"):
            gauge(text)


def test_the_maker_may_expect_another_variation_and_read_the_tape_finer() -> None:
    assert gauge("20 sts = 12 cm", assumptions=Assumptions(variation=0.04)).fabric_part == pytest.approx(4 * 0.027764, abs=1e-5)
    fine, usual = gauge("20 sts = 12 cm to 0.5 mm"), gauge("20 sts = 12 cm")
    assert fine.tape_part == pytest.approx(usual.tape_part / 2)


spans = st.lists(st.tuples(st.integers(2, 40), st.floats(0.9, 1.1)), min_size=1, max_size=8)


@given(spans, st.floats(5, 50))
def test_repeats_stitches_cm_and_inches_agree(spans: list[tuple[int, float]], stitch_mm: float) -> None:
    lengths = [(n, n * 6 * stitch_mm * wobble) for n, wobble in spans]
    repeats = gauge("; ".join(f"{n} repeats = {mm:.3f} mm" for n, mm in lengths), 6)
    stitches = gauge("; ".join(f"{n * 6} sts = {mm:.3f} mm" for n, mm in lengths))
    inches = gauge("; ".join(f"{n * 6} sts = {mm / 25.4:.6f} in to 1 mm" for n, mm in lengths))
    for other in (stitches, inches):
        assert repeats.pitch_mm == pytest.approx(other.pitch_mm, rel=1e-4)
        assert repeats.give_or_take == pytest.approx(other.give_or_take, rel=1e-3)


@given(spans)
def test_the_order_of_readings_does_not_matter_and_the_parts_make_the_whole(spans: list[tuple[int, float]]) -> None:
    texts = [f"{n} sts = {n * 6 * wobble:.1f} mm" for n, wobble in spans]
    found, turned = gauge(";".join(texts)), gauge(";".join(reversed(texts)))
    assert found.pitch_mm == pytest.approx(turned.pitch_mm)
    assert found.give_or_take == pytest.approx(turned.give_or_take)
    assert found.give_or_take == pytest.approx(math.hypot(found.fabric_part, found.tape_part))
    assert min(mm := [n * 6 * w / n for n, w in spans]) - 0.1 <= found.pitch_mm <= max(mm) + 0.1


@given(st.integers(1, 12))
def test_more_like_places_narrow_the_give_or_take(places: int) -> None:
    more = gauge(";".join(["20 sts = 12 cm"] * (places + 1)))
    assert more.give_or_take is not None
    assert more.give_or_take < (gauge(";".join(["20 sts = 12 cm"] * places)).give_or_take or 0)
