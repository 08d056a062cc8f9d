"""Telling from a number format whether a workbook shows a number as a date or a time (ECMA-376 part 1, 18.8.30 and 18.8.31)."""

import re
from enum import Enum


class Moment(Enum):
    """What a number format shows."""

    NONE = "a number"
    DATE = "a date"
    TIME = "a time of day"


_DATES = {*range(14, 18), *range(27, 32), 36, *range(50, 55), 57, 58}
_TIMES = {*range(18, 23), *range(32, 36), *range(45, 48), 55, 56}
_NOT_CODE = re.compile(r'"[^"]*"|\\.|[_*].|\[(?!h+\]|m+\]|s+\])[^\]]*\]', re.IGNORECASE | re.DOTALL)
_LONGEST = 1_000


def builtin_moment(identity: int) -> Moment:
    """Of a format known by its number alone. The one of date and time (22) counts as a date: most such cells hold no time."""
    if identity in _DATES or identity == 22:
        return Moment.DATE
    return Moment.TIME if identity in _TIMES else Moment.NONE


def moment_of(code: str) -> Moment:
    """Of a format's code: a year or day makes it a date, else hours or seconds a time, else a month alone a date."""
    letters = _NOT_CODE.sub("", code[:_LONGEST]).casefold().split(";")[0]
    letters = letters.replace("general", "")
    if "y" in letters or "d" in letters:
        return Moment.DATE
    if "h" in letters or "s" in letters:
        return Moment.TIME
    return Moment.DATE if "m" in letters else Moment.NONE
