"""Looking up swatches with the gauges they give."""

from collections.abc import Mapping
from dataclasses import dataclass

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.search import Filters, matching
from logbook.book.swatches import swatches
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauges_of

__all__ = ["Filters", "FoundSwatch", "find"]


@dataclass(frozen=True, slots=True)
class FoundSwatch:
    """A swatch and every gauge its readings give."""

    swatch: Swatch
    gauges: Mapping[tuple[Condition, Direction], Gauge]


def find(book: Logbook, filters: Filters) -> list[FoundSwatch]:
    """The swatches that match, newest first."""
    with book.reading() as connection:
        found = swatches(connection, matching(connection, filters))
        assumed = kept_assumptions(connection)
    return [FoundSwatch(swatch, gauges_of(swatch, assumed)) for swatch in found]
