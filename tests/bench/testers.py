"""How often a size is said to be off by those who tried it: ``python -m tests.bench.testers``.

The model: a pattern in so many sizes, three testers a size, each measuring width and length of what they made. Each hand has
a gauge of its own, normal with 5 % around the pattern's, stitches and rows apart. They measure their gauge by five spans of
some 12 cm each, at five places of a fabric whose pitch differs from place to place by σ, drawn for each hand from what the
program assumes (2 %, four degrees of freedom), with a tape read to 1 mm; and the whole, to half a cm. The gauge is measured

- *on the piece*, as the sheet that is sent round asks for: nothing else lies between gauge and size, or
- *on a swatch*: the piece differs from it by a normal 2 %.

*Gauge alone*: nothing is wrong with the pattern; told is the share of runs in which any size is said to be off. *One size
off*: one size comes out 4 % too wide; told is the share in which it is named, and in which another is.
"""

import argparse
import math
from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from logbook.craft.sizes.size_off import TestedMeasure, sizes_off
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.gauge import gauge_of
from tests.support.simulation import span, variation

SIZES = (3, 5, 8)
TESTERS = 3
PLACES = 5
FAULT = 1.04
ON_PIECE, ON_SWATCH = "on the piece", "on a swatch"
WAYS = {ON_PIECE: 0.0, ON_SWATCH: 0.02}
ASSUMED = Assumptions()
_PITCH = {"width": 6.0, "length": 5.0}
_TOLD = {"width": 480.0, "length": 560.0}
_READ_TO = 5.0


@dataclass(frozen=True, slots=True)
class Shares:
    """Of all runs: in how many any size is named with nothing wrong; the one that is off is named; another one is."""

    false: float
    found: float
    other: float


def tried(sizes: int, drift: float, fault: float, rng: Random) -> Iterator[TestedMeasure]:
    """What all testers of a pattern measured; the middle size is off by ``fault`` in width."""
    for size in range(sizes):
        for _ in range(TESTERS):
            for what, pitch in _PITCH.items():
                own, sigma = pitch * math.exp(rng.gauss(0, 0.05)), variation(rng)
                readings = [span(round(120 / own), own, sigma, rng) for _ in range(PLACES)]
                off = fault if what == "width" and size == sizes // 2 else 1.0
                made = (_TOLD[what] + 50 * size) * own / pitch * off * math.exp(rng.gauss(0, drift))
                measured = round(made / _READ_TO) * _READ_TO
                gauge = gauge_of(readings, 1, ASSUMED)
                came_out = measured / (_TOLD[what] + 50 * size)
                yield TestedMeasure(str(size), what, came_out, gauge.pitch_mm / pitch, gauge.give_or_take or 0.0)


def shares(sizes: int, drift: float, runs: int, seed: int) -> Shares:
    """Over so many runs."""
    rng, false, found, other = Random(seed), 0, 0, 0
    for _ in range(runs):
        false += bool(sizes_off(list(tried(sizes, drift, 1.0, rng)), ASSUMED))
        named = {(one.size, one.what) for one in sizes_off(list(tried(sizes, drift, FAULT, rng)), ASSUMED)}
        found += (str(sizes // 2), "width") in named
        other += bool(named - {(str(sizes // 2), "width")})
    return Shares(false / runs, found / runs, other / runs)


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("--runs", type=int, default=4000)
    parser.add_argument("--seed", type=int, default=1)
    arguments = parser.parse_args()
    print("| gauge measured | sizes | gauge alone: any named | one size off: named | another named |")
    print("| --- | --- | --- | --- | --- |")
    for way, drift in WAYS.items():
        for sizes in SIZES:
            found = shares(sizes, drift, arguments.runs, arguments.seed)
            cells = (f"{share:.1%}".replace("%", " %") for share in (found.false, found.found, found.other))
            print(f"| {way} | {sizes} | {' | '.join(cells)} |", flush=True)


if __name__ == "__main__":
    main()
