"""Where a give or take mostly comes from, and what would narrow it.

What other readings would reach is reckoned for N like spans of x mm at different places, the fabric varying as it does now::

    U² = (t(97.5 %, ν0 + N − 1)·s/√N)² + 3·(r/(√6·x))²/N

More readings of the swatch never narrow a whole piece's drift; where that is the largest part, this is what is said.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from logbook.craft.gauges.drift import Drift
from logbook.craft.gauges.washing import FinishedGauge, Washing
from logbook.craft.swatches.assumptions import PRIOR_DEGREES, Assumptions
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.gauge import Gauge, gauge_of
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.student import t_975
from logbook.craft.words.counting import plural
from logbook.craft.words.numbers import show_percent

USUAL_SPAN_MM = 100.0
_PLACES = (3, 5, 8)


class Cause(StrEnum):
    """The largest part of a give or take."""

    COARSE_COUNT = "a count too coarse to say"
    FEW_PLACES = "too few places"
    COUNTING = "counting"
    SHORT_SPANS = "short spans"
    BORROWED_WASHING = "washing taken from other swatches"
    DRIFT = "drift"


@dataclass(frozen=True, slots=True)
class Advice:
    """``now``: the swatch's own relative give or take, without drift (None: not known).

    ``reach``: what it would be after doing as the advice says; None if nothing done to the swatch would narrow it.
    ``sentences`` say it all: what is missing first, then the main one.
    """

    cause: Cause
    now: float | None
    reach: float | None
    sentences: tuple[str, ...]


def spans_reach(places: int, span_mm: float, variation: float, finest_mm: float) -> float:
    """The relative give or take of ``places`` spans of ``span_mm``, the fabric varying by ``variation`` from place to place."""
    fabric = t_975(PRIOR_DEGREES + places - 1) * variation / math.sqrt(places)
    return math.hypot(fabric, math.sqrt(3 / places) * finest_mm / (math.sqrt(6) * span_mm))


def reading_advice(
    finished: FinishedGauge, readings: Sequence[Reading], per_repeat: int | None, drift: Drift, assumptions: Assumptions
) -> Advice:
    """What to do about the readings behind ``finished.gauge``; ``per_repeat`` as for ``gauge_of``."""
    cause = _cause(finished, drift)
    main, reach = _main(cause, finished, drift, _measured(finished.gauge, readings, per_repeat, assumptions))
    sentences = [*_about_washing(finished), main, *_about_stray_readings(readings, per_repeat, assumptions)]
    return Advice(cause, finished.give_or_take, reach, tuple(sentences))


def _cause(finished: FinishedGauge, drift: Drift) -> Cause:
    gauge = finished.gauge
    if gauge.too_coarse:
        return Cause.COARSE_COUNT
    parts = {
        Cause.FEW_PLACES: gauge.fabric_part,
        Cause.COUNTING: gauge.counting_part,
        Cause.SHORT_SPANS: math.sqrt(max(gauge.tape_part**2 - gauge.counting_part**2, 0.0)),
        Cause.BORROWED_WASHING: finished.borrowed_part,
        Cause.DRIFT: drift.give_or_take,
    }
    return max(parts, key=lambda cause: round(parts[cause], 6))  # on a tie what can be done something about


@dataclass(frozen=True, slots=True)
class _Measured:
    """A swatch as it was measured: readings reach ``span_mm`` in the mean; one whole ``unit`` of it is ``unit_mm``."""

    gauge: Gauge
    span_mm: float
    finest_mm: float
    unit: str
    unit_mm: float

    def whole_units(self, span_mm: float) -> tuple[int, str]:
        """Whole units that reach about so far, at least 2: their number, and in words."""
        number = max(round(span_mm / self.unit_mm), 2)
        return number, f"{number} whole {plural(self.unit)}"

    def reach(self, places: int, span_mm: float) -> float:
        """The give or take of so many spans of about ``span_mm``, in whole units."""
        length = self.whole_units(span_mm)[0] * self.unit_mm
        return spans_reach(places, length, self.gauge.variation, self.finest_mm)


def _measured(gauge: Gauge, readings: Sequence[Reading], per_repeat: int | None, assumptions: Assumptions) -> _Measured:
    direction = readings[0].counted.direction
    in_repeats = direction is Direction.STITCHES and per_repeat is not None and per_repeat > 1
    return _Measured(
        gauge=gauge,
        span_mm=math.fsum(reading.length_mm for reading in readings) / len(readings),
        finest_mm=assumptions.tape_inch_mm if readings[0].inches else assumptions.tape_mm,
        unit="repeat" if in_repeats else direction.one,
        unit_mm=gauge.pitch_mm * (per_repeat if in_repeats and per_repeat else 1),
    )


def _main(cause: Cause, finished: FinishedGauge, drift: Drift, measured: _Measured) -> tuple[str, float | None]:
    """The main sentence, and the give or take that doing so would reach."""
    gauge, places = measured.gauge, measured.gauge.readings
    now = f"Most of the readings' give or take of {show_percent(gauge.give_or_take or 0)} comes from"
    reach = measured.reach(places, measured.span_mm)
    _, units = measured.whole_units(measured.span_mm)
    if cause is Cause.COARSE_COUNT:
        return (
            f"Counted too coarsely to say how sure: measure how far {units} reach, for give or take {show_percent(reach)}.",
            reach,
        )
    if cause is Cause.COUNTING:
        return f"{now} counting: measure how far {units} reach instead, and it would be about {show_percent(reach)}.", reach
    if cause is Cause.BORROWED_WASHING:
        whole = f"Most of the give or take of {show_percent(finished.give_or_take or 0)} comes from borrowing the washing"
        return f"{whole}: wash this swatch and measure it, and it would be about {show_percent(reach)}.", reach
    if cause is Cause.SHORT_SPANS:
        longer = max(USUAL_SPAN_MM, 2 * measured.span_mm)
        reach = measured.reach(places, longer)
        _, units = measured.whole_units(longer)
        return f"{now} reading the tape over so short a span: over {units} it would be about {show_percent(reach)}.", reach
    if cause is Cause.FEW_PLACES:
        return _more_places(now, measured)
    return (
        f"The swatch says give or take {show_percent(finished.give_or_take or 0)}; a finished piece usually differs from its "
        f"swatch by up to {show_percent(drift.give_or_take)}, and that is the largest part. More readings do not make it "
        "smaller; only finished pieces, measured and logged, do.",
        None,
    )


def _more_places(now: str, measured: _Measured) -> tuple[str, float | None]:
    done = measured.gauge.readings
    places = next((number for number in _PLACES if number > done), None)
    if places is None:
        return f"{now} how unevenly the fabric is worked, and {done} places are plenty: leave it at that.", None
    reach = measured.reach(places, measured.span_mm)
    few = "having measured one place" if done == 1 else f"having measured only {done} places"
    how = f", each by how far {measured.whole_units(measured.span_mm)[1]} reach," if measured.gauge.counting_part else ""
    return f"{now} {few}: with {places} in all{how} it would be about {show_percent(reach)}.", reach


def _about_washing(finished: FinishedGauge) -> list[str]:
    if finished.washing is Washing.UNKNOWN:
        return ["Not washed yet, and no other swatch tells how this yarn takes it: wash it, dry it and measure it again."]
    return []


def _about_stray_readings(readings: Sequence[Reading], per_repeat: int | None, assumptions: Assumptions) -> list[str]:
    """A reading further from its fellows than both sides' give or take allows; of two, that they contradict each other."""
    worst, excess = None, 1.0
    for place, reading in enumerate(readings if len(readings) > 1 else ()):
        own = gauge_of([reading], per_repeat, assumptions)
        rest = gauge_of([other for i, other in enumerate(readings) if i != place], per_repeat, assumptions)
        if own.give_or_take is not None and rest.give_or_take is not None:
            off = math.log(own.pitch_mm / rest.pitch_mm)
            if abs(off) / math.hypot(own.give_or_take, rest.give_or_take) > excess:
                excess = abs(off) / math.hypot(own.give_or_take, rest.give_or_take)
                worst = reading, math.expm1(off)
    if worst is None:
        return []
    reading, off = worst
    if len(readings) == 2:
        return [
            f"The two readings contradict each other by {show_percent(abs(off))}: measure a third place to see which to trust."
        ]
    where = "above" if off > 0 else "below"
    return [f"“{reading.text}” lies {show_percent(abs(off))} {where} the others: measure there again. It is still counted."]
