"""Dates as they are written where the user lives."""

from logbook.craft.words.dates import date_words
from logbook.craft.words.typed_dates import iso_date
from logbook.tasks.at_home import month_first


def typed_date(text: str) -> str:
    """A typed date in the form that is kept, ``2026-05-31``; what is no date, or could be two, as it is."""
    return iso_date(text, month_first())


def date_in_form(text: str) -> str:
    """A typed date as a form has it, ``31 May 2026``; what is no date, or could be two, as it is."""
    return date_words(typed_date(text))
