"""What a text says beside its rows: the starting chain, the multiple, what chains count as, stitches of its own."""

import re
from dataclasses import dataclass

from logbook.craft.rows.instructions import PrintedCount, Span, StatedMultiple, Wanted
from logbook.craft.swatches.stitch_pattern import read_multiple
from logbook.errors import UnreadableError

_BETWEEN = r"\s*[,:;/–-]\s*"
_SIZES = (
    rf"(?:\d+\s+\(\d+\)\s+\d+|\d+)(?:\s*[(\[]\s*\d+(?:{_BETWEEN}\d+)*\s*[)\]]"
    r"|(?:/\d+){2,}|(?:\s*:\s*\d+){2,}|(?:\s*,\s*\d+){2,}|(?:\s+-\s+\d+){2,})?"
)
_CHAIN = re.compile(
    rf"\b(?:ch|chain)\s*(?:of\s+|[-–—]\s+)?(?P<a>{_SIZES})(?![\w-])(?!\s*(?:sc|hdc|dc|tr|htr|rows?|sp|l(?:oo)?ps?|arch|group|block|cluster))"
    r"(?!\s+(?:at|for)\s+(?:the\s+)?(?:start|beg))"
    rf"|(?<!of )(?<!\d)(?P<b>{_SIZES})\s*(?:ch|chs|chains?)\b"
    r"(?!\s*(?:from|over|more|sp|-|l(?:oo)?ps?\b|arch|group|block|cluster)|\s+(?:at|for)\s+(?:the\s+)?(?:start|beg))",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"(?:[^.;\n]|\.(?=\d))+")
_OTHER_CHAINS = re.compile(
    r"\b(?:counts?|counted|counting|stands?|turning|(?:start|beg|beginning)\s+of|with\s+which|add(?:ing)?|take\s+away|picots?|never|begins\s+with)\b",
    re.IGNORECASE,
)
"""Words of a sentence whose chains are not those to begin with."""
_MULTIPLE = re.compile(
    r"\bmult(?:iple|\.)?s?\s+of\s+(?P<m>\d+)(?:\s*(?:sts?|stitches|chs?|chains?)\b)?"
    r"(?:\s*,?\s*(?:plus|\+|and)\s*(?P<plus>\d+)|\s*,?\s*(?:less|minus|−|-)\s*(?P<less>\d+))?",
    re.IGNORECASE,
)
_ADDED = re.compile(r"\b(?:add|increas|decreas|adjust|chang|wider|narrower|larger|longer|bigger)\w*\b", re.IGNORECASE)
"""``for a wider scarf, add chains in multiples of 3``: what is added, not what there is."""
_DIVISIBLE = re.compile(
    r"\bch\w*\b[^.;]*?\b(?:divi(?:sible|ded)\s+by)\s+(?P<m>\d+)"
    r"(?:\s*,?\s*(?:plus|\+|and|with)\s*(?P<plus>\d+)(?:\s+ch(?:ain)?s?)?(?:\s+(?:over|more))?)?(?P<less>)",
    re.IGNORECASE,
)
_PARITY = re.compile(
    r"\b(?P<what>even|odd)\s+number(?:\s+of\s+(?P<of>\w+))?(?:\s*,?\s*(?:plus|\+)\s*(?P<plus>\d+))?", re.IGNORECASE
)
_OF_CHAIN = re.compile(r"(?<![a-z])(?:ch|chs|chain|chains)\b", re.IGNORECASE)
_FOR_CHAIN = re.compile(r"\s*(?:sts?\s*|more\s+)?(?:for|in|to)\s+(?:the\s+)?(?:\w+\s+){0,2}?ch(?:ain)?\b", re.IGNORECASE)
"""``plus 2 for the foundation chain``: the multiple is of chains."""
BASE_SENTENCE = re.compile(
    r"\s*(?:with\s+[^,.;]{1,30},?\s*)?(?:ch(?:ain)?\s+\d+|\d+\s*ch)\b[^.;]*?\b(?:join|ring|circle|ss|sl\s*st)\b[^.;]*[.;]\s+(?=\S)",
    re.IGNORECASE,
)
"""A chain joined to a ring that stands before row 1 in its own line."""
BASE_IN_ROUND = re.compile(
    r"\s*ch(?:ain)?\s+\d+\s*,?\s*(?:and\s+)?(?:join|ss|sl\s*st)\b[^,.;]*\b(?:(?:ring|circle)\b[^,.;]*[.;,]|first\s+ch\s*[.;,])\s+(?=\S)",
    re.IGNORECASE,
)
"""The same inside round 1, whose own chains may be joined too: nothing but chain and ring."""

SIZED = re.compile(rf"(?<![\d.,/-])\d+(?:\s*[(\[]\s*\d+(?:{_BETWEEN}\d+)*\s*[)\]]|(?:/\d+){{2,}}(?![\d/]))")

BETWEEN = re.compile(
    r"(?<![\d(])\d+\s+\(\d+\)\s+\d+(?:\s+\(\d+\)(?:\s+\d+)?)?(?!\s*[(\d])|\ba\)\s*\d+\s+b\)\s*\d+(?:\s+c\)\s*\d+)?(?:\s+d\)\s*\d+)?"
)
"""``73 (79) 85`` and ``a) 32 b) 36 c) 40``."""
_LISTED = re.compile(
    r"(?<!rows )(?<!rnds )(?<!rounds )(?<![\d.,/-])(?<!\d )"
    r"\d+(?:(?:\s*,\s*\d+){2,}|(?::\s+\d+){2,}|(?:\s+-\s+\d+){2,})(?!\s*(?:and|,|-)?\s*\d)",
    re.IGNORECASE,
)
"""``72, 80, 88`` and ``40 - 44 - 48``: sizes without brackets, where all such lists are as long."""


