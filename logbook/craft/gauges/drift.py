"""Drift: how far a whole garment strays from what its swatch said, whatever the swatch's own give or take.

Before any experience s_d = 2 % with ν_d = 4 degrees of freedom: an assumption, and said to be one. From M made pieces with
d = ln(measured/predicted): s_d² = (4·s0² + Σd²)/(4 + M), ν_d = 4 + M. The half-width is U = t(97.5 %, ν_d)·s_d.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from logbook.craft.swatches.assumptions import PRIOR_DEGREES, Assumptions
from logbook.craft.swatches.student import t_975


@dataclass(frozen=True, slots=True)
class Drift:
    """A whole piece's own part of the give or take, relative; ``pieces`` is how many made pieces it was learnt from."""

    give_or_take: float
    pieces: int


def drift_of(assumptions: Assumptions, made: Sequence[tuple[float, float]] = ()) -> Drift:
    """The drift, from pairs (predicted, measured) of made pieces in any one unit; both above nought."""
    squares = math.fsum(math.log(measured / predicted) ** 2 for predicted, measured in made)
    degrees = PRIOR_DEGREES + len(made)
    deviation = math.sqrt((PRIOR_DEGREES * assumptions.drift**2 + squares) / degrees)
    return Drift(t_975(degrees) * deviation, len(made))


def combined(*parts: float | None) -> float | None:
    """The one rule that combines half-widths: root of the sum of squares. None (not known) if any part is None."""
    known = [part for part in parts if part is not None]
    return math.hypot(*known) if len(known) == len(parts) else None
