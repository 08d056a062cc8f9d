"""The gauge that the readings of one condition and direction give, with its give or take.

Of readings i = 1…N, n_i units over x_i mm::

    p = Σx_i / Σn_i,   w_i = n_i / Σn
    d_i = (x_i/n_i)/p − 1,   SS = Σ(d_i − mean d)²
    s² = (ν0·s0² + SS)/ν,   ν = ν0 + N − 1
    b_i = r/(√6·x_i) for a span (two ends, each read to r),   q/(√12·n_i) for a count read to q
    U² = t(97.5 %, ν)²·s²·Σw_i²  +  3·( Σ_spans (w_i·b_i)² + (Σ_counts w_i·b_i)² )

The fabric's part shrinks with more places. Laying the tape again helps a span, not a count: counts round alike. Source: JCGM 100,
*Guide to the expression of uncertainty in measurement*, with a small-sample Bayesian form (s0 with ν0 degrees of freedom is
what a fabric does before it is measured). The factor 3 makes of a rectangular spread its 95 %-and-more half-width √3·b.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from logbook.craft.swatches.assumptions import PRIOR_DEGREES, Assumptions
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.student import t_975
from logbook.errors import RefusedError

COARSE = 0.2
"""A count whose step is more than this part of it states no give or take."""


@dataclass(frozen=True, slots=True)
class Gauge:
    """Length in mm of one stitch or row, and its relative 95 % half-width (None: too coarse to say).

    ``fabric_part`` and ``tape_part`` are the half-widths that make up ``give_or_take`` (root of the sum of squares);
    ``counting_part`` is what of ``tape_part`` comes of counting. ``deviations`` says how far each reading lies from the pitch,
    ``variation`` (s) how the places of the fabric differ, both relative.
    """

    pitch_mm: float
    give_or_take: float | None
    fabric_part: float
    tape_part: float
    readings: int
    deviations: tuple[float, ...]
    counting_part: float = 0.0
    variation: float = 0.0

    @property
    def too_coarse(self) -> bool:
        """Whether some count is too coarse for a give or take."""
        return self.give_or_take is None


def gauge_of(readings: Sequence[Reading], per_repeat: int | None, assumptions: Assumptions) -> Gauge:
    """The gauge of readings of one condition and direction, per stitch or row.

    ``per_repeat``: stitches (or rows) in a whole repeat, None if not known. Raises RefusedError if there are no readings, they
    run in two directions, or some are in repeats and the repeat is not known.
    """
    if len({reading.counted.direction for reading in readings}) != 1:
        raise RefusedError("A gauge needs readings of one direction: at least one, of stitches or of rows.")
    units = [reading.number * _units_in(reading, per_repeat) for reading in readings]
    lengths = [reading.length_mm for reading in readings]
    pitch = math.fsum(lengths) / math.fsum(units)
    weights = [n / math.fsum(units) for n in units]
    deviations = [x / n / pitch - 1 for x, n in zip(lengths, units, strict=True)]
    variation, quantile = _variation(deviations, assumptions.variation)
    fabric = quantile * variation * math.hypot(*weights)
    spans, counts = _tape_parts(readings, weights, assumptions)
    tape = math.hypot(spans, counts)
    coarse = any(r.is_count and step / r.number > COARSE for r, step in zip(readings, assumptions.finest(readings), strict=True))
    return Gauge(
        pitch_mm=pitch,
        give_or_take=None if coarse else math.hypot(fabric, tape),
        fabric_part=fabric,
        tape_part=tape,
        readings=len(readings),
        deviations=tuple(deviations),
        counting_part=counts,
        variation=variation,
    )


def _units_in(reading: Reading, per_repeat: int | None) -> int:
    if not reading.counted.whole_repeats:
        return 1
    if per_repeat is None:
        what = "multiple (stitches in a repeat)" if reading.counted.direction.one == "stitch" else "rows in a repeat"
        raise RefusedError(f"“{reading.text}” is in repeats: give the {what} of the stitch pattern.")
    return per_repeat


def _variation(deviations: Sequence[float], expected: float) -> tuple[float, float]:
    """s, and the quantile of Student's t that goes with it."""
    degrees = PRIOR_DEGREES + len(deviations) - 1
    mean = math.fsum(deviations) / len(deviations)
    scatter = math.fsum((d - mean) ** 2 for d in deviations)
    return math.sqrt((PRIOR_DEGREES * expected**2 + scatter) / degrees), t_975(degrees)


def _tape_parts(readings: Sequence[Reading], weights: Sequence[float], assumptions: Assumptions) -> tuple[float, float]:
    """The half-widths that come of reading spans and of counting."""
    spans = counts = 0.0
    for reading, weight, finest in zip(readings, weights, assumptions.finest(readings), strict=True):
        if reading.is_count:
            counts += weight * finest / (math.sqrt(12) * reading.number)
        else:
            spans += (weight * finest / (math.sqrt(6) * reading.length_mm)) ** 2
    return math.sqrt(3 * spans), math.sqrt(3) * counts
