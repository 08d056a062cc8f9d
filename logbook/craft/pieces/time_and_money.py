"""How long a piece takes, and what it costs as its maker counts it; never what to ask for it.

A swatch whose time is known says how long a stitch takes its hand: minutes = stitches worked × minutes a stitch. The give or take
is what that hand's other swatches and made pieces leave open; from one swatch alone there is none.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from logbook.craft.gauges.drift import Drift
from logbook.craft.swatches.yarn import Yarn


@dataclass(frozen=True, slots=True)
class TimeNeeded:
    """Minutes at work, and their half-width; None: one swatch alone tells."""

    minutes: float
    give_or_take_minutes: float | None

    @property
    def hours(self) -> float:
        """The same in hours."""
        return self.minutes / 60

    @property
    def give_or_take_hours(self) -> float | None:
        """The half-width in hours."""
        return None if self.give_or_take_minutes is None else self.give_or_take_minutes / 60


def time_needed(minutes_a_stitch: float | None, stitches: float | None, pace: Drift) -> TimeNeeded | None:
    """For so many stitches worked; None if they or the time of a stitch are not known."""
    if minutes_a_stitch is None or stitches is None:
        return None
    minutes = minutes_a_stitch * pace.factor * stitches
    return TimeNeeded(minutes, pace.give_or_take * minutes if pace.pieces else None)


def time_together(parts: Iterable[TimeNeeded | None]) -> TimeNeeded | None:
    """What several take in all; None if one is not known, or there is none. One hand's pace is in all, so the half-widths add."""
    times = tuple(parts)
    known = [time for time in times if time is not None]
    if not known or len(known) != len(times):
        return None
    sure = [time.give_or_take_minutes for time in known if time.give_or_take_minutes is not None]
    minutes = math.fsum(time.minutes for time in known)
    return TimeNeeded(minutes, math.fsum(sure) if len(sure) == len(known) else None)


@dataclass(frozen=True, slots=True)
class Price:
    """What something costs its maker, in ``currency``: yarn by the ball, ``else_`` what else it takes, and work by the hour.

    None: not known, or not counted. ``give_or_take`` is that of the work.
    """

    yarn: float | None
    else_: float = 0.0
    work: float | None = None
    give_or_take: float | None = None
    currency: str = ""

    @property
    def whole(self) -> float | None:
        """All of it; None if the yarn's is not known."""
        return None if self.yarn is None else self.yarn + self.else_ + (self.work or 0.0)


def yarn_cost(yarn: Yarn, balls: int | None) -> float | None:
    """So many balls of it; None if that or their price is not known."""
    return None if balls is None or yarn.ball_price is None else balls * yarn.ball_price


def price_of(yarn: float | None, currency: str, time: TimeNeeded | None, rate: float, else_: float = 0.0) -> Price:
    """Hours × ``rate`` + yarn + else; a rate of 0 counts no work."""
    if time is None or not rate:
        return Price(yarn, else_, currency=currency)
    sure = time.give_or_take_hours
    return Price(yarn, else_, time.hours * rate, None if sure is None else sure * rate, currency)
