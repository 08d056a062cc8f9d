"""The chart of written rows in a workbook: the same lines as on the screen, as a chart of a spreadsheet."""

import io

import openpyxl

from logbook.craft.drawing.drawing import Polygon, Text
from logbook.craft.rows.chart import RowsDrawing
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.rows_sheet import NAME, POINTS, write_row_charts
from logbook.tasks.written_rows import charts_of

MESH = StitchPattern(
    name="=Mesh", terms="US", rows_text="Row 1: Sc in 2nd ch from hook, *ch 5, sk 3 ch, sc in next ch; rep from * to end."
)
ODD = StitchPattern(name="Odd", rows_text="Rnd 1: 6 sc in ring.")


def book_with(charts: list[RowsDrawing]) -> openpyxl.Workbook:
    stream = io.BytesIO()
    with BookWriter("Vest", "2026-11-28") as book:
        book.sheet("First", [10]).head("Vest", "Numbers.")
        write_row_charts(book, charts)
        book.save(stream)
    return openpyxl.load_workbook(stream)


def test_every_sign_and_every_word_of_the_drawing_is_in_the_chart() -> None:
    (mesh,) = charts_of([MESH, None, ODD, MESH])
    book = book_with([mesh])
    sheet, points = book[NAME], book[POINTS]
    assert points.sheet_state == "hidden"
    assert [cell.value for (cell, *_) in sheet.iter_rows() if cell.value][2:] == ["=Mesh", mesh.says]
    (chart,) = sheet._charts
    words = {series.tx.v for series in chart.series if series.dLbls is not None}
    assert words == {shape.text for shape in mesh.drawing.shapes if isinstance(shape, Text)}
    rows = [(x, y) for x, y in points.iter_rows(max_col=2, values_only=True)]
    assert sum(x is None for x, _ in rows) == sum(not isinstance(shape, Text) for shape in mesh.drawing.shapes)
    (x, y) = next(shape for shape in mesh.drawing.shapes if isinstance(shape, Polygon)).points[0]
    assert rows[0] == (x, mesh.drawing.height - y)
    assert (chart.x_axis.scaling.max, chart.y_axis.scaling.max) == (mesh.drawing.width, mesh.drawing.height)
    assert abs(chart.anchor.ext.width / chart.anchor.ext.height - mesh.drawing.width / mesh.drawing.height) < 0.01
    assert chart.display_blanks == "gap"


def test_where_no_rows_can_be_drawn_there_is_no_sheet() -> None:
    assert book_with(charts_of([ODD])).sheetnames == ["First"]
