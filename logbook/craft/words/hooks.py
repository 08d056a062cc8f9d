"""The trade's hooks. The record keeps mm: letters differ between makers, and a bare number is never a size."""

import re
from typing import NamedTuple

from logbook.craft.words.numbers import in_mark, read_number, show_number
from logbook.craft.words.terms import Terms, gauge_word
from logbook.errors import UnreadableError


class Hook(NamedTuple):
    """A hook of the trade's table; "" where a scale has no name for it."""

    mm: float
    us: str
    uk: str


HOOKS = tuple(
    Hook(mm, us, uk)
    for mm, us, uk in (
        (2.0, "", "14"), (2.25, "B-1", "13"), (2.5, "", "12"), (2.75, "C-2", ""), (3.0, "", "11"), (3.25, "D-3", "10"),
        (3.5, "E-4", "9"), (3.75, "F-5", ""), (4.0, "G-6", "8"), (4.5, "7", "7"), (5.0, "H-8", "6"), (5.5, "I-9", "5"),
        (6.0, "J-10", "4"), (6.5, "K-10½", "3"), (7.0, "", "2"), (8.0, "L-11", "0"), (9.0, "M/N-13", "00"),
        (10.0, "N/P-15", "000"), (11.5, "P-16", ""), (12.0, "", ""), (15.0, "P/Q", ""), (16.0, "Q", ""), (19.0, "S-35", ""),
        (25.0, "T/U/X", ""),
    )
)  # fmt: skip

_LETTERS = {hook.us[0]: hook.mm for hook in HOOKS if hook.us[1:2] == "-" and hook.us != "P-16"}  # P has two sizes
_NAMES = {re.sub(r"[-/]", "", hook.us): hook.mm for hook in HOOKS if "-" in hook.us} | _LETTERS
_LEAST, _MOST = 0.4, 40.0


def read_hook(text: str) -> float:
    """A typed hook in mm: ``4.5``, ``4,5 mm``, or a name of the US table such as ``G``, ``G-6``, ``H/8``, ``K-10 1/2``.

    Raises UnreadableError for anything else, and beyond 0.4–40 mm.
    """
    plain = text.strip()
    name = re.sub(r"[-/\s]", "", re.sub(r"\s*1/2|\.5", "½", plain.upper()))
    if name in _NAMES:
        return _NAMES[name]
    bare = plain[:-2] if plain.lower().endswith("mm") else plain
    try:
        mm = float(read_number(bare, "a hook"))
    except UnreadableError:
        mm = 0.0
    if not _LEAST <= mm <= _MOST:
        raise UnreadableError(
            f"“{plain[:40]}” is not a hook: type its size in mm, for example {in_mark('4.5')} (from {in_mark('0.4')} to 40)."
        )
    return mm


def show_hook(mm: float) -> str:
    """``4.5 mm``."""
    return f"{show_number(mm, 3)} mm"


def hook_names(mm: float) -> str:
    """``US G-6, UK 8`` beside a size of the table; "" for others."""
    found = next((hook for hook in HOOKS if abs(hook.mm - mm) < 0.001), None)
    if found is None:
        return ""
    return ", ".join(f"{scale} {name}" for scale, name in (("US", found.us), ("UK", found.uk)) if name)


def hook_wanted(mm: float, terms: Terms) -> str:
    """``4 mm hook (US G-6, UK 8), or the size that gives the gauge``, as a pattern has it."""
    names = hook_names(mm)
    return f"{show_hook(mm)} hook" + (f" ({names})" if names else "") + f", or the size that gives the {gauge_word(terms)}"
