"""How large a swatch should be for a target width or length.

The places: as few as keep the swatch's own give or take within 0.6 of the drift (a whole piece's is then at most 17 % more than
the drift alone, for √(1 + 0.6²) = 1.17), at most 8. The span at each: 10 cm, or longer where the tape's part would otherwise be
more than 5 mm of the target, in whole units. Around it 2 cm on each side are not measured: outer stitches are not typical.
"""

import math
from dataclasses import dataclass

from logbook.craft.gauges.drift import Drift
from logbook.craft.gauges.reading_advice import USUAL_SPAN_MM, spans_reach
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.words.lengths import Units

_SHARE_OF_DRIFT = 0.6
_TAPE_ON_TARGET_MM = 5.0
_EDGE_MM = 20.0
_MOST_PLACES = 8


@dataclass(frozen=True, slots=True)
class SwatchSize:
    """``places`` to measure, each over ``units`` whole units that reach about ``span_mm``; ``side_mm`` of the square to work.

    ``give_or_take`` is what that would state, relative.
    """

    places: int
    units: int
    span_mm: float
    side_mm: float
    give_or_take: float


def swatch_size(target_mm: float, unit_mm: float, drift: Drift, assumptions: Assumptions, units: Units = Units.CM) -> SwatchSize:
    """For a finished size of ``target_mm`` in repeats, stitches or rows of about ``unit_mm``; the tape is in ``units``."""
    finest = assumptions.tape_mm if units is Units.CM else assumptions.tape_inch_mm
    places, size = 0, 0.0
    for places in range(1, _MOST_PLACES + 1):
        tape_limit = math.sqrt(3 / places) * finest / math.sqrt(6) * target_mm / _TAPE_ON_TARGET_MM
        size = max(USUAL_SPAN_MM, tape_limit)
        if spans_reach(places, size, assumptions.variation, finest) <= _SHARE_OF_DRIFT * drift.give_or_take:
            break
    count = max(2, math.ceil(size / unit_mm - 1e-9))
    span = count * unit_mm
    side = math.ceil((span + 2 * _EDGE_MM) / 10) * 10.0
    return SwatchSize(places, count, span, side, spans_reach(places, span, assumptions.variation, finest))
