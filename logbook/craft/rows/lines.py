"""Cuts a text into its lines: which stretch is which row, and what stands between the rows.

Rows stand one a line, or parted by `` / ``; with names (``Row 1 (RS):``, ``Rnd 2:``, ``Set-up row:``) they may run over several
lines.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

MOST_ROWS = 400

_NAME = re.compile(
    r"""(?P<name>(?:(?:next|last|final|set[- ]?up|setup|foundation|base|first|beginning)\s+)?
    (?:(?P<kind>(?:rows?|rnds?|rounds?)\b|r(?=\d))\s*(?P<numbers>\d+(?:\s*(?:-|–|—|to|and|&|,)\s*\d+)*)?
      |(?P<which>\d+)(?:st|nd|rd|th)\s+(?P<kind2>rows?|rnds?|rounds?))\s*
    (?:\([^()\n]{0,40}\)|\[[^\[\]\n]{0,40}\])?)\s*(?:[:.]|(?<=[\s\d)])[-–—]\s)""",
    re.IGNORECASE | re.VERBOSE,
)
_NAMED = re.compile(r"(?:^|(?<=\n)|(?<=\s/\s)|(?<=[.;)]\s))[ \t]*" + _NAME.pattern, re.IGNORECASE | re.VERBOSE)
_PART = re.compile(r"\n|\s/\s")
CALLED = re.compile(
    r"\s*(?:special\s+stitch(?:es)?\s*:?\s*)?(?P<name>[A-Z][A-Z-]*(?:\s+st(?:itch)?)?)\s*(?:\((?P<short>[A-Z-]+)\))?\s*[=:]\s*(?=\S)",
    re.IGNORECASE,
)
AGAIN = re.compile(
    r"\s*(?:rep(?:eat)?|work(?:\s+as)?(?:\s+for)?|same\s+as|as(?:\s+for)?)\s+(?:the\s+last\s+)?(?:rows?|rnds?|rounds?)\s*"
    r"(?P<first>\d+)(?:\s*(?:-|–|—|to|and|&)\s*(?P<last>\d+))?(?:[\s.,;)]|for\s+[^\n]*|to\s+form\s+[^\n]*|until[^\n]*|throughout|turn|"
    r"ending\s[^\n]*|as\s+(?:desired|required|needed)|\d+\s+(?:more\s+)?times|once|twice|more)*\Z",
    re.IGNORECASE,
)
BASE = re.compile(
    r"\s*(?:(?:foundation|base|starting|beginning)(?:\s+(?:ch|chain))?\s*[:.]?\s*)?(?:ch(?:ain)?\b|make\b|multiple\b|mult\b|\d+\s*ch\b)",
    re.I,
)
BEHIND_BASE = {",", ".", "and", "turn", "noturn", "join", "with", "slst", "in", "to", "form", "ring", "first", "ch", "being"}
BEHIND_BASE |= {"careful", "not", "twist"}


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of the text, and the row's name that stands before it, if any."""

    start: int
    end: int
    name: str = ""
    numbers: tuple[int, ...] = ()
    in_round: bool = False


def parts(text: str) -> list[Part]:
    """The text cut into rows and other lines."""
    names = list(_NAMED.finditer(text))
    found: list[Part] = []
    head = names[0].start("name") if names else len(text)
    at = 0
    for cut_at in [*_PART.finditer(text, 0, head), None]:
        end = cut_at.start() if cut_at else head
        if text[at:end].strip(" \t\n/"):
            found.append(Part(at, end))
        at = cut_at.end() if cut_at else head
    ends = [following.start("name") for following in names[1:]] + [len(text)]
    for match, end in zip(names, ends, strict=False):
        found += _named_part(text, match, match.end(), end)
    return found


def _named_part(text: str, match: re.Match[str], start: int, end: int) -> Iterator[Part]:
    """A named row, and after it the lines that are none of its own: ``Rep Rows 2–3``, a stitch's description."""
    own_end = end
    for line in re.finditer(r"[^\n]+", text[start:end]):
        if line.start() and (AGAIN.match(line[0]) or CALLED.match(line[0]) or re.match(r"\s*Notes?\b", line[0], re.I)):
            own_end = min(own_end, start + line.start())
    body = text[start:own_end].rstrip().rstrip("/").rstrip()
    numbers = tuple(_numbers(match["numbers"] or match["which"] or ""))
    yield Part(
        start + len(body) - len(body.lstrip()),
        start + len(body),
        match["name"].strip(),
        numbers,
        (match["kind"] or match["kind2"]).lower()[:2] in ("rn", "ro") and "row" not in match["name"].lower(),
    )
    for line in re.finditer(r"[^\n]+", text[own_end:end]):
        if line[0].strip(" \t/"):
            yield Part(own_end + line.start(), own_end + line.end())


def _numbers(written: str) -> Iterator[int]:
    """``2, 4 and 6`` → 2, 4, 6; ``4–9`` → 4 to 9."""
    found = [int(number[:6]) for number in re.findall(r"\d+", written)]
    if re.search(r"-|–|—|to", written) and len(found) == 2:
        yield from range(found[0], min(found[1], found[0] + MOST_ROWS) + 1)
    else:
        yield from found


def called(part: Part, number: int) -> str:
    """``Row 4`` for each of the rows named ``Rows 4–9``."""
    if not part.numbers:
        return re.sub(r"\s*[(\[].*", "", part.name) or f"Row {number}"
    kind = re.search(r"rnd|round|row", part.name, re.IGNORECASE)
    return f"{kind[0].capitalize() if kind else 'Row'} {number}"
