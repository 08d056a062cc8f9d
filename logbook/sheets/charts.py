"""Native charts of a workbook: points and straight lines over cells, titled and scaled so that they can be read as they open."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from logbook.craft.drawing.drawing import Role
from logbook.craft.drawing.svg import COLOURS
from logbook.sheets.looks import ACCENT, MUTED

_COLOURS = (ACCENT, "0A6C74", "946300")


class Series(NamedTuple):
    """Points of a chart: its name, or the cell ``name_at`` that has it, and columns and rows of x and y in the sheet; a line
    between them, or marks alone."""

    name: str
    x_column: int
    y_column: int
    first: int
    last: int
    line: bool
    name_at: str = ""


class Stroke(NamedTuple):
    """What a pen draws in one colour: lines through the points in rows of the first two columns of a sheet, parted by blank
    rows; or ``text`` at one point, at its right, left or centre (``at``: r, l, ctr).
    """

    role: Role
    first: int
    last: int
    text: str = ""
    at: str = "ctr"


class Axes(NamedTuple):
    """What stands at the axes, and from where to where they reach (None: as the spreadsheet likes)."""

    across: str
    up: str
    x: tuple[float | None, float | None] = (None, None)
    y: tuple[float | None, float | None] = (None, None)


def scatter(sheet: Any, title: str, axes: Axes, series: Sequence[Series], size_cm: tuple[float, float]) -> Any:
    """A chart of points over cells of ``sheet``."""
    from openpyxl.chart import Reference, ScatterChart
    from openpyxl.chart import Series as ChartSeries
    from openpyxl.chart.data_source import StrRef
    from openpyxl.chart.series import SeriesLabel

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
        made = ChartSeries(ys, xs, title=one.name or None)
        if one.name_at:
            made.tx = SeriesLabel(strRef=StrRef(one.name_at))
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


def strokes(sheet: Any, reach: tuple[float, float], drawn: Sequence[Stroke], size_cm: tuple[float, float]) -> Any:
    """A chart that is nothing but the strokes, over 0 to ``reach`` across and up, without axes; gaps stay gaps."""
    from openpyxl.chart import Reference, ScatterChart
    from openpyxl.chart import Series as ChartSeries
    from openpyxl.chart.layout import Layout, ManualLayout
    from openpyxl.chart.shapes import GraphicalProperties

    chart: Any = ScatterChart(scatterStyle="lineMarker")
    chart.width, chart.height = size_cm
    chart.legend = None
    chart.layout = Layout(ManualLayout("inner", "edge", "edge", x=0.0, y=0.0, w=1.0, h=1.0))
    chart.display_blanks = "gap"
    chart.visible_cells_only = False
    chart.graphical_properties = GraphicalProperties(noFill=True, ln=_line(None))
    for axis, far in zip((chart.x_axis, chart.y_axis), reach, strict=True):
        axis.delete, axis.majorGridlines = True, None
        axis.scaling.min, axis.scaling.max = 0, far
    for stroke in drawn:
        xs, ys = (Reference(sheet, min_col=column, min_row=stroke.first, max_row=stroke.last) for column in (1, 2))
        made = ChartSeries(ys, xs, title=stroke.text or stroke.role)
        made.smooth = False
        made.marker.symbol = "none"
        colour = COLOURS[stroke.role].lstrip("#")
        made.graphicalProperties.line.solidFill = colour
        made.graphicalProperties.line.width = 9_525
        if stroke.text:
            made.dLbls = _label(colour, stroke.at)
        chart.series.append(made)
    return chart


def _label(colour: str, at: str) -> Any:
    from openpyxl.chart.label import DataLabelList
    from openpyxl.chart.text import RichText
    from openpyxl.drawing.text import CharacterProperties, Paragraph, ParagraphProperties, RichTextProperties

    looks = ParagraphProperties(defRPr=CharacterProperties(sz=900, solidFill=colour))
    shown = dict.fromkeys(("showVal", "showCatName", "showLegendKey", "showPercent", "showBubbleSize"), False)
    text = RichText(RichTextProperties(wrap="none"), p=[Paragraph(pPr=looks, endParaRPr=CharacterProperties())])
    return DataLabelList(dLblPos=at, showSerName=True, txPr=text, **shown)


def _axis(axis: Any, title: str, reach: tuple[float | None, float | None]) -> None:
    from openpyxl.chart.shapes import GraphicalProperties

    axis.title = title or None
    axis.delete = False
    axis.majorGridlines.spPr = GraphicalProperties(ln=_line("D8D2C6"))
    axis.graphicalProperties = GraphicalProperties(ln=_line(MUTED))
    axis.number_format = "General"
    axis.majorTickMark = "out"
    axis.scaling.min, axis.scaling.max = reach


def _line(colour: str | None) -> Any:
    from openpyxl.drawing.line import LineProperties

    return LineProperties(noFill=True) if colour is None else LineProperties(solidFill=colour, w=9_525)
