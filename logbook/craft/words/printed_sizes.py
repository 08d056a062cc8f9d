"""Numbers of several sizes as a written pattern prints them: smallest first, the others in brackets."""

import re
from collections.abc import Iterable

from logbook.craft.words.lengths import MM_PER_INCH, Units, show_inches
from logbook.craft.words.numbers import show_number

_DECIMAL_COMMA = re.compile(r"\d,\d")


def sized(values: Iterable[object]) -> str:
    """``68 (74, 86, 92)``, or ``20,5 (21,5; 23)`` with a decimal comma; a single value stands alone.

    Raises ValueError without any.
    """
    shown = [str(value) for value in values]
    first, *others = shown
    parted = "; " if any(_DECIMAL_COMMA.search(value) for value in shown) else ", "
    return f"{first} ({parted.join(others)})" if others else first


def alike(values: Iterable[object]) -> str:
    """``68 (74, 86)``, or ``62`` where all sizes have the same."""
    shown = [str(value) for value in values]
    return shown[0] if len(set(shown)) == 1 else sized(shown)


def body_lengths(mm: Iterable[float]) -> str:
    """Measures of a body as they were typed, to 1 mm and 1/4 in: ``83.8 (94, 104) cm / 33 (37, 41) in``."""
    every = tuple(mm)
    cm = alike(show_number(one / 10, 1) for one in every)
    return f"{cm} cm / {alike(printed_length(one, Units.INCHES) for one in every)} in"


def printed_length(mm: float, units: Units) -> str:
    """A length without its unit, to 0.5 cm or 1/4 in: ``46.5``, ``18 1/4``."""
    if units is Units.CM:
        return show_number(round(mm / 5) * 0.5, 1)
    quarter = float(MM_PER_INCH) / 4
    return show_inches(round(mm / quarter) * quarter)
