"""Dates as they are written where the user lives."""

import locale
import os
from functools import lru_cache

from logbook.pages.date_words import iso_date


def typed_date(text: str) -> str:
    """A typed date in the form that is kept, ``2026-05-31``; what is no date, or could be two, as it is."""
    return iso_date(text, month_first())


@lru_cache(maxsize=1)
def month_first() -> bool | None:
    """Whether the month comes first in a date of figures; None where the system does not say where it is."""
    names = [os.environ.get(name, "") for name in ("LC_ALL", "LC_TIME", "LANG")]
    said = next((name for name in names if name), "") or (locale.getlocale()[0] or "")
    if not said or said.split(".")[0] in ("C", "POSIX"):
        return None
    return said.replace("-", "_").startswith(("en_US", "English_United States", "en_PH", "English_Philippines"))
