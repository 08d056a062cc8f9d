"""Readings as a maker says them: ``4 repeats = 15.1 cm``, ``2.75 repeats in 10 cm``, ``14 sts x 11 rows = 10 cm``.

A *span* says how far some whole units reach, read on a tape to 1 mm (1/16 in for inches). A *count* says how many units lie
in a length. A number that is not whole is always taken as a count, whichever word stands between: nobody lays the tape to three
quarters of a repeat; and so are whole stitches or rows over just 10 cm or 4 in (typed without decimals), since that is how a
gauge is counted. How finely tape and count are read where the maker says nothing is told by ``assumptions.py``; how a reading
is written by ``reading_text.py``.
"""

import math
import re
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from logbook.craft.swatches import reading_text
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.reading_text import GAUGE_LENGTHS, WrittenReading, readings_apart, taken_apart
from logbook.craft.words.lengths import MM_PER_INCH, Units, unit_mm
from logbook.craft.words.numbers import read_number
from logbook.errors import UnreadableError

_LARGEST = 100_000


class Counted(StrEnum):
    """What was counted."""

    STITCHES = "stitches"
    REPEATS = "repeats"
    ROWS = "rows"
    ROW_REPEATS = "row repeats"

    @property
    def direction(self) -> Direction:
        """The direction these units run in."""
        return Direction.STITCHES if self in (Counted.STITCHES, Counted.REPEATS) else Direction.ROWS

    @property
    def one(self) -> str:
        """The word for one of them."""
        return {"stitches": "stitch"}.get(self.value, self.value[:-1])

    @property
    def whole_repeats(self) -> bool:
        """Whether one unit is a whole repeat of the pattern."""
        return self in (Counted.REPEATS, Counted.ROW_REPEATS)


@dataclass(frozen=True, slots=True)
class Reading:
    """One measurement: ``number`` of units over ``length_mm``.

    ``finest`` is how finely the maker says it was read: mm of tape for a span, units for a count; None where nothing was said.
    ``text`` is what was typed, with the unit of length added if that was left out.
    """

    number: float
    counted: Counted
    length_mm: float
    is_count: bool
    inches: bool
    finest: float | None
    text: str

    @property
    def measures(self) -> bool:
        """Whether both numbers are more than 0 and finite, as what is typed always is; a file may hold anything."""
        return 0 < self.number < math.inf and 0 < self.length_mm < math.inf

    @property
    def unit_mm(self) -> float:
        """Length of one unit in mm."""
        return self.length_mm / self.number


_UNIT_WORDS = (
    (Counted.ROW_REPEATS, reading_text.ROW_REPEATS),
    (Counted.ROWS, reading_text.ROWS),
    (Counted.REPEATS, reading_text.REPEATS),
    (Counted.STITCHES, reading_text.STITCHES),
)


def read_readings(text: str, direction: Direction | None = None, units: Units = Units.CM) -> tuple[Reading, ...]:
    """All readings in ``text``, parted by ``;`` or line breaks.

    With a ``direction``, plain ``repeats`` among rows are row repeats, and units of the other direction are refused. Stitches and
    rows counted together without a length, ``16 x 20``, are those in 10 cm (4 in where lengths are in inches).
    Raises UnreadableError naming the part that can't be read.
    """
    return tuple(reading for part in readings_apart(text) for reading in _read_one(part, direction, units))


def as_read_today(kept: Reading) -> Reading:
    """A reading that was kept as a span, though its whole stitches over just 10 cm or 4 in are a count; others as they are."""
    if kept.is_count or kept.finest is not None or round(kept.length_mm, 6) not in (100.0, 101.6):
        return kept
    try:
        (again,) = read_readings(kept.text, kept.counted.direction)
    except (UnreadableError, ValueError):
        return kept
    return again


def _is_gauge_count(number: Fraction, counted: Counted, length: str, per_unit: Fraction) -> bool:
    """Whether whole stitches or rows were counted over just 10 cm or 4 in, typed without decimals."""
    just = any(length == GAUGE_LENGTHS[units] and per_unit == unit_mm(None, units) for units in Units)
    return just and number.denominator == 1 and not counted.whole_repeats


def _read_one(typed: str, direction: Direction | None, units: Units) -> list[Reading]:
    written = taken_apart(typed, units)
    if not written.unit and written.length:
        typed = f"{typed[: written.end].rstrip()} {units.value}{typed[written.end :]}"
    written = written._replace(unit=written.unit or units.value)
    if len(written.counts) == 1:
        return [_reading(written, 0, typed, direction, units)]
    if direction is not None:
        raise UnreadableError(f"“{typed}” counts two things at once: write the stitches and the rows apart.")
    length = written.length or ("" if written.counting else GAUGE_LENGTHS[units])
    over = " ".join(f"in {length} {written.unit}".split())
    counted = written._replace(length=length, counting=True, fine=None)
    pair = [
        _reading(counted, place, f"{number} {what} {over}", None, units) for place, (number, what) in enumerate(written.counts)
    ]
    if len({one.counted.direction for one in pair}) < 2:
        raise UnreadableError(f"“{typed}” counts two things at once: write the stitches and the rows apart.")
    return pair


def _reading(written: WrittenReading, place: int, typed: str, direction: Direction | None, units: Units) -> Reading:
    number, what = written.counts[place]
    amount, per_unit = read_number(number), unit_mm(written.unit, units)
    length = (read_number(written.length) if written.length else Fraction(1)) * per_unit
    if not (0 < amount <= _LARGEST and 0 < length <= _LARGEST):
        raise UnreadableError(f"“{typed}” is not a reading: number and length must be above 0 and of a swatch's size.")
    counted = _counted(what, typed, direction)
    gauge = written.fine is None and _is_gauge_count(amount, counted, written.length, per_unit)
    is_count = written.counting or amount.denominator != 1 or gauge
    return Reading(
        number=float(amount),
        counted=counted,
        length_mm=float(length),
        is_count=is_count,
        inches=per_unit == MM_PER_INCH,
        finest=_fraction_step(number, amount) if is_count else _tape(written, typed),
        text=typed,
    )


def _counted(what: str, typed: str, direction: Direction | None) -> Counted:
    counted = next(unit for unit, words in _UNIT_WORDS if re.fullmatch(words, what, re.IGNORECASE))
    if direction is Direction.ROWS and counted is Counted.REPEATS:
        return Counted.ROW_REPEATS
    if direction is not None and counted.direction is not direction:
        raise UnreadableError(f"“{typed}” counts {counted.value}, but {direction.value} belong here.")
    return counted


def _fraction_step(typed: str, amount: Fraction) -> float | None:
    """A count typed as thirds, eighths or the like says its own step; decimals and quarters leave it to the assumptions."""
    if typed.strip().replace(",", "").replace(".", "").isdecimal() or amount.denominator in (1, 2, 4):
        return None
    return 1 / amount.denominator


def _tape(written: WrittenReading, typed: str) -> float | None:
    if written.fine is None:
        return None
    fine, unit = written.fine
    finest = float((read_number(fine) if fine else 1) * unit_mm(unit, Units.CM))
    if finest <= 0:
        raise UnreadableError(f"“{typed}”: how finely the tape was read must be more than 0.")
    return finest
