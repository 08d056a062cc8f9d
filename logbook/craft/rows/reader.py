"""A text into written rows: which line is which row, what the pattern says of itself, and each row's instructions.

Rows stand one a line, or parted by `` / ``; with names (``Row 1 (RS):``, ``Rnd 2:``, ``Set-up row:``) they may run over several lines.
Without names they count from 1. ``Rows 4–9: rep Rows 2–3``, ``Row 3: as row 1`` and ``Rep Rows 2–3`` refer to other rows.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from logbook.craft.rows.asides import SaidToCount, said_to_count, sizes
from logbook.craft.rows.cursor import Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import Chain, Fault, FromHook, Made, PrintedCount, Skip, Span, Wanted, Work, WrittenPattern, WrittenRow
from logbook.craft.rows.openings import at_hook, turning_chain
from logbook.craft.rows.phrases import Phrases, RowWords, prevailing_kind
from logbook.craft.rows.words import cut
from logbook.craft.terms import Terms

MOST_ROWS = 400

_NAME = re.compile(
    r"""(?P<name>(?:(?:next|last|final|set[- ]?up|setup|foundation|base|first|beginning)\s+)?
    (?P<kind>rows?|rnds?|rounds?)\b\s*
    (?P<numbers>\d+(?:\s*(?:-|–|—|to|and|&|,)\s*\d+)*)?\s*
    (?:\((?P<aside>[^()\n]{0,40})\)|\[[^\[\]\n]{0,40}\])?)\s*[:.]""",
    re.IGNORECASE | re.VERBOSE,
)
_NAMED = re.compile(r"(?:^|(?<=\n)|(?<=\s/\s)|(?<=[.;)]\s))[ \t]*" + _NAME.pattern, re.IGNORECASE | re.VERBOSE)
_PART = re.compile(r"\n|\s/\s")
_CALLED = re.compile(
    r"\s*(?:special\s+stitch(?:es)?\s*:?\s*)?(?P<name>[A-Za-z][A-Za-z-]*(?:\s+st(?:itch)?)?)\s*(?:\((?P<short>[A-Za-z-]+)\))?\s*[=:]\s*(?=\S)"
)
_AGAIN = re.compile(
    r"\s*(?:rep(?:eat)?|work(?:\s+as)?(?:\s+for)?|same\s+as|as(?:\s+for)?)\s+(?:the\s+last\s+)?(?:rows?|rnds?|rounds?)\s*"
    r"(?P<first>\d+)(?:\s*(?:-|–|—|to|and|&)\s*(?P<last>\d+))?\s*(?P<rest>[^\n]*?)\s*\Z",
    re.IGNORECASE,
)
_BASE = re.compile(
    r"\s*(?:(?:foundation|base|starting|beginning)(?:\s+(?:ch|chain))?\s*[:.]?\s*)?(?:ch(?:ain)?\b|make\b|multiple\b|mult\b|\d+\s*ch\b)",
    re.I,
)


@dataclass(frozen=True, slots=True)
class _Part:
    """A stretch of the text, and the row's name that stands before it, if any."""

    start: int
    end: int
    name: str = ""
    numbers: tuple[int, ...] = ()
    in_round: bool = False


def read(text: str, terms: Terms) -> WrittenPattern:
    """The rows of ``text``. What is not understood is among the faults, with its place."""
    return _Reading(text, terms).pattern()


@dataclass(slots=True)
class _Read:
    part: _Part
    number: int
    words: RowWords


