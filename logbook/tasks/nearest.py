"""Which logged swatches come nearest to a wanted gauge; those not washed yet as their washing is known or borrowed, marked so."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.gauges import gauges_in
from logbook.book.logbook import Logbook
from logbook.book.swatch_lists import swatches_of_yarn
from logbook.book.swatches import swatches
from logbook.craft.gauges.lending import Gauges, Lending
from logbook.craft.gauges.nearest_gauge import WantedGauge, nearest
from logbook.craft.gauges.washing import Washing
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.swatch import Swatch
from logbook.tasks.find import Filters, FoundSwatch, find

FINISHED = (Condition.WASHED, Condition.PINNED)
"""The states that a swatch as worked can be carried to by washing."""


@dataclass(frozen=True, slots=True)
class NearSwatch:
    """A found swatch and how far off the wanted gauge it is, relative.

    ``gauges`` are those it was compared by, ``washing`` where they come from: borrowed, or unknown, which is as worked.
    """

    found: FoundSwatch
    off: float
    gauges: Gauges
    washing: Washing


@dataclass(frozen=True, slots=True)
class LookedThrough:
    """The swatches among which one looks, and those that may lend washing to them, found by the same words or not.

    ``known``: gauges by the uid of the swatch, where it comes without its readings.
    """

    found: Sequence[FoundSwatch]
    lenders: Sequence[Swatch]
    assumed: Assumptions
    known: Mapping[str, Gauges] = field(default_factory=dict)
    _finished: dict[Condition, Mapping[str, tuple[Gauges, Washing]]] = field(default_factory=dict, compare=False)

    def finished(self, condition: Condition) -> Mapping[str, tuple[Gauges, Washing]]:
        """What each was measured as, or would be, by its uid. Reckoned once: it does not follow from what is wanted."""
        if condition not in self._finished:
            lending = Lending(self.lenders, self.assumed, self.known)
            self._finished[condition] = {one.swatch.uid: _finished(one, condition, lending) for one in self.found}
        return self._finished[condition]


def look_through(book: Logbook, filters: Filters, ready: Sequence[Condition] = ()) -> LookedThrough:
    """What ``filters`` leave of the logbook, reckoned beforehand for what is going to be asked of these conditions."""
    found = find(book, filters)
    yarns = {one.swatch.yarn.uid for one in found if one.swatch.yarn and not _is_finished(one.gauges)}
    with book.reading() as connection:
        assumed = kept_assumptions(connection)
        uids = [uid for yarn in sorted(yarns) for uid in swatches_of_yarn(connection, yarn)]
        known = {one.swatch.uid: one.gauges for one in found}
        known |= gauges_in(connection, [uid for uid in uids if uid not in known], assumed)
        through = LookedThrough(found, swatches(connection, uids, with_readings=False), assumed, known)
    for condition in ready:
        through.finished(condition)
    return through


def nearest_to(book: Logbook, wanted: WantedGauge, filters: Filters) -> list[NearSwatch]:
    """The swatches that match ``filters`` and were measured in what is asked, nearest first.

    The gauges compared are those of the condition the filters name, else washed.
    """
    return nearest_of(look_through(book, filters), wanted, filters.condition or Condition.WASHED)


def nearest_of(among: LookedThrough, wanted: WantedGauge, condition: Condition, but: str = "") -> list[NearSwatch]:
    """Of swatches already found those measured in what is asked, nearest first; ``but``: the uid of one left out."""
    finished = among.finished(condition)
    by_uid = {one.swatch.uid: one for one in among.found if one.swatch.uid != but}
    near = nearest(((one.swatch, finished[uid][0]) for uid, one in by_uid.items()), wanted, condition)
    return [NearSwatch(by_uid[one.swatch.uid], one.off, *finished[one.swatch.uid]) for one in near]


def _is_finished(gauges: Gauges) -> bool:
    return all(any((state, direction) in gauges for state in FINISHED) for direction in Direction)


def _finished(one: FoundSwatch, condition: Condition, lending: Lending) -> tuple[Gauges, Washing]:
    """The gauges with those of ``condition`` put in from the worked ones where they were not measured."""
    gauges, washing = dict(one.gauges), Washing.MEASURED
    if condition not in FINISHED or all((condition, direction) in gauges for direction in Direction):
        return one.gauges, washing
    for direction in Direction:
        if (condition, direction) not in gauges:
            found = lending.finished(one.swatch, one.gauges, direction, condition)
            if found is not None:
                washing = found.washing if washing is not Washing.UNKNOWN else washing
                gauges[condition, direction] = replace(found.gauge, pitch_mm=found.pitch_mm, give_or_take=found.give_or_take)
    return gauges, washing
