"""A swatch: what it was worked of, and the readings taken of it in each condition."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge, GaugeSums, gauge_of, sums_of
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.counting import listed
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True)
class TakenReading:
    """A reading and the condition the fabric was in."""

    condition: Condition
    reading: Reading

    @property
    def direction(self) -> Direction:
        """The direction the reading ran in."""
        return self.reading.counted.direction


@dataclass(frozen=True, slots=True, kw_only=True)
class Swatch:
    """One swatch. Masses in grams, hooks in mm; ``hung_clip_mm``: the width the hung weight was clipped over; None: not known.

    ``date`` is ISO text, ``worked`` is ``flat``, ``round`` or "" (not said). ``swatch_stitches`` and ``swatch_rows`` are the
    whole swatch's, for the weight of one stitch; ``minutes`` is how long it took to work;
    ``pictures`` names its picture files, parted by ``;``.
    """

    uid: str = ""
    tag: str = ""
    date: str = ""
    yarn: Yarn | None = None
    pattern: StitchPattern | None = None
    colour: str = ""
    dye_lot: str = ""
    strands: int | None = None
    hook_mm: float | None = None
    hook_note: str = ""
    foundation_hook_mm: float | None = None
    worked: str = ""
    worked_by: str = ""
    way_of_washing: str = ""
    swatch_grams: float | None = None
    swatch_stitches: float | None = None
    swatch_rows: float | None = None
    notes: str = ""
    hung_grams: float | None = None
    hung_clip_mm: float | None = None
    minutes: float | None = None
    pictures: str = ""
    readings: tuple[TakenReading, ...] = ()

    @property
    def minutes_a_stitch(self) -> float | None:
        """How long a stitch of it took; None if its time, stitches or rows are not known."""
        stitches = (self.swatch_stitches or 0) * (self.swatch_rows or 0)
        return self.minutes / stitches if self.minutes and stitches else None

    def readings_of(self, condition: Condition, direction: Direction) -> tuple[Reading, ...]:
        """The readings of one condition and direction, in the order they were taken."""
        return tuple(r.reading for r in self.readings if r.condition is condition and r.direction is direction)

    def per_repeat(self, direction: Direction) -> int | None:
        """Stitches in a repeat, or rows in one; None if the pattern does not say."""
        if self.pattern is None:
            return None
        return self.pattern.multiple if direction is Direction.STITCHES else self.pattern.rows_in_repeat


def gauge_in(swatch: Swatch, condition: Condition, direction: Direction, assumptions: Assumptions) -> Gauge | None:
    """The swatch's gauge in one condition and direction; None without readings that measure. Raises as ``gauge_of``."""
    readings = measuring(swatch, condition, direction)
    return gauge_of(readings, swatch.per_repeat(direction), assumptions) if readings else None


def gauges_of(swatch: Swatch, assumptions: Assumptions) -> dict[tuple[Condition, Direction], Gauge]:
    """Every gauge that can be worked out; readings in repeats of an unstated length are left out."""
    return {
        (condition, direction): gauge_of(readings, swatch.per_repeat(direction), assumptions)
        for condition, direction, readings in _measured(swatch)
    }


def gauge_sums_of(swatch: Swatch) -> dict[tuple[Condition, Direction], GaugeSums]:
    """The sums behind every gauge in ``gauges_of``."""
    return {
        (condition, direction): sums_of(readings, swatch.per_repeat(direction))
        for condition, direction, readings in _measured(swatch)
    }


def _measured(swatch: Swatch) -> Iterator[tuple[Condition, Direction, Sequence[Reading]]]:
    """The readings behind each gauge that can be worked out."""
    found: dict[tuple[Condition, Direction], list[Reading]] = {}
    for taken in swatch.readings:
        if taken.reading.measures:
            found.setdefault((taken.condition, taken.direction), []).append(taken.reading)
    for condition, direction in _IN_ORDER:
        if (condition, direction) in found:
            readings = found[condition, direction]
            if not _repeat_unknown(readings, swatch.per_repeat(direction)):
                yield condition, direction, readings


def measuring(swatch: Swatch, condition: Condition, direction: Direction) -> list[Reading]:
    """The readings of one condition and direction that can be reckoned with."""
    return [reading for reading in swatch.readings_of(condition, direction) if reading.measures]


_IN_ORDER = tuple((condition, direction) for condition in Condition for direction in Direction)


def _repeat_unknown(readings: Sequence[Reading], per_repeat: int | None) -> bool:
    return per_repeat is None and any(reading.counted.whole_repeats for reading in readings)


def require_loggable(swatch: Swatch) -> None:
    """Raises RefusedError unless the swatch has a yarn or a stitch pattern, a hook, and one reading."""
    missing = [
        what
        for what, there in (
            ("a yarn or a stitch pattern", swatch.yarn or swatch.pattern),
            ("the hook", swatch.hook_mm),
            ("one reading", swatch.readings),
        )
        if not there
    ]
    if missing:
        raise RefusedError(f"A swatch needs {listed(missing)}: add {'it' if len(missing) == 1 else 'them'} and save again.")
