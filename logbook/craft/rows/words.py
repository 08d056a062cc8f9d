"""The words of written rows: a text cut into words of the trade, each with its place in the text.

Different ways of writing one thing become one word (``skip``, ``miss`` and ``sk``; ``V st`` and ``v-stitch``). Words that no
row needs to be laid are left out (``the``, ``work``, ``through back loops only``: which loop is worked changes no place).
Stitches are given their US abbreviations, whatever the terms of the text.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from logbook.craft.words.terms import Terms

NUMBER, ORDINAL, STITCH, TOGETHER, OTHER = "number", "ordinal", "stitch", "together", "word"

TOO_MANY = 1_000_000  # what any longer number counts as


@dataclass(frozen=True, slots=True)
class Word:
    """One word: ``text`` is its common form, ``start`` and ``end`` where it stands. ``value``: of a number, an ordinal, or
    ``sc2tog``.
    """

    text: str
    start: int
    end: int
    sort: str = OTHER
    value: int = 0


_CUT = re.compile(
    r"""(?P<together>(?P<kind>sc|hdc|dc|tr|dtr|htr|trtr|qtr)[ ]?(?P<count>\d+)[ ]?tog(?:ether)?(?![a-z]))
    |(?P<ordinal>(?:\d*1st|\d*2nd|\d*3rd|\d+th)(?![a-z]))
    |(?P<number>\d+)
    |(?P<letters>[^\W\d_]+(?:['’][^\W\d_]+)?)
    |(?P<stars>\*+|†)
    |(?P<mark>[^\s\w])""",
    re.IGNORECASE | re.VERBOSE,
)
_NUMBERS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
_ORDINALS = ["second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]
_UK_TO_US = {"dc": "sc", "htr": "hdc", "tr": "dc", "dtr": "tr", "trtr": "dtr", "qtr": "trtr"}
FOREIGN = {Terms.US: ("htr", "qtr"), Terms.UK: ("sc", "hdc")}  # stitches that only the other terms have
_RAISED = {"rtrf": "fpdc", "rtrb": "bpdc"}
_STITCH = re.compile(r"(?P<post>fp|bp)?(?P<kind>sc|hdc|dc|tr|dtr|htr|trtr|qtr)s?")

# What is written → its common form; "" leaves it out. Longer ways of writing come first by their length.
_WAYS = {
    "ch": "ch chs chain chains",
    "sk": "sk skip skipping miss missing",
    "st": "st sts stitch stitches",
    "sp": "sp sps space spaces loop loops lp lps arch arches",
    "tch": "tch|t - ch|turning ch|turning chain|turning chains|turning chs",
    "begch": "beg ch|beginning ch|beginning chain|starting ch|starting chain|beg chain|initial ch",
    "slst": "sl st|slst|sl - st|ss|slip stitch|slip st|slip stitches|sl sts|sl",
    "v-st": "v - st|v - sts|v st|v sts|vst|vsts|v - stitch|v - stitches|v stitch|v stitches",
    "shell": "shell shells",
    "fan": "fan fans",
    "group": "group groups grp grps",
    "cl": "cl cls cluster clusters",
    "pc": "pc|pcs|popcorn|popcorns|pop|popcorn st",
    "puff": "puff|puffs|puff st|puff sts|puff stitch|puff stitches",
    "bobble": "bobble bobbles",
    "picot": "picot picots",
    "inc": "inc incs increase",
    "dec": "dec|decs|decrease|inv dec|invisible dec|invisible decrease",
    "rep": "rep repeat repeats repeating",
    "toend": "to end|to the end|to end of row|to end of rnd|to end of round|to end of the row|to row end|across|across row|"
    "across to end|all across|along",
    "around": "around|round|rnd|all around|around to end",
    "tolast": "to last|to the last|across to last|around to last|across to the last|to within last|until last|to final",
    "to": "to|until|up to|across to",
    "in": "in|into|in to|inside|in both loops of|through both loops of|blo of|flo of|blo in|flo in|in blo of|in flo of|"
    "in blo only of|in bl of|in fl of|in back loop of|in front loop of|in back loops of|in back loop only of|"
    "in front loop only of|"
    "through back loop of",
    "next": "next following foll",
    "each": "each every ea all",
    "centre": "centre center middle",
    "counts": "counts count counting counted stands stand",
    "not": "not|doesn't|don't|does not|do not|never|doesn’t|don’t",
    "throughout": "throughout|here and throughout|throughout pattern",
    "turn": "turn turned",
    "noturn": "do not turn|don't turn|don’t turn|without turning|no turn",
    "join": "join joined joining",
    "ring": "ring|magic ring|magic circle|centre of ring|center of ring|adjustable ring|magic loop|mr",
    "fromhook": "from hook|from the hook|away from hook",
    "topof": "top of|top ch of|top chain of",
    "baseof": "base of|bottom of|foot of",
    "and": "and|&|plus|then|and then|, and|; and|; then|, then",
    "rem": "rem remaining",
    "unworked": "unworked",
    "leave": "leave leaving",
    "ending": "ending end ends",
    "omit": "omit omitting",
    "times": "times time x ×",
    "more": "more",
    "made": "made completed",
    "over": "over",
    "row": "row rows",
    "side": "rs|ws|right side|wrong side|right side facing|wrong side facing|rs facing|ws facing",
    "fasten": "fasten off|finish off|end off|break off",
    "": "of previous row|of prev row|of previous rnd|of prev rnd|of previous round|of last row|of last rnd|of last round|"
    "of row below|from previous row|on previous row|at beg of row|at beginning of row|at beg of previous row|"
    "at beginning of previous row|at beg of last row|at beginning of last row|at beg of rnd|at beginning of round|"
    "at beg|at beginning|the|a|an|work|working|make|making|now|only|evenly|also|please|blo|flo|back loop|back loops|"
    "front loop|front loops|back loop only|back loops only|front loop only|front loops only|in blo|in flo|"
    "in blo only|in flo only|in back loops only|in front loops only|in back loop only|in front loop only|"
    "in back loops|in front loops|through back loop|through front loop|through back loops|through front loops|tbl|"
    "tfl|both loops|through both loops|in both loops|place marker|pm|yarn",
}
_WHOLE_NAMES = {
    "sc": "single crochet", "hdc": "half double crochet|half dc|half double", "dc": "double crochet|double crochets", "tr":
    "treble crochet|treble|trebles|triple crochet|treble crochets", "htr": "half treble crochet|half treble|half trebles",
    "dtr": "double treble crochet|double treble|double trebles", "trtr": "triple treble crochet|triple treble|triple trebles",
    "qtr": "quadruple treble crochet|quadruple treble",
}  # fmt: skip


def _ways() -> dict[str, list[tuple[list[str], str]]]:
    """First word → the ways of writing that begin with it, longest first, each with its common form."""
    found = [(way.split(), common) for common, written in _WAYS.items() for way in _split(written)]
    for stitch, written in _WHOLE_NAMES.items():
        for way in (name.split() for name in (stitch, *written.split("|"))):
            found += [(way, stitch)] * (way != [stitch])
            found += [([*front, *way], "fp" + stitch) for front in (("front", "post"), ("fp",))]
            found += [([*back, *way], "bp" + stitch) for back in (("back", "post"), ("bp",))]
    by_first: dict[str, list[tuple[list[str], str]]] = {}
    for way, common in sorted(found, key=lambda each: -len(each[0])):
        by_first.setdefault(way[0], []).append((way, common))
    return by_first


def _split(written: str) -> list[str]:
    return written.split("|") if "|" in written else written.split()


_BY_FIRST = _ways()


def cut(text: str, terms: Terms, start: int = 0, end: int | None = None) -> tuple[Word, ...]:
    """The words of ``text[start:end]``, their stitches in US abbreviations; places are counted in the whole text."""
    return tuple(_common(list(_raw(text, terms, start, len(text) if end is None else end)), terms))


def _raw(text: str, terms: Terms, start: int, end: int) -> Iterator[Word]:
    for found in _CUT.finditer(text, start, end):
        written = found[0].lower()
        span = found.span()
        if found["together"] and found["kind"].lower() in FOREIGN[terms]:
            yield Word(found["kind"].lower(), *span)
        elif found["together"]:
            yield Word(_us(found["kind"].lower(), terms), *span, TOGETHER, int(found["count"]))
        elif found["ordinal"]:
            yield Word(written, *span, ORDINAL, _number(written[:-2]))
        elif found["number"]:
            yield Word(written, *span, NUMBER, _number(written))
        elif found["letters"]:
            yield _lettered(written, span, terms)
        else:
            yield Word(written.translate(_DASHES), *span)


_DASHES = str.maketrans("–—−‑", "----")


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
    if written in _RAISED:
        return Word(_RAISED[written], *span, STITCH)
    return Word(written, *span)


def _us(kind: str, terms: Terms) -> str:
    return _UK_TO_US[kind] if terms is Terms.UK else kind


def _number(written: str) -> int:
    return int(written) if len(written) < 7 else TOO_MANY


def _common(raw: list[Word], terms: Terms) -> Iterator[Word]:
    texts = [word.text for word in raw]
    at = 0
    while at < len(raw):
        for way, common in _BY_FIRST.get(texts[at], ()):
            if texts[at : at + len(way)] == way:
                if common:
                    yield _lettered(common, (raw[at].start, raw[at + len(way) - 1].end), terms)
                at += len(way)
                break
        else:
            yield raw[at]
            at += 1
