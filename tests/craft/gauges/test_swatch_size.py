import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.gauges.drift import Drift, drift_of
from logbook.craft.gauges.swatch_size import swatch_size
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.words.lengths import Units

BASE = Assumptions()


def test_a_lace_repeat_of_38_mm_for_46_cm() -> None:
    # 0.6·5.553 % = 3.332 %; one place 5.6, two 3.7, three 2.86 %: three places. 10 cm is 2.62 repeats: three, 114.5 mm;
    # with 2 cm on each side 154.5 mm, so a square of 16 cm
    found = swatch_size(460, 38.1818, drift_of(BASE), BASE)
    assert (found.places, found.units, found.side_mm) == (3, 3, 160)
    assert found.span_mm == pytest.approx(114.545, abs=0.001)


def test_a_blanket_wants_longer_spans() -> None:
    # 2 m: the tape's part √(3/3)·1/√6·2000/5 = 163.3 mm: 24 stitches of 7 mm
    assert swatch_size(2000, 7, drift_of(BASE), BASE).units == 24
    assert swatch_size(2000, 7, drift_of(BASE), BASE, Units.INCHES).units == 38  # a sixteenth of an inch is coarser


def test_a_faithful_maker_gains_from_more_places() -> None:
    assert swatch_size(460, 7, Drift(0.04, 5), BASE).places == 4
    assert swatch_size(460, 7, Drift(0.001, 99), BASE).places == 8


@given(st.floats(50, 3000), st.floats(2, 150))
def test_the_swatch_holds_its_span_and_edges(target: float, unit: float) -> None:
    found = swatch_size(target, unit, drift_of(BASE), BASE)
    assert found.units >= 2
    assert found.span_mm == pytest.approx(found.units * unit)
    assert found.span_mm >= 100 - 1e-6
    assert found.span_mm + 40 <= found.side_mm < found.span_mm + 50 + 1e-6
