"""A stitch pattern as a page to print: its chain, its written rows, and their chart where they can be drawn."""

from datetime import date
from html import escape

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.dates import date_words
from logbook.tasks.printed.markup import page
from logbook.tasks.printed.row_charts import STYLE, chart_figures
from logbook.tasks.written_rows import charts_of

_STYLE = (
    """
@page { margin: 15mm }
body { font: 10pt/1.4 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 180mm }
h1 { font-size: 15pt; margin: 0 0 1mm }
p { margin: 0 0 2mm; white-space: pre-line }
.from { color: #444; font-size: 9pt }
@media screen { body { padding: 10mm } }
"""
    + STYLE
)


def pattern_page(pattern: StitchPattern, said: str, today: date | None = None) -> str:
    """The whole HTML file; ``said`` is its chain in words."""
    terms = f"{pattern.terms} terms. " if pattern.terms else ""
    parts = (
        f"<h1>{escape(pattern.name or 'Stitch pattern')}</h1>",
        f'<p class="from">{terms}{date_words((today or date.today()).isoformat())}.</p>',
        f"<p>{escape(said)}</p>" if said else "",
        f"<p>{escape(pattern.rows_text.strip())}</p>" if pattern.rows_text.strip() else "",
        chart_figures(charts_of([pattern]), named=False),
        f"<p>{escape(pattern.notes.strip())}</p>" if pattern.notes.strip() else "",
    )
    return page(pattern.name or "Stitch pattern", _STYLE, parts)
