"""Which logged swatches come nearest to a wanted gauge."""

from collections.abc import Iterable
from dataclasses import dataclass

from logbook.book.logbook import Logbook
from logbook.craft.gauges.nearest_gauge import WantedGauge, nearest
from logbook.craft.swatches.conditions import Condition
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
    return nearest_of(find(book, filters), wanted, filters.condition or Condition.WASHED)


def nearest_of(found: Iterable[FoundSwatch], wanted: WantedGauge, condition: Condition) -> list[NearSwatch]:
    """Of swatches already found those measured in what is asked, nearest first."""
    by_uid = {one.swatch.uid: one for one in found}
    near = nearest(((one.swatch, one.gauges) for one in by_uid.values()), wanted, condition)
    return [NearSwatch(by_uid[one.swatch.uid], one.off) for one in near]
