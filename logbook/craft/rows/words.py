"""The words of written rows: a text cut into words of the trade, each with its place in the text.

Different ways of writing one thing become one word (``skip``, ``miss`` and ``sk``; ``V st`` and ``v-stitch``). Words that no
row needs to be laid are left out (``the``, ``work``, ``through back loops only``: which loop is worked changes no place).
Stitches are given their US abbreviations, whatever the terms of the text.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from logbook.craft.words.terms import Terms

NUMBER, ORDINAL, STITCH, TOGETHER, MANY, OTHER = "number", "ordinal", "stitch", "together", "many", "word"

TOO_MANY = 1_000_000  # what any longer number counts as


@dataclass(frozen=True, slots=True)
class Word:
    """One word: ``text`` is its common form, ``start`` and ``end`` where it stands. ``value``: of a number, an ordinal, or
    ``sc2tog``. ``sizes``: of a number that stands in all sizes (``10 (12, 14)``), what it is in each; ``value`` then is that of
    the size that is read.
    """

    text: str
    start: int
    end: int
    sort: str = OTHER
    value: int = 0
    sizes: tuple[int, ...] = ()


_CUT = re.compile(
    r"""(?P<together>(?P<kind>sc|hdc|dc|tr|dtr|htr|trtr|qtr)[ ]?(?P<count>\d+)[ ]?(?:tog(?:ether)?|(?P<inc>inc))(?![a-z]))
    |(?P<broken>\d+\.\d+)
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
_STITCH = re.compile(r"(?P<post>fp|bp)?(?P<kind>sc|hdc|dc|tr|dtr|htr|trtr|qtr|tss)s?")

