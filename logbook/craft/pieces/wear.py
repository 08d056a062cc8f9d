"""How a made piece wears: what it measured on later days, a line a day, as a maker writes it down.

``2026-09-01: 47.5 x 58 cm, 3 washes, cuffs loose``
"""

import re
from collections.abc import Iterator
from typing import NamedTuple

from logbook.craft.swatches.fields import clean_text, exact, read_date
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import UNIT, Units, read_size
from logbook.craft.words.numbers import NUMBER
from logbook.errors import UnreadableError

MOST = 200
"""Lines of one piece."""
_DATE = re.compile(r"\s*(\d{4}-\d{2}-\d{2})(?!\d)\s*[:,;–-]?\s*(.*)\Z", re.DOTALL)
_BOTH = re.compile(rf"({NUMBER})\s*({UNIT})?\s*(?:x|×|by)\s*({NUMBER})\s*({UNIT})?\Z", re.IGNORECASE)
_ONE = re.compile(rf"({NUMBER}\s*(?:{UNIT})?)\s*(wide|long)\Z", re.IGNORECASE)
_WASHES = re.compile(r"(?:after\s+)?(\d{1,4})\s*(?:x\s*)?wash(?:es|ed)?\Z", re.IGNORECASE)
_EXAMPLE = "“2026-09-01: 47.5 x 58 cm, 3 washes, cuffs loose”"


class Worn(NamedTuple):
    """One day's measuring: ISO date, width and length in mm, how often it was washed by then (None: not said), and words."""

    date: str
    width_mm: float | None = None
    length_mm: float | None = None
    washes: int | None = None
    words: str = ""


def read_worn(text: str, units: Units = Units.CM) -> tuple[Worn, ...]:
    """The lines of ``text`` in the order of their dates; lengths without a unit are in ``units``.

    Raises UnreadableError, naming the line at fault.
    """
    lines = [line for line in clean_text(text).split("\n") if line.strip()]
    if len(lines) > MOST:
        raise UnreadableError(f"There are {len(lines)} lines of wear: the most is {MOST}.")
    return tuple(sorted((_line(line, units) for line in lines), key=lambda worn: worn.date))


def worn_text(worn: tuple[Worn, ...]) -> str:
    """The text that reads back as the same, whatever the units."""
    return "\n".join(f"{one.date}: {', '.join(_parts(one))}" for one in worn)


def _line(line: str, units: Units) -> Worn:
    found = _DATE.match(line)
    if found is None:
        raise UnreadableError(f"“{line.strip()[:40]}” does not begin with its date: type it like {_EXAMPLE}.")
    worn, words = Worn(read_date(found[1])), []
    for part in filter(None, (part.strip() for part in re.split(r"[;\n]|,\s|,\Z", found[2]))):
        if both := _BOTH.match(part):
            width, length = (
                read_size(f"{number} {unit or ''}", units, "a length")
                for number, unit in ((both[1], both[2] or both[4]), (both[3], both[4] or both[2]))
            )
            worn = worn._replace(width_mm=width, length_mm=length)
        elif one := _ONE.match(part):
            size = read_size(one[1], units, "a length")
            worn = worn._replace(width_mm=size) if one[2].lower() == "wide" else worn._replace(length_mm=size)
        elif washes := _WASHES.match(part):
            worn = worn._replace(washes=int(washes[1]))
        else:
            words.append(part)
    if not (words or worn.width_mm or worn.length_mm or worn.washes is not None):
        raise UnreadableError(f"“{line.strip()[:40]}” says nothing beside its date: type it like {_EXAMPLE}.")
    return worn._replace(words=", ".join(words))


def _parts(worn: Worn) -> Iterator[str]:
    width, length = (None if mm is None else exact(round(mm / 10, 9)) for mm in (worn.width_mm, worn.length_mm))
    if width and length:
        yield f"{width} x {length} cm"
    elif width or length:
        yield f"{width} cm wide" if width else f"{length} cm long"
    if worn.washes is not None:
        yield counted(worn.washes, "wash")
    if worn.words:
        yield worn.words
