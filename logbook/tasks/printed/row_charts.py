"""The charts of written rows on printed pages."""

from collections.abc import Iterable
from html import escape

from logbook.craft.drawing.svg import to_svg
from logbook.craft.rows.chart import RowsDrawing
from logbook.tasks.printed.markup import inline

STYLE = """
.chart { margin: 3mm 0; break-inside: avoid }
.chart svg { display: block; width: 100%; height: auto; max-height: 150mm }
.chart figcaption { color: #444; font-size: 9pt }
"""
_LINE_MM = 3.0


def chart_figures(charts: Iterable[RowsDrawing], *, named: bool = True) -> str:
    """Each chart under its sentence, which begins with the name of its stitch pattern (``named``), no larger than its letters
    want."""
    return "".join(_figure(chart, named) for chart in charts)


def _figure(chart: RowsDrawing, named: bool) -> str:
    drawing = chart.drawing
    name = f"<b>{escape(chart.name or 'Stitch pattern')}</b> " if named else ""
    wide = drawing.width / drawing.line * _LINE_MM
    caption = f"<figcaption>{name}{escape(chart.says)}</figcaption>"
    return f'<figure class="chart" style="max-width: {wide:.0f}mm">{caption}{inline(to_svg(drawing, ""))}</figure>'