@dataclass(slots=True)
class _Reading:
    """One reading of a text, from its first line to its last."""

    text: str
    terms: Terms
    names: dict[str, Made] = field(default_factory=dict)
    rows: list[_Read] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    throughout: list[SaidToCount] = field(default_factory=list)
    chain_sizes: PrintedCount | None = None
    joined_base: bool = False
    repeat: tuple[int, int, Span] | None = None

    def pattern(self) -> WrittenPattern:
        parts = _parts(self.text)
        for part in parts:
            if not part.name:
                self._call(part)
        named = any(part.name for part in parts)
        for part in parts:
            if not self._refers(part) and not self._speaks_of_all(part, named):
                self._row(part)
        written = tuple(self._written())
        return WrittenPattern(
            written,
            tuple(self.faults),
            self.chain_sizes,
            *(self.repeat if self.repeat else (None, None, Span(0, 0))),
            chains_count=_chains_count(self.text),
            joined_base=self.joined_base,
        )

    def _call(self, part: _Part) -> bool:
        """``Shell = 5 dc in same st``, ``V-st: (dc, ch 1, dc) in next st``."""
        found = _CALLED.match(self.text, part.start, part.end)
        if found is None:
            return False
        called = cut(found["name"], self.terms)
        short = cut(found["short"], self.terms) if found["short"] else called
        if len(called) != 1 or called[0].text in ("note", "begch", "tch", "pattern", "stitch"):
            return False
        cur = Cursor(cut(self.text, self.terms, found.end(), part.end), part.end)
        stop = next((i for i, word in enumerate(cur.words) if word.text in ("in", ".")), len(cur.words))
        phrases = Phrases(self.names, in_round=False)
        made = phrases.made(cur.inside(0, stop))
        if made is None and stop and cur.next_is("(", "["):
            made = phrases.made(cur.inside(1, stop - 1))
        if made is None:
            return False
        for word in (called[0], short[0]):
            self.names[word.text] = Made(made.items, called[0].text)
        return True

    def _refers(self, part: _Part) -> bool:
        """Rows that are as others: added here. ``Rep Rows 2–3`` without a name: what the pattern repeats."""
        found = _AGAIN.match(self.text, part.start, part.end)
        if found is None:
            return False
        first = int(found["first"][:6])
        last = int(found["last"][:6]) if found["last"] else first
        span = Span(part.start, part.end)
        if not part.name:
            self.repeat = (first, last, span)
            return True
        known = {row.number: row for row in self.rows}
        if last < first or any(number not in known for number in range(first, last + 1)):
            self._fault(part.numbers[0] if part.numbers else 0, f"{part.name} refers to a row that is not written before it.", span)
            return True
        for at, number in enumerate(part.numbers or (self._next_number(),)):
            like = known[first + at % (last - first + 1)]
            self.rows.append(_Read(replace(like.part, name=f"Row {number}"), number, like.words))
        return True

    def _speaks_of_all(self, part: _Part, named: bool) -> bool:
        """Lines that are no row: the starting chain, a stitch's description, what chains count as, which terms."""
        text = self.text[part.start : part.end]
        if not text.strip() or (not part.name and self._is_description(part)):
            return True
        if part.name and not re.match(r"foundation|base", part.name, re.I):
            return False
        if not part.name and re.fullmatch(r"\W*(?:in\s+)?(?:US|UK)\s+terms?(?:\s+are\s+used)?\W*", text, re.I):
            return True
        if not part.name and _chains_count(text) is not None:
            return True
        cur = Cursor(cut(self.text, self.terms, part.start, part.end), part.end)
        if not part.name and (said := said_to_count(_without_stop(cur))) is not None:
            self.throughout.append(said)
            return True
        return not self.rows and self._base(cur, text, named)

    def _is_description(self, part: _Part) -> bool:
        return self._call(part)

    def _base(self, cur: Cursor, text: str, named: bool) -> bool:
        """``Ch 68 (74, 86, 92), join``; ``Multiple of 6 plus 2`` says nothing that the rows do not prove."""
        if not _BASE.match(text):
            return False
        start = cur.at
        if re.search(r"\bmult", text, re.I):
            return True
        cur.accept("ch")
        cur.accept("-")
        numbers = sizes(cur)
        if not numbers:
            return False
        cur.accept("ch")
        span = cur.span_from(start)
        while cur.accept(",", ".", "and", "turn", "join", "with", "slst", "in", "to", "form", "ring", "first", "ch", "being", "careful", "not",
                         "twist", "noturn"):  # fmt: skip
            self.joined_base = self.joined_base or cur.next_is("join", ahead=-1)
        if cur.more():
            return False
        self.chain_sizes = PrintedCount(numbers, Wanted("ch"), span)
        return True

    def _row(self, part: _Part) -> None:
        cur = Cursor(cut(self.text, self.terms, part.start, part.end), part.end)
        numbers = part.numbers or (self._next_number() if not re.match(r"set|found|base", part.name, re.I) else 0,)
        words = Phrases(self.names, part.in_round).read(cur, prevailing_kind(self.rows[-1].words.items) if self.rows else "sc")
        self.names.update(words.names)
        for says, span in words.faults:
            quoted = self.text[span.start : span.end].strip()
            self._fault(numbers[0], f"“{quoted}” is not understood" + (f": {says}." if says else "."), span)
        for number in numbers[:MOST_ROWS]:
            self.rows.append(_Read(replace(part, name=_called(part, number)), number, words))

    def _next_number(self) -> int:
        return max((row.number for row in self.rows), default=0) + 1

    def _fault(self, row: int, says: str, span: Span) -> None:
        self.faults.append(Fault(row, says, span))

    # -- the second pass: what belongs to which row, and what chains count as ---------------------------------------------------

    def _written(self) -> Iterator[WrittenRow]:
        carried: list[Chain] = []
        carried_said: SaidToCount | None = None
        for index, row in enumerate(self.rows[:MOST_ROWS]):
            items = [*carried, *row.words.items]
            said = dict(row.words.said)
            if carried and carried_said is not None:
                said.setdefault(carried[0].span.start, carried_said)
            carried, carried_said = [], None
            turns = row.words.turn_after if row.words.turn_after is not None else not row.part.in_round
            if len(items) > 1 and isinstance(items[-1], Chain) and turns and any(not isinstance(i, Chain) for i in items):
                last = items.pop()
                if isinstance(last, Chain):
                    carried, carried_said = [last], said.get(last.span.start)
            yield self._written_row(row, index == 0, items, said, turns)

    def _written_row(self, row: _Read, is_first: bool, items: list, said: dict[int, SaidToCount], turns: bool) -> WrittenRow:
        moves: list[Work] = []
        while items and isinstance(items[0], Work) and items[0].made.items == ("sl st",):
            moves.append(items.pop(0))
        if not (items and isinstance(items[0], Chain)):
            items, moves = [*moves, *items], []
        opening = None
        if items and isinstance(items[0], Chain) and len(items) > 1 and _at_hook(items[1]) is not None and is_first and not moves:
            base = items.pop(0)
            self.chain_sizes = self.chain_sizes or PrintedCount((base.count,), Wanted("ch"), base.span)
        if is_first and items and (first := _at_hook(items[0])) is not None:
            spoken = next((said[key] for key in (first.span.start, -1) if key in said), None) or self._always(True, 0)
            opening = at_hook(first, items, spoken)
            items = items[1:] if isinstance(first, Skip) else items
        elif items and isinstance(items[0], Chain):
            chain = items.pop(0)
            spoken = next((said[key] for key in (chain.span.start, -1) if key in said), None)
            opening = turning_chain(chain, items, spoken or self._always(False, chain.count))
        self.throughout += [each for each in said.values() if each.throughout]
        words = row.words
        return WrittenRow(
            row.number, row.part.name, Span(row.part.start, row.part.end), row.part.in_round, tuple(moves), opening, tuple(items),
            words.turn_before, turns, words.joined, words.leaves_rest, words.counts,
        )  # fmt: skip

    def _always(self, hook: bool, chains: int) -> SaidToCount | None:
        """What the text said once for all rows that begin with so many chains."""
        fitting = [each for each in self.throughout if each.skipped == hook and each.of in (0, chains)]
        return fitting[-1] if fitting else None


