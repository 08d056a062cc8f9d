"""The quantities of a text: every list of numbers for all sizes, and every number with a word that says what it counts.

A quantity has a kind, told by the word or unit beside the number: "Ch 61" is chains, "61 sts" are stitches. Not quantities:
labels of rows, what stands inside a stitch row, hooks, the gauge, dates, numbers of steps.
"""

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from logbook.craft.proofreading.text_lines import TextLines
from logbook.craft.words.decimal_commas import with_points

MM_PER = {"cm": Fraction(10), "mm": Fraction(1), "in": Fraction(254, 10)}
_METRES_PER_YARD = 0.9144


class QuantityKind(StrEnum):
    """What a number counts or measures."""

    CHAINS = "chains"
    STITCHES = "stitches"
    ROWS = "rows"
    ROW = "row"  # a row's number, in a list of all sizes
    REPEATS = "repeats"
    TIMES = "times"
    BALLS = "balls"
    MASS = "mass"
    YARN = "yarn length"
    LENGTH = "length"


@dataclass(frozen=True, slots=True)
class Quantity:
    """One quantity: where it stands (``line`` from 1, ``start`` and ``end`` in the text), and its ``values`` (None: a dash).

    Lengths are in mm, yarn in metres; ``step`` is how finely it is written, in the same unit. ``bare``: a list without brackets.
    ``section`` is the heading it stands under, ``before`` and ``after`` the words beside it.
    """

    line: int
    start: int
    end: int
    text: str
    kind: QuantityKind
    unit: str
    values: tuple[float | None, ...]
    step: float
    bare: bool
    section: str
    before: tuple[str, ...]
    after: tuple[str, ...]


_FRACTION = r"(?:1/2|[1-3]/4|[1-7]/8|(?:1[0-5]|[1-9])/16|[12]/3)(?!\d)"
_DIGITS = r"\d{1,9}(?!\d)"  # more count nothing in a garment
_NUMBER = rf"(?:{_DIGITS}\s+{_FRACTION}|{_FRACTION}|{_DIGITS}\s?[¼½¾⅛⅜⅝⅞]|{_DIGITS}(?:\.{_DIGITS})?)"
_UNIT = r"(?:\s?(?:cm|mm|in(?:ches|\.)?|”|″|\"|sts?|ch|rows?|g|m|yds?))?"
_ENTRY = rf"(?:{_NUMBER}|[–—])"
_GROUP = rf"[\(\[]\s*{_ENTRY}{_UNIT}(?:\s*[,;:/–—-]\s*{_ENTRY}{_UNIT})*\s*[\)\]]"
_LIST = re.compile(rf"(?<![\w.,/]){_ENTRY}{_UNIT}\s*{_GROUP}(?:\s*{_GROUP})*")
_BARE = re.compile(rf"(?<![\w.,/(\[]){_NUMBER}(?:\s*[,;/–—]\s*{_NUMBER})+(?![\w(\[])")
_SINGLE = re.compile(rf"(?<![\w.,/–-]){_NUMBER}(?![\w/.–-]*\d)")
_VALUE = re.compile(_ENTRY)

