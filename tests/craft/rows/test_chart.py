"""The rows as a chart of symbols."""

import pytest

from logbook.craft.drawing.drawing import Line, Polygon, Text
from logbook.craft.rows.chart import chains_drawn, chart
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
    numbers = [shape.text for shape in drawing.shapes if isinstance(shape, Text) and shape.text.isdecimal()]
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


SPACES = "Sc in 2nd ch from hook, *ch 5, sk 3 ch, sc in next ch; rep from * to end"


def ovals(rows: str) -> list[tuple[float, float]]:
    """The middle of each oval, first those of the chain."""
    drawing = chart(fitting_rows(rows), 900, 20)
    points = [shape.points for shape in drawing.shapes if isinstance(shape, Polygon)]
    return [(sum(x for x, _ in one) / len(one), sum(y for _, y in one) / len(one)) for one in points]


def test_the_chains_of_a_space_hang_in_an_arc() -> None:
    made = ovals(SPACES)[-5:]
    heights = [-y for _, y in made]
    assert heights[2] == max(heights)
    assert heights[0] < heights[1] < heights[2] > heights[3] > heights[4]
    assert heights[0] == pytest.approx(heights[4])


def test_a_bracket_below_the_chain_holds_one_repeat() -> None:
    drawing = chart(fitting_rows(SPACES), 900, 20)
    (words,) = (shape for shape in drawing.shapes if isinstance(shape, Text) and "repeat" in shape.text)
    assert words.text == "repeat of 4 ch"
    (bracket,) = (shape for shape in drawing.shapes if isinstance(shape, Line) and len(shape.points) == 4)
    left, right = bracket.points[0][0], bracket.points[-1][0]
    chain = ovals(SPACES)[: 6 + 2 * 4]
    assert sum(left < x < right for x, _ in chain) == 4
    assert not any(
        len(shape.points) == 4
        for shape in chart(fitting_rows("sc in 2nd ch from hook and in each ch"), 900, 20).shapes
        if isinstance(shape, Line)
    )


@pytest.mark.parametrize(("side", "is_right"), [("", True), (" (RS)", True), (" (WS)", False)])
def test_right_side_rows_are_numbered_at_the_right(side: str, is_right: bool) -> None:
    drawing = chart(
        fitting_rows(f"Row 1{side}: Sc in 2nd ch from hook and in each ch across. Turn.\nRow 2: Ch 1, sc in each sc."), 900, 20
    )
    first, second = (shape for shape in drawing.shapes if isinstance(shape, Text))
    assert (first.x > second.x) == is_right
    assert all(0 <= shape.x <= drawing.width for shape in (first, second))


DC = "Dc in {}, dc in each ch across. Turn.\nCh 3 (counts as dc), sk first st, dc in each st, dc in top of ch-3."
LOW = "Dc in 3rd ch from hook (skipped ch do not count), dc in each ch. Turn.\nCh 2 (does not count as st), dc in each dc."
FILET = "Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across."


@pytest.mark.parametrize(
    ("rows", "flat", "own"),
    [
        (DC.format("4th ch from hook (skipped ch count as dc)"), 3, 3),  # row 2 begins with 3 chains of its own
        (LOW, 3, 2),
        ("Sc in 2nd ch from hook and in each ch across. Turn.\nCh 1, sc in each sc.", 3, 1),
        (FILET, 9, 2 * 2),  # of the 7 skipped 3 are the dc and 2 lie above the 2 others
    ],
)
def test_the_chains_at_the_hook_are_drawn_once_and_stand_upright(rows: str, flat: int, own: int) -> None:
    courses = fitting_rows(rows)
    drawn = ovals(rows)
    assert len(drawn) == chains_drawn(courses) + own
    assert sum(y == pytest.approx(drawn[0][1]) for _, y in drawn) == flat


def test_first_chains_that_count_as_nothing_stand_beside_the_first_stitch() -> None:
    drawn = ovals(LOW)
    flat, (right, left) = drawn[:3], (drawn[3:5], drawn[5:])
    assert all(x > max(x for x, _ in flat) for x, _ in right)
    assert all(x < min(x for x, _ in flat) for x, _ in left)
    assert right[0][0] == pytest.approx(right[1][0])
    assert right[0][1] > right[1][1]  # one above the other
