"""How much longer a piece gets by its own weight, from a swatch that hung with a weight clipped on.

A swatch weighing g hung overnight with w on the clip's width c, and its pitch went from washed ℓ to ℓh::

    ε = ℓh/ℓ − 1   at the line load (w + g/2)/c,   κ = ε / load
    growth = κ·ρ·H²/2        of a piece of length H weighing ρ per area: in the mean it carries half its own weight

Cloth stiffens as it is pulled, so the trial's load must be near the real one; the weight that makes it so is w = ρ·H·c/2 − g/2.
Masses in grams, lengths in mm.
"""

import math
from dataclasses import dataclass

from logbook.craft.gauges.drift import combined
from logbook.craft.swatches.gauge import Gauge

_NEAR = 1.5
"""A trial load further than this factor from the real one tells little."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HangingTrial:
    """A swatch's trial: its own weight, what was clipped on and over what width, and its gauges hung and washed, as it hung."""

    swatch_grams: float
    hung_grams: float
    clip_mm: float
    hung: Gauge
    washed: Gauge

    @property
    def load(self) -> float:
        """Grams per mm of width."""
        return (self.hung_grams + self.swatch_grams / 2) / self.clip_mm


@dataclass(frozen=True, slots=True)
class Growth:
    """How much longer a piece hangs, in mm; ``near`` says whether the trial's load was near the real one."""

    mm: float
    give_or_take_mm: float | None
    near: bool


def real_load(grams_per_mm2: float, length_mm: float) -> float:
    """The line load that a piece carries in the mean, in grams per mm of width."""
    return grams_per_mm2 * length_mm / 2


def weight_to_clip(grams_per_mm2: float, length_mm: float, clip_mm: float, swatch_grams: float) -> float:
    """The grams to clip on so that the swatch hangs as the piece will; 0 if the swatch's own weight is enough."""
    return max(real_load(grams_per_mm2, length_mm) * clip_mm - swatch_grams / 2, 0.0)


def growth_of(trial: HangingTrial, grams_per_mm2: float, length_mm: float) -> Growth:
    """How much longer a piece of ``length_mm`` (measured lying flat) hangs."""
    load = real_load(grams_per_mm2, length_mm)
    strain = trial.hung.pitch_mm / trial.washed.pitch_mm - 1
    to_length = load / trial.load * length_mm
    sure = combined(trial.hung.give_or_take, trial.washed.give_or_take)
    return Growth(
        mm=strain * to_length,
        give_or_take_mm=None if sure is None else (1 + strain) * sure * to_length,
        near=abs(math.log(load / trial.load)) <= math.log(_NEAR),
    )
