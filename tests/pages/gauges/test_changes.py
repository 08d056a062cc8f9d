import pytest

from logbook.craft.drawing.drawing import Rect, Text
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.pages.gauges.changes import NOTHING, changes_drawing, changes_of
from tests.support.gauge_swatches import THREE, shells

BASE = Assumptions()
PULLED = shells(
    "A",
    worked="4 repeats = 15 cm; 10 rows = 10 cm",
    washed="4 repeats = 14.4 cm; 10 rows = 10.5 cm",
    sideways="4 repeats = 18 cm; 10 rows = 9 cm",
)


def test_from_as_worked_and_then_from_washed_by_hand() -> None:
    # stitches 144/150 = −4 %, 180/150 = +20 %, 180/144 = +25 %; rows 105/100 = +5 %, 90/100 = −10 %, 90/105 = −14 %
    washed, sideways, in_wear = changes_of(PULLED, BASE).lines
    assert washed.startswith("Washed, laid flat, from as worked: stitches −4 % ± 7.")
    assert washed.endswith("(may be none).")
    assert "rows +5 % ± 9.8 % (may be none)" in washed
    assert sideways.startswith("Pulled sideways, from as worked: stitches +20 % ±")
    assert "rows −10 % ±" in sideways
    assert in_wear.startswith("Pulled sideways, from washed, laid flat: stitches +25 % ±")
    assert "rows −14 % ±" in in_wear


def test_a_single_state_says_what_is_missing() -> None:
    for swatch in (shells("A", washed=THREE), shells("A"), shells("A", sideways=THREE)):
        assert changes_of(swatch, BASE).missing == NOTHING
        assert changes_of(swatch, BASE).squares == ()


def test_never_measured_as_worked_it_starts_from_washed() -> None:
    found = changes_of(shells("A", washed="4 repeats = 15 cm", lengthwise="4 repeats = 13.5 cm"), BASE)
    (line,) = found.lines
    assert line.startswith("Pulled lengthwise, from washed, laid flat: stitches −10 % ±")
    assert [(one.condition, one.across, one.up) for one in found.squares] == [
        (Condition.WASHED, 1.0, None),
        (Condition.LENGTHWISE, pytest.approx(0.9), None),
    ]


def test_a_coarse_count_claims_no_figure() -> None:
    (line,) = changes_of(shells("A", worked="1 repeat in 10 cm", washed="4 repeats = 15 cm"), BASE).lines
    assert "±" not in line
    assert "counted too coarsely to be sure" in line


@pytest.mark.parametrize("width", [150.0, 320.0, 900.0])
def test_the_squares_are_true_to_scale_and_stay_inside(width: float) -> None:
    drawing = changes_drawing(changes_of(PULLED, BASE).squares)(width, 20.0)
    filled = [shape for shape in drawing.shapes if isinstance(shape, Rect) and shape.fill]
    worked, washed, sideways = filled
    assert worked.width == pytest.approx(worked.height)
    assert washed.width / worked.width == pytest.approx(0.96)
    assert washed.height / worked.height == pytest.approx(1.05)
    assert sideways.width / worked.width == pytest.approx(1.2)
    assert all(one.x >= 0 and one.x + one.width <= width and one.y >= 0 for one in filled)
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    assert all(one.y < drawing.height for one in texts)
    assert {"as worked", "compared with this", "stitches +20 %", "rows −10 %"} <= {one.text for one in texts}


def test_a_side_that_was_not_measured_is_dashed_and_said() -> None:
    found = changes_of(shells("A", worked="4 repeats = 15 cm; 10 rows = 10 cm", washed="4 repeats = 14.4 cm"), BASE)
    drawing = changes_drawing(found.squares)(400.0, 20.0)
    assert [shape.dashed for shape in drawing.shapes if isinstance(shape, Rect) and shape.fill] == [False, True]
    assert "rows not measured" in [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
