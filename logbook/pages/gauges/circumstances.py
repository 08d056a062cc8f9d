"""What is known beside the swatch in hand when something is said of its gauge."""

from collections.abc import Sequence
from dataclasses import dataclass

from logbook.craft.gauges.drift import Drifts
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class Circumstances:
    """What else is known: who may lend the washing, what is assumed, the state that sizes speak of, the width wanted."""

    others: Sequence[Swatch]
    assumed: Assumptions
    drift: Drifts
    finish: Condition = Condition.WASHED
    target_mm: float | None = None
    units: Units = Units.CM
