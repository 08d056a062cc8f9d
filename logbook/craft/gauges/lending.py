"""The finished gauges of a whole log: who lends washing to whom is worked out once for all swatches of a yarn alike."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType

from logbook.craft.gauges.washing import FinishedGauge, Loan, finished_of, is_plain, lenders_for, loan_from
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauges_of

Gauges = Mapping[tuple[Condition, Direction], Gauge]


class Lending:
    """Gauges as finished for every swatch of a log, the same as ``finished_gauge`` gives for one.

    ``known`` are the gauges of swatches, by uid, that are worked out already.
    """

    def __init__(
        self, swatches: Iterable[Swatch], assumptions: Assumptions, known: Mapping[str, Gauges] = MappingProxyType({})
    ) -> None:
        self.assumptions = assumptions
        self._known = known
        self._of_yarn: dict[str, list[Swatch]] = defaultdict(list)
        for swatch in swatches:
            if swatch.yarn is not None:
                self._of_yarn[swatch.yarn.uid].append(swatch)
        self._lent: dict[tuple[str, Direction, Condition], Loan | None] = {}
        self._loans: dict[tuple[object, ...], Sequence[Loan]] = {}

    def gauges(self, swatch: Swatch) -> Gauges:
        """Every gauge of a swatch."""
        known = self._known.get(swatch.uid)
        return gauges_of(swatch, self.assumptions) if known is None else known

    def finished(self, swatch: Swatch, gauges: Gauges, direction: Direction, condition: Condition) -> FinishedGauge | None:
        """The gauge as finished; None if nothing was measured that way."""
        return finished_of(gauges, direction, lambda: self._loans_to(swatch, direction, condition), condition)

    def _loans_to(self, swatch: Swatch, direction: Direction, condition: Condition) -> Sequence[Loan]:
        """The same for all that need washing borrowed and are alike: none of them can lend itself."""
        if swatch.yarn is None:
            return ()
        pattern = swatch.pattern.uid if swatch.pattern else None
        way = swatch.way_of_washing.strip().casefold()
        key = (swatch.yarn.uid, way, is_plain(swatch), pattern, direction, condition)
        if key not in self._loans:
            others = self._of_yarn[swatch.yarn.uid]
            self._loans[key] = lenders_for(swatch, direction, others, self.assumptions, condition, self._remembered)
        return self._loans[key]

    def _remembered(self, other: Swatch, direction: Direction, assumptions: Assumptions, condition: Condition) -> Loan | None:
        key = (other.uid, direction, condition)
        if key not in self._lent:
            self._lent[key] = loan_from(other.tag, self.gauges(other), direction, condition)
        return self._lent[key]


def finished_condition(swatch: Swatch) -> Condition:
    """The state that a swatch's finished sizes speak of: pinned out where only that was measured, else washed and laid flat."""
    states = {taken.condition for taken in swatch.readings}
    return Condition.PINNED if Condition.PINNED in states and Condition.WASHED not in states else Condition.WASHED
