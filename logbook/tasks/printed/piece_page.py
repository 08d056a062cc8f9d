"""A piece as a page to print: the drawing and the numbers on one sheet of A4 or Letter, for the browser to show; the
chart of the written rows where there is room, else on a second."""

from datetime import date
from html import escape

from logbook.craft.words.dates import date_words
from logbook.craft.words.lengths import Units
from logbook.tasks.note_words import said
from logbook.tasks.piece_files import piece_svg, title_of
from logbook.tasks.piece_words import sentences
from logbook.tasks.pieces import PieceAnswer
from logbook.tasks.printed.cautions import cautions
from logbook.tasks.printed.markup import inline, listed, page
from logbook.tasks.printed.row_charts import STYLE, chart_figures
from logbook.tasks.written_rows import charts_for

_STYLE = (
    """
@page { margin: 15mm }
body { font: 10pt/1.35 sans-serif; color: #000; background: #fff; margin: 0 auto; max-width: 180mm }
h1 { font-size: 15pt; margin: 0 0 1mm }
h2 { font-size: 11pt; margin: 4mm 0 1mm }
p, ul { margin: 0 0 2mm }
ul { padding-left: 5mm }
.from, .notes { color: #444; font-size: 9pt }
.warning { font-weight: bold }
svg { display: block; width: 100%; height: auto; max-height: 110mm; margin: 2mm 0 }
@media screen { body { padding: 10mm } }
"""
    + STYLE
)


def print_page(answer: PieceAnswer, units: Units, source: str, notes: str = "", today: date | None = None) -> str:
    """The whole HTML file; ``source`` says what swatch it is worked from, ``notes`` are the maker's own."""
    words = "centimetres" if units is Units.CM else "inches"
    warnings = said(answer.warnings, units)
    minded = cautions(answer.gauges.yarn.fibre, (answer.plan.name,), notes)
    parts = (
        f"<h1>{escape(title_of(answer))}</h1>",
        f'<p class="from">{escape(source)}. Finished sizes in {words}. {date_words((today or date.today()).isoformat())}.</p>',
        *(f'<p class="warning">! {escape(warning)}</p>' for warning in warnings),
        *(f'<p class="from">{escape(caution)}</p>' for caution in minded if caution not in warnings),
        listed(sentences(answer, units)),
        inline(piece_svg(answer, units, titled=False)),
        f"<p>{escape(notes)}</p>" if notes.strip() else "",
        f'<div class="notes">{listed(said(answer.remarks, units))}</div>',
        chart_figures(charts_for(answer.plan, answer.gauges.pattern)),
    )
    return page(answer.plan.name or "A piece", _STYLE, parts)
