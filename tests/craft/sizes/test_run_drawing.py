import pytest

from logbook.craft.drawing.drawing import Line, Rect, Text
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.sizes.run_drawing import measures_of, run_drawing
from logbook.craft.sizes.run_numbers import figures_of
from logbook.craft.words.lengths import Units
from tests.support.size_runs import PLAN, written

SIZES = [figures_of(size) for size in written().sizes]


def test_the_measures_are_lettered_and_stand_beneath() -> None:
    drawing = run_drawing(SIZES, Units.CM)(720, 20)
    texts = [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
    assert [text for text in texts if len(text) == 1] == ["A", "B", "D", "E", "C"]
    assert "A  width: 42.5 (42.5, 50.5, 54) cm" in texts
    assert "C  armhole: 20 cm" in texts
    # (426.36 − 235.45)/2 = 95.5 mm
    assert "E  shoulder: 9.5 (9.5, 13.5, 15.5) cm" in texts


def test_a_measure_that_a_size_lacks_is_left_out() -> None:
    plain = [figures_of(size) for size in written(PiecePlan(ease=PLAN.ease)).sizes]
    assert [measure.name for measure in measures_of(plain)] == ["width"]
    assert run_drawing(plain, Units.CM)(720, 20).height > 0


@pytest.mark.parametrize("width", [240, 420, 900])
def test_it_stays_on_its_sheet_and_in_proportion(width: float) -> None:
    drawing = run_drawing(SIZES, Units.INCHES)(width, 20)
    (panel,) = (shape for shape in drawing.shapes if isinstance(shape, Rect))
    middle = SIZES[2]
    wide, high = middle.length("width"), middle.length("length")
    assert wide
    assert high
    assert panel.width / panel.height == pytest.approx(wide / high)
    for shape in drawing.shapes:
        for x, y in shape.points if isinstance(shape, Line) else [(shape.x, shape.y)]:  # type: ignore[union-attr]
            assert 0 <= x <= width
            assert 0 <= y <= drawing.height


def test_a_long_row_of_figures_is_folded() -> None:
    many = SIZES * 6
    texts = [
        shape for shape in run_drawing(many, Units.INCHES)(300, 20).shapes if isinstance(shape, Text) and shape.anchor == "w"
    ]
    assert len(texts) > 5
    assert all(len(shape.text) <= 300 / (20 * 0.42) + 1 for shape in texts)
