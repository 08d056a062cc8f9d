"""A count as a pattern gives it: ``115``, ``ch 115``, ``115 chains``, ``115 sts``."""

import re
from enum import StrEnum
from typing import NamedTuple

from logbook.craft.words.numbers import read_whole


class Of(StrEnum):
    """What a count is of; NOT_SAID: a bare number."""

    NOT_SAID = ""
    CHAINS = "chains"
    STITCHES = "stitches"


class TypedCount(NamedTuple):
    """So many, and of what."""

    number: int
    of: Of = Of.NOT_SAID


_NUMBER = r"(?P<n>\d[^a-z]*)"
_OF = r"(?:(?P<ch>(?:foundation\s+)?(?:chains?|chs?))|(?P<st>(?:base\s+)?(?:stitch(?:es)?|sts?)))\.?"


def read_count(text: str, what: str) -> TypedCount:
    """A typed whole number from 1 on, of chains or stitches where it says so.

    Raises UnreadableError, naming ``what``.
    """
    for form in (rf"\s*{_OF}\s*{_NUMBER}\Z", rf"\s*{_NUMBER}{_OF}\s*\Z"):
        if found := re.match(form, text, re.IGNORECASE):
            return TypedCount(read_whole(found["n"], what, 1), Of.CHAINS if found["ch"] else Of.STITCHES)
    return TypedCount(read_whole(text, what, 1))
