"""The words of written rows: a text cut into words of the trade, each with its place in the text.

Different ways of writing one thing become one word (``skip``, ``miss`` and ``sk``; ``V st`` and ``v-stitch``). Words that no
row needs to be laid are left out (``the``, ``work``, ``through back loops only``: which loop is worked changes no place).
Stitches are given their US abbreviations, whatever the terms of the text.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from logbook.craft.rows.one_wording import alike
from logbook.craft.rows.vocabulary import WAYS, Ways
from logbook.craft.rows.word import MANY, NUMBER, ORDINAL, STITCH, TOGETHER, Word
from logbook.craft.words.terms import Terms

TOO_MANY = 1_000_000  # what any longer number counts as


_CUT = re.compile(
    r"""(?P<together>(?P<kind>sc|hdc|dc|tr|dtr|htr|trtr|qtr)[ ]?(?P<count>\d+)[ ]?(?:tog(?:ether)?|(?P<inc>inc))(?![a-z]))
    |(?P<broken>\d+\.\d+)
    |(?P<ordinal>(?:\d*1st|\d*2nd|\d*3rd|\d+th)(?![a-z]))
    |(?P<number>\d+)
    |(?P<spelled>(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)
        (?:[ -](?:one|two|three|four|five|six|seven|eight|nine))?\b
        |(?:thir|four|fif|six|seven|eigh|nine)teen\b)
    |(?P<letters>[^\W\d_]+(?:['’][^\W\d_]+)?)
    |(?P<stars>\*+|†)
    |(?P<mark>[^\s\w])""",
    re.IGNORECASE | re.VERBOSE,
)
_SHORTENED = re.compile(r"\b(?:incl|foll|beg|cont|rep|prev|alt|approx|rem|patt|sk|tog)\Z", re.IGNORECASE)
_GOES_ON = re.compile(r"[ \t]+(?-i:[a-z\d(\[*])")
"""What stands behind a full stop that only shortens a word."""
_NUMBERS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
_ORDINALS = ["second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]
_UK_TO_US = {"dc": "sc", "htr": "hdc", "tr": "dc", "dtr": "tr", "trtr": "dtr", "qtr": "trtr"}
FOREIGN = {Terms.US: ("htr", "qtr"), Terms.UK: ("sc", "hdc")}  # stitches that only the other terms have
_PLACES = {
    way[0]
    for common in ("sp", "st", "ch", "shell", "group", "v-st")
    for first in WAYS.values()
    for way, name in first
    if name == common
}
_FOUNDATION = {
    Terms.US: {"fscs": "fsc", "fdcs": "fdc", "fhdcs": "fhdc"},
    Terms.UK: {"fdc": "fsc", "fhtr": "fhdc", "ftr": "fdc", "fdcs": "fsc", "fhtrs": "fhdc", "ftrs": "fdc"},
}
_RAISED = {"rtrf": "fpdc", "rtrb": "bpdc"}
_STITCH = re.compile(r"(?:blo?|flo?)?(?P<post>fp|bp)?(?P<kind>sc|hdc|dc|tr|dtr|htr|trtr|qtr|tss)s?(?:blo|flo|tbl|bl|fl)?")


@dataclass(frozen=True, slots=True)
class HowRead:
    """How a text is read: its terms, what it calls stitches of its own, for how many sizes it is written, and which is read."""

    terms: Terms
    own: Mapping[tuple[str, ...], str] = field(default_factory=dict)
    sizes: int = 1
    size: int = 0


def cut(text: str, reading: Terms | HowRead, start: int = 0, end: int | None = None) -> tuple[Word, ...]:
    """The words of ``text[start:end]``, their stitches in US abbreviations; places are counted in the whole text."""
    how = reading if isinstance(reading, HowRead) else HowRead(reading)
    raw = [word for word in _raw(text, how.terms, start, len(text) if end is None else end) if word.text != "the"]
    if how.sizes > 1:
        raw = list(_sized(raw, how))
    return tuple(_common(alike(raw), how))


def raw_words(text: str, terms: Terms) -> tuple[str, ...]:
    """The words as they stand, before different ways of writing become one."""
    return tuple(word.text for word in _raw(text, terms, 0, len(text)) if word.text != "the")


def _sized(raw: list[Word], how: HowRead) -> Iterator[Word]:
    """``10 (12, 14)``, ``10/12/14`` and ``10, 12, 14`` made one number."""
    at = 0
    while at < len(raw):
        group = _group_at(raw, at, how.sizes) if raw[at].sort == NUMBER else _lettered_group(raw, at, how.sizes)
        if group:
            values = tuple(word.value for word in group if word.sort == NUMBER)
            number = values[how.size]
            yield Word(str(number), raw[at].start, group[-1].end, NUMBER, number, values)
            at += len(group)
        else:
            yield raw[at]
            at += 1


def _group_at(raw: list[Word], at: int, sizes: int) -> list[Word]:
    """The words from there on that are one number a size; [] if they are something else."""
    between = _between(raw, at, sizes)
    if between:
        return between
    bracketed, listed = raw[at : at + 2 * sizes], raw[at : at + 2 * sizes - 1]
    if len(bracketed) == 2 * sizes and _is_group(bracketed):
        return bracketed
    around = [raw[index].text for index in (at - 1, at + len(listed)) if 0 <= index < len(raw)]
    marks = {word.text for word in listed[1::2]}
    alone = not (marks & set(around) and any(text in ("/", ",") for text in around))
    if sizes > 2 and len(listed) == 2 * sizes - 1 and marks in ({"/"}, {","}, {"-"}, {":"}) and alone:
        return listed if all(word.sort == NUMBER for word in listed[::2]) else []
    return []


def _between(raw: list[Word], at: int, sizes: int) -> list[Word]:
    """``73 (79) 85``: every other number in brackets; [] if it is something else."""
    words: list[Word] = []
    for size in range(sizes):
        bracketed = size % 2 == 1
        part = raw[at + len(words) : at + len(words) + (3 if bracketed else 1)]
        texts = [word.text for word in part]
        number = part[1:2] if bracketed else part
        if not (number and number[0].sort == NUMBER and (not bracketed or (texts[0], texts[-1]) == ("(", ")"))):
            return []
        words += part
    return words if sizes > 2 else []


def _lettered_group(raw: list[Word], at: int, sizes: int) -> list[Word]:
    """``a) 32 b) 36 c) 40``; [] if it is something else."""
    words = raw[at : at + 3 * sizes]
    letters = [word.text for word in words[::3]]
    rest = all(word.text == ")" for word in words[1::3]) and all(word.sort == NUMBER for word in words[2::3])
    return words if len(words) == 3 * sizes and letters == list("abcdefgh"[:sizes]) and rest else []


def _is_group(words: list[Word]) -> bool:
    """Whether these are a number and as many more in brackets."""
    texts = [word.text for word in words]
    return (
        (texts[1], texts[-1]) in (("(", ")"), ("[", "]"))
        and all(word.sort == NUMBER for word in words[2::2])
        and all(text in (",", ":", ";", "/", "-") for text in texts[3:-1:2])
    )


def _raw(text: str, terms: Terms, start: int, end: int) -> Iterator[Word]:
    for found in _CUT.finditer(text, start, end):
        written = found[0].lower()
        span = found.span()
        if written == "." and _SHORTENED.search(text, max(start, span[0] - 12), span[0]) and _GOES_ON.match(text, span[1], end):
            continue
        if found["together"] and found["kind"].lower() in FOREIGN[terms]:
            yield Word(found["kind"].lower(), *span)
        elif found["inc"]:
            yield Word(_us(found["kind"].lower(), terms), *span, MANY, int(found["count"]))
        elif found["broken"]:
            yield Word(written, *span)
        elif found["together"]:
            yield Word(_us(found["kind"].lower(), terms), *span, TOGETHER, int(found["count"]))
        elif found["ordinal"]:
            yield Word(written, *span, ORDINAL, _number(written[:-2]))
        elif found["number"]:
            yield Word(written, *span, NUMBER, _number(written))
        elif found["spelled"]:
            yield Word(written, *span, NUMBER, _spelled(written))
        elif found["letters"]:
            yield _lettered(written, span, terms)
        else:
            yield Word(written.translate(_DASHES), *span)


_DASHES = str.maketrans("–—−‑<>→⇒…|", "----()---.")
_TEENS = ("thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


def _spelled(written: str) -> int:
    """``nineteen`` → 19, ``forty-four`` → 44."""
    if written in _TEENS:
        return 13 + _TEENS.index(written)
    ten, _, one = written.replace(" ", "-").partition("-")
    return 10 * (2 + _TENS.index(ten)) + (_NUMBERS.index(one) + 1 if one else 0)


def _lettered(written: str, span: tuple[int, int], terms: Terms) -> Word:
    if written in _NUMBERS:
        return Word(written, *span, NUMBER, _NUMBERS.index(written) + 1)
    if written in _ORDINALS:
        return Word(written, *span, ORDINAL, _ORDINALS.index(written) + 2)
    stitch = _STITCH.fullmatch(written)
    if stitch and stitch["kind"] in FOREIGN[terms]:
        return Word(stitch["kind"], *span)
    if stitch:
        return Word((stitch["post"] or "") + _us(stitch["kind"], terms), *span, STITCH)
    if written in _FOUNDATION[terms]:
        return Word(_FOUNDATION[terms][written], *span)
    if written in _RAISED:
        return Word(_RAISED[written], *span, STITCH)
    return Word(written, *span)


def _us(kind: str, terms: Terms) -> str:
    return _UK_TO_US.get(kind, kind) if terms is Terms.UK else kind


def _number(written: str) -> int:
    return int(written) if len(written) < 7 else TOO_MANY


def _common(raw: list[Word], how: HowRead) -> Iterator[Word]:
    texts = [word.text for word in raw]
    terms = how.terms
    own: Ways = {}
    for words, name in how.own.items():
        own.setdefault(words[0], []).append((list(words), name))
    at = 0
    while at < len(raw):
        for way, common in [*own.get(texts[at], ()), *WAYS.get(texts[at], ())]:
            if texts[at : at + len(way)] == way:
                if common:
                    yield _lettered(common, (raw[at].start, raw[at + len(way) - 1].end), terms)
                at += len(way)
                break
        else:
            counted = bool(at) and raw[at - 1].sort == NUMBER and (at < 2 or texts[at - 2] not in ("-", "ch", "chs", "chain"))
            if texts[at] not in ("corner", "corners"):
                yield raw[at]
            elif counted or not _tells_what_kind(raw[at + 1 : at + 2]):
                yield Word("corner", raw[at].start, raw[at].end)
            at += 1


def _tells_what_kind(after: list[Word]) -> bool:
    """Whether what stands behind "corner" is itself a kind of place: ``corner ch-2 sp``, ``corner st``."""
    return bool(after) and (after[0].sort in (NUMBER, STITCH) or after[0].text in _PLACES)