# "14 in every 2nd row" and "197 in all" are no inches
_NO_INCH = r"(?!\s+(?:every|rows?|rounds?|rnds?|each|next|the|this|first|last|same|all(?!\s+a?round))\b)"
_AFTER = (
    (QuantityKind.BALLS, r"balls?|skeins?|hanks?"),
    (QuantityKind.REPEATS, r"repeats?|reps?|pattern repeats?"),
    (QuantityKind.TIMES, r"times"),
    (QuantityKind.ROWS, r"rows?|rounds?|rnds?"),
    (QuantityKind.CHAINS, r"chains?|chs?"),
    (QuantityKind.MASS, r"g|grams?"),
    (QuantityKind.YARN, r"m|metres?|meters?|yds?|yards?"),
    (QuantityKind.LENGTH, rf"cm|mm|in{_NO_INCH}|inch|inches|”|″|\""),
    (QuantityKind.STITCHES, r"sts?|stitches|stitch|sc|hdc|dc|htr|tr"),
)
_MEASURED = (QuantityKind.BALLS, QuantityKind.MASS, QuantityKind.YARN, QuantityKind.LENGTH)
_FILLER = r"(?:(?:more|fewer|base|plain|edge|foundation|full|new|tube|crown|remaining|underarm)\s+)*"
_BEHIND = [(kind, re.compile(rf"\s*-?\s*{_FILLER}(?:{words})(?![A-Za-z])", re.IGNORECASE)) for kind, words in _AFTER]
_CH_BEFORE = re.compile(r"\b(?:ch|chain)\s*$", re.IGNORECASE)
_ROW_BEFORE = re.compile(r"\b(?:rows?|rounds?|rnds?)\s*(?:\d+\s*(?:to|–|-)\s*)?$", re.IGNORECASE)
_ROW_LABEL = re.compile(r"\s*(?:rows?|rounds?|rnds?)\s[^:.]{1,40}[:.]\s", re.IGNORECASE)
_ROW_STITCH = re.compile(r"\b(?:sc|hdc|dc|tr|htr|ch|sl st|ss)\b", re.IGNORECASE)
_ROW_PLACE = re.compile(r"\b(?:in|next|each|rep|turn|join|sk|miss)\b", re.IGNORECASE)
_GAUGE = re.compile(r"=\s*10\s*cm|10\s*cm\s*/\s*4\s*in|\b(?:over|per|to|in)\s+10\s*cm\b", re.IGNORECASE)
_HOOK = re.compile(r"\s*mm\b[^.\n]{0,12}\bhook|\s*mm\s+hook", re.IGNORECASE)
_DATE = re.compile(
    r"\d{4}-\d\d-\d\d|\b\d{1,2}[./]\d{1,2}[./]\d{2,4}\b|\b\d{1,2} [A-Z][a-z]{2,8} \d{4}\b|\b[A-Z][a-z]{2,8} \d{1,2}, \d{4}\b"
)
_WORD = re.compile(r"[A-Za-z][A-Za-z'’-]*")
_NOT_HEADING = re.compile(r"[.:;]\s*$|\d\s*[\(\[]")


def quantities(text: str, sizes: int, sections: Sequence[str]) -> tuple[Quantity, ...]:
    """Every quantity of a text for so many sizes. ``sections`` are headings to know, such as the names of the pieces."""
    typed, text = text, with_points(text, sizes)
    taken = [False] * (len(text) + 1)
    for dated in _DATE.finditer(text):
        taken[dated.start() : dated.end()] = [True] * (dated.end() - dated.start())
    layout = _Layout(text, sections)
    found: list[Quantity] = []
    for pattern, bare in ((_LIST, False), (_BARE, True), (_SINGLE, False)):
        for match in pattern.finditer(text):
            if any(taken[match.start() : match.end()]) or "\n\n" in match[0]:
                continue
            values = tuple(_VALUE.findall(match[0]))
            if bare and len(values) != sizes:
                continue
            quantity = _quantity(layout, match, values, bare, typed[match.start() : match.end()])
            if pattern is not _SINGLE or quantity is not None:
                taken[match.start() : match.end()] = [True] * (match.end() - match.start())
            if quantity is not None:
                found.append(quantity)
    return tuple(sorted(found, key=lambda quantity: quantity.start))


def _quantity(layout: "_Layout", match: re.Match[str], values: Sequence[str], bare: bool, typed: str) -> Quantity | None:
    line, text = layout.lines.of(match.start()), match.string
    if layout.holds_none(line):
        return None
    before, after = text[max(0, match.start() - 120) : match.start()], text[match.end() : match.end() + 90]
    if _HOOK.match(after):
        return None
    told = _kind(before, after, len(values) > 1)
    if told is None:
        return None
    kind, unit = told
    numbers = tuple(_in_unit(value, kind, unit) for value in values)
    return Quantity(
        line=line,
        start=match.start(),
        end=match.end(),
        text=" ".join(typed.split()) + (f" {unit}" if unit and not match[0].rstrip().endswith(unit) else ""),
        kind=kind,
        unit=unit,
        values=numbers,
        step=_step(values, kind, unit),
        bare=bare,
        section=layout.section_of(match.start()),
        before=_words(before.rpartition("\n\n")[2])[-5:],
        after=_words(after.partition("\n\n")[0])[:4],
    )


