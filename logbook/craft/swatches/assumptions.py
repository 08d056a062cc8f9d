"""What the arithmetic assumes before it has been measured. Kept in the logbook, because it changes numbers."""

from collections.abc import Sequence
from dataclasses import dataclass

from logbook.craft.swatches.readings import Reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumptions:
    """The settable assumptions, with the values a new logbook starts from.

    ``tape_mm`` and ``tape_inch_mm``: how finely a tape is read; ``count_step``: to what part of a unit one counts (None:
    as coarsely as the counts themselves show, to 1, 1/2 or 1/4);
    ``variation``: the standard deviation of a fabric from place to place, relative, before it is measured;
    ``drift``: the same of a whole piece against its swatch; ``count_lean``: whether what made pieces teach of a hand's lean
    is counted into sizes; ``reserve``: yarn bought beyond the need, relative;
    ``most_edge_stitches``: plain stitches at each side, at most; ``hourly_rate``: what the maker counts an hour of work at, in
    the currency of the yarn (None: work is not counted).
    """

    tape_mm: float = 1.0
    tape_inch_mm: float = 25.4 / 16
    count_step: float | None = None
    variation: float = 0.02
    drift: float = 0.02
    count_lean: bool = True
    reserve: float = 0.10
    most_edge_stitches: int = 4
    hourly_rate: float | None = None

    def finest(self, readings: Sequence[Reading]) -> tuple[float, ...]:
        """How finely each of the readings of one condition and direction was read: mm for a span, units for a count.

        People count to a whole, a half or a quarter, whichever is the coarsest that all their counts are multiples of.
        """
        counts = [reading.number for reading in readings if reading.is_count and reading.finest is None]
        shown = next((step for step in _STEPS if all(_is_multiple(number, step) for number in counts)), _STEPS[-1])
        return tuple(self._finest(reading, self.count_step or shown) for reading in readings)

    def _finest(self, reading: Reading, count_step: float) -> float:
        if reading.finest is not None:
            return reading.finest
        if not reading.is_count:
            return self.tape_inch_mm if reading.inches else self.tape_mm
        steps = (count_step, _STEPS[-1], 0.1, 0.01, 0.001)
        return next((step for step in steps if _is_multiple(reading.number, step)), 0.0001)


_STEPS = (1.0, 0.5, 0.25)
PRIOR_DEGREES = 4
"""How many places of experience the expected variation and drift are worth."""


def _is_multiple(number: float, step: float) -> bool:
    return abs(number / step - round(number / step)) < 1e-6
