"""Which swatches come nearest to a wanted gauge: off = √ mean of (ln(pitch/wanted))² over what was asked.

Those farther off than a quarter are no answer and left out.
"""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.errors import RefusedError

FARTHEST = 0.25
"""Relative: what is farther off is not near."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WantedGauge:
    """What is wanted, in mm: of a whole repeat or of one stitch, and of one row; None: not asked."""

    repeat_mm: float | None = None
    stitch_mm: float | None = None
    row_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Near:
    """A swatch and how far off the wanted gauge it is, relative: 0.02 is 2 %."""

    swatch: Swatch
    off: float


def wanted_gauge(over_mm: float, repeats: float | None, stitches: float | None, rows: float | None) -> WantedGauge:
    """So many repeats or stitches, and rows, over a length. Raises RefusedError if nothing or a number not above 0 is asked."""
    asked = [number for number in (repeats, stitches, rows) if number is not None]
    if not asked or not all(number > 0 for number in (over_mm, *asked)):
        raise RefusedError("Give repeats or stitches, or rows, and the length they are over: each more than 0.")

    def each(number: float | None) -> float | None:
        return None if number is None else over_mm / number

    return WantedGauge(repeat_mm=each(repeats), stitch_mm=each(stitches), row_mm=each(rows))


def gauge_like(swatch: Swatch, condition: Condition, assumptions: Assumptions) -> WantedGauge:
    """The gauge of ``swatch`` itself, as far as it was measured: by the repeat where its pattern has one.

    Raises RefusedError if it was not measured in that condition.
    """
    gauges = gauges_of(swatch, assumptions)
    stitch, row = (gauges.get((condition, direction)) for direction in (Direction.STITCHES, Direction.ROWS))
    if stitch is None and row is None:
        raise RefusedError(f"{swatch.tag or 'This swatch'} was not measured {condition.words}, so nothing can be found like it.")
    multiple = swatch.per_repeat(Direction.STITCHES)
    by_repeat = stitch is not None and multiple is not None and multiple > 1
    return WantedGauge(
        repeat_mm=stitch.pitch_mm * multiple if stitch and multiple and by_repeat else None,
        stitch_mm=stitch.pitch_mm if stitch and not by_repeat else None,
        row_mm=row.pitch_mm if row else None,
    )


Gauges = Mapping[tuple[Condition, Direction], Gauge]


def nearest(
    measured: Iterable[tuple[Swatch, Gauges]], wanted: WantedGauge, condition: Condition = Condition.WASHED
) -> tuple[Near, ...]:
    """Of swatches with their gauges those measured in all that was asked and not too far off, nearest first (then by tag)."""
    found = []
    for swatch, gauges in measured:
        off = _off(swatch, gauges, wanted, condition)
        if off is not None and off <= FARTHEST + 1e-9:
            found.append(Near(swatch, off))
    return tuple(sorted(found, key=lambda near: (near.off, near.swatch.tag)))


def _off(swatch: Swatch, gauges: Gauges, wanted: WantedGauge, condition: Condition) -> float | None:
    stitch, row = (gauges.get((condition, direction)) for direction in (Direction.STITCHES, Direction.ROWS))
    multiple = swatch.per_repeat(Direction.STITCHES)
    has = (
        (wanted.repeat_mm, stitch.pitch_mm * multiple if stitch and multiple else None),
        (wanted.stitch_mm, stitch.pitch_mm if stitch else None),
        (wanted.row_mm, row.pitch_mm if row else None),
    )
    squares = []
    for asked, found in has:
        if asked is not None:
            if found is None:
                return None
            squares.append(math.log(found / asked) ** 2)
    return math.sqrt(math.fsum(squares) / len(squares)) if squares else None
