"""Fabrics, tapes and counts by chance, for checking what the arithmetic promises.

A fabric has one true pitch and a standard deviation σ from place to place, drawn from what the arithmetic assumes before
measuring: σ² = ν0·s0²/χ²(ν0), ν0 = 4, s0 = 2 %. A reading is taken at a place of its own, where the pitch differs by σ times a
normal number. A span's two ends fall anywhere on the tape and each is read to the nearest mm; a count begins at a stitch's edge
and is read to the nearest quarter, or whatever step is given.
"""

import math
from random import Random

from logbook.craft.swatches.readings import Counted, Reading


def from_prior(deviation: float, rng: Random) -> float:
    """A standard deviation drawn around ``deviation`` with four degrees of freedom."""
    return math.sqrt(4 * deviation**2 / rng.gammavariate(2, 2))  # χ² of 4 degrees is a gamma of shape 2 and scale 2


def variation(rng: Random) -> float:
    """How a fabric varies from place to place."""
    return from_prior(0.02, rng)


def place(pitch: float, sigma: float, rng: Random) -> float:
    """The pitch at one place of the fabric."""
    return pitch * math.exp(sigma * rng.gauss(0, 1))


def span(units: int, pitch: float, sigma: float, rng: Random) -> Reading:
    """How far ``units`` stitches reach, by a tape read to 1 mm."""
    start = rng.random()
    length = round(start + units * place(pitch, sigma, rng)) - round(start)
    return Reading(units, Counted.STITCHES, max(length, 1), False, False, None, "")


def count(window_mm: float, pitch: float, sigma: float, rng: Random, step: float = 0.25) -> Reading:
    """How many stitches lie in the window, to the nearest ``step``."""
    steps = max(round(window_mm / place(pitch, sigma, rng) / step), 1)
    return Reading(steps * step, Counted.STITCHES, window_mm, True, False, None, "")
