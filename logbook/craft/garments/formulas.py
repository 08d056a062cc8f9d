"""Measures by formula: ``22 cm``, ``(bust + ease) / 2``, ``upper arm + 6 cm``, ``60 % of bust``, ``armhole of back``.

    sum = term {(+|−) term}     term = factor {(×|x|*|/) factor}     factor = number | length | n % of factor | name | (sum)

``-`` is minus only between spaces, since names and mixed numbers hold hyphens. A length may be multiplied or divided by a
number; ``y + 5 %`` is 1.05·y; a bare number stands only alone, and is in cm. Of the names the longest wins.
"""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from logbook.craft.words.lengths import LONGEST_MM, UNIT, Ease, Units, read_length, unit_mm
from logbook.craft.words.numbers import read_number
from logbook.errors import UnreadableError

_NUMBER = r"(?:\d+\s+\d+/\d+|\d+-\d+/\d+|\d+/\d+|\d*\s?[¼½¾⅛⅜⅝⅞⅓⅔]|\d+[.,]\d+|[.,]\d+|\d+)"
_LENGTH = re.compile(rf"({_NUMBER})\s*({UNIT})(?![a-z])", re.IGNORECASE)
_PERCENT = re.compile(rf"({_NUMBER})\s*(?:%|per\s?cent)", re.IGNORECASE)
_PLAIN = re.compile(_NUMBER)
_OF = re.compile(r"\s*of\b\s*", re.IGNORECASE)
_PLUS_OR_MINUS = re.compile(r"\s*\+\s*|\s+-\s+|\s*−\s*")
_TIMES_OR_OVER = re.compile(r"\s*[×*]\s*|\s*/\s*|\s+x\s+|\s*x\s*(?=[\d(])", re.IGNORECASE)
_EXAMPLE = "type it like 46 cm, (bust + ease) / 2 or 60 % of bust"
_LONGEST_TEXT = 500
_DEEPEST = 50


@dataclass(frozen=True, slots=True)
class _Number:
    value: float


@dataclass(frozen=True, slots=True)
class _Share:
    """A percentage that something is still to be taken of."""

    value: float


_Value = float | _Number | _Share
"""A length in mm, a number, a share."""


def measure_of(text: str, names: Iterable[str], value_of: Callable[[str], float | Ease], units: Units = Units.CM) -> float:
    """What a formula comes to, in mm.

    ``names`` may stand in it; ``value_of`` gives the mm of one, or an ease, and may refuse. A bare number is in ``units``.
    Raises UnreadableError for what is no formula, and what ``value_of`` raises.
    """
    plain = text.strip()
    if not plain or len(plain) > _LONGEST_TEXT:
        raise UnreadableError(f"“{plain[:40]}” is not a measure: {_EXAMPLE}.")
    if _PLAIN.fullmatch(plain):
        return read_length(plain, units, "a measure")
    try:
        value = _Reader(plain, names, value_of).whole()
    except ZeroDivisionError:
        raise UnreadableError(f"“{plain[:60]}” divides by zero: {_EXAMPLE}.") from None
    if not isinstance(value, float) or not abs(value) <= LONGEST_MM:
        raise UnreadableError(f"“{plain[:60]}” does not come to a length: {_EXAMPLE}.")
    return value


@lru_cache(maxsize=64)
def _to_find(names: tuple[str, ...]) -> tuple[Mapping[str, str], re.Pattern[str]]:
    """The names by their small letters, and the pattern that finds the longest of them."""
    longest_first = sorted(names, key=len, reverse=True)
    known = {" ".join(name.split()).casefold(): name for name in longest_first}
    words = (r"\s+".join(re.escape(word) for word in name.split()) for name in known)
    return known, re.compile(rf"(?:{'|'.join(words) or '(?!)'})(?!\w)", re.IGNORECASE)


class _Reader:
    """One pass over a formula, from left to right."""

    def __init__(self, text: str, names: Iterable[str], value_of: Callable[[str], float | Ease]) -> None:
        self._text, self._at, self._depth = text, 0, 0
        self._value_of = value_of
        self._names, self._name = _to_find(tuple(names))

    def whole(self) -> _Value:
        """The value of the whole text."""
        value = self._sum()
        if self._text[self._at :].strip():
            raise self._unread()
        return value

    def _sum(self) -> _Value:
        value = self._term()
        while (sign := self._take(_PLUS_OR_MINUS)) is not None:
            by = self._term()
            times = 1.0 if sign.strip() == "+" else -1.0
            if isinstance(value, float) and isinstance(by, float):
                value += times * by
            elif isinstance(value, float) and isinstance(by, _Share):
                value *= 1 + times * by.value
            else:
                raise self._mixed("Only lengths are added, or a percentage to a length")
        return value

    def _term(self) -> _Value:
        value = self._factor()
        while (sign := self._take(_TIMES_OR_OVER)) is not None:
            by = self._factor()
            if isinstance(value, _Share) or not isinstance(by, float | _Number):
                raise self._mixed("A percentage is taken of something, as in 60 % of bust")
            value = self._scaled(value, by, over="/" in sign)
        return value

    def _scaled(self, value: float | _Number, by: float | _Number, *, over: bool) -> _Value:
        if isinstance(by, _Number):
            factor = 1 / by.value if over else by.value
            return value * factor if isinstance(value, float) else _Number(value.value * factor)
        if isinstance(value, _Number) and not over:
            return by * value.value
        raise self._mixed("A length is multiplied or divided by a number")

    def _factor(self) -> _Value:
        self._depth += 1
        if self._depth > _DEEPEST:
            raise UnreadableError(f"“{self._text[:40]}…” has too many brackets: {_EXAMPLE}.")
        try:
            return self._one()
        finally:
            self._depth -= 1

    def _one(self) -> _Value:
        if self._take(re.compile(r"\s*\(\s*")) is not None:
            value = self._sum()
            if self._take(re.compile(r"\s*\)")) is None:
                raise UnreadableError(f"“{self._text[:60]}” has a bracket that is not closed: {_EXAMPLE}.")
            return value
        self._take(re.compile(r"\s+"))
        if found := self._match(_LENGTH):
            return float(read_number(found[1]) * unit_mm(found[2], Units.CM))
        if found := self._match(_PERCENT):
            share = float(read_number(found[1])) / 100
            return _share_of(share, self._factor, self._mixed) if self._take(_OF) is not None else _Share(share)
        if found := self._match(_PLAIN):
            return _Number(float(read_number(found[0])))
        if found := self._match(self._name):
            known = self._value_of(self._names[" ".join(found[0].split()).casefold()])
            return known if isinstance(known, float) else _Share(known.share) if known.share else known.mm
        raise self._unread()

    def _take(self, pattern: re.Pattern[str]) -> str | None:
        found = self._match(pattern)
        return None if found is None else found[0]

    def _match(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        found = pattern.match(self._text, self._at)
        if found is not None:
            self._at = found.end()
        return found

    def _unread(self) -> UnreadableError:
        rest = self._text[self._at :].strip()
        where = f"“{rest[:40]}” in " if rest and rest != self._text else ""
        return UnreadableError(f"Couldn't read {where}“{self._text[:60]}”: {_EXAMPLE}, with names of body measures.")

    def _mixed(self, why: str) -> UnreadableError:
        return UnreadableError(f"“{self._text[:60]}” does not come to a length. {why}: {_EXAMPLE}.")


def _share_of(share: float, factor: Callable[[], _Value], mixed: Callable[[str], UnreadableError]) -> _Value:
    of = factor()
    if not isinstance(of, float):
        raise mixed("A percentage is taken of a length")
    return share * of
