"""The rows as a chart of symbols."""

import pytest

from logbook.craft.drawing.drawing import Line, Polygon, Text
from logbook.craft.rows.chart import chart
from logbook.craft.rows.proof import fitting_rows
from logbook.errors import RefusedError
from tests.craft.rows.common_stock import COMMON_STOCK

ON_A_CHAIN = [name for name, stock in COMMON_STOCK.items() if stock.multiple]


@pytest.mark.parametrize("name", ON_A_CHAIN)
def test_every_pattern_of_the_common_stock_is_drawn_within_its_sheet(name: str) -> None:
    courses = fitting_rows(COMMON_STOCK[name].rows)
    drawing = chart(courses, 900, 20)
    assert drawing.width <= 900
    points = [point for shape in drawing.shapes if isinstance(shape, Line | Polygon) for point in shape.points]
    assert all(0 <= x <= drawing.width and 0 <= y <= drawing.height for x, y in points)
    numbers = [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
    assert numbers == [str(course.row.number) for course in courses.rows]


def test_plain_rows_stand_straight() -> None:
    drawing = chart(fitting_rows("dc in 4th ch from hook and in each ch across / ch 3, dc in each st across"), 900, 20)
    stems = [shape.points for shape in drawing.shapes if isinstance(shape, Line)]
    upright = [points for points in stems if points[0][0] == pytest.approx(points[1][0])]
    strokes = [points for points in stems if points[0][0] != pytest.approx(points[1][0])]
    assert len(upright) == 2 * 3
    assert len(strokes) == 2 * 3 * 2  # a bar and one stroke each


def test_the_foundation_has_an_oval_a_chain() -> None:
    drawing = chart(fitting_rows("sc in 2nd ch from hook, sc in next 8 ch"), 900, 20)
    ovals = [shape for shape in drawing.shapes if isinstance(shape, Polygon)]
    assert len(ovals) == 10


@pytest.mark.parametrize("rows", ["", "Rnd 1: 6 sc in ring", "sc in 2nd ch from hook, *sc in next 60 ch; rep from * to end"])
def test_what_cannot_be_drawn_is_refused(rows: str) -> None:
    with pytest.raises(RefusedError):
        chart(fitting_rows(rows), 900, 20)
