"""The pitch that a finished size speaks of: washing measured, borrowed from other swatches of the yarn, or unknown.

A swatch with only as-worked readings takes D = ln(washed/as worked) from J others of the same yarn, in the same direction and
way of washing (the same stitch first; never from plain to lace)::

    p = p_worked·exp(mean D)       τ² = (4·0.015² + SS_D)/(J + 3)
    U² = U_worked² + t(J+3)²·τ²·(1 + 1/J) + Σ(U_aj² + U_wj²)/J²

τ is how differently swatches of one yarn take washing (1.5 % before anything is known, worth 4 degrees of freedom).
"""

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from logbook.craft.gauges.drift import combined
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.student import t_975
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.errors import RefusedError

SPREAD = 0.015
SPREAD_DEGREES = 4


class Washing(StrEnum):
    """Where the washed pitch comes from."""

    MEASURED = "measured"
    BORROWED = "borrowed"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedGauge:
    """The pitch (mm per stitch or row) that finished sizes are reckoned with.

    ``condition`` is the state whose readings it comes from; with unknown washing it is the as-worked pitch, and
    ``give_or_take`` is None. ``change`` is washed/as worked − 1 where both are known or borrowed, ``lenders`` the tags of the
    swatches it was borrowed from, and ``borrowed_part`` what the borrowing adds to the give or take.
    """

    pitch_mm: float
    give_or_take: float | None
    condition: Condition
    washing: Washing
    gauge: Gauge
    before_washing_mm: float | None
    change: float | None = None
    borrowed_part: float = 0.0
    lenders: tuple[str, ...] = ()

    def times(self, factor: float) -> "FinishedGauge":
        """The same as a piece comes out whose stitches or rows are ``factor`` times as large as the swatch's."""
        before = self.before_washing_mm
        return replace(
            self,
            pitch_mm=self.pitch_mm * factor,
            before_washing_mm=None if before is None else before * factor,
        )


@dataclass(frozen=True, slots=True)
class Loan:
    """One lender: its tag, D = ln(washed/as worked), and the relative half-widths of its two gauges."""

    tag: str
    log_change: float
    worked_give_or_take: float
    washed_give_or_take: float


def finished_gauge(
    swatch: Swatch,
    direction: Direction,
    others: Iterable[Swatch],
    assumptions: Assumptions,
    condition: Condition = Condition.WASHED,
) -> FinishedGauge:
    """The gauge that finished sizes speak of: ``condition`` (washed, or pinned) if measured, else borrowed, else as worked.

    ``others`` may hold any swatches; those that can lend are picked. Raises RefusedError if the swatch has no readings as worked
    or finished in that direction.
    """
    found = finished_of(
        gauges_of(swatch, assumptions),
        direction,
        lambda: lenders_for(swatch, direction, others, assumptions, condition),
        condition,
    )
    if found is None:
        raise RefusedError(_nothing_to_reckon_with(swatch, direction, condition))
    return found


def finished_of(
    gauges: Mapping[tuple[Condition, Direction], Gauge],
    direction: Direction,
    loans: Callable[[], Sequence[Loan]],
    condition: Condition = Condition.WASHED,
) -> FinishedGauge | None:
    """The same of gauges that are worked out already; ``loans`` is asked only if washing must be borrowed. None without any."""
    worked = gauges.get((Condition.WORKED, direction))
    finished = gauges.get((condition, direction))
    if finished is not None:
        return FinishedGauge(
            pitch_mm=finished.pitch_mm,
            give_or_take=finished.give_or_take,
            condition=condition,
            washing=Washing.MEASURED,
            gauge=finished,
            before_washing_mm=worked.pitch_mm if worked else None,
            change=finished.pitch_mm / worked.pitch_mm - 1 if worked else None,
        )
    return None if worked is None else borrowed_gauge(worked, loans(), condition)


