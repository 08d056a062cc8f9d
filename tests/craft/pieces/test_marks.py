from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.marks import Axis, armhole_mark, neck_of, slit_mark
from logbook.craft.swatches.conditions import Direction
from logbook.errors import RefusedError

UP = Axis(direction=Direction.ROWS, count=60, pitch_mm=9.0)
ACROSS = Axis(direction=Direction.STITCHES, count=73, pitch_mm=420 / 66, step=6)


def test_armhole_by_hand() -> None:
    # 20 cm of 9 mm rows: 22.2, 22 rows, 19.8 cm: the mark at the end of row 60 − 22 = 38
    mark = armhole_mark(200, UP)
    assert (mark.at, mark.direction) == (38, Direction.ROWS)
    assert mark.true_mm == pytest.approx(198)
    assert (mark.direction, mark.at) == (Direction.ROWS, 38)
    # A seam takes 6 mm, an edging of 15 mm stands above: (200 + 6 − 15)/9 = 21.2 rows, 21·9 − 6 + 15 = 19.8 cm
    edged = armhole_mark(200, replace(UP, seam_mm=6, end_mm=15))
    assert edged.at == 39
    assert edged.true_mm == pytest.approx(198)


def test_slit_by_hand() -> None:
    # 10 cm less an edging of 15 mm: 9.4 rows, 9·9 + 15 = 9.6 cm
    mark = slit_mark(100, replace(UP, start_mm=15))
    assert mark.at == 9
    assert mark.true_mm == pytest.approx(96)


def test_neck_by_hand() -> None:
    # 24 cm of 6.3636 mm: 37.7 stitches; 73 is odd, so 37 (23.55 cm) of 37 and 39; shoulders (73 − 37)/2 = 18
    neck = neck_of(240, ACROSS)
    assert (neck.units, neck.shoulder) == (37, 18)
    assert (neck.begins.at, neck.ends.at) == (18, 55)
    assert neck.begins.true_mm == pytest.approx(37 * 420 / 66)
    assert neck.ends.direction is Direction.STITCHES


def test_snapped_to_whole_repeats() -> None:
    # Shoulders of 6, 12, 18, 24, 30: 73 − 36 = 37 (23.5 cm) is nearest to 22 cm; 73 − 48 = 25 is 15.9 cm
    assert neck_of(220, ACROSS, snap=True).shoulder == 18
    # Rows: 2 set-up, then fours; row 38 would be 9 groups: 2 + 4·9 = 38; 21 rows down from 60, row 39 → 38
    groups = replace(UP, step=4, first=2)
    assert armhole_mark(190, groups, snap=True).at == 38
    assert slit_mark(100, groups, snap=True).at == 10  # 11.1 rows: 10 or 14


def test_sideways_counts_stitches_up_and_rows_across() -> None:
    up, across = replace(ACROSS, step=1), replace(UP, step=2)
    assert armhole_mark(200, up).at == 42  # 31.4 stitches: 73 − 31
    neck = neck_of(240, across)
    assert (neck.units, neck.shoulder) == (26, 17)  # 26.7 of 60 rows, even
    assert (neck.begins.direction, neck.begins.at) == (Direction.ROWS, 17)


@pytest.mark.parametrize("depth", [600.0, 4.0])
def test_what_does_not_fit_is_refused(depth: float) -> None:
    with pytest.raises(RefusedError, match="That armhole does not fit"):
        armhole_mark(depth, UP)
    with pytest.raises(RefusedError, match="That slit does not fit"):
        slit_mark(depth, UP)
    with pytest.raises(RefusedError, match="That neck does not fit"):
        neck_of(depth if depth > 100 else 470, ACROSS)
    with pytest.raises(RefusedError, match="too few repeats for shoulders"):
        neck_of(100, replace(ACROSS, step=40), snap=True)


axes = st.builds(
    Axis,
    direction=st.sampled_from(Direction),
    count=st.integers(8, 300),
    pitch_mm=st.floats(2, 40),
    step=st.integers(1, 8),
    first=st.integers(0, 3),
)


@given(axes, st.floats(0.2, 0.7), st.booleans())
def test_shoulders_and_neck_add_up_to_the_panel(across: Axis, part: float, snap: bool) -> None:
    wanted = part * across.count * across.pitch_mm
    try:
        neck = neck_of(wanted, across, snap=snap)
    except RefusedError:
        assert snap
        return
    assert neck.units + 2 * neck.shoulder == across.count
    begins, ends = neck.begins, neck.ends
    assert (begins.at, across.count - ends.at) == (neck.shoulder, neck.shoulder)
    if snap:
        assert (neck.shoulder - across.first) % across.step == 0
    else:
        assert abs(begins.true_mm - wanted) <= across.pitch_mm + 1e-6


@given(axes, st.floats(0.2, 0.7))
def test_armhole_and_slit_are_within_half_a_unit(up: Axis, part: float) -> None:
    wanted = part * up.count * up.pitch_mm
    for mark in (armhole_mark(wanted, up), slit_mark(wanted, up)):
        assert 0 < mark.at < up.count
        assert abs(mark.true_mm - wanted) <= up.pitch_mm / 2 + 1e-6
