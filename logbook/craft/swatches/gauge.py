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
    ``counting_part`` is what of ``tape_part`` comes of counting. ``deviations`` says how far each reading lies from the pitch
    (none where the sums alone are known), ``variation`` (s) how the places of the fabric differ, both relative.
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


ARITHMETIC = 1
"""The version of what ``GaugeSums`` are: raised whenever the same readings would give others."""


@dataclass(frozen=True, slots=True)
class GaugeSums:
    """What the readings of one condition and direction come to before anything is assumed: all but the assumptions in U.

    ``scatter`` is SS, ``weights`` √Σw². Of U's tape part: ``said`` is Σ(w·r/x)² of the spans whose r is said, ``cm`` and
    ``inches`` are Σ(w/x)² of those read on a tape in cm or in inches, ``counts`` is Σ w·q/n. ``coarse``: some count is too coarse
    for a give or take; ``shown``: some q is what the counts themselves show, and would be another if it were assumed.
    """

    pitch_mm: float
    readings: int
    scatter: float
    weights: float
    said: float
    cm: float
    inches: float
    counts: float
    coarse: bool
    shown: bool

    def holds(self, assumptions: Assumptions) -> bool:
        """Whether these are the sums under ``assumptions``."""
        return assumptions.count_step is None or not self.shown

    def gauge(self, assumptions: Assumptions, deviations: tuple[float, ...] = ()) -> Gauge:
        """The gauge under ``assumptions``, which these sums must hold under; ``deviations`` are those behind ``scatter``."""
        degrees = PRIOR_DEGREES + self.readings - 1
        variation = math.sqrt((PRIOR_DEGREES * assumptions.variation**2 + self.scatter) / degrees)
        fabric = t_975(degrees) * variation * self.weights
        spans = self.said + assumptions.tape_mm**2 * self.cm + assumptions.tape_inch_mm**2 * self.inches
        counting = self.counts / 2
        tape = math.hypot(math.sqrt(spans / 2), counting)
        return Gauge(
            pitch_mm=self.pitch_mm,
            give_or_take=None if self.coarse else math.hypot(fabric, tape),
            fabric_part=fabric,
            tape_part=tape,
            readings=self.readings,
            deviations=deviations,
            counting_part=counting,
            variation=variation,
        )


def gauge_of(readings: Sequence[Reading], per_repeat: int | None, assumptions: Assumptions) -> Gauge:
    """The gauge of readings of one condition and direction, per stitch or row.

    ``per_repeat``: stitches (or rows) in a whole repeat, None if not known. Raises RefusedError if there are no readings, they
    run in two directions, or some are in repeats and the repeat is not known.
    """
    sums, deviations = _summed(readings, per_repeat, assumptions)
    return sums.gauge(assumptions, deviations)


def sums_of(readings: Sequence[Reading], per_repeat: int | None) -> GaugeSums:
    """The sums behind ``gauge_of``, counts read as finely as they show. Raises as that does."""
    return _summed(readings, per_repeat, Assumptions())[0]


def _summed(readings: Sequence[Reading], per_repeat: int | None, assumptions: Assumptions) -> tuple[GaugeSums, tuple[float, ...]]:
    if len({reading.counted.direction for reading in readings}) != 1:
        raise RefusedError("A gauge needs readings of one direction: at least one, of stitches or of rows.")
    units = [reading.number * _units_in(reading, per_repeat) for reading in readings]
    lengths = [reading.length_mm for reading in readings]
    whole = math.fsum(units)
    pitch = math.fsum(lengths) / whole
    weights = [n / whole for n in units]
    deviations = tuple(x / n / pitch - 1 for x, n in zip(lengths, units, strict=True))
    mean = math.fsum(deviations) / len(deviations)
    said = cm = inches = counts = 0.0
    coarse = False
    for reading, weight, finest in zip(readings, weights, assumptions.finest(readings), strict=True):
        if reading.is_count:
            counts += weight * finest / reading.number
            coarse = coarse or finest / reading.number > COARSE
        elif reading.finest is not None:
            said += (weight * finest / reading.length_mm) ** 2
        elif reading.inches:
            inches += (weight / reading.length_mm) ** 2
        else:
            cm += (weight / reading.length_mm) ** 2
    sums = GaugeSums(
        pitch_mm=pitch,
        readings=len(readings),
        scatter=math.fsum((d - mean) ** 2 for d in deviations),
        weights=math.hypot(*weights),
        said=said,
        cm=cm,
        inches=inches,
        counts=counts,
        coarse=coarse,
        shown=any(reading.is_count and reading.finest is None for reading in readings),
    )
    return sums, deviations


def _units_in(reading: Reading, per_repeat: int | None) -> int:
    if not reading.counted.whole_repeats:
        return 1
    if per_repeat is None:
        what = "multiple (stitches in a repeat)" if reading.counted.direction.one == "stitch" else "rows in a repeat"
        raise RefusedError(f"“{reading.text}” is in repeats: give the {what} of the stitch pattern.")
    return per_repeat
