"""The written rows as a chart, drawn as far as they fit."""

from typing import NamedTuple

from logbook.craft.drawing.drawing import Draw
from logbook.craft.rows.chart import chart
from logbook.craft.rows.courses import Courses
from logbook.craft.rows.proof import fitting_rows
from logbook.craft.words.terms import Terms
from logbook.errors import LogbookError

_TRIED = 600.0, 20.0


class RowsChart(NamedTuple):
    """The rows that are drawn, or in ``why_not`` why there is no chart; "" where there are no rows."""

    courses: Courses | None = None
    why_not: str = ""

    @property
    def draw(self) -> Draw | None:
        """Draws them for any width and text size."""
        courses = self.courses
        return None if courses is None else lambda width, line: chart(courses, width, line)


def rows_chart(text: str, terms: str) -> RowsChart:
    """The chart of rows as typed, in the terms as chosen. Touches nothing of the page: it may run in a thread of its own."""
    if not text.strip():
        return RowsChart()
    try:
        courses = fitting_rows(text, Terms(terms) if terms in tuple(Terms) else None)
        if not courses.rows:
            return RowsChart()
        chart(courses, *_TRIED)
    except LogbookError as error:
        return RowsChart(why_not=str(error))
    return RowsChart(courses)
