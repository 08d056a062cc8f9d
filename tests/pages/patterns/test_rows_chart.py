"""The chart of rows as typed."""

from logbook.craft.drawing.drawing import Text
from logbook.pages.patterns.rows_chart import rows_chart

ROWS = "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each sc across, turn."


def test_rows_that_fit_are_drawn_with_their_numbers() -> None:
    found = rows_chart(ROWS, "US")
    assert found.draw is not None
    assert found.why_not == ""
    drawing = found.draw(400.0, 16.0)
    assert drawing.width <= 400
    numbers = {shape.text: shape.x for shape in drawing.shapes if isinstance(shape, Text)}
    assert numbers["1"] > numbers["2"], "right-side rows are numbered at the right"


def test_no_rows_draw_nothing_and_a_ring_says_why() -> None:
    assert rows_chart(" ", "") == (None, "")
    ring = rows_chart("Ch 4, join with sl st to form ring.\nRnd 1: Ch 3, 11 dc in ring, join with sl st to top of ch 3.", "US")
    assert ring.draw is None
    assert ring.why_not == "Only rows that are worked onto a starting chain can be drawn as a chart."
