"""What one reading of a text has found so far, and how it takes in a row: a stretch of the text, word by word."""

import re
from dataclasses import dataclass, field, replace

from logbook.craft.rows.chain_sayings import SaidToCount
from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.describing import Describing
from logbook.craft.rows.instructions import Fault, PrintedCount, Span, StatedMultiple
from logbook.craft.rows.kinds import prevailing_kind
from logbook.craft.rows.lines import MOST_ROWS, TextPart, called
from logbook.craft.rows.phrases import Phrases
from logbook.craft.rows.row_words import ReadRow
from logbook.craft.rows.sayings import saying
from logbook.craft.rows.word import Word
from logbook.craft.rows.words import HowRead, cut

_BASE_IN_ROW = re.compile(
    r"\s*(?:(?:with|using)\s[^,;]{1,30}?,?\s+)?(?:ch|chain|make)\s+(?:an?\s+|any\s+)?(?:even|odd|multiple)\b[^,;.]*[,;.]\s*",
    re.IGNORECASE,
)
_RING = re.compile(r"\b(?:magic|adjustable|sliding|slip|yarn|thumb)\s+(?:loop|ring|circle)\b", re.IGNORECASE)


@dataclass(slots=True)
class Reading:
    """One reading of a text, from its first line to its last."""

    text: str
    how: HowRead
    describing: Describing
    rows: list[ReadRow] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    notes: list[Span] = field(default_factory=list)
    throughout: list[SaidToCount] = field(default_factory=list)
    chain_sizes: PrintedCount | None = None
    stated: StatedMultiple | None = None
    repeat: tuple[int, int, Span] | None = None
    lead: TextPart | None = None  # where the next row begins, said in a line before it
    every: list[tuple[str, ReadRow]] = field(default_factory=list)
    sized: list[Word] = field(default_factory=list)
    _highest: int = 0
    _seen: int = 0

    def cursor(self, part: TextPart) -> Cursor:
        """The words there; those that stand in several sizes are kept."""
        words = cut(self.text, self.how, part.start, part.end)
        self.sized += [word for word in words if word.sizes]
        return Cursor(words, part.end)

    def read_row(self, part: TextPart) -> None:
        """Takes in the row that stands there, as often as it is numbered; what is not understood in it is a fault."""
        cur = self.cursor(self._after_base(part))
        if self.lead is not None:
            lead, self.lead = self.cursor(self.lead), None
            cur = Cursor((*lead.words, *cur.words), part.end)
        start = self.next_number() if self.rows or not re.match(r"set|found|base", part.name, re.I) else 0
        numbers = part.numbers or (start,)
        words = Phrases(self.describing.own, part.in_round).read(
            cur,
            prevailing_kind(self.rows[-1].words.items) if self.rows else "sc",
            first=not self.rows,
            ring=not self.rows and _RING.search(self.text, 0, part.start) is not None,
        )
        for says, span in words.faults:
            self.not_understood(numbers[0], says, span)
        if not (part.name or words.items or words.faults or words.counts):
            self.note(part)
            return
        for number in numbers[:MOST_ROWS]:
            self.rows.append(ReadRow(replace(part, name=called(part, number)), number, words))
        if part.every:
            self.every.append((part.every, self.rows[-1]))

    def _after_base(self, part: TextPart) -> TextPart:
        """Row 1 without the starting chain that it says itself: ``with 4 mm hook ch an even number, sc in 2nd ch …``."""
        found = None if self.rows else _BASE_IN_ROW.match(self.text, part.start, part.end)
        if found is None:
            return part
        self.stated = self.stated or saying(self.text, part.start, found.end()).stated
        return replace(part, start=found.end())

    def next_number(self) -> int:
        """One more than the highest number so far."""
        self._highest = max([self._highest, *(row.number for row in self.rows[self._seen :])])
        self._seen = len(self.rows)
        return self._highest + 1

    def not_understood(self, row: int, says: str, span: Span) -> None:
        quoted = self.text[span.start : span.end].strip()
        quoted = quoted if len(quoted) < 80 else quoted[:70] + " …"
        self.fault(row, f"“{quoted}” is not understood" + (f": {says}." if says else "."), span)

    def fault(self, row: int, says: str, span: Span) -> None:
        """``row``: its number, 0 for none."""
        self.faults.append(Fault(row, says, span))

    def note(self, part: TextPart) -> None:
        self.notes.append(part.span)


def bare(cur: Cursor) -> Cursor:
    """Without a full stop behind it and brackets around it."""
    end = len(cur.words)
    while end and cur.words[end - 1].text in (".", ";", ")", "]", "}"):
        end -= 1
    start = 0
    while start < end and cur.words[start].text in ("(", "[", "{", "-", "=", ".", ","):
        start += 1
    return cur.inside(start, end)
