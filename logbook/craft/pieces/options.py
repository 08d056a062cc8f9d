"""Counts of stitches or of rows to choose from, and the size that each makes.

    size = height·p + ends        p the pitch; of stitches and of like rows the height is their count

The options are those on both sides of the exact count and one more each way; recommended is the size nearest to the one wanted,
on a tie the smaller, unless "at least" or "at most" is asked.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from logbook.craft.gauges.drift import Drift, combined
from logbook.craft.gauges.washing import FinishedGauge
from logbook.errors import RefusedError


class FirstStitchUnknownError(RefusedError):
    """The turning chain before the first stitch is not known, so no chain can be said."""

    def __init__(self) -> None:
        super().__init__("Which stitch do the rows begin with? Its turning chain isn't known, so there is no starting chain yet.")


class Choose(StrEnum):
    """Which option is recommended."""

    NEAREST = "nearest"
    AT_LEAST = "at least"
    AT_MOST = "at most"


class Parity(StrEnum):
    """A stitch or row count that must be odd or even."""

    ANY = ""
    ODD = "odd"
    EVEN = "even"

    def fits(self, count: int) -> bool:
        """Whether ``count`` is as asked."""
        return self is Parity.ANY or (count % 2 == 1) is (self is Parity.ODD)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pitch:
    """How large one stitch or row is (mm), with the relative half-widths of the swatch's gauge (None: unknown) and of drift.

    ``before_washing_mm`` is the as-worked pitch, None if it was not measured; ``ends_mm`` belongs to no stitch or row of the
    pattern: edgings, edge stitches of their own pitch, the foundation chain.
    """

    mm: float
    gauge_give_or_take: float | None
    drift_give_or_take: float
    before_washing_mm: float | None = None
    ends_mm: float = 0.0

    @staticmethod
    def of(gauge: FinishedGauge, drift: Drift, ends_mm: float) -> "Pitch":
        """That of the finished fabric."""
        return Pitch(
            mm=gauge.pitch_mm,
            gauge_give_or_take=gauge.give_or_take,
            drift_give_or_take=drift.give_or_take,
            before_washing_mm=gauge.before_washing_mm,
            ends_mm=ends_mm,
        )

    def reach(self, height: float) -> float:
        """The size in mm of so many."""
        return height * self.mm + self.ends_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """So many stitches or rows and the size they make, in mm.

    ``repeats`` (of rows: groups) has a half where the pattern ends on one; ``chain`` is 0 for rows, and None where the
    turning chain is not known. ``gauge_give_or_take_mm`` is
    the swatch's alone, ``give_or_take_mm`` that of a whole piece (with drift); None: unknown.
    """

    count: int
    repeats: float
    chain: int | None
    wanted_mm: float
    mm: float
    gauge_give_or_take_mm: float | None
    give_or_take_mm: float | None
    before_washing_mm: float | None
    recommended: bool = False

    @property
    def difference_mm(self) -> float:
        """How much larger it comes out than wanted."""
        return self.mm - self.wanted_mm

    @property
    def known_chain(self) -> int:
        """The chain. Raises FirstStitchUnknownError."""
        if self.chain is None:
            raise FirstStitchUnknownError
        return self.chain


class Count(NamedTuple):
    """What an option counts; ``height`` is that of the count in stitches or mean rows."""

    number: int
    repeats: float
    height: float
    chain: int | None = 0


def options_for(wanted_mm: float, pitch: Pitch, counts: Sequence[Count], choose: Choose) -> tuple[Option, ...]:
    """The options of ``counts`` (in rising order), just one of them recommended."""
    best = _best([pitch.reach(one.height) for one in counts], wanted_mm, choose)
    return tuple(_option(wanted_mm, pitch, one, recommended=place == best) for place, one in enumerate(counts))


def recommended(options: Sequence[Option]) -> Option:
    """The one to take."""
    return next(option for option in options if option.recommended)


def whole_around(exact: float, least: int) -> list[int]:
    """The whole numbers on both sides of ``exact`` and one more each way, none below ``least`` (else it and the next)."""
    near = round(exact)
    if abs(exact - near) < 1e-9:
        exact = near
    found = range(math.floor(exact) - 1, math.ceil(exact) + 2)
    return [k for k in found if k >= least] or [least, least + 1]


def _option(wanted_mm: float, pitch: Pitch, one: Count, *, recommended: bool) -> Option:
    mm = pitch.reach(one.height)
    gauge_mm = None if pitch.gauge_give_or_take is None else pitch.gauge_give_or_take * (one.height * pitch.mm)
    before = None if pitch.before_washing_mm is None else one.height * pitch.before_washing_mm + pitch.ends_mm
    return Option(
        count=one.number,
        repeats=one.repeats,
        chain=one.chain,
        wanted_mm=wanted_mm,
        mm=mm,
        gauge_give_or_take_mm=gauge_mm,
        give_or_take_mm=combined(gauge_mm, pitch.drift_give_or_take * mm),
        before_washing_mm=before,
        recommended=recommended,
    )


def _best(sizes: Sequence[float], wanted: float, choose: Choose) -> int:
    """The place in ``sizes`` (in rising order) of the one to recommend; where none is as asked, the nearest to it."""
    tolerance = 1e-6
    if choose is Choose.AT_LEAST:
        return next((i for i, size in enumerate(sizes) if size >= wanted - tolerance), len(sizes) - 1)
    if choose is Choose.AT_MOST:
        return max((i for i, size in enumerate(sizes) if size <= wanted + tolerance), default=0)
    return min(range(len(sizes)), key=lambda i: (round(abs(sizes[i] - wanted), 6), sizes[i]))
