"""Charts of written rows as native charts of a workbook: the lines of their drawings, to one scale across and up."""

from collections.abc import Iterator, Sequence
from math import ceil, cos, pi, sin

from logbook.craft.drawing.drawing import Drawing, Line, Marker, Point, Polygon, Role, Shape, Text
from logbook.craft.rows.chart import RowsDrawing
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import CellLook
from logbook.sheets.cells import Role as CellRole
from logbook.sheets.charts import Stroke, strokes

NAME, POINTS = "Charts", "Chart points"
_WIDTHS = (22, 22, 22, 22)
_LINE_CM, _WIDEST_CM, _TALLEST_CM = 0.4, 16.5, 20.0
_ROW_CM, _PAGE_ROWS = 0.53, 48
"""A row of a sheet is as high as one line of text; so many stand on a page of A4 or Letter."""
_CORNERS = 8
"""Of a round sign, which is small."""
_MOST_POINTS = 30_000
"""A spreadsheet draws 32,000 in one series."""


def write_row_charts(book: BookWriter, charts: Sequence[RowsDrawing]) -> None:
    """A sheet with each chart under the name of its stitch pattern, and the points that they run through on a hidden one; no
    sheet where there is no chart.
    """
    if not charts:
        return
    sheet = book.sheet(NAME, _WIDTHS)
    sheet.head(NAME, "The written rows in symbols, right side towards you.")
    points = book.sheet(POINTS, [12, 12], hidden=True)
    left = _PAGE_ROWS - sheet.row
    for one in charts:
        drawing = one.drawing
        scale = min(_LINE_CM / drawing.line, _WIDEST_CM / drawing.width, _TALLEST_CM / drawing.height)
        size = drawing.width * scale, drawing.height * scale
        rows = ceil(size[1] / _ROW_CM) + 4
        if rows > left and one is not charts[0]:
            sheet.new_page()
            left = _PAGE_ROWS
        left -= rows
        sheet.add((one.name or "Stitch pattern", *[""] * (len(_WIDTHS) - 1)), CellLook(CellRole.SECTION), height=21)
        sheet.paragraph(one.says)
        chart = strokes(points.raw, (drawing.width, drawing.height), list(_strokes(points, drawing)), size)
        sheet.raw.add_chart(chart, f"A{sheet.row + 1}")
        sheet.skip(rows - 2)


def _strokes(points: SheetWriter, drawing: Drawing) -> Iterator[Stroke]:
    """The lines of each role as one series with gaps between them; then each text where it stands."""
    for role in dict.fromkeys(_role(shape) for shape in drawing.shapes if not isinstance(shape, Text)):
        paths = [_path(shape) for shape in drawing.shapes if not isinstance(shape, Text) and _role(shape) == role]
        first = points.row + 1
        for path in paths:
            for x, y in path:
                points.add((x, drawing.height - y))
            points.skip()
            if points.row - first > _MOST_POINTS:
                yield Stroke(role, first, points.row)
                first = points.row + 1
        if points.row >= first:
            yield Stroke(role, first, points.row)
    for shape in drawing.shapes:
        if isinstance(shape, Text):
            row = points.add((shape.x, drawing.height - shape.y))
            yield Stroke(shape.role, row, row, shape.text, {"w": "r", "e": "l"}.get(shape.anchor, "ctr"))


def _role(shape: Shape) -> Role:
    if isinstance(shape, Line | Marker | Text):
        return shape.role
    return shape.outline or shape.fill or "ink"


def _path(shape: Shape) -> Sequence[Point]:
    """The line that a pen draws for it; a filled dot is drawn as a dot again within its outline."""
    if isinstance(shape, Line):
        return shape.points
    if isinstance(shape, Polygon):
        corners = shape.points[:: max(len(shape.points) // _CORNERS, 1)]
        return (*corners, corners[0])
    if isinstance(shape, Marker):
        ring = _ring(shape.x, shape.y, shape.size / 2)
        return ring if shape.hollow else (*ring, *_ring(shape.x, shape.y, shape.size / 5))
    raise TypeError(f"a chart of rows holds no {type(shape).__name__}")


def _ring(x: float, y: float, radius: float) -> tuple[Point, ...]:
    turns = [step * 2 * pi / _CORNERS for step in range(_CORNERS + 1)]
    return tuple((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns)
