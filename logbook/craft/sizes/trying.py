"""What those who try a pattern measured, beside what it told them."""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from logbook.craft.sizes.size_off import TestedMeasure
from logbook.craft.sizes.tester import Tester
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading, gauge_in


class ToldSize(NamedTuple):
    """How large one measure of a size is to be (mm), along which direction of the cloth, and the pitch it was reckoned with."""

    mm: float
    along: Direction
    pitch_mm: float


Told = Mapping[str, ToldSize]
"""Of one piece in one size: its ``width`` and ``length``."""


def tried_of(
    testers: Sequence[Tester], told: Mapping[tuple[str, str], Told], pattern: StitchPattern | None, assumptions: Assumptions
) -> Iterator[TestedMeasure]:
    """What can be weighed: of each tester each measure with a gauge of their own that says how sure it is.

    ``told`` goes by size and by the part that was measured ("": the first).
    """
    for tester in testers:
        for what, size in told.get((tester.size.strip(), tester.part.strip()), {}).items():
            measured = tester.width_mm if what == "width" else tester.length_mm
            own = own_gauge_of(tester, size.along, pattern, assumptions)
            if measured and own is not None and own.give_or_take is not None:
                yield TestedMeasure(tester.size.strip(), what, measured / size.mm, own.pitch_mm / size.pitch_mm, own.give_or_take)


def own_gauge_of(tester: Tester, along: Direction, pattern: StitchPattern | None, assumptions: Assumptions) -> Gauge | None:
    """The tester's own gauge in a direction; None if it was not measured, or in repeats of an unknown length."""
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings(tester.readings))
    swatch = Swatch(pattern=pattern, readings=readings)
    if swatch.per_repeat(along) is None and any(r.counted.whole_repeats for r in swatch.readings_of(Condition.WASHED, along)):
        return None
    return gauge_in(swatch, Condition.WASHED, along, assumptions)
