"""Lengths: kept in mm as real numbers, read once as people type them, rounded once when shown."""

import re
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from logbook.craft.words.numbers import NUMBER, fixed, in_mark, read_number
from logbook.errors import UnreadableError

MM_PER_INCH = Fraction(254, 10)
LONGEST_MM = 100_000.0


class Units(StrEnum):
    """What lengths are shown in, and read in where no unit is typed."""

    CM = "cm"
    INCHES = "in"


_UNIT_MM = {"mm": Fraction(1), "mi": Fraction(1), "cm": Fraction(10), "ce": Fraction(10), "m": Fraction(1000)}
"""By the first two letters; all others are inches."""
UNIT = r"(?:millimet(?:er|re)s?|centimet(?:er|re)s?|mms?\b|mm|cms?\b|cm|m\b|inch(?:es)?|ins?\.?|\"|”|″|'')"
"""A pattern (without anchors) for a unit of length as typed."""

_LENGTH = rf"\s*(?P<number>{NUMBER})\s*(?P<unit>{UNIT})?\s*\Z"


def unit_mm(text: str | None, units: Units) -> Fraction:
    """How many mm the typed unit stands for; ``units`` where none was typed."""
    return _UNIT_MM.get((text or units.value)[:2].lower(), MM_PER_INCH)


def read_length(text: str, units: Units = Units.CM, what: str = "a length") -> float:
    """A typed length in mm, of either sign: ``46``, ``46,5 cm``, ``460 mm``, ``18 1/4 in``, ``18¼"``.

    Raises UnreadableError, naming the text and ``what`` it should be, if it is no length or beyond 100 m.
    """
    found = re.match(_LENGTH, text, re.IGNORECASE)
    if found is None:
        raise UnreadableError(f"“{text.strip()[:40]}” is not {what}: type it like 46, or {in_mark('46.5')} cm, or 18 1/4 in.")
    mm = float(read_number(found["number"], what) * unit_mm(found["unit"], units))
    if abs(mm) > LONGEST_MM:
        raise UnreadableError(f"“{text.strip()}” is too long for {what}: the most is 100 m.")
    return mm


def read_size(text: str, units: Units = Units.CM, what: str = "a width") -> float:
    """Like ``read_length``, for lengths that must be above nought."""
    mm = read_length(text, units, what)
    if mm <= 0:
        raise UnreadableError(f"“{text.strip()}” is not {what}: it must be more than 0.")
    return mm


def show_length(mm: float, units: Units = Units.CM) -> str:
    """``46.5 cm`` to 1 mm, or ``18 1/4 in`` to the nearest 1/8."""
    if units is Units.CM:
        return f"{fixed(mm / 10, 1)} cm"
    return show_inches(mm) + " in"


def show_inches(mm: float) -> str:
    """Inches to the nearest 1/8 without the unit: ``18 1/4``."""
    eighths = round(mm / float(MM_PER_INCH) * 8)
    whole, rest = divmod(abs(eighths), 8)
    part = str(Fraction(rest, 8)) if rest else ""
    shown = " ".join(word for word in (str(whole) if whole or not part else "", part) if word)
    return ("−" if eighths < 0 else "") + shown


def show_difference(mm: float, units: Units = Units.CM) -> str:
    """A length with its sign always shown: ``+0.5 cm``, ``−3.4 cm``; ``0.0 cm`` where it rounds to nought."""
    shown = show_length(mm, units)
    nought = show_length(0.0, units)
    return nought if shown.lstrip("−") == nought else shown if shown.startswith("−") else "+" + shown


def show_small(mm: float, units: Units = Units.CM) -> str:
    """A small length such as one repeat: ``3.82 cm``, ``1.50 in``."""
    return f"{fixed(mm / (10 if units is Units.CM else float(MM_PER_INCH)), 2)} {units.value}"


@dataclass(frozen=True, slots=True)
class Ease:
    """How much larger than the body (negative: smaller) a garment is, as a length or as a share of the body."""

    mm: float = 0.0
    share: float = 0.0

    def of(self, body_mm: float) -> float:
        """The ease in mm on a body of that girth."""
        return self.mm + self.share * body_mm


NO_EASE = Ease()


def read_ease(text: str, units: Units = Units.CM) -> Ease:
    """Ease as typed: ``5 cm``, ``-5 cm``, ``−2"``, ``-6 %``. Raises UnreadableError otherwise."""
    if text.strip().endswith("%"):
        percent = float(read_number(text.strip()[:-1], "an ease"))
        if not -90 <= percent <= 400:
            raise UnreadableError(f"“{text.strip()}” is not an ease a garment can have: type from -90 % to 400 %.")
        return Ease(share=percent / 100)
    return Ease(mm=read_length(text, units, "an ease"))
