"""Numbers in a sentence: which one, how many, and several names in a row."""

from collections.abc import Sequence

from logbook.craft.words.numbers import show_number


def ordinal(number: int) -> str:
    """``1st``, ``2nd``, ``11th``, ``23rd``."""
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def plural(one: str) -> str:
    """``rows``, ``stitches``."""
    return f"{one}es" if one.endswith(("ch", "sh")) else f"{one}s"


def counted(number: float, one: str, decimals: int = 2) -> str:
    """``1 row``, ``62 rows``, ``2.5 repeats``; the number as it is shown decides."""
    shown = show_number(number, decimals)
    return f"{shown} {one if shown == '1' else plural(one)}"


def listed(names: Sequence[str], last: str = "and") -> str:
    """``A``, ``A and B``, ``A, B and C``."""
    *first, end = names
    return f"{', '.join(first)} {last} {end}" if first else end
