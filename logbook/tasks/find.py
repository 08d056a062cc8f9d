"""Looking up swatches with the gauges they give."""

from collections.abc import Mapping
from dataclasses import dataclass

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.gauges import gauges_in
from logbook.book.logbook import Logbook
from logbook.book.search import Filters, matching
from logbook.book.swatches import swatches
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch

__all__ = ["Filters", "FoundSwatch", "find"]


@dataclass(frozen=True, slots=True)
class FoundSwatch:
    """A swatch and every gauge its readings give; found by ``find``, it comes without the readings themselves."""

    swatch: Swatch
    gauges: Mapping[tuple[Condition, Direction], Gauge]


def find(book: Logbook, filters: Filters) -> list[FoundSwatch]:
    """The swatches that match, newest first."""
    with book.reading() as connection:
        uids = matching(connection, filters)
        gauges = gauges_in(connection, uids, kept_assumptions(connection))
        return [FoundSwatch(one, gauges[one.uid]) for one in swatches(connection, uids, with_readings=False)]
