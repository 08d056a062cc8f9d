"""Which logged swatches come nearest to a wanted gauge."""

from dataclasses import dataclass

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.craft.conditions import Condition
from logbook.craft.nearest_gauge import WantedGauge, gauge_like, nearest
from logbook.craft.swatch import Swatch
from logbook.tasks.find import Filters, FoundSwatch, find


@dataclass(frozen=True, slots=True)
class NearSwatch:
    """A found swatch and how far off the wanted gauge it is, relative."""

    found: FoundSwatch
    off: float


def nearest_to(book: Logbook, wanted: WantedGauge, filters: Filters) -> list[NearSwatch]:
    """The swatches that match ``filters`` and were measured in what is asked, nearest first.

    The gauges compared are those of the condition the filters name, else washed.
    """
    found = {one.swatch.uid: one for one in find(book, filters)}
    with book.reading() as connection:
        assumed = kept_assumptions(connection)
    near = nearest((one.swatch for one in found.values()), wanted, assumed, filters.condition or Condition.WASHED)
    return [NearSwatch(found[one.swatch.uid], one.off) for one in near]


def nearest_like(book: Logbook, swatch: Swatch, filters: Filters) -> list[NearSwatch]:
    """The swatches nearest to ``swatch`` in gauge, itself left out. Raises RefusedError if it was not measured so."""
    with book.reading() as connection:
        assumed = kept_assumptions(connection)
    wanted = gauge_like(swatch, filters.condition or Condition.WASHED, assumed)
    return [one for one in nearest_to(book, wanted, filters) if one.found.swatch.uid != swatch.uid]
