"""Dates as a reader has them, of the one form that is kept: ``2024-09-21``."""

import re

from logbook.craft.words.notation import notation

MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_KEPT = re.compile(r"(\d{4})-(0[1-9]|1[0-2])-(\d\d)", re.ASCII)


def date_words(text: str) -> str:
    """``21 Sep 2024`` of ``2024-09-21``, or ``Sep 21, 2024`` where the month comes first; any other text as it is."""
    kept = _KEPT.fullmatch(text)
    if kept is None:
        return text
    day, month = int(kept[3]), MONTHS[int(kept[2]) - 1]
    return f"{month} {day}, {kept[1]}" if notation().month_first else f"{day} {month} {kept[1]}"


def month_words(text: str) -> str:
    """``Sep 2024`` of ``2024-09-21``; any other text as it is."""
    kept = _KEPT.fullmatch(text)
    return text if kept is None else f"{MONTHS[int(kept[2]) - 1]} {kept[1]}"
