"""A text into written rows: which line is which row, what the pattern says of itself, and each row's instructions.

Rows stand one a line, or parted by `` / ``; with names (``Row 1 (RS):``, ``Rnd 2:``, ``Set-up row:``) they may run over several
lines. Without names they count from 1. ``Rows 4–9: rep Rows 2–3``, ``Row 3: as row 1`` and ``Rep Rows 2–3`` refer to other
rows. A line that tells no work is set aside as a note.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from logbook.craft.rows.asides import printed_counts
from logbook.craft.rows.chain_sayings import SaidToCount, said_to_count
from logbook.craft.rows.cursor import Cursor, NotUnderstoodError
from logbook.craft.rows.describing import Describing
from logbook.craft.rows.instructions import (
    NOWHERE,
    Fault,
    PrintedCount,
    Span,
    StatedMultiple,
    WrittenPattern,
)
from logbook.craft.rows.kinds import prevailing_kind
from logbook.craft.rows.lines import (
    AGAIN,
    LEADS_TO_ROW,
    MOST_IN_ALL,
    MOST_LETTERS,
    MOST_ROWS,
    WORK,
    TextPart,
    called,
    goes_back_to,
    makes,
    parts,
    times_again,
)
from logbook.craft.rows.phrases import Phrases
from logbook.craft.rows.row_order import filled, in_order, numbered_from_1
from logbook.craft.rows.row_words import ReadRow
from logbook.craft.rows.sayings import BASE_IN_ROUND, BASE_SENTENCE, bare_of_chain, chains_count, saying, size_count
from logbook.craft.rows.turning import written_rows
from logbook.craft.rows.word import NUMBER, Word
from logbook.craft.rows.words import HowRead, cut
from logbook.craft.words.numbers import grouped
from logbook.craft.words.terms import Terms

_BASE_IN_ROW = re.compile(
    r"\s*(?:(?:with|using)\s[^,;]{1,30}?,?\s+)?(?:ch|chain|make)\s+(?:an?\s+|any\s+)?(?:even|odd|multiple)\b[^,;.]*[,;.]\s*",
    re.IGNORECASE,
)
_FOUNDATION = re.compile(
    r"\s*(?:work\s+|make\s+)?(?:\d+\s+)?(?:f(?:sc|hdc|dc)|foundation\s+(?:sc|hdc|dc|single|half|double))\b", re.IGNORECASE
)
_JOINED = re.compile(r"\b(?:re)?(?:join|attach)\s+(?:\w+\s+){0,2}?(?:yarn|thread|wool)\b", re.IGNORECASE)
_RING = re.compile(r"\b(?:magic|adjustable|sliding|slip|yarn|thumb)\s+(?:loop|ring|circle)\b", re.IGNORECASE)
LONGEST_SENTENCE = 300  # letters in what is said of chains
_SAYS_COUNT = re.compile(
    r"\bcount|\bnot\b|\bnever\b|n['’]t\b|=|\bis\s+(?:always\s+)?(?:an?|one|1)\b|\bare\b|\bequals?\b|\bacts?\b|\bstand|\breplace|\breckon|\bno\b",
    re.IGNORECASE,
)


def read(text: str, terms: Terms, size: int = 0) -> WrittenPattern:
    """The rows of ``text``, in the ``size``-th of the sizes that it is written for. What is not understood is a fault."""
    return _Reading(text, HowRead(terms, sizes=size_count(text), size=size), Describing(text, terms)).pattern()


@dataclass(slots=True)
class _Reading:
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

    def pattern(self) -> WrittenPattern:
        lines = self._of_a_size(self._lines())
        named = any(part.name for part in lines)
        if re.search(r"\bp\s*[=:–—-]?\s*picots?\b", self.text, re.IGNORECASE):
            self.describing.own.ways[("p",)] = "picot"
            self.how = replace(self.how, own=self.describing.own.ways)
        for part in lines:
            if not part.name and self.describing.describe(part.start, part.end):
                self.how = replace(self.how, own=self.describing.own.ways)
        for index, part in enumerate(lines):
            if re.search(r"\b(?:return|rtn)\b", part.name, re.IGNORECASE):
                self._note(part)  # the way back of a two-pass row makes no stitch
                continue
            if part.name and not part.numbers and self.rows and self._goes_on_until(part):
                self._note(part)  # "Next row" behind rows of which it is not said how many there are
                continue
            try:
                if not self._refers(part, lines[index + 1 :]) and not self._speaks_of_all(part, named):
                    self._row(part)
            except NotUnderstoodError as error:
                self._not_understood(self._next_number(), error.says, error.span)
        rows = numbered_from_1(filled(self.rows, self.every))
        self.rows, out_of_order = in_order(rows, {fault.row for fault in self.faults})
        self.faults += out_of_order
        written = written_rows(self.rows, self.throughout)
        faults, chain = (*self.faults, *written.faults), self.chain_sizes or written.base
        first, last, span = self.repeat or (None, None, NOWHERE)
        return WrittenPattern(
            written.rows, faults, chain, first, last, span, chains_count(self.text), self.stated, tuple(self._notes()),
            self._sizes(chain), tuple(self._unsure()), chain is None and self._on_edge(),
        )  # fmt: skip

    def _goes_on_until(self, part: TextPart) -> bool:
        """Whether before that row others are worked until something comes about: no row is known that it stands on."""
        between = self.text[self.rows[-1].part.start : part.start]
        return re.search(r"\b(?:cont(?:inue)?|keep)\b[^.]*\buntil\b[^.]*\.\s*\S*\s*\S*\s*\Z", between, re.IGNORECASE) is not None

    def _of_a_size(self, lines: list[TextPart]) -> list[TextPart]:
        """The lines, without those that are longer than any row and those after more than any pattern has; they are named."""
        kept: list[TextPart] = []
        letters = 0
        for part in lines:
            letters += part.end - part.start
            if letters > MOST_IN_ALL or len(kept) > MOST_ROWS + 200:
                self._fault(
                    0, "The text is longer than any pattern: from here on it is not looked at.", Span(part.start, part.start + 1)
                )
                break
            if part.end - part.start > MOST_LETTERS:
                self._fault(
                    0, f"A row has {grouped(MOST_LETTERS)} letters at most; this one is longer.", Span(part.start, part.start + 1)
                )
                break
            kept.append(part)
        return kept

    def _lines(self) -> list[TextPart]:
        """The lines, a chain joined to a ring parted from the round that begins behind it."""
        lines = parts(self.text)
        for index, part in enumerate(lines):
            base = (BASE_IN_ROUND if part.name else BASE_SENTENCE).match(self.text, part.start, part.end)
            if base is not None and base.end() < part.end and makes(self.text[base.end() : part.end]):
                lines[index : index + 1] = [TextPart(part.start, base.end()), replace(part, start=base.end())]
                break
        return lines

    def _sizes(self, chain: PrintedCount | None) -> int:
        """For how many sizes the rows must be laid one by one: 1 if they differ in their chain and counts alone."""
        aside = [count.span for row in self.rows for count in row.words.counts] + ([chain.span] if chain else []) + self.notes
        inside = (word for word in self.sized if not any(span.start <= word.start < span.end for span in aside))
        return self.how.sizes if any(True for _ in inside) else 1

    def _notes(self) -> list[Span]:
        return sorted({*self.notes, *(span for row in self.rows for span in row.words.notes)}, key=lambda span: span.start)

    def _on_edge(self) -> bool:
        """Whether yarn is joined to another piece before the first row."""
        first = min((row.part.start for row in self.rows), default=0)
        return _JOINED.search(self.text, 0, first) is not None

    def _unsure(self) -> Iterator[Span]:
        """What is set aside in rows, and lines between them, though it may be work."""
        for row in self.rows:
            yield from row.words.unsure
        first = min((row.part.start for row in self.rows), default=len(self.text))
        for span in self.notes:
            line = self.text[span.start : span.end]
            if span.start > first and (WORK.search(line) or re.search(r"\d", line)):
                yield span

    def _refers(self, part: TextPart, after: list[TextPart]) -> bool:
        """Rows that are as others: added here. ``Rep Rows 2–3`` without a name: what the pattern repeats."""
        found = AGAIN.match(self.text, part.start, part.end)
        if found is None:
            return False
        last_row = self._next_number() - 1
        first, last = goes_back_to(found, last_row)
        if found["named"]:
            like_named = [row.number for row in self.rows if row.part.name.lower().startswith(found["named"].lower()[:3])]
            first = last = like_named[-1] if like_named else 0
        counts, rest_is_note = self._rest(found.start("rest"), part.end)
        if not rest_is_note:
            return False
        span = part.span
        ahead = next((each.numbers[0] for each in after if each.numbers), 0)
        times = 0 if part.name or ahead else times_again(found)
        if not part.name and ahead <= last_row + 1 and not times:
            self.repeat = (first, last, span)
            return True
        if len(self.rows) > MOST_ROWS:
            return True  # more than are looked at, which is said
        known = {row.number: row for row in self.rows}
        if last < first or any(number not in known for number in range(first, last + 1)):
            of = part.name or "“" + self.text[part.start : part.end].strip()[:40] + "”"
            self._fault(part.numbers[0] if part.numbers else 0, f"{of} refers to a row that is not written before it.", span)
            return True
        until = ahead or last_row + 1 + times * (last - first + 1)
        at_end = (
            re.search(r"\b(?:at|by)\s+(?:the\s+)?end\b|\bafter\s+(?:row|rnd|round)s?\s*\d", found["rest"], re.IGNORECASE)
            is not None
        )
        numbers = part.numbers or (tuple(range(last_row + 1, until)) if not part.name else (self._next_number(),))
        for at, number in enumerate(numbers):
            like = known[first + at % (last - first + 1)]
            own = replace(like.words, counts=self._counts_again(counts, times > 0, number in (until - 1, numbers[-1]), at_end))
            self.rows.append(ReadRow(replace(like.part, name=called(part if part.numbers else like.part, number)), number, own))
        if part.every:
            self.repeat = (first, last, span)
        return True

    @staticmethod
    def _counts_again(told: tuple[PrintedCount, ...], some_times: bool, is_last: bool, at_end: bool) -> tuple[PrintedCount, ...]:
        """The counts of a row that is as another: where it is worked some times, what is told is the last one's."""
        if some_times or at_end:
            return told if is_last else ()
        return told

    def _rest(self, start: int, end: int) -> tuple[tuple[PrintedCount, ...], bool]:
        """The counts behind ``Rep Row 2``, and whether nothing else stands there that would be work."""
        end -= len(self.text[start:end]) - len(re.sub(r"[\s.,;]*\bturn\b[\s.]*\Z", "", self.text[start:end], flags=re.IGNORECASE))
        text = self.text[start:end]
        found = re.search(r"[(\[{<]?\s*\d[^.(\[{<]*(?:[(\[]\d[^)\]]*[)\]][^.(\[{<]*)?[)\]}>]?\s*\.?\s*\Z", text)
        counts: tuple[PrintedCount, ...] = ()
        if found is not None:
            cur = Cursor(cut(self.text, self.how, start + found.start(), end), end)
            counts = printed_counts(_bare(cur), Phrases(self.describing.own, in_round=False).targets)
        rest = text[: found.start()] if found and counts else text
        rest = re.sub(
            r"\b(?:changing|change|turn(?:ing)?|join(?:ing)?|ending|adding|increasing|decreasing|taking)\b[^.(\[{]*",
            "",
            rest,
            flags=re.IGNORECASE,
        )
        return counts, not WORK.search(rest)

    def _speaks_of_all(self, part: TextPart, named: bool) -> bool:
        """Lines that are no row: the starting chain, the multiple, what chains count as, a stitch's description, notes."""
        text = self.text[part.start : part.end]
        if part.name and not (
            re.match(r"foundation|base", part.name, re.I) and not re.search(r"from\s+(?:the\s+)?hook", text, re.I)
        ):
            return False
        if not text.strip():
            return True
        if self.describing.described(part.start):
            self._note(part)
            return True
        text = self._without_sayings(part) if named else self._unless_saying(part)
        if not text.strip(" .,;()\n\t"):
            self._note(part)
            return True
        led = LEADS_TO_ROW.search(self.text, part.start, part.end) if named and self.rows else None
        if led is not None and not makes(self.text[led.end() : part.end]):
            self.lead = replace(part, start=led.start())
            return True
        if (
            named
            and not self.rows
            and _FOUNDATION.match(text)
            and not re.search(r"\byo\b|\binsert\b|\byrh\b", text, re.IGNORECASE)
        ):
            self._row(replace(part, name="Foundation row"))
            return True
        base = not self.rows and self._base(part, text, named)
        works = makes(text) or (not named and WORK.search(text) is not None and not base)
        if base and not (works and re.search(r"from\s+(?:the\s+)?hook", text, re.I)):
            return True
        if named and (not self.rows or not works):
            if (
                re.search(r"from\s+(?:the\s+)?hook\b.*\bin\s+(?:each|next)|rep\s+from\s+\*", text, re.I)
                and not self.rows
                and works
                and not re.search(r"\bmeans?\b", text, re.I)
            ):
                return False
            self._note(part)
            return True
        if works:
            return False
        self._note(part)
        return True

    def _without_sayings(self, part: TextPart) -> str:
        """The line with blanks for what it says that chains count as, which is kept for all rows."""
        text = self.text[part.start : part.end]
        for sentence in re.finditer(r"[^.;(\n][^.;()\n]*", text):
            start, end = part.start + sentence.start(), part.start + sentence.end()
            of_all = chains_count(sentence[0]) is not None and not makes(sentence[0])
            said = None if of_all else self._said_somewhere(start, end)
            if said is not None:
                self.throughout.append(replace(said, throughout=True))
            if said is not None or of_all:
                text = text[: sentence.start()] + " " * (end - start) + text[sentence.end() :]
        return text

    def _unless_saying(self, part: TextPart) -> str:
        """The line, "" if all of it says what chains count as: among rows without names any other line may be one."""
        text = self.text[part.start : part.end]
        said = said_to_count(_bare(self._cursor(part))) if _SAYS_COUNT.search(text) else None
        if said is not None:
            self.throughout.append(replace(said, throughout=True))
        return "" if said is not None or (chains_count(text) is not None and not makes(text)) else text

    def _said_somewhere(self, start: int, end: int) -> SaidToCount | None:
        """What that sentence says that chains count as, at its beginning or from where it first speaks of chains."""
        if end - start > LONGEST_SENTENCE or not _SAYS_COUNT.search(self.text, start, end):
            return None
        cur = _bare(Cursor(cut(self.text, self.how, start, end), end))
        for at, word in enumerate(cur.words):
            chained = word.text in ("ch", "begch", "tch", "it") or (word.sort == NUMBER and cur.next_is("ch", ahead=at + 1))
            if at and not chained:
                continue
            ends = [end for end in range(at + 3, len(cur.words)) if cur.words[end].text in (",", "and", ":")]
            for end in (len(cur.words), *reversed(ends)):
                try:
                    said = said_to_count(cur.inside(at, end))
                except NotUnderstoodError:
                    continue
                if said is not None:
                    return said
        return None

    def _base(self, part: TextPart, text: str, named: bool) -> bool:
        """``Ch 68 (74, 86, 92), join``; ``Multiple of 6 plus 2``."""
        found = saying(self.text[: part.start] + text, part.start, part.end)
        if not named and WORK.search(bare_of_chain(text)):
            return False
        self.chain_sizes = self.chain_sizes or found.chain
        self.stated = self.stated or found.stated
        return found.chain is not None or found.stated is not None

    def _cursor(self, part: TextPart) -> Cursor:
        words = cut(self.text, self.how, part.start, part.end)
        self.sized += [word for word in words if word.sizes]
        return Cursor(words, part.end)

    def _row(self, part: TextPart) -> None:
        cur = self._cursor(self._after_base(part))
        if self.lead is not None:
            lead, self.lead = self._cursor(self.lead), None
            cur = Cursor((*lead.words, *cur.words), part.end)
        start = self._next_number() if self.rows or not re.match(r"set|found|base", part.name, re.I) else 0
        numbers = part.numbers or (start,)
        words = Phrases(self.describing.own, part.in_round).read(
            cur,
            prevailing_kind(self.rows[-1].words.items) if self.rows else "sc",
            first=not self.rows,
            ring=not self.rows and _RING.search(self.text, 0, part.start) is not None,
        )
        for says, span in words.faults:
            self._not_understood(numbers[0], says, span)
        if not (part.name or words.items or words.faults or words.counts):
            self._note(part)
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

    def _next_number(self) -> int:
        """One more than the highest number so far."""
        self._highest = max([self._highest, *(row.number for row in self.rows[self._seen :])])
        self._seen = len(self.rows)
        return self._highest + 1

    def _not_understood(self, row: int, says: str, span: Span) -> None:
        quoted = self.text[span.start : span.end].strip()
        quoted = quoted if len(quoted) < 80 else quoted[:70] + " …"
        self._fault(row, f"“{quoted}” is not understood" + (f": {says}." if says else "."), span)

    def _fault(self, row: int, says: str, span: Span) -> None:
        self.faults.append(Fault(row, says, span))

    def _note(self, part: TextPart) -> None:
        self.notes.append(part.span)


def _bare(cur: Cursor) -> Cursor:
    """Without a full stop behind it and brackets around it."""
    end = len(cur.words)
    while end and cur.words[end - 1].text in (".", ";", ")", "]", "}"):
        end -= 1
    start = 0
    while start < end and cur.words[start].text in ("(", "[", "{", "-", "=", ".", ","):
        start += 1
    return cur.inside(start, end)