def borrowed_gauge(worked: Gauge, loans: Sequence[Loan], condition: Condition = Condition.WASHED) -> FinishedGauge:
    """The as-worked gauge carried through the washing of ``loans``; with none, washing is unknown."""
    if not loans:
        return FinishedGauge(
            pitch_mm=worked.pitch_mm,
            give_or_take=None,
            condition=Condition.WORKED,
            washing=Washing.UNKNOWN,
            gauge=worked,
            before_washing_mm=worked.pitch_mm,
        )
    count = len(loans)
    mean = math.fsum(loan.log_change for loan in loans) / count
    scatter = math.fsum((loan.log_change - mean) ** 2 for loan in loans)
    spread = math.sqrt((SPREAD_DEGREES * SPREAD**2 + scatter) / (count + SPREAD_DEGREES - 1))
    own = math.sqrt(math.fsum(x.worked_give_or_take**2 + x.washed_give_or_take**2 for x in loans)) / count
    borrowed = math.hypot(t_975(count + SPREAD_DEGREES - 1) * spread * math.sqrt(1 + 1 / count), own)
    return FinishedGauge(
        pitch_mm=worked.pitch_mm * math.exp(mean),
        give_or_take=combined(worked.give_or_take, borrowed),
        condition=condition,
        washing=Washing.BORROWED,
        gauge=worked,
        before_washing_mm=worked.pitch_mm,
        change=math.expm1(mean),
        borrowed_part=borrowed,
        lenders=tuple(loan.tag for loan in loans),
    )


def lenders_for(
    swatch: Swatch,
    direction: Direction,
    others: Iterable[Swatch],
    assumptions: Assumptions,
    condition: Condition,
    loan: Callable[[Swatch, Direction, Assumptions, Condition], Loan | None] | None = None,
) -> tuple[Loan, ...]:
    """Swatches of the same yarn and way of washing, measured before and after; the same stitch first, plain never to lace.

    ``loan`` is ``loan_of``, or one that remembers what it worked out.
    """
    lend = loan or loan_of
    if swatch.yarn is None:
        return ()
    same_yarn = [
        other
        for other in others
        if other.uid != swatch.uid
        and other.yarn is not None
        and other.yarn.uid == swatch.yarn.uid
        and _same_washing(swatch, other)
        and is_plain(swatch) == is_plain(other)
    ]
    same_stitch = [o for o in same_yarn if o.pattern and swatch.pattern and o.pattern.uid == swatch.pattern.uid]
    for group in (same_stitch, same_yarn):
        loans = [one for one in (lend(other, direction, assumptions, condition) for other in group) if one]
        if loans:
            return tuple(loans)
    return ()


def is_plain(swatch: Swatch) -> bool:
    """Plain stitches take washing as cloth, lace as a net: a repeat of one stitch is plain."""
    return swatch.pattern is None or (swatch.pattern.multiple or 1) == 1


def _same_washing(swatch: Swatch, other: Swatch) -> bool:
    """A swatch not yet washed seldom says how it will be: then every way of washing may lend."""
    mine, theirs = swatch.way_of_washing.strip().casefold(), other.way_of_washing.strip().casefold()
    return not mine or mine == theirs


def loan_of(other: Swatch, direction: Direction, assumptions: Assumptions, condition: Condition) -> Loan | None:
    """What a swatch can lend; None if it was not measured before and after washing."""
    return loan_from(other.tag, gauges_of(other, assumptions), direction, condition)


def loan_from(
    tag: str, gauges: Mapping[tuple[Condition, Direction], Gauge], direction: Direction, condition: Condition
) -> Loan | None:
    """The same of gauges that are worked out already."""
    worked, washed = gauges.get((Condition.WORKED, direction)), gauges.get((condition, direction))
    if worked is None or washed is None or worked.give_or_take is None or washed.give_or_take is None:
        return None
    return Loan(tag, math.log(washed.pitch_mm / worked.pitch_mm), worked.give_or_take, washed.give_or_take)


def _nothing_to_reckon_with(swatch: Swatch, direction: Direction, condition: Condition) -> str:
    known = swatch.tag if swatch.uid else ""  # the tag of one not logged yet may never have been seen
    if swatch.readings_of(condition, direction) or swatch.readings_of(Condition.WORKED, direction):
        what = "multiple" if direction is Direction.STITCHES else "rows in a repeat"
        whose = f"The readings of {known}" if known else "This swatch’s readings"
        return f"{whose} are in repeats: give the {what} of its stitch pattern."
    return (
        f"{known or 'This swatch'} has no reading of {direction.value} as worked or {condition.words}: "
        f"measure how far some whole {'repeats' if direction is Direction.STITCHES else 'rows'} reach."
    )
