"""Dates as a reader has them, of the one form that is kept: ``2024-09-21``."""

import re

from logbook.craft.words.notation import notation

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December",
)  # fmt: skip
SHORT_MONTHS = tuple(month[:3] for month in MONTHS)
_KEPT = re.compile(r"(\d{4})-(0[1-9]|1[0-2])-(\d\d)", re.ASCII)
_SHOWN = re.compile(rf"(?:\d+ )?({'|'.join(SHORT_MONTHS)}) (?:\d+, )?(\d{{4}})", re.ASCII)


def date_words(text: str) -> str:
    """``21 Sep 2024`` of ``2024-09-21``, or ``Sep 21, 2024`` where the month comes first; any other text as it is."""
    kept = _KEPT.fullmatch(text)
    if kept is None:
        return text
    day, month = int(kept[3]), SHORT_MONTHS[int(kept[2]) - 1]
    return f"{month} {day}, {kept[1]}" if notation().month_first else f"{day} {month} {kept[1]}"


def month_words(text: str) -> str:
    """``Sep 2024`` of a date as it is kept or as ``date_words`` has it; any other text as it is."""
    shown = _SHOWN.fullmatch(date_words(text))
    return text if shown is None else f"{shown[1]} {shown[2]}"
