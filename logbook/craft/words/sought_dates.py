"""Dates in the words that are looked for, made into what of them stands in a date as it is kept: ``sep 2024`` in ``2024-09-``."""

import re
from collections.abc import Iterator

from logbook.craft.words.dates import SHORT_MONTHS
from logbook.craft.words.typed_dates import iso_date, month_number

_LONGEST = 200
"""Letters; nobody looks for more words than that and a date among them."""
_NAME = rf"(?:{'|'.join(SHORT_MONTHS)})[a-z]{{0,6}}\.?"
_DAY, _YEAR = r"\d{1,2}(?:st|nd|rd|th)?\.?", r"\d{4}"
_FIGURES = r"\d{1,4}\s?[-/.]\s?\d{1,2}\s?[-/.]\s?\d{1,4}"
_DATE = rf"{_FIGURES}|{_DAY}[\s-]{_NAME},?[\s-]{_YEAR}|{_NAME}\s{_DAY},?\s{_YEAR}"
_PARTS = tuple(
    re.compile(rf"(?<!\S)(?:{parts})(?!\S)", re.IGNORECASE)
    for parts in (
        _DATE,
        rf"(?P<day>{_DAY})[\s-](?P<month>{_NAME})",
        rf"(?P<month>{_NAME})\s(?P<day>{_DAY})",
        rf"(?P<month>{_NAME})[\s-](?P<year>\d{{1,4}})",
        rf"(?P<year>{_YEAR})\s(?P<month>{_NAME})",
        rf"(?P<month>\d{{1,2}})[/.](?P<year>{_YEAR})",
    )
)


def sought_dates(text: str, month_first: bool) -> Iterator[tuple[int, int, tuple[tuple[str, ...], ...]]]:
    """Where a date, a month of a year or a day of a month stands in ``text``, and in which ways a kept date has it: the parts
    that all stand in it. ``month_first`` as in ``iso_date``.

    >>> list(sought_dates("shell Sep 2024", False)), list(sought_dates("21 Sep", False))
    ([(6, 14, (('2024-09-',),))], [(0, 6, (('-09-21',),))])
    """
    if len(text) > _LONGEST:
        return
    at = 0
    while at < len(text):
        found = [(match, ways) for parts in _PARTS for match in parts.finditer(text, at) if (ways := _ways(match, month_first))]
        if not found:
            return
        match, ways = min(found, key=lambda one: (one[0].start(), -one[0].end()))
        others = [more for other, more in found if other.span() == match.span()]  # "sep 20" is a day, or a year half typed
        yield match.start(), match.end(), tuple(dict.fromkeys(way for more in others for way in more))
        at = match.end()


def _ways(match: re.Match[str], month_first: bool) -> tuple[tuple[str, ...], ...]:
    said = match.groupdict()
    if not said:
        kept = iso_date(match[0], month_first)
        return ((kept,),) if re.fullmatch(r"\d{4}-\d\d-\d\d", kept) else ()
    month = int(said["month"]) if said["month"].isdecimal() else month_number(said["month"])
    if not 1 <= month <= 12:
        return ()
    if "day" in said:
        day = int(re.sub(r"\D", "", said["day"]))
        return ((f"-{month:02}-{day:02}",),) if 1 <= day <= 31 else ()
    year = said["year"]
    return ((f"{year}-{month:02}-",),) if len(year) == 4 else ((year, f"-{month:02}-"),)
