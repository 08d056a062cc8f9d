"""A stitch pattern as a page to print: its chain, its written rows, and their chart where they can be drawn."""

from datetime import date
from html import escape

from logbook.craft.drawing.svg import to_svg
from logbook.craft.rows.chart import chart
from logbook.craft.rows.proof import fitting_rows
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.dates import date_words
from logbook.craft.words.terms import Terms
from logbook.errors import LogbookError
from logbook.tasks.printed.markup import inline, page

_STYLE = """
@page { margin: 15mm }
body { font: 10pt/1.4 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 180mm }
h1 { font-size: 15pt; margin: 0 0 1mm }
p { margin: 0 0 2mm; white-space: pre-line }
.from { color: #444; font-size: 9pt }
svg { display: block; max-width: 100%; height: auto; max-height: 170mm; margin: 4mm 0; break-inside: avoid }
@media screen { body { padding: 10mm } }
"""
_WIDTH, _LINE = 900.0, 20.0


def pattern_page(pattern: StitchPattern, said: str, today: date | None = None) -> str:
    """The whole HTML file; ``said`` is its chain in words."""
    terms = f"{pattern.terms} terms. " if pattern.terms else ""
    parts = (
        f"<h1>{escape(pattern.name or 'Stitch pattern')}</h1>",
        f'<p class="from">{terms}{date_words((today or date.today()).isoformat())}.</p>',
        f"<p>{escape(said)}</p>" if said else "",
        f"<p>{escape(pattern.rows_text.strip())}</p>" if pattern.rows_text.strip() else "",
        inline(_chart(pattern)),
        f"<p>{escape(pattern.notes.strip())}</p>" if pattern.notes.strip() else "",
    )
    return page(pattern.name or "Stitch pattern", _STYLE, parts)


def _chart(pattern: StitchPattern) -> str:
    """The chart of the rows as far as they fit; "" where they are none, or can't be drawn."""
    if not pattern.rows_text.strip():
        return ""
    try:
        courses = fitting_rows(pattern.rows_text, Terms(pattern.terms) if pattern.terms in tuple(Terms) else None)
        return to_svg(chart(courses, _WIDTH, _LINE), "") if courses.rows else ""
    except LogbookError:
        return ""
