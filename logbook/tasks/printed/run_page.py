"""A size run as a page to print: its drawing, all sizes in one table, the lines of the pattern, on one sheet of A4 or Letter;
the chart of the written rows where there is room, else on a second.
"""

import re
from collections.abc import Sequence
from datetime import date
from html import escape

from logbook.craft.drawing.svg import to_svg
from logbook.craft.rows.chart import RowsDrawing
from logbook.craft.sizes.run_drawing import run_drawing
from logbook.craft.sizes.run_numbers import NUMBERS, NumberKind, SizeFigures
from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units
from logbook.tasks.printed.markup import inline, page, table
from logbook.tasks.printed.row_charts import STYLE, chart_figures
from logbook.tasks.run_words import shown

_STYLE = (
    """
@page { margin: 12mm }
body { font: 9pt/1.3 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 184mm }
h1 { font-size: 14pt; margin: 0 0 1mm }
p { margin: 0 0 2mm; color: #444 }
.above { display: grid; grid-template-columns: 72mm 1fr; gap: 6mm; align-items: start }
svg { display: block; width: 100%; height: auto; max-height: 80mm }
table { border-collapse: collapse; width: 100%; font-size: 8pt }
th, td { border-bottom: 1px solid #999; padding: 0.6mm 1mm; text-align: right; white-space: nowrap }
th:first-child, td:first-child { text-align: left }
.lines { margin: 4mm 0 0; columns: 2; column-gap: 8mm }
.lines p { color: #000; break-inside: avoid }
@media screen { body { padding: 10mm } }
"""
    + STYLE
)
_LINE = 20.0
_DRAWING_WIDTH = 420.0


def run_page(
    name: str,
    sizes: Sequence[SizeFigures],
    lines: str,
    units: Units,
    source: str,
    said: Sequence[str] = (),
    charts: Sequence[RowsDrawing] = (),
    today: str = "",
) -> str:
    """The whole HTML file; ``source`` says what it was worked out from, ``said`` is to be read before the rest, ``charts`` of
    the written rows stand behind it.
    """
    title = name or "Size run"
    words = "centimetres" if units is Units.CM else "inches"
    svg = inline(to_svg(run_drawing(sizes, units)(_DRAWING_WIDTH, _LINE), ""))
    parts = (
        f"<h1>{escape(title)}</h1>",
        f"<p>{escape(source)} Finished sizes in {words}. {escape(date_words(today or date.today().isoformat()))}.</p>",
        *(f"<p>{escape(sentence)}</p>" for sentence in said),
        f'<div class="above"><div>{svg}</div>{_table(sizes, units)}</div>',
        f'<div class="lines">{_parts(_without_title(lines, name))}</div>',
        chart_figures(charts),
    )
    return page(title, _STYLE, parts)


def _without_title(lines: str, name: str) -> str:
    return lines.removeprefix(f"{name}\n\n") if name else lines


def _parts(lines: str) -> str:
    """Each part of the pattern with its heading in bold."""
    parts = [part.splitlines() for part in re.sub(r"(\d) (\d/\d)", "\\1\u00a0\\2", lines).split("\n\n") if part.strip()]
    return "".join(
        f"<p><b>{escape(heading)}</b>" + "".join(f"<br>{escape(line)}" for line in below) + "</p>" for heading, *below in parts
    )


def _table(sizes: Sequence[SizeFigures], units: Units) -> str:
    """A row for each size, the numbers that all have; a column that none has is left out."""
    columns = [(heading, [_cell(size, name, units) for size in sizes]) for heading, name in _COLUMNS]
    there = [(heading, cells) for heading, cells in columns if any(cells)]
    return table([heading for heading, _ in there], zip(*(cells for _, cells in there), strict=True))


_COLUMNS = (
    ("size", "size"), ("body", "body"), ("chain", "chain"), ("rows", "rows"), ("width", "width"), ("length", "length"),
    ("round", "all round"), ("armhole at", "armhole at"), ("balls", "balls"), ("hours", "hours"),
)  # fmt: skip


def _cell(size: SizeFigures, name: str, units: Units) -> str:
    cell = shown(size, name, units, "")
    return cell.removesuffix(f" {units.value}") if NUMBERS[name].kind is NumberKind.LENGTH else cell
