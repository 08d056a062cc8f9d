"""The same square in every state, to one scale."""

import pytest

from logbook.craft.drawing.drawing import Rect, Text
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units
from logbook.pages.gauges.same_square import compared_words, same_square, states_of
from tests.support.gauge_swatches import PULLED, THREE, shells

BASE = Assumptions()


def test_what_is_10_cm_washed_measures_otherwise_as_worked_and_pulled() -> None:
    # 100 mm × 150/144 and × 100/105; 100 × 180/144 and × 90/105
    worked, washed, sideways = states_of(PULLED, BASE, Units.CM)
    assert (worked.width_mm, worked.height_mm) == (pytest.approx(104.17, abs=0.01), pytest.approx(95.24, abs=0.01))
    assert (washed.width_mm, washed.height_mm, washed.finished) == (pytest.approx(100.0), pytest.approx(100.0), True)
    assert (sideways.width_mm, sideways.height_mm) == (pytest.approx(125.0), pytest.approx(85.71, abs=0.01))
    assert compared_words((worked, washed, sideways), Units.CM) == "10 × 10 cm washed, shown dashed"
    assert compared_words((washed,), Units.INCHES) == "4 × 4 in washed"


def test_nothing_measured_has_no_square_and_a_way_not_measured_is_a_dash() -> None:
    assert states_of(shells("A"), BASE, Units.CM) == ()
    (only,) = states_of(shells("A", washed=THREE), BASE, Units.CM)
    assert (only.condition, only.height_mm) == (Condition.WASHED, None)
    drawing = same_square((only,), Units.CM)(300.0, 20.0)
    assert "10.0 cm × –" in [shape.text for shape in drawing.shapes if isinstance(shape, Text)]


@pytest.mark.parametrize("width", [150.0, 320.0, 900.0])
def test_the_squares_are_true_to_scale_and_stay_inside(width: float) -> None:
    drawing = same_square(states_of(PULLED, BASE, Units.CM), Units.CM)(width, 20.0)
    worked, washed, sideways = (shape for shape in drawing.shapes if isinstance(shape, Rect) and shape.fill)
    assert washed.width == pytest.approx(washed.height)
    assert worked.width / washed.width == pytest.approx(150 / 144)
    assert sideways.height / washed.height == pytest.approx(90 / 105)
    assert sum(shape.dashed for shape in drawing.shapes if isinstance(shape, Rect)) == 2
    assert all(one.x >= 0 and one.x + one.width <= width and one.y >= 0 for one in (worked, washed, sideways))
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    assert all(one.y < drawing.height for one in texts)
    assert {"as worked", "washed", "pulled sideways", "10.4 × 9.5 cm"} <= {one.text for one in texts}
