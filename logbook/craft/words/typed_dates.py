"""Dates as people write them, made into the one form that is kept; the calendar."""

import re

from logbook.craft.words.dates import MONTHS

_YEAR_FIRST = re.compile(r"(\d{4})\s*[-/. ]\s*(\d{1,2})\s*[-/. ]\s*(\d{1,2})")
_YEAR_LAST = re.compile(r"(\d{1,2})\s*([-/.])\s*(\d{1,2})\s*\2\s*(\d{4}|\d{2})")
_DAY_AND_MONTH = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\.?[\s-]+([a-z]{3,9})\.?,?[\s-]+(\d{4})", re.IGNORECASE)
_MONTH_AND_DAY = re.compile(r"([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})", re.IGNORECASE)


def iso_date(text: str, month_first: bool | None) -> str:
    """``31 May 2026``, ``31.5.2026``, ``5/31/26`` as ``2026-05-31``; a text that is no date, or could be two, as it is.

    ``month_first``: whether 5/6/2026 is May 6th where its reader lives; None: not known, so it could be two.

    >>> iso_date("5/6/2026", True), iso_date("5/6/2026", False), iso_date("5/6/2026", None)
    ('2026-05-06', '2026-06-05', '5/6/2026')
    """
    plain = text.strip()
    if found := _YEAR_FIRST.fullmatch(plain):
        return _iso(found[1], found[2], found[3]) or text
    if found := _DAY_AND_MONTH.fullmatch(plain):
        return _iso(found[3], str(month_number(found[2])), found[1]) or text
    if found := _MONTH_AND_DAY.fullmatch(plain):
        return _iso(found[3], str(month_number(found[1])), found[2]) or text
    if found := _YEAR_LAST.fullmatch(plain):
        year = found[4] if len(found[4]) == 4 else f"20{found[4]}"
        return _year_last(year, found[1], found[3], False if found[2] == "." else month_first) or text
    return text


def _year_last(year: str, first: str, second: str, month_first: bool | None) -> str:
    """Where one of the two can be no month, that decides; else ``month_first`` does."""
    one, other = _iso(year, first, second), _iso(year, second, first)
    if not (one and other) or one == other:
        return one or other
    return "" if month_first is None else one if month_first else other


def month_number(name: str) -> int:
    """``May``, ``sept.``, ``Septem``: the month of a name or its beginning; 0 for a word that only begins like one."""
    word = name.casefold().rstrip(".")
    return next((number for number, month in enumerate(MONTHS, 1) if len(word) > 2 and month.casefold().startswith(word)), 0)


def _iso(year: str, month: str, day: str) -> str:
    return f"{int(year):04}-{int(month):02}-{int(day):02}" if is_day(int(year), int(month), int(day)) else ""


def is_day(year: int, month: int, day: int) -> bool:
    """Whether the calendar has it."""
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    days = (31, 29 if leap else 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
    return year > 0 and 1 <= month <= 12 and 1 <= day <= days[month - 1]
