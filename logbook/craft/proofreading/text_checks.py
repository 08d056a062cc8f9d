"""What a text says of itself that can't be so: sizes in another order, lists with other numbers of entries or without a comma, cm
and inches that do not meet, abbreviations not explained or not used, US and UK words mixed.
"""

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from logbook.craft.proofreading.quantities import Quantity, QuantityKind
from logbook.craft.proofreading.text_lines import TextLines
from logbook.craft.words.counting import listed
from logbook.craft.words.decimal_commas import with_points

LONGEST_SENTENCE = 1_000  # letters before a list that may name the sizes it is for
_ENTRY = r"(?:\d+(?:\.\d+)?|[–—])"
_MORE_ENTRIES = re.compile(rf"(?<![\w.,/])\d+(?:\.\d+)?\s*[\(\[]\s*{_ENTRY}(?:\s*[,;:/]\s*{_ENTRY})+\s*[\)\]]")
_ANY_ENTRY = r"(?>\d+ \d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}|\d+(?:\.\d+)?|[–—])"
_SPACED_ENTRIES = re.compile(rf"(?<![\w.,/]){_ANY_ENTRY} ?[(\[]{_ANY_ENTRY}(?:(?:\s?[,;]\s?|\s){_ANY_ENTRY})+[)\]]")
_FOR_SIZES = re.compile(r" ?\bsizes?\b[^.:\n]{1,80}:(?:(?!\n\n)[^.:])*\Z", re.IGNORECASE)  # "Sizes L and XL: work …"
_GAUGE_IN_INCHES = re.compile(r"(?:=|over|per|to|in)\s{0,2}10\s?cm\s{0,2}/\s{0,2}(\d{1,2})\s?in\b", re.IGNORECASE)
_SIZES = re.compile(
    r"^[^\w\n]{0,5}sizes?\b[ :\n]{1,3}([\w/-]{1,12}) ?[(\[]([^()\[\]\n]{1,200})[)\]](?! ?:)", re.IGNORECASE | re.MULTILINE
)
_ABBREVIATIONS = re.compile(r"^[^\w\n]*abbreviations?\b.*$", re.IGNORECASE | re.MULTILINE)
_EXPLAINED = re.compile(r"^\s*[-•*]?\s*([A-Za-z][A-Za-z0-9 -]{0,11}?)\s*(?:[:=–]|\s-\s)\s*\S", re.MULTILINE)
_KNOWN = (
    "ch", "st", "sts", "sc", "hdc", "dc", "tr", "dtr", "trtr", "htr", "sl st", "ss", "sk", "sp", "rep", "tch", "yo", "yrh", "inc",
    "dec",
)  # fmt: skip
_US = re.compile(r"\b(?:f?sc|hdc|sc\d+tog|single crochet|half double|fpdc|bpdc|skip|yo)\b", re.IGNORECASE)
_UK = re.compile(r"\b(?:htr|trtr|qtr|miss|missed|yrh|rtrf|rtrb|half treble)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class TextProblem:
    """What is wrong in a line of the text (from 1), and where it stands if it is less than the line (else both 0)."""

    line: int
    says: str
    start: int = 0
    end: int = 0


def problems_of(text: str, found: Sequence[Quantity], names: Sequence[str]) -> tuple[TextProblem, ...]:
    """Everything a text contradicts itself in, in the order of its lines; ``names`` are the sizes, smallest first."""
    lines = TextLines(text)
    own = _sizes_of(text)
    other = own if own is not None and len(own.names) != len(names) else None
    every = [
        *(_other_sizes(lines, other, names) if other else ()), *_orders(text, lines, names),
        *_entries(text, lines, found, names, len(other.names) if other else 0), *_inches(text, lines, found, names),
        *_commas(text, lines, len(names)), *_abbreviations(text, lines), *_mixed(text, lines),
    ]  # fmt: skip
    return tuple(sorted(every, key=lambda problem: problem.line))


class _Sizes(NamedTuple):
    """The sizes that a text says it is for, and where it says so."""

    start: int
    end: int
    names: tuple[str, ...]


def _sizes_of(text: str) -> _Sizes | None:
    found = _SIZES.search(text)
    if found is None:
        return None
    return _Sizes(found.start(), found.end(), (found[1], *(name.strip() for name in re.split(r"[,;/]| and ", found[2]))))


def _other_sizes(lines: TextLines, own: _Sizes, names: Sequence[str]) -> Iterator[TextProblem]:
    """One sentence for a text that is for more sizes than the garment has, or for fewer."""
    says = f"The text is for the sizes {listed(own.names)}, the logbook has {listed(names)}."
    yield TextProblem(lines.of(own.end - 1), says, own.start, own.end)


def _any_of(names: Sequence[str]) -> str:
    return "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True))


def _all_sizes(names: Sequence[str]) -> re.Pattern[str]:
    """As many names of sizes in a row as there are sizes."""
    one = _any_of(names)
    return re.compile(rf"(?<![\w])(?:{one})(?:[\s,;/()\[\]–-]+(?:{one})(?![\w])){{{len(names) - 1}}}")


def _orders(text: str, lines: TextLines, names: Sequence[str]) -> Iterator[TextProblem]:
    """Lists of all sizes in another order."""
    if len(names) < 2:
        return
    one = _any_of(names)
    for found in _all_sizes(names).finditer(text):
        order = re.findall(rf"(?:{one})(?![\w])", found[0])
        if order != list(names) and sorted(order) == sorted(names):
            yield TextProblem(
                lines.of(found.start()), f"The sizes are in another order: {', '.join(order)} instead of {', '.join(names)}."
            )


def _entries(text: str, lines: TextLines, found: Sequence[Quantity], names: Sequence[str], told: int) -> Iterator[TextProblem]:
    """Lists with another number of entries than there are sizes, unless their sentence names its sizes; ``told``: so many need no
    word, as the text is for so many sizes.
    """
    taken = [(quantity.start, quantity.end) for quantity in found if len(quantity.values) == len(names)]
    all_sizes, a_name = _all_sizes(names), re.compile(rf"(?<![\w])(?:{_any_of(names)})(?![\w])")
    for match in _MORE_ENTRIES.finditer(with_points(text, len(names))):
        entries = len(re.findall(r"\d+(?:\.\d+)?|[–—]", match[0]))
        if entries in (len(names), told) or _within(match.start(), taken):
            continue
        before = text[max(match.start() - LONGEST_SENTENCE, 0) : match.start()]
        start = max(before.rfind(stop) for stop in (".", "\n\n", ":"))
        led_by = _FOR_SIZES.search(before)
        start = min(start, led_by.start()) if led_by else start
        behind = re.split(r"\.\s|\n\n", text[match.end() : match.end() + 60], maxsplit=1)[0]
        sentence = before[start + 1 :] + match[0] + behind
        line = lines.of(match.start())
        if _in_table(lines[line]) and match.end() <= lines.start(line) + len(lines[line]):
            sentence = lines[line]
        if a_name.search(sentence) and a_name.search(all_sizes.sub("", sentence)):
            continue
        yield TextProblem(
            line,
            f"“{text[match.start() : match.end()]}” has {entries} numbers, but there are {len(names)} sizes.",
        )


def _commas(text: str, lines: TextLines, sizes: int) -> Iterator[TextProblem]:
    """Lists that have a number for each size, but somewhere only a space between two."""
    for match in _SPACED_ENTRIES.finditer(with_points(text, sizes)):
        entries = list(re.finditer(_ANY_ENTRY, match[0]))
        if len(entries) != sizes or "," not in match[0]:
            continue
        line, listed_as = lines.of(match.start()), text[match.start() : match.end()]
        for one, other in pairwise(entries):
            if match[0][one.end() : other.start()].isspace():
                says = f"“{listed_as}” has no comma between {one[0]} and {other[0]}."
                yield TextProblem(line, says, match.start(), match.end())


def _in_table(line: str) -> bool:
    """Whether a line is a row of a table, which stands for itself."""
    return len(line) <= LONGEST_SENTENCE and "  " in line.strip()


def _within(at: int, spans: Sequence[tuple[int, int]]) -> bool:
    """Whether a place is in one of the spans, which follow one another."""
    above = bisect_right(spans, at, key=lambda span: span[0])
    return above > 0 and at < spans[above - 1][1]


def _inches(text: str, lines: TextLines, found: Sequence[Quantity], names: Sequence[str]) -> Iterator[TextProblem]:
    """Centimetres and inches of one place whose intervals of half a printed step do not meet, and the sizes in which."""
    lengths = [quantity for quantity in found if quantity.kind is QuantityKind.LENGTH]
    for a, b in pairwise(lengths):
        between = text[a.end : b.start].replace(a.unit, "")
        beside = re.fullmatch(r"[\s/(=,;–]*(?:or|about)?[\s(]*", between)
        if {a.unit, b.unit} != {"cm", "in"} or len(a.values) != len(b.values) or not beside:
            continue
        both = list(zip(a.values, b.values, strict=True))
        apart = [place for place, (cm, inches) in enumerate(both) if _apart(cm, inches, (a.step + b.step) / 2)]
        if apart:
            where = f" in size {listed([names[place] for place in apart])}" if len(both) == len(names) > 1 else ""
            yield TextProblem(a.line, f"“{a.text}” and “{b.text}” are not the same length{where}.")
    for gauge in _GAUGE_IN_INCHES.finditer(text):  # what a gauge is over is no quantity
        if int(gauge[1]) != 4:
            yield TextProblem(lines.of(gauge.start()), f"“10 cm” and “{gauge[1]} in” are not the same length.")


def _apart(cm: float | None, inches: float | None, most: float) -> bool:
    """Whether two lengths (mm) are further apart than that; 10 cm / 4 in is the trade's rounding."""
    if cm is None or inches is None or {round(cm), round(inches)} == {100, 102}:
        return False
    return abs(cm - inches) > most + 1e-6


def _abbreviations(text: str, lines: TextLines) -> Iterator[TextProblem]:
    """Abbreviations used and not explained, or explained and not used; only where the text has a list of them."""
    heading = _ABBREVIATIONS.search(text)
    if heading is None:
        return
    end = text.find("\n\n", heading.end() + 2)
    end = len(text) if end < 0 else end
    listed_here = text[heading.end() : end]
    rest = text[: heading.start()] + "\n" * text.count("\n", heading.start(), end) + text[end:]
    lines_left = TextLines(rest)
    explained = {found[1].strip().lower() for found in _EXPLAINED.finditer(listed_here)}
    if not explained:
        return
    for short in _KNOWN:
        used = re.search(rf"(?<![A-Za-z]){short}(?:s)?(?![A-Za-z])", rest, re.IGNORECASE)
        is_explained = short in explained or (short == "st" and "sts" in explained) or (short == "sts" and "st" in explained)
        if used and not is_explained:
            yield TextProblem(lines_left.of(used.start()), f"“{short}” is used, but not among the abbreviations.")
        if short in explained and not used and not (short in ("st", "sts") and re.search(r"\bsts?\b", rest)):
            yield TextProblem(lines.of(heading.start()), f"“{short}” is among the abbreviations, but not used.")


def _mixed(text: str, lines: TextLines) -> Iterator[TextProblem]:
    """US and UK words in one text, but for lines that name both and the abbreviations."""
    us, uk = [], []
    heading = _ABBREVIATIONS.search(text)
    end = text.find("\n\n", heading.end() + 2) if heading else -1
    for at, line in lines:
        explained = heading is not None and heading.start() <= at < (end if end >= 0 else len(text))
        if explained or (re.search(r"\bUS\b", line) and re.search(r"\bUK\b", line)):
            continue
        us += [(at, found[0]) for found in _US.finditer(line)]
        uk += [(at, found[0]) for found in _UK.finditer(line)]
    if us and uk:
        fewer, words = (us, "US") if len(us) < len(uk) else (uk, "UK")
        names = listed(sorted({word.lower() for _, word in fewer})[:4])
        yield TextProblem(
            lines.of(fewer[0][0]), f"US and UK words are mixed in one text: {names} {'are' if len(fewer) > 1 else 'is'} {words}."
        )