def _kind(before: str, after: str, is_list: bool) -> tuple[QuantityKind, str] | None:
    behind = next(((kind, found[0]) for kind, pattern in _BEHIND if (found := pattern.match(after))), None)
    if behind is not None and behind[0] in _MEASURED:  # "body round 92 cm" is no round
        words = _WORD.findall(behind[1])
        return behind[0], _unit(behind[0], words[-1].lower() if words else '"')
    joined = " ".join(before.split()[-6:])
    if _CH_BEFORE.search(joined):
        return QuantityKind.CHAINS, ""
    if _ROW_BEFORE.search(joined):
        return (QuantityKind.ROW, "") if is_list else None
    return None if behind is None else (behind[0], "")


def _unit(kind: QuantityKind, word: str) -> str:
    if kind is QuantityKind.LENGTH:
        return word if word in ("cm", "mm") else "in"
    if kind is QuantityKind.YARN:
        return "yd" if word.startswith("y") else "m"
    return ""


def _in_unit(value: str, kind: QuantityKind, unit: str) -> float | None:
    number = _number(value)
    if number is None:
        return None
    if kind is QuantityKind.LENGTH:
        return float(number * MM_PER[unit])
    return float(number) * (_METRES_PER_YARD if unit == "yd" else 1)


_VULGAR = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}


def _number(value: str) -> Fraction | None:
    if value in ("–", "—"):
        return None
    plain = value
    for sign, fraction in _VULGAR.items():
        plain = plain.replace(sign, f" {fraction}")
    try:
        return sum((Fraction(part) for part in plain.split()), Fraction(0))
    except ZeroDivisionError:
        return None


def _step(values: Sequence[str], kind: QuantityKind, unit: str) -> float:
    """How finely the finest of the values is written, in mm, metres or whole numbers."""
    finest = Fraction(1)
    for value in values:
        number = _number(value)
        if number is None:
            continue
        if "." in value:
            decimals = len(value.partition(".")[2])
            step = Fraction(1, 2) if decimals == 1 and value.endswith("5") else Fraction(1, 10**decimals)
        else:
            step = Fraction(1, max(number.denominator, 1))
        finest = min(finest, step)
    if kind is QuantityKind.LENGTH:
        return float(finest * MM_PER[unit])
    return float(finest) * (_METRES_PER_YARD if unit == "yd" else 1)


def _words(text: str) -> tuple[str, ...]:
    return tuple(word.lower() for word in _WORD.findall(text))


class _Layout:
    """The lines and sections of a text, and which lines hold no quantities: however much stands in one, it is read once."""

    def __init__(self, text: str, sections: Sequence[str]) -> None:
        self.lines = TextLines(text)
        self._headings = _headings(self.lines, sections)
        self._none: dict[int, bool] = {}

    def section_of(self, at: int) -> str:
        """The heading that stands above; "" if none does."""
        above = bisect_right(self._headings, at, key=lambda heading: heading[0])
        return self._headings[above - 1][1] if above else ""

    def holds_none(self, line: int) -> bool:
        """Whether the line is a stitch row or the gauge."""
        if line not in self._none:
            self._none[line] = _is_row_or_gauge(self.lines[line])
        return self._none[line]


def _is_row_or_gauge(line: str) -> bool:
    label = _ROW_LABEL.match(line)
    stitch = _ROW_STITCH.search(line, label.end()) if label else None
    if stitch is not None and _ROW_PLACE.search(line, stitch.end()):
        return True
    return _GAUGE.search(line) is not None and "finished" not in line.lower()


def _headings(lines: TextLines, sections: Sequence[str]) -> list[tuple[int, str]]:
    """Where each section begins: a short line without a full stop that begins with its name."""
    found = []
    longest_first = sorted(sections, key=len, reverse=True)
    for at, line in lines:
        plain = line.strip().lstrip("#*= ").lower()
        if not plain or len(plain) > 70 or _NOT_HEADING.search(plain.rstrip(":")):
            continue
        name = next((name for name in longest_first if re.match(rf"{re.escape(name.lower())}(?![\w])", plain)), None)
        if name is not None:
            found.append((at, name))
    return found
