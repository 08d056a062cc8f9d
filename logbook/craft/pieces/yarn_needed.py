"""How much yarn a garment needs, reckoned from the weight of its swatch.

A swatch of s stitches and r rows weighing g gives g/(s·r) grams for one stitch of one row, whatever condition it is in. Pieces
and edgings are stitches × rows, seams are lengths of yarn. Grams turn into metres by the ball: metres = grams × ball metres /
ball grams. The swatch's weight is read to half a unit of the scale, ±0.5 g, and a whole piece drifts as always: their half-widths
combine to the give or take. What the hand's made pieces used beyond their plans is counted in. What to buy
has the reserve on top, in whole balls.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from logbook.craft.gauges.drift import Drift, combined
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError

SCALE_GRAMS = 0.5
"""Half a unit of a kitchen scale."""


@dataclass(frozen=True, slots=True)
class StitchWeight:
    """Grams of one stitch of one row, and the relative half-width the scale leaves."""

    grams: float
    give_or_take: float


@dataclass(frozen=True, slots=True)
class YarnNeeded:
    """Grams and their half-width, the balls to buy (with the reserve) and the metres; None where the ball is not known."""

    grams: float
    give_or_take_grams: float
    balls: int | None
    metres: float | None


def stitch_weight(swatch_grams: float | None, stitches: float | None, rows: float | None) -> StitchWeight | None:
    """From a swatch's own weight, stitches and rows; None if one is not known. Raises RefusedError if one is not above 0."""
    if swatch_grams is None or stitches is None or rows is None:
        return None
    if not (swatch_grams > 0 and stitches > 0 and rows > 0):
        raise RefusedError("The swatch's weight, stitches and rows must each be more than 0.")
    return StitchWeight(swatch_grams / (stitches * rows), SCALE_GRAMS / swatch_grams)


def yarn_needed(
    weight: StitchWeight,
    areas: Iterable[tuple[float, float]],
    thread_mm: float,
    yarn: Yarn,
    drift: Drift,
    reserve: float,
) -> YarnNeeded:
    """For ``areas`` of (stitches, rows) in all, and ``thread_mm`` of seam yarn (not counted where the ball is not known).

    ``drift`` is that of the grams the hand uses.
    """
    worked = weight.grams * math.fsum(stitches * rows for stitches, rows in areas)
    metres_per_gram = yarn.metres_per_gram
    grams = (worked + (thread_mm / 1000 / metres_per_gram if metres_per_gram else 0.0)) * drift.factor
    return YarnNeeded(
        grams=grams,
        give_or_take_grams=(combined(weight.give_or_take, drift.give_or_take) or 0.0) * worked * drift.factor,
        balls=None if yarn.ball_grams is None else balls_for(grams, yarn.ball_grams, reserve),
        metres=None if metres_per_gram is None else grams * metres_per_gram,
    )


def balls_for(grams: float, ball_grams: float, reserve: float) -> int:
    """Whole balls for so many grams and the reserve."""
    return math.ceil(grams * (1 + reserve) / ball_grams - 1e-9)


def together(needs: Iterable[YarnNeeded], yarn: Yarn, reserve: float) -> YarnNeeded:
    """What several need in all: one scale weighed for all, so the half-widths add; balls are rounded up once."""
    all_needs = tuple(needs)
    grams = math.fsum(need.grams for need in all_needs)
    return YarnNeeded(
        grams=grams,
        give_or_take_grams=math.fsum(need.give_or_take_grams for need in all_needs),
        balls=None if yarn.ball_grams is None else balls_for(grams, yarn.ball_grams, reserve),
        metres=None if yarn.metres_per_gram is None else grams * yarn.metres_per_gram,
    )