# What is written → its common form; "" leaves it out. Longer ways of writing come first by their length.
_WAYS = {
    "ch": "ch chs chain chains",
    "sk": "sk skip skipping miss missing",
    "skipped": "skipped missed",
    "st": "st|sts|stitch|stitches|vertical bar|vertical bars|bar|bars",
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
    "dec": "dec|decs|decrease|inv dec|invdec|invisible dec|invisible decrease",
    "fsc": "fsc|foundation sc|foundation single crochet|foundation single crochets",
    "fhdc": "fhdc|foundation hdc|foundation half double crochet",
    "fdc": "fdc|foundation dc|foundation double crochet",
    "tss": "draw up a loop|pull up a loop|draw up a lp|pull up a lp|draw up loop|pull up loop",
    "otherside": "on opposite side of foundation ch|along opposite side of foundation ch|along other side of foundation ch|"
    "on other side of foundation ch|on opposite side of foundation chain|along opposite side of foundation chain|"
    "along other side of foundation chain|on other side of foundation chain|along opposite side of ch|"
    "along opposite side of chain|on opposite side of ch|on opposite side of chain|on opposite side of starting ch|"
    "along opposite side of starting ch|in opposite side of foundation ch|into opposite side of foundation ch|"
    "on opposite side of starting chain|along the opposite side of foundation ch|on the opposite side of foundation ch|"
    "on the other side of the foundation ch|along the opposite side of the foundation ch|along the opposite side of the chain",
    "nojoin": "do not join|don't join|don’t join|without joining",
    "rep": "rep repeat repeats repeating",
    "toend": "to end|to the end|to end of row|to end of rnd|to end of round|to end of the row|to row end|across|across row|"
    "across to end|all across|along",
    "around": "around|round|rnd|all around|around to end|around post of|around the post of|around posts of|round post of|"
    "round stem of|around stem of|around the stem of|around the posts of",
    "tolast": "to last|to the last|across to last|around to last|across to the last|to within last|to within the last|"
    "within last|until last|to final",
    "to": "to|until|up to|across to",
    "in": "in|into|in to|inside|in both loops of|through both loops of|blo of|flo of|blo in|flo in|in blo of|in flo of|"
    "in blo only of|in bl of|in fl of|in back loop of|in front loop of|in back loops of|in back loop only of|"
    "in front loop only of|"
    "through back loop of|in 3rd loop of|in third loop of|in 3rd lp of|in back bar of|in the back bar of",
    "next": "next following foll",
    "each": "each every ea all",
    "centre": "centre center middle",
    "counts": "counts count counting counted stands stand",
    "not": "not|doesn't|don't|does not|do not|never|doesn’t|don’t",
    "throughout": "throughout|here and throughout|here or throughout|now and throughout|throughout pattern|here and thereafter|"
    "throughout the pattern|in this and all rows|on all rows|on every row",
    "turn": "turn turned",
    "noturn": "do not turn|don't turn|don’t turn|without turning|no turn",
    "join": "join joined joining",
    "ring": "ring|magic ring|magic circle|centre of ring|center of ring|adjustable ring|magic loop|mr",
    "fromhook": "from hook|from the hook|away from hook",
    "topof": "top of|top ch of|top chain of",
    "baseof": "base of|bottom of|foot of",
    "and": "and|&|plus|then|and then|, and|; and|; then|, then",
    "rem": "rem remaining remain remains",
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
    "": "in front of sts just made|in front of st just made|in front of stitches just made|in front of stitch just made|"
    "in front of dc just made|in front of tr just made|in front of group just made|behind sts just made|behind st just made|"
    "behind stitches just made|in back of sts just made|in back of st just made|in front of sts just worked|"
    "in front of st just worked|behind dc just made|behind tr just made|behind dc just worked|in front of dc just worked|"
    "corner|in 3rd loops|in third loops|in 3rd loops only|in 3rd lps|in 3rd loops only of|"
    "of previous row|of prev row|of previous rnd|of prev rnd|of previous round|of last row|of last rnd|of last round|"
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
            found += [([how, *way], stitch) for how in ("reverse", "rev", "standing", "spike", "extended", "long")]
            found += [([*front, *way], "fp" + stitch) for front in (("front", "post"), ("fp",))]
            found += [([*back, *way], "bp" + stitch) for back in (("back", "post"), ("bp",))]
    by_first: dict[str, list[tuple[list[str], str]]] = {}
    for way, common in sorted(found, key=lambda each: -len(each[0])):
        by_first.setdefault(way[0], []).append((way, common))
    return by_first


def _split(written: str) -> list[str]:
    return written.split("|") if "|" in written else written.split()


_BY_FIRST = _ways()


Ways = dict[str, list[tuple[list[str], str]]]


@dataclass(frozen=True, slots=True)
class Reading:
    """How a text is read: its terms, what it calls stitches of its own, for how many sizes it is written, and which is read."""

    terms: Terms
    own: Mapping[tuple[str, ...], str] = field(default_factory=dict)
    sizes: int = 1
    size: int = 0


def cut(text: str, reading: Terms | Reading, start: int = 0, end: int | None = None) -> tuple[Word, ...]:
    """The words of ``text[start:end]``, their stitches in US abbreviations; places are counted in the whole text."""
    how = reading if isinstance(reading, Reading) else Reading(reading)
    raw = list(_raw(text, how.terms, start, len(text) if end is None else end))
    if how.sizes > 1:
        raw = list(_sized(raw, how))
    return tuple(_common(raw, how))


def raw_words(text: str, terms: Terms) -> tuple[str, ...]:
    """The words as they stand, before different ways of writing become one."""
    return tuple(word.text for word in _raw(text, terms, 0, len(text)))


def _sized(raw: list[Word], how: Reading) -> Iterator[Word]:
    """``10 (12, 14)`` made one number."""
    at = 0
    while at < len(raw):
        end = at + 2 * how.sizes
        group = raw[at:end]
        if len(group) == 2 * how.sizes and raw[at].sort == NUMBER and _is_group(group):
            values = (raw[at].value, *(word.value for word in group[2::2]))
            number = values[how.size]
            yield Word(str(number), raw[at].start, group[-1].end, NUMBER, number, values)
            at = end
        else:
            yield raw[at]
            at += 1


def _is_group(words: list[Word]) -> bool:
    """Whether these are a number and as many more in brackets."""
    texts = [word.text for word in words]
    return (
        (texts[1], texts[-1]) in (("(", ")"), ("[", "]"))
        and all(word.sort == NUMBER for word in words[2::2])
        and all(text in (",", ":", ";") for text in texts[3:-1:2])
    )


def _raw(text: str, terms: Terms, start: int, end: int) -> Iterator[Word]:
    for found in _CUT.finditer(text, start, end):
        written = found[0].lower()
        span = found.span()
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
    return _UK_TO_US.get(kind, kind) if terms is Terms.UK else kind


def _number(written: str) -> int:
    return int(written) if len(written) < 7 else TOO_MANY


def _common(raw: list[Word], how: Reading) -> Iterator[Word]:
    texts = [word.text for word in raw]
    terms = how.terms
    own: Ways = {}
    for words, name in how.own.items():
        own.setdefault(words[0], []).append((list(words), name))
    at = 0
    while at < len(raw):
        for way, common in [*own.get(texts[at], ()), *_BY_FIRST.get(texts[at], ())]:
            if texts[at : at + len(way)] == way:
                if common:
                    yield _lettered(common, (raw[at].start, raw[at + len(way) - 1].end), terms)
                at += len(way)
                break
        else:
            yield raw[at]
            at += 1
