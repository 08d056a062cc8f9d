"""The gauge line that a written pattern needs, ready to be copied."""

from logbook.craft.gauges.gauge_line import gauge_line
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.terms import Terms
from logbook.pages.gauges.gauge_words import usual_condition


def line_to_copy(swatch: Swatch, assumed: Assumptions, terms: Terms) -> str:
    """The line of the finished gauge, else of the one as worked. Raises RefusedError if there is no gauge."""
    return gauge_line(swatch, usual_condition(gauges_of(swatch, assumed)), assumed, terms)
