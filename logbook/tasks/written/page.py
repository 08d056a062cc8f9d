"""A written pattern as a page to print: HTML with the drawings in it, no script, no outside link."""

from collections.abc import Mapping, Sequence
from html import escape

from logbook.tasks.printed.markup import inline, page, table
from logbook.tasks.printed.row_charts import STYLE, chart_figures
from logbook.tasks.written.parts import Part, PatternTable
from logbook.tasks.written_rows import charts_of

_STYLE = (
    """
@page { margin: 15mm }
body { font: 10pt/1.4 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 180mm }
h1 { font-size: 16pt; margin: 0 0 2mm }
h2 { font-size: 11.5pt; margin: 5mm 0 1.5mm; break-after: avoid }
p { margin: 0 0 1.5mm; orphans: 2; widows: 2 }
p.before { break-after: avoid }
section > p:last-child { break-before: avoid }
.begin { break-inside: avoid; break-after: avoid }
table.short, section.rows { break-inside: avoid }
table.counts td { white-space: nowrap }
table { border-collapse: collapse; margin: 1mm 0 3mm; font-size: 9.5pt }
thead { display: table-header-group }
tr { break-inside: avoid }
th, td { text-align: left; padding: 0.6mm 3mm 0.6mm 0; border-bottom: 0.2mm solid #bbb; vertical-align: top }
th { border-bottom: 0.4mm solid #000 }
section { margin: 0; clear: both }
.begin figure { float: right; width: 85mm; margin: 0 0 2mm 5mm }
figure { margin: 2mm 0; break-inside: avoid }
figcaption { font-size: 9pt; text-align: center }
svg { display: block; max-width: 100%; height: auto; max-height: 150mm }
@media screen { body { padding: 10mm } }
"""
    + STYLE
)


_SHORT = 24
"""Rows of a table that is not parted between two pages."""
_NARROW = 28
"""Letters in a cell that is not broken into lines."""


def pattern_page(
    title: str, parts: Sequence[Part], drawings: Mapping[str, str], foot: str = "", drawn: str = "", joined: str = ""
) -> str:
    """The whole HTML file; ``drawings`` are SVG by the name of their piece, that of all pieces by the name ""; ``drawn`` stands
    below each of them, ``joined`` below that of all pieces.
    """
    body = [f"<h1>{escape(title or 'A pattern')}</h1>"]
    for number, part in enumerate(parts):
        kind = ' class="rows"' if part.rows else ""
        drawing = drawings.get(part.drawing, "") if part.drawing else ""
        body.append(f"<section{kind}>{_part(part, drawing, drawn)}</section>")
        if number == 0:
            body.append(_figure(drawings.get("", ""), ". ".join(filter(None, (drawn, joined)))))
    if foot:
        body.append(f"<p><small>{escape(foot)}</small></p>")
    return page(title, _STYLE, body)


def _part(part: Part, drawing: str, drawn: str) -> str:
    """Its heading with the drawing and what comes first, which stay together; then the rest."""
    heading = f"<h2>{escape(part.heading)}</h2>" if part.heading else ""
    tables_next = [isinstance(block, PatternTable) for block in (*part.blocks[1:], "")]
    blocks = [_block(block, before=before) for block, before in zip(part.blocks, tables_next, strict=True)]
    chart = chart_figures(charts_of([part.rows]), named=False)
    return f'<div class="begin">{heading}{_figure(drawing, drawn)}{"".join(blocks[:1])}</div>{"".join(blocks[1:])}{chart}'


def _block(block: str | PatternTable, *, before: bool) -> str:
    """A sentence, which stays with the table that comes after it (``before``), or a table, whole on a page if it is short, and
    with its counts in one line."""
    if isinstance(block, str):
        return f'<p class="before">{escape(block)}</p>' if before else f"<p>{escape(block)}</p>"
    counts = all(len(cell) <= _NARROW for row in block.rows for cell in row)
    kinds = " ".join(["short"] * (len(block.rows) <= _SHORT) + ["counts"] * counts)
    said = table(block.headings, block.rows)
    return said.replace("<table>", f'<table class="{kinds}">', 1) if kinds else said


def _figure(svg: str, drawn: str) -> str:
    caption = f"<figcaption>{escape(drawn)}</figcaption>" if drawn else ""
    return f"<figure>{inline(svg)}{caption}</figure>" if svg else ""