@dataclass(frozen=True, slots=True)
class Saying:
    """What one line says of the starting chain: its length, one a size, and the multiple; None: nothing."""

    chain: PrintedCount | None = None
    stated: StatedMultiple | None = None


def saying(text: str, start: int, end: int) -> Saying:
    """What ``text[start:end]`` says of the starting chain."""
    line = text[start:end]
    found = _starting_chain(line)
    chain = None
    if found is not None:
        more = re.match(r"\s*(?:sts?\b\s*)?\+\s*(\d+)\s*ch", line[found.end() :], re.IGNORECASE)
        lifted = int(more[1]) if more else 0
        numbers = tuple(lifted + int(number[:6]) for number in re.findall(r"\d+", found["a"] or found["b"]))
        chain = PrintedCount(numbers, Wanted("ch"), Span(start + found.start(), start + found.end()))
    return Saying(chain, _stated(line, start, chain is not None))


def _starting_chain(line: str) -> re.Match[str] | None:
    """Where a sentence tells how many chains to begin with, and speaks of no others."""
    for sentence in _SENTENCE.finditer(line):
        found = _CHAIN.search(line, sentence.start(), sentence.end())
        if found is not None and not _OTHER_CHAINS.search(sentence[0]):
            return found
    return None


def _stated(line: str, start: int, beside_chain: bool) -> StatedMultiple | None:
    parity = _PARITY.search(line)
    if parity is not None and (_OF_CHAIN.search(line) or parity["of"] is None):
        constant = (parity["what"].lower() == "odd") + int(parity["plus"] or 0)
        return StatedMultiple(2, None, constant % 2, Span(start + parity.start(), start + parity.end()))
    found = _MULTIPLE.search(line) or _DIVISIBLE.search(line)
    if found is None:
        return None
    span = Span(start + len(line) - len(line.lstrip()), start + len(line.rstrip()))
    of_chain = (
        beside_chain or _OF_CHAIN.search(line[: found.end()]) is not None or _FOR_CHAIN.match(line, found.end()) is not None
    )
    if _ADDED.search(line[: found.start()]):
        return None
    multiple, constant = int(found["m"]), int(found["plus"] or 0) - int(found["less"] or 0)
    if not 0 < multiple < 10_000:
        return None
    if of_chain:
        return StatedMultiple(multiple, None, constant % multiple, span)
    try:
        stated = read_multiple(line[found.start() :].strip())
    except UnreadableError:
        return StatedMultiple(multiple, constant if found["plus"] or found["less"] else None, None, span)
    return StatedMultiple(stated.multiple, stated.plus, stated.chain_constant, span)


def bare_of_chain(text: str) -> str:
    """A line without what it says of the starting chain and of joining it: what is left of it may be work."""
    line = _PARITY.sub(" ", _MULTIPLE.sub(" ", _CHAIN.sub(" ", text, count=1)))
    line = re.sub(
        r"\bjoin\b[^.;]*|\b(?:ss|sl\s*st|turn|(?:form|foundation|base|starting|beginning)\s+(?:a\s+)?(?:ring|ch|chain)?)\b",
        " ",
        line,
        flags=re.I,
    )
    return re.sub(r"\A\W*(?:ch|chain)s?\b\s*(?:a|an|any)?\s*[.:,]?\s*\Z|\bfor\s+the\s+base\s+chain\b", " ", line, flags=re.I)


def chains_count(text: str) -> bool | None:
    """Whether the pattern says that chains count as stitches; None if it says nothing."""
    found = re.search(
        r"(?<!turning )(?<!beginning )(?<!skipped )(?<!beg )(?<!starting )(?<!missed )(?<!these )(?<!\d )"
        r"\b(?:each\s+)?(?:ch|chs|chain|chains)\s+"
        r"(?:(do(?:es)?\s+not|never)\s+)?counts?\s+as\s+(?:an?\s+|one\s+)?(?:st\b|sts\b|stitch)",
        text,
        re.IGNORECASE,
    )
    return None if found is None else not found[1]


def size_count(text: str) -> int:
    """For how many sizes the text is written: as most of its bracketed numbers say; 1 if none does."""
    groups = [len(re.findall(r"\d+", found[0])) for found in SIZED.finditer(text)]
    several = [count for count in groups if count > 2]
    if several:
        return max(set(several), key=lambda count: (several.count(count), count))
    between = [len(re.findall(r"\d+", found[0])) for found in BETWEEN.finditer(text)]
    if len(between) > 2 and len(set(between)) == 1:
        return between[0]
    listed = [len(re.findall(r"\d+", found[0])) for found in _LISTED.finditer(text)]
    if len(listed) > 2 and len(set(listed)) == 1:
        return listed[0]
    chain = re.search(r"\b(?:ch|chain|make)\s+\d+\s*[(\[]\s*\d+\s*[)\]]", text, re.IGNORECASE)
    return 2 if chain else 1
