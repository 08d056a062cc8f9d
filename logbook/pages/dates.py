"""Dates as they are written where the user lives."""

from logbook.pages.date_words import iso_date
from logbook.tasks.at_home import month_first


def typed_date(text: str) -> str:
    """A typed date in the form that is kept, ``2026-05-31``; what is no date, or could be two, as it is."""
    return iso_date(text, month_first())