def _at_hook(item: object) -> Work | Skip | None:
    if isinstance(item, Work) and isinstance(item.into, FromHook):
        return item
    return item if isinstance(item, Skip) and item.wanted.kind == "ch" else None


def _parts(text: str) -> list[_Part]:
    """The text cut into rows and other lines."""
    found = list(_NAMED.finditer(text))
    begins = [(match.start("name"), match.end(), match) for match in found]
    parts: list[_Part] = []
    head = begins[0][0] if begins else len(text)
    at = 0
    for cut_at in [*_PART.finditer(text, 0, head), None]:
        end = cut_at.start() if cut_at else head
        if text[at:end].strip(" \t\n/"):
            parts.append(_Part(at, end))
        at = cut_at.end() if cut_at else head
    for index, (_, body, match) in enumerate(begins):
        end = begins[index + 1][0] if index + 1 < len(begins) else len(text)
        parts += _named_part(text, match, body, end)
    return parts


def _named_part(text: str, match: re.Match[str], start: int, end: int) -> Iterator[_Part]:
    """A named row, and after it the lines that are none of its own: ``Rep Rows 2–3``, a stitch's description."""
    own_end = end
    for line in re.finditer(r"[^\n]+", text[start:end]):
        if line.start() and (_AGAIN.match(line[0]) or _CALLED.match(line[0]) or re.match(r"\s*Notes?\b", line[0], re.I)):
            own_end = min(own_end, start + line.start())
    body = text[start:own_end].rstrip().rstrip("/").rstrip()
    numbers = tuple(_numbers(match["numbers"] or ""))
    yield _Part(start, start + len(body), match["name"].strip(), numbers, match["kind"].lower()[:2] in ("rn", "ro") and match["kind"].lower()[:3] != "row")
    for line in re.finditer(r"[^\n]+", text[own_end:end]):
        if line[0].strip(" \t/"):
            yield _Part(own_end + line.start(), own_end + line.end())


def _numbers(written: str) -> Iterator[int]:
    """``2, 4 and 6`` → 2, 4, 6; ``4–9`` → 4 to 9."""
    found = [int(number[:6]) for number in re.findall(r"\d+", written)]
    if re.search(r"-|–|—|to", written) and len(found) == 2:
        yield from range(found[0], min(found[1], found[0] + MOST_ROWS) + 1)
    else:
        yield from found


def _called(part: _Part, number: int) -> str:
    return re.sub(r"\s*[(\[].*|s?\s*\d.*", "", part.name).strip() + f" {number}" if part.name and part.numbers else part.name or f"Row {number}"


def _chains_count(text: str) -> bool | None:
    """Whether the pattern says that chains count as stitches; None if it says nothing."""
    found = re.search(r"\b(?:each\s+)?ch(?:ain)?s?\s+(?:(do(?:es)?\s+not|never)\s+)?counts?\s+as\s+(?:an?\s+|one\s+)?(?:st\b|sts\b|stitch)", text, re.I)
    return None if found is None else not found[1]


def _without_stop(cur: Cursor) -> Cursor:
    end = len(cur.words)
    while end and cur.words[end - 1].text in (".", ";", ")"):
        end -= 1
    start = 1 if end and cur.words[0].text == "(" else 0
    return cur.inside(start, end)
