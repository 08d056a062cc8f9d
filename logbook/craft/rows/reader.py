"""A text into written rows: which line is which row, what the pattern says of itself, and each row's instructions.

Rows stand one a line, or parted by `` / ``; with names (``Row 1 (RS):``, ``Rnd 2:``, ``Set-up row:``) they may run over several
lines. Without names they count from 1. ``Rows 4–9: rep Rows 2–3``, ``Row 3: as row 1`` and ``Rep Rows 2–3`` refer to other
rows.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from logbook.craft.rows.asides import SaidToCount, said_to_count, sizes
from logbook.craft.rows.cursor import Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    NOWHERE,
    Fault,
    Made,
    PrintedCount,
    Span,
    StatedMultiple,
    Wanted,
    WrittenPattern,
)
from logbook.craft.rows.kinds import prevailing_kind
from logbook.craft.rows.lines import AGAIN, BASE, BEHIND_BASE, CALLED, MOST_ROWS, Part, called, parts
from logbook.craft.rows.phrases import Phrases
from logbook.craft.rows.targets import ONE_STITCH_NAMES
from logbook.craft.rows.turning import ReadRow, written_rows
from logbook.craft.rows.words import cut
from logbook.craft.swatches.stitch_pattern import read_multiple
from logbook.craft.words.terms import Terms
from logbook.errors import UnreadableError


def read(text: str, terms: Terms) -> WrittenPattern:
    """The rows of ``text``. What is not understood is among the faults, with its place."""
    return _Reading(text, terms).pattern()


@dataclass(slots=True)
class _Reading:
    """One reading of a text, from its first line to its last."""

    text: str
    terms: Terms
    names: dict[str, Made] = field(default_factory=dict)
    rows: list[ReadRow] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    throughout: list[SaidToCount] = field(default_factory=list)
    chain_sizes: PrintedCount | None = None
    stated: StatedMultiple | None = None
    repeat: tuple[int, int, Span] | None = None

    def pattern(self) -> WrittenPattern:
        lines = parts(self.text)
        for part in lines:
            if not part.name:
                self._call(part)
        for part in lines:
            try:
                if not self._refers(part) and not self._speaks_of_all(part):
                    self._row(part)
            except NotUnderstoodError as error:
                self._not_understood(self._next_number(), error.says, error.span)
        written = written_rows(self.rows[:MOST_ROWS], self.throughout)
        faults, chain = (*self.faults, *written.faults), self.chain_sizes or written.base
        first, last, span = self.repeat or (None, None, NOWHERE)
        return WrittenPattern(written.rows, faults, chain, first, last, span, _chains_count(self.text), self.stated)

    def _call(self, part: Part) -> bool:
        """``Shell = 5 dc in same st``, ``V-st: (dc, ch 1, dc) in next st``."""
        found = CALLED.match(self.text, part.start, part.end)
        if found is None:
            return False
        called = cut(found["name"], self.terms)
        short = cut(found["short"], self.terms) if found["short"] else called
        if len(called) != 1 or len(short) != 1 or called[0].text in ("note", "begch", "tch", "pattern", "stitch"):
            return False
        name = called[0].text
        cur = Cursor(cut(self.text, self.terms, found.end(), part.end), part.end)
        made = Made((name,)) if name in ONE_STITCH_NAMES else self._described(cur)
        if made is None:
            return False
        for word in (name, short[0].text):
            self.names[word] = Made(made.items, name)
        return True

    def _described(self, cur: Cursor) -> Made | None:
        """What is made in one place, up to where it goes."""
        stop = next((index for index, word in enumerate(cur.words) if word.text in ("in", ".")), len(cur.words))
        stitches = Phrases(self.names, in_round=False).stitches
        made = stitches.made(cur.inside(0, stop))
        if made is None and stop and cur.next_is("(", "["):
            made = stitches.made(cur.inside(1, stop - 1))
        return made

    def _refers(self, part: Part) -> bool:
        """Rows that are as others: added here. ``Rep Rows 2–3`` without a name: what the pattern repeats."""
        found = AGAIN.match(self.text, part.start, part.end)
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
            self._fault(
                part.numbers[0] if part.numbers else 0, f"{part.name} refers to a row that is not written before it.", span
            )
            return True
        self._in_order(part.numbers, part)
        for at, number in enumerate(part.numbers or (self._next_number(),)):
            like = known[first + at % (last - first + 1)]
            self.rows.append(ReadRow(replace(like.part, name=called(part, number)), number, like.words))
        return True

    def _speaks_of_all(self, part: Part) -> bool:
        """Lines that are no row: a stitch's description, the terms, what chains count as, the starting chain, the multiple."""
        text = self.text[part.start : part.end]
        if not text.strip():
            return True
        if part.name and not re.match(r"foundation|base", part.name, re.I):
            return False
        return (not part.name and self._is_note(part, text)) or (not self.rows and self._base(part, text))

    def _is_note(self, part: Part, text: str) -> bool:
        if self._call(part) or re.fullmatch(r"\W*(?:in\s+)?(?:US|UK)\s+terms?(?:\s+are\s+used)?\W*", text, re.I):
            return True
        if "count" not in text.lower():
            return False
        said = said_to_count(_without_stop(self._cursor(part)))
        if said is not None:
            self.throughout.append(said)
        return said is not None or _chains_count(text) is not None

    def _base(self, part: Part, text: str) -> bool:
        """``Ch 68 (74, 86, 92), join``; ``Multiple of 6 plus 2``."""
        if not BASE.match(text):
            return False
        if re.search(r"\bmult", text, re.I):
            self.stated = _stated_multiple(part, text)
            return self.stated is not None
        cur = self._cursor(part)
        start = cur.at
        cur.accept("ch")
        cur.accept("-")
        numbers = sizes(cur)
        cur.accept("ch")
        span = cur.span_from(start)
        rest = [word.text for word in cur.words[cur.at :]]
        if not numbers or not set(rest) <= BEHIND_BASE:
            return False
        self.chain_sizes = PrintedCount(numbers, Wanted("ch"), span)
        return True

    def _cursor(self, part: Part) -> Cursor:
        return Cursor(cut(self.text, self.terms, part.start, part.end), part.end)

    def _row(self, part: Part) -> None:
        cur = self._cursor(part)
        numbers = part.numbers or (self._next_number() if not re.match(r"set|found|base", part.name, re.I) else 0,)
        words = Phrases(self.names, part.in_round).read(cur, prevailing_kind(self.rows[-1].words.items) if self.rows else "sc")
        self.names.update(words.names)
        for says, span in words.faults:
            self._not_understood(numbers[0], says, span)
        self._in_order(numbers, part)
        for number in numbers[:MOST_ROWS]:
            self.rows.append(ReadRow(replace(part, name=called(part, number)), number, words))

    def _in_order(self, numbers: Sequence[int], part: Part) -> None:
        """Names a row that does not come after the one written before it. Set-up rows are number 0."""
        before = self.rows[-1].number if self.rows else 0
        for number in numbers:
            if number not in (before + 1, 0 if before == 0 else before + 1):
                says = f"Row {number} comes after row {before}." if before else f"The rows begin with row {number}."
                says += " Number the rows one after the other, or write the missing one."
                self._fault(number, says, Span(part.start, part.end))
            before = number

    def _next_number(self) -> int:
        return max((row.number for row in self.rows), default=0) + 1

    def _not_understood(self, row: int, says: str, span: Span) -> None:
        quoted = self.text[span.start : span.end].strip()
        self._fault(row, f"“{quoted}” is not understood" + (f": {says}." if says else "."), span)

    def _fault(self, row: int, says: str, span: Span) -> None:
        self.faults.append(Fault(row, says, span))


def _stated_multiple(part: Part, text: str) -> StatedMultiple | None:
    """What the line says of the multiple; None if that cannot be read."""
    said = re.sub(r"\A\s*(?:foundation|base|starting|beginning)\s*(?:ch\w*)?\s*[:.]\s*", "chain ", text.strip(), flags=re.I)
    try:
        stated = read_multiple(said)
    except UnreadableError:
        return None
    return StatedMultiple(stated.multiple, stated.plus, stated.chain_constant, Span(part.start, part.end))


def _chains_count(text: str) -> bool | None:
    """Whether the pattern says that chains count as stitches; None if it says nothing."""
    found = re.search(
        r"\b(?:each\s+)?ch(?:ain)?s?\s+(?:(do(?:es)?\s+not|never)\s+)?counts?\s+as\s+(?:an?\s+|one\s+)?(?:st\b|sts\b|stitch)",
        text,
        re.I,
    )
    return None if found is None else not found[1]


def _without_stop(cur: Cursor) -> Cursor:
    end = len(cur.words)
    while end and cur.words[end - 1].text in (".", ";", ")"):
        end -= 1
    start = 1 if end and cur.words[0].text == "(" else 0
    return cur.inside(start, end)
