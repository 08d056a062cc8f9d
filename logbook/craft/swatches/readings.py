"""Readings as a maker says them: ``4 repeats = 15.1 cm``, ``2.75 repeats in 10 cm``, ``14 sts x 11 rows = 10 cm``.

A *span* says how far some whole units reach, read on a tape to 1 mm (1/16 in for inches). A *count* says how many units lie
in a length, read to a quarter (or to its last decimal, if it is no multiple of 1/4). A number that is not whole is always
taken as a count, whichever word stands between: nobody lays the tape to three quarters of a repeat. How finely tape and
count are read where the maker says nothing is an assumption of the logbook (``assumptions.py``).
"""

import re
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.lengths import MM_PER_INCH, UNIT, Units, unit_mm
from logbook.craft.words.numbers import NUMBER, read_number
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
    def unit_mm(self) -> float:
        """Length of one unit in mm."""
        return self.length_mm / self.number


_KINDS = r"(?:f?sc|hdc|htr|dc|dtr|trtr|qtr|tr)s?"
_UNIT_WORDS = [
    (Counted.ROW_REPEATS, r"(?:row|rnd|round)[\s-]*(?:repeats?|reps?)"),
    (Counted.ROWS, r"rows?|rnds?|rounds?"),
    (Counted.REPEATS, r"(?:pattern\s+|stitch\s+)?(?:repeats?|reps?)"),
    (Counted.STITCHES, rf"stitch(?:es)?|sts?\.?|{_KINDS}"),
]
_COUNTED = "|".join(f"(?:{words})" for _, words in _UNIT_WORDS)
_TAPE = rf"(?:\s*\(?\s*to\s+(?:the\s+)?(?P<fine>{NUMBER})?\s*(?P<fine_unit>{UNIT})\s*\)?)?"
_READING = re.compile(
    rf"\s*(?P<n>{NUMBER})\s*(?P<what>{_COUNTED})"
    rf"(?:\s*(?:x|×|\*|and|by|,)\s*(?P<n2>{NUMBER})\s*(?P<what2>{_COUNTED}))?"
    rf"\s*(?P<between>=|:|in|over|per|to|/|make|makes|reach|measure)\s*"
    rf"(?P<length>{NUMBER})?\s*(?P<unit>{UNIT})?{_TAPE}\s*\Z",
    re.IGNORECASE,
)
_COUNT_WORDS = {"in", "over", "per", "to", "/"}
_EXAMPLE = "write it like “4 repeats = 15.1 cm”, “2.75 repeats in 10 cm” or “22 rows = 15 cm”"


def read_readings(text: str, direction: Direction | None = None, units: Units = Units.CM) -> tuple[Reading, ...]:
    """All readings in ``text``, parted by ``;`` or line breaks.

    With a ``direction``, plain ``repeats`` among rows are row repeats, and units of the other direction are refused.
    Raises UnreadableError naming the part that can't be read.
    """
    found: list[Reading] = []
    for part in re.split(r"[;\n]", text):
        if part.strip():
            found.extend(_read_one(part, direction, units))
    return tuple(found)


def _read_one(part: str, direction: Direction | None, units: Units) -> list[Reading]:
    typed = " ".join(part.split())
    match = _READING.match(typed)
    if match is None or not (match["length"] or (match["unit"] and match["between"].lower() in ("per", "/"))):
        raise UnreadableError(f"“{typed[:60]}” is not a reading: {_EXAMPLE}.")
    if match["length"] and not match["unit"]:
        typed = f"{typed[: match.end('length')].rstrip()} {units.value}{typed[match.end('length') :]}"
    if not match["n2"]:
        return [_reading(match, match["n"], match["what"], typed, direction, units)]
    over = f"in {match['length'] or ''} {match['unit'] or units.value}"
    pair = [
        replace(_reading(match, number, what, " ".join(f"{number} {what} {over}".split()), None, units), is_count=True)
        for number, what in ((match["n"], match["what"]), (match["n2"], match["what2"]))
    ]
    if direction is not None or len({one.counted.direction for one in pair}) < 2:
        raise UnreadableError(f"“{typed}” counts two things at once: write the stitches and the rows apart.")
    return pair


def _reading(match: re.Match[str], number: str, what: str, typed: str, direction: Direction | None, units: Units) -> Reading:
    amount = read_number(number)
    per_unit = unit_mm(match["unit"], units)
    length = (read_number(match["length"]) if match["length"] else Fraction(1)) * per_unit
    if not (0 < amount <= _LARGEST and 0 < length <= _LARGEST):
        raise UnreadableError(f"“{typed}” is not a reading: number and length must be above 0 and of a swatch's size.")
    is_count = match["between"].lower() in _COUNT_WORDS or amount.denominator != 1
    return Reading(
        number=float(amount),
        counted=_counted(what, typed, direction),
        length_mm=float(length),
        is_count=is_count,
        inches=per_unit == MM_PER_INCH,
        finest=_fraction_step(number, amount) if is_count else _tape(match),
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


def _tape(match: re.Match[str]) -> float | None:
    if not match["fine_unit"]:
        return None
    finest = float((read_number(match["fine"]) if match["fine"] else 1) * unit_mm(match["fine_unit"], Units.CM))
    if finest <= 0:
        raise UnreadableError(f"“{match[0].strip()}”: how finely the tape was read must be more than 0.")
    return finest
