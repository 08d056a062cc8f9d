"""Cuts a text into its lines: which stretch is which row, and what stands before, between and after the rows.

Rows stand one a line, or parted by `` / ``; with names (``Row 1 (RS):``, ``Rnd 2:``, ``R4–6:``, ``Dec row:``, ``3rd row:``) they
may run over several lines or stand several in one. Without names, lines numbered ``1.``, ``2.`` … are rows too.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from logbook.craft.rows.instructions import Span

MOST_ROWS = 2000
MOST_LETTERS = 60_000  # in one row: some 2,500 phrases
MOST_IN_ALL = 150_000  # in all rows
MOST_BEFORE, MOST_BEHIND = 1000, 80  # letters looked at before a line, for whether it goes on
MOST_TEXT = 300_000  # with what stands around them

_ROW = r"(?:rows?|rnds?|rounds?|rds?)"
_NUMBERS = r"\d+(?:\s*(?:-|–|—|to|through|thru|and|&|,(?:\s*and)?)\s*r?\d+)*"
_SPELLED = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_ORDINALS = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]
_NAME = rf"""(?P<name>(?:(?:rs|ws)[ \t]+)?(?:(?:next|last|final|set[- ]?up|setup|foundation|base|first|beginning|dec|decrease|inc|
      increase|edging|border|dividing|pattern|plain|short)[ \t]+)?
    (?:(?P<kind>{_ROW}\b|r\.?(?=\s?\d))\s*(?P<numbers>{_NUMBERS})?
        (?:,?\s+and\s+(?:all|every)\s+(?P<every>even|odd|following|remaining|subsequent|other)[\w\s-]{{0,30}}?)?
      |(?P<which>\d+(?:st|nd|rd|th)(?:\s*(?:-|–|to|and|&|,)\s*\d+(?:st|nd|rd|th))*)\s+(?P<kind2>{_ROW})
      |(?P<kind3>{_ROW})\s+(?P<spelled>{_SPELLED})\b
      |(?P<spelled2>first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)\s+(?P<kind4>{_ROW}))\s*
    (?:,?\s*(?P<pass>forward|fwd|return|rtn)(?:\s+pass)?\s*)?
    (?:,?[ \t]*(?:rs|ws|right\ side|wrong\ side)\b[ \t]*|[ \t]*(?:in|with)[ \t]+(?:\w+[ \t]*){{1,3}}(?=:))?
    (?:(?:\([^()\n]{{0,40}}\)|\[[^\[\]\n]{{0,40}}\])[ \t]*){{0,3}})(?:(?P=mark))?\s*
    (?:[:.)→]|(?<=[\s\d)])[-–—>]\s|(?<=[\d)])[–—](?=[^\W\d]))(?:(?P=mark))?"""
_NAMED = re.compile(
    r"(?:^|(?<=\n)|(?<=\s/\s)|(?<=[.;:)\]]\s))[ \t]*(?:[→•▪►●][ \t]*)?(?P<mark>\*\*|__|[*_])?" + _NAME,
    re.IGNORECASE | re.VERBOSE,
)
_UNMARKED = re.compile(
    rf"(?:^|(?<=\n))[ \t]*(?P<name>(?:(?P<kind>{_ROW})\s*(?P<numbers>{_NUMBERS})"
    rf"|(?P<spelled2>{'|'.join(_ORDINALS)})[ \t]+(?P<kind4>{_ROW}))\s*(?:\([^()\n]{{0,40}}\))?)"
    r"(?:[ \t]+(?=[(\[*]|(?-i:[A-Z])|\d+\s?[a-z]{2}|(?:ch|sc|hdc|dc|tr|htr|sl|ss|with|work|rep)\b)|[ \t]*\n)",
    re.IGNORECASE,
)
"""``Row 2 Ch 1, sc …``: no mark behind the number; only where every row is named so."""
_COUNTED = re.compile(r"(?:^|(?<=\n))[ \t]*(?P<name>(?P<numbers>\d{1,3}))(?:[.):]|[ \t]+[-–—])[ \t]+(?=\S)")
_PART = re.compile(r"\n|\s/\s")
_MADE = (
    r"(?:(?:fp|bp|f)?(?:sc|hdc|dc|tr|dtr|htr|trtr|qtr)(?:s|\d+tog|\d+inc)?|shells?|fans?|clusters?|cls?|popcorns?|pcs?|puffs?|bobbles?|"
    r"picots?|v-?sts?|inc|dec|invdec|sl\s*sts?|ss|ch|chs|chain|crochet|trebles?)"
)
WORK = re.compile(rf"\b(?:{_MADE}|sk|skip|miss|rep(?:eat)?|turn|join)\b", re.IGNORECASE)
"""A word that only work has: a line without one is a note."""
_MAKES = re.compile(
    rf"\b{_MADE}\b[^.;:\n]{{0,40}}?\b(?:in|into|across|around|to\s+end|over)\b|\bin\s+(?:each|next|first|last|every)\b|\bch\s+\d|\d\s+ch\b|\*|"
    r"\bfasten\s+off\b",
    re.IGNORECASE,
)
_BESIDE = re.compile(
    r"\s*(?:notes?|tips?|gauge|tension|materials?|yarn|hook|sizes?|finished|notions|abbreviations?|skill|level|difficulty|finishing|"
    r"assembly|(?:sl(?:ip)?[ -]?st(?:itch)?|ss)\b[^.\n]{0,60}\.?\s*\b(?:fasten|finish|cut|break)\b|making\s+up|"
    r"(?:edging|border|trim)\s*[:–-][^\n]*\bevenly\b|"
    r"place|mark|fasten|finish|weave|stuff|cut|sew|block|begin|work\s+(?:even|straight)|special|stitch\s+guide|to\s+fit|"
    r"turn\s+(?:the\s+work\s+)?(?:at|after|between)|remember|break|now\s+keep|keep|carry\s+on|cont(?:inue)?|gather|flatten|damp|pin|"
    r"these\s+|those\s+|the\s+(?:\w+\s+)*(?:form|pattern|last)|no\s+joining|you\s+will|i\s+used|start\s+each|join\s+each|"
    r"don['’]t\s+forget|measurements?|pattern\s+notes?|repeat\s+until|(?:do\s+not|don['’]t)\s+(?:stuff|fasten|cut|break|block|turn\s+(?:the\s+)?work))\b",
    re.IGNORECASE,
)
_IN_ROUNDS = re.compile(r"\b(?:ring|circle|rounds?|rnds?|spiral|mr)\b", re.IGNORECASE)
LEADS_TO_ROW = re.compile(
    r"\b(?:return\s+to|sk|skip|miss)\b[^.;:]{0,150}[.,;]\s*(?:(?:with|using)\s[^,.;]{0,60},\s*)?(?:re)?join\s+(?:\w+\s+){1,4}(?:in|to|at)\b[^.;]*"
    r"|\b(?:re-?join|attach)\s+(?:\w+\s+){0,4}?(?:in|to)\b[^.;]{0,80}\b(?:st|stitch|dc|sc|hdc|tr|htr)\b[^.;]*",
    re.IGNORECASE,
)
"""``Skip centre 10 sts, rejoin yarn in next st.`` in a line before the row."""
_SET_OFF = re.compile(r"\s*(\*\*|__|[*_])[A-Z][^*_\n]{1,40}\1[ \t]*\Z")
_SAYS = re.compile(
    r"\s*[(*]?\s*(?:the\s+|every\s+|all\s+)?(?:t(?:urning)?[ -]?)?(?:ch(?:s|ains?)?\b|tch\b|\d\s*ch\b)[^,;*]*"
    r"\b(?:not|never|counts?|is|are)\b",
    re.IGNORECASE,
)
_ENDS_IN_COUNT = re.compile(
    r"(?:(?<!\bch)[-–—=:]|\b(?:turn|join))\s*\d+\s*\Z"
    r"|\b\d+\s*(?:x\s*)?(?:\d*-?\s?ch-?\d*[ -]?)?(?:sts?|stitches|loops?|sc|hdc|dc|tr|htr|dtr|sps?|spaces?|sets|shells?)\s*\Z",
    re.IGNORECASE,
)
AGAIN = re.compile(
    rf"""\s*(?:[→•▪►●]\s*)?(?:with\s+[^,.;]{{1,20}},\s*)?(?:then\s+)?(?:rep(?:eat)?|work(?:\s+as)?(?:\s+(?:for|in|given\s+(?:for|in)))?|same\s+as|like|as(?:\s+(?:for|in|given\s+(?:for|in)))?)\s+(?:the\s+)?
    (?:(?P<named>dec(?:rease)?|inc(?:rease)?|short)\s+{_ROW}
      |(?:last|previous)\s+(?:(?P<back>\d+|two|three|four|five|six)\s+)?{_ROW}
      |(?:from\s+)?(?:{_ROW}|r\.?)\s*(?P<first>\d+)(?:\s*(?:-|–|—|to|through|thru|and|&|\+)\s*(?:{_ROW}\s*|r\.?\s*)?(?P<last>\d+)(?!\d)(?!\s*(?:[(\[{{]|st|sc|hdc|dc|tr|htr|ch)))?
      |(?P<first3>{"|".join(_ORDINALS)})\s+{_ROW}
      |(?P<first2>\d+)(?:st|nd|rd|th)(?:\s*(?:-|–|—|to|and|&)\s*(?P<last2>\d+)(?:st|nd|rd|th))?(?:\s+{_ROW}|(?=\s*(?:[.,;(\[{{]|\Z|row))))
    (?P<rest>(?:[\s.,;)(\[{{<].*)?)\Z""",
    re.IGNORECASE | re.VERBOSE | re.DOTALL,
)
_TOLD_AGAIN = re.compile(
    rf"(?<=[.;)\]])\s+(?=rep(?:eat)?\s+(?:the\s+)?(?:(?:last|previous)\s+(?:\w+\s+)?{_ROW}|(?:from\s+)?{_ROW}\s*\d|\d+(?:st|nd|rd|th)\s+{_ROW}))",
    re.IGNORECASE,
)
_WORDS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10}
_TIMES = {**_WORDS, "once": 1, "twice": 2}


@dataclass(frozen=True, slots=True)
class TextPart:
    """A stretch of the text, and the row's name that stands before it, if any.

    ``every``: the rows it is for besides those numbered (``even``, ``odd``, ``following``).
    """

    start: int
    end: int
    name: str = ""
    numbers: tuple[int, ...] = ()
    in_round: bool = False
    every: str = ""

    @property
    def span(self) -> Span:
        """Where it stands."""
        return Span(self.start, self.end)


def parts(text: str) -> list[TextPart]:
    """The text cut into rows and other lines."""
    names = list(_NAMED.finditer(text)) or list(_UNMARKED.finditer(text)) or _counted(text)
    found: list[TextPart] = []
    head = names[0].start("name") if names else len(text)
    at = 0
    for cut_at in [*_PART.finditer(text, 0, head), None]:
        end = cut_at.start() if cut_at else head
        if text[at:end].strip(" \t\n/"):
            found.append(TextPart(at, end))
        at = cut_at.end() if cut_at else head
    in_rounds = _IN_ROUNDS.search(text) is not None  # what "R3" stands for
    ends = [_begins(following) for following in names[1:]] + [len(text)]
    for match, end in zip(names, ends, strict=False):
        found += _named_part(text, match, match.end(), end, in_rounds)
    return found


def _begins(name: re.Match[str]) -> int:
    """Where a row's name begins, with the star that sets it off."""
    marked = name.groupdict().get("mark")
    return name.start("mark") if marked else name.start("name")


def _counted(text: str) -> list[re.Match[str]]:
    """Lines numbered 1, 2, 3 …; none if they are not."""
    found = list(_COUNTED.finditer(text))
    numbers = [int(match["numbers"]) for match in found]
    return found if len(found) > 1 and numbers == list(range(1, len(found) + 1)) else []


def _named_part(text: str, match: re.Match[str], start: int, end: int, in_rounds: bool) -> Iterator[TextPart]:
    """A named row, and after it the lines that are none of its own: ``Rep Rows 2–3``, a stitch's description, a note."""
    own_end = end
    for line in re.finditer(r"[^\n]+", text[start:end]):
        before = text[max(start, start + line.start() - MOST_BEFORE) : start + line.start()]
        if line.start() and line[0].strip(" /") and _stands_apart(line[0], before):
            own_end = start + line.start()
            break
    told = _TOLD_AGAIN.search(text, start, own_end)
    if told is not None and not AGAIN.match(text, start, own_end):
        own_end = told.end()
    body = text[start:own_end].rstrip().rstrip("/").rstrip()
    groups = match.groupdict()
    kind = next((groups[each] for each in ("kind", "kind2", "kind3", "kind4") if groups.get(each)), "").lower()
    yield TextPart(
        start + len(body) - len(body.lstrip()),
        start + len(body),
        match["name"].strip(),
        tuple(_numbers(groups.get("numbers") or groups.get("which") or _spelled(groups))),
        (kind[:2] in ("rn", "ro", "rd") or (kind in ("r", "r.") and in_rounds)) and "row" not in match["name"].lower(),
        (groups.get("every") or "").lower(),
    )
    for line in re.finditer(r"[^\n]+", text[own_end:end]):
        if line[0].strip(" \t/"):
            yield TextPart(own_end + line.start(), own_end + line.end())


def _spelled(groups: dict[str, str | None]) -> str:
    """The number of ``Round three`` or ``Third row``; "" if it has none."""
    word = groups.get("spelled") or groups.get("spelled2")
    names = _SPELLED.split("|") if groups.get("spelled") else _ORDINALS
    return str(names.index(word.lower()) + 1) if word else ""


def _stands_apart(line: str, before: str) -> bool:
    """Whether a line under a named row's first is none of the row's own."""
    gap, before = before.count("\n", len(before.rstrip())) > 1, before.strip()
    if not before:
        return False  # the name stands in a line of its own
    if before.count("(") > before.count(")") or before.count("[") > before.count("]"):
        return False
    if (gap and (before and before[-1] not in ",;")) or _SET_OFF.match(line):
        return True
    if AGAIN.match(line) or _BESIDE.match(line) or re.match(r"\s*[\w -]{1,30}(?:\([\w -]+\))?\s*=", line):
        return True
    if _SAYS.match(line) and (before[-1:] in ".)]}>!;" or _ENDS_IN_COUNT.search(before[-MOST_BEHIND:])):
        return True
    if not before or not (before[-1] in ".)]}>!;" or _ENDS_IN_COUNT.search(before[-MOST_BEHIND:])):
        return False
    title = line.strip()[:1].isupper() and (not _MAKES.search(line) or LEADS_TO_ROW.search(line) is not None)
    return title or not WORK.search(line)


def makes(text: str) -> bool:
    """Whether a line tells to make something somewhere."""
    return _MAKES.search(text) is not None and not _BESIDE.match(text) and not _SET_OFF.match(text)


def times_again(found: re.Match[str]) -> int:
    """How often ``AGAIN`` says so: ``Rep Rows 2 and 3 four more times``; 0 if it does not."""
    told = re.match(rf"\W*(?:for\s+)?(\d{{1,3}}|{'|'.join(_TIMES)})(?:\s+more)?(?:\s+times?)?\b", found["rest"], re.IGNORECASE)
    if told is None or not re.search(r"times?|once|twice|more", told[0], re.IGNORECASE):
        return 0
    return _TIMES.get(told[1].lower(), int(told[1]) if told[1].isdigit() else 0)


def goes_back_to(found: re.Match[str], last_row: int) -> tuple[int, int]:
    """The first and last row that ``AGAIN`` found named; ``last_row`` is the one written last."""
    spelled = found["first3"]
    first = str(_ORDINALS.index(spelled.lower()) + 1) if spelled else found["first"] or found["first2"]
    if first is None:
        back = found["back"] or "1"
        return last_row + 1 - _WORDS.get(back.lower(), int(back) if back.isdigit() else 1), last_row
    last = found["last"] or found["last2"] or first
    return int(first[:6]), int(last[:6])


def _numbers(written: str) -> Iterator[int]:
    """``2, 4 and 6`` → 2, 4, 6; ``4–9`` → 4 to 9."""
    found = [int(number[:6]) for number in re.findall(r"\d+", written)]
    if re.search(r"-|–|—|to|thr", written) and len(found) == 2:
        yield from range(found[0], min(found[1], found[0] + MOST_ROWS) + 1)
    else:
        yield from found


def called(part: TextPart, number: int) -> str:
    """``Row 4`` for each of the rows named ``Rows 4–9``."""
    name = re.sub(r"\s*[(\[].*", "", part.name)
    if not part.numbers:
        return name or f"Row {number}"
    kind = re.search(r"rnd|round|row", part.name, re.IGNORECASE)
    return f"{kind[0].capitalize() if kind else 'Row'} {number}"
