"""Native charts of a workbook: points and straight lines over cells, titled and scaled so that they can be read as they open."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from logbook.sheets.looks import ACCENT, MUTED

_COLOURS = (ACCENT, "0A6C74", "946300")


class Series(NamedTuple):
    """Points of a chart: its name, and columns and rows of x and y in the sheet; a line between them, or marks alone."""

    name: str
    x_column: int
    y_column: int
    first: int
    last: int
    line: bool


class Axes(NamedTuple):
    """What stands at the axes, and from where to where they reach (None: as the spreadsheet likes)."""

    across: str
    up: str
    x: tuple[float, float] | None = None
    y: tuple[float, float] | None = None


def scatter(sheet: Any, title: str, axes: Axes, series: Sequence[Series], size_cm: tuple[float, float]) -> Any:
    """A chart of points over cells of ``sheet``."""
    from openpyxl.chart import Reference, ScatterChart
    from openpyxl.chart import Series as ChartSeries

    chart: Any = ScatterChart(scatterStyle="lineMarker")
    chart.title = title or None
    chart.width, chart.height = size_cm
    chart.style = 2
    _axis(chart.x_axis, axes.across, axes.x)
    _axis(chart.y_axis, axes.up, axes.y)
    for place, one in enumerate(series):
        colour = _COLOURS[place % len(_COLOURS)]
        xs = Reference(sheet, min_col=one.x_column, min_row=one.first, max_row=one.last)
        ys = Reference(sheet, min_col=one.y_column, min_row=one.first, max_row=one.last)
        made = ChartSeries(ys, xs, title=one.name)
        made.smooth = False  # else LibreOffice draws a blob
        if one.line:
            made.marker.symbol = "none"
            made.graphicalProperties.line.solidFill = colour
            made.graphicalProperties.line.width = 19_050
        else:
            made.marker.symbol, made.marker.size = ("circle", "diamond", "square")[place % 3], 8
            made.marker.graphicalProperties.solidFill = colour
            made.marker.graphicalProperties.line.solidFill = colour
            made.graphicalProperties.line.noFill = True
        chart.series.append(made)
    if len(series) > 1:
        chart.legend.position = "b"
    else:
        chart.legend = None
    return chart


def _axis(axis: Any, title: str, reach: tuple[float, float] | None) -> None:
    from openpyxl.chart.shapes import GraphicalProperties

    axis.title = title or None
    axis.delete = False
    axis.majorGridlines.spPr = GraphicalProperties(ln=_line("D8D2C6"))
    axis.graphicalProperties = GraphicalProperties(ln=_line(MUTED))
    axis.number_format = "General"
    axis.majorTickMark = "out"
    if reach is not None:
        axis.scaling.min, axis.scaling.max = reach


def _line(colour: str) -> Any:
    from openpyxl.drawing.line import LineProperties

    return LineProperties(solidFill=colour, w=9_525)
