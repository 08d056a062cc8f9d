"""A text into written rows: which line is which row, what the pattern says of itself, and each row's instructions.

Rows stand one a line, or parted by `` / ``; with names (``Row 1 (RS):``, ``Rnd 2:``, ``Set-up row:``) they may run over several
lines. Without names they count from 1. ``Rows 4–9: rep Rows 2–3``, ``Row 3: as row 1`` and ``Rep Rows 2–3`` refer to other
rows. A line that tells no work is set aside as a note.
"""

import re
from collections.abc import Iterator
from dataclasses import replace

from logbook.craft.rows.cursor import NotUnderstoodError
from logbook.craft.rows.describing import Describing
from logbook.craft.rows.instructions import NOWHERE, PrintedCount, Span, WrittenPattern
from logbook.craft.rows.lines import MOST_IN_ALL, MOST_LETTERS, MOST_ROWS, WORK, TextPart, makes, parts
from logbook.craft.rows.reading import Reading
from logbook.craft.rows.row_order import filled, in_order, numbered_from_1
from logbook.craft.rows.rows_again import refers
from logbook.craft.rows.said_of_all import speaks_of_all
from logbook.craft.rows.sayings import BASE_IN_ROUND, BASE_SENTENCE, chains_count, size_count
from logbook.craft.rows.turning import written_rows
from logbook.craft.rows.words import HowRead
from logbook.craft.words.numbers import grouped
from logbook.craft.words.terms import Terms

_JOINED = re.compile(r"\b(?:re)?(?:join|attach)\s+(?:\w+\s+){0,2}?(?:yarn|thread|wool)\b", re.IGNORECASE)


def read(text: str, terms: Terms, size: int = 0) -> WrittenPattern:
    """The rows of ``text``, in the ``size``-th of the sizes that it is written for. What is not understood is a fault."""
    return _pattern(Reading(text, HowRead(terms, sizes=size_count(text), size=size), Describing(text, terms)))


def _pattern(reading: Reading) -> WrittenPattern:
    lines = _of_a_size(reading, _lines(reading))
    named = any(part.name for part in lines)
    if re.search(r"\bp\s*[=:–—-]?\s*picots?\b", reading.text, re.IGNORECASE):
        reading.describing.own.ways[("p",)] = "picot"
        reading.how = replace(reading.how, own=reading.describing.own.ways)
    for part in lines:
        if not part.name and reading.describing.describe(part.start, part.end):
            reading.how = replace(reading.how, own=reading.describing.own.ways)
    for index, part in enumerate(lines):
        if re.search(r"\b(?:return|rtn)\b", part.name, re.IGNORECASE):
            reading.note(part)  # the way back of a two-pass row makes no stitch
            continue
        if part.name and not part.numbers and reading.rows and _goes_on_until(reading, part):
            reading.note(part)  # "Next row" behind rows of which it is not said how many there are
            continue
        try:
            if not refers(reading, part, lines[index + 1 :]) and not speaks_of_all(reading, part, named):
                reading.read_row(part)
        except NotUnderstoodError as error:
            reading.not_understood(reading.next_number(), error.says, error.span)
    rows = numbered_from_1(filled(reading.rows, reading.every))
    reading.rows, out_of_order = in_order(rows, {fault.row for fault in reading.faults})
    reading.faults += out_of_order
    written = written_rows(reading.rows, reading.throughout)
    faults, chain = (*reading.faults, *written.faults), reading.chain_sizes or written.base
    first, last, span = reading.repeat or (None, None, NOWHERE)
    return WrittenPattern(
        written.rows, faults, chain, first, last, span, chains_count(reading.text), reading.stated, tuple(_notes(reading)),
        _sizes(reading, chain), tuple(_unsure(reading)), chain is None and _on_edge(reading),
    )  # fmt: skip


def _goes_on_until(reading: Reading, part: TextPart) -> bool:
    """Whether before that row others are worked until something comes about: no row is known that it stands on."""
    between = reading.text[reading.rows[-1].part.start : part.start]
    return re.search(r"\b(?:cont(?:inue)?|keep)\b[^.]*\buntil\b[^.]*\.\s*\S*\s*\S*\s*\Z", between, re.IGNORECASE) is not None


def _of_a_size(reading: Reading, lines: list[TextPart]) -> list[TextPart]:
    """The lines, without those that are longer than any row and those after more than any pattern has; they are named."""
    kept: list[TextPart] = []
    letters = 0
    for part in lines:
        letters += part.end - part.start
        if letters > MOST_IN_ALL or len(kept) > MOST_ROWS + 200:
            reading.fault(
                0, "The text is longer than any pattern: from here on it is not looked at.", Span(part.start, part.start + 1)
            )
            break
        if part.end - part.start > MOST_LETTERS:
            reading.fault(
                0, f"A row has {grouped(MOST_LETTERS)} letters at most; this one is longer.", Span(part.start, part.start + 1)
            )
            break
        kept.append(part)
    return kept


def _lines(reading: Reading) -> list[TextPart]:
    """The lines, a chain joined to a ring parted from the round that begins behind it."""
    lines = parts(reading.text)
    for index, part in enumerate(lines):
        base = (BASE_IN_ROUND if part.name else BASE_SENTENCE).match(reading.text, part.start, part.end)
        if base is not None and base.end() < part.end and makes(reading.text[base.end() : part.end]):
            lines[index : index + 1] = [TextPart(part.start, base.end()), replace(part, start=base.end())]
            break
    return lines


def _sizes(reading: Reading, chain: PrintedCount | None) -> int:
    """For how many sizes the rows must be laid one by one: 1 if they differ in their chain and counts alone."""
    aside = [count.span for row in reading.rows for count in row.words.counts] + ([chain.span] if chain else []) + reading.notes
    inside = (word for word in reading.sized if not any(span.start <= word.start < span.end for span in aside))
    return reading.how.sizes if any(True for _ in inside) else 1


def _notes(reading: Reading) -> list[Span]:
    return sorted({*reading.notes, *(span for row in reading.rows for span in row.words.notes)}, key=lambda span: span.start)


def _on_edge(reading: Reading) -> bool:
    """Whether yarn is joined to another piece before the first row."""
    first = min((row.part.start for row in reading.rows), default=0)
    return _JOINED.search(reading.text, 0, first) is not None


def _unsure(reading: Reading) -> Iterator[Span]:
    """What is set aside in rows, and lines between them, though it may be work."""
    for row in reading.rows:
        yield from row.words.unsure
    first = min((row.part.start for row in reading.rows), default=len(reading.text))
    for span in reading.notes:
        line = reading.text[span.start : span.end]
        if span.start > first and (WORK.search(line) or re.search(r"\d", line)):
            yield span
