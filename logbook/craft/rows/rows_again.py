"""Rows that are as others: ``Rows 4–9: rep Rows 2–3``, ``Row 3: as row 1``, ``Rep Rows 2–3``."""

import re
from dataclasses import replace

from logbook.craft.rows.asides import printed_counts
from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import PrintedCount
from logbook.craft.rows.lines import AGAIN, MOST_ROWS, WORK, TextPart, called, goes_back_to, times_again
from logbook.craft.rows.phrases import Phrases
from logbook.craft.rows.reading import Reading, bare
from logbook.craft.rows.row_words import ReadRow
from logbook.craft.rows.words import cut


def refers(reading: Reading, part: TextPart, after: list[TextPart]) -> bool:
    """Rows that are as others: added here. ``Rep Rows 2–3`` without a name: what the pattern repeats."""
    found = AGAIN.match(reading.text, part.start, part.end)
    if found is None:
        return False
    last_row = reading.next_number() - 1
    first, last = goes_back_to(found, last_row)
    if found["named"]:
        like_named = [row.number for row in reading.rows if row.part.name.lower().startswith(found["named"].lower()[:3])]
        first = last = like_named[-1] if like_named else 0
    counts, rest_is_note = _rest(reading, found.start("rest"), part.end)
    if not rest_is_note:
        return False
    span = part.span
    ahead = next((each.numbers[0] for each in after if each.numbers), 0)
    times = 0 if part.name or ahead else times_again(found)
    if not part.name and ahead <= last_row + 1 and not times:
        reading.repeat = (first, last, span)
        return True
    if len(reading.rows) > MOST_ROWS:
        return True  # more than are looked at, which is said
    known = {row.number: row for row in reading.rows}
    if last < first or any(number not in known for number in range(first, last + 1)):
        of = part.name or "“" + reading.text[part.start : part.end].strip()[:40] + "”"
        reading.fault(part.numbers[0] if part.numbers else 0, f"{of} refers to a row that is not written before it.", span)
        return True
    until = ahead or last_row + 1 + times * (last - first + 1)
    at_end = (
        re.search(r"\b(?:at|by)\s+(?:the\s+)?end\b|\bafter\s+(?:row|rnd|round)s?\s*\d", found["rest"], re.IGNORECASE) is not None
    )
    numbers = part.numbers or (tuple(range(last_row + 1, until)) if not part.name else (reading.next_number(),))
    for at, number in enumerate(numbers):
        like = known[first + at % (last - first + 1)]
        own = replace(like.words, counts=_counts_again(counts, times > 0, number in (until - 1, numbers[-1]), at_end))
        reading.rows.append(ReadRow(replace(like.part, name=called(part if part.numbers else like.part, number)), number, own))
    if part.every:
        reading.repeat = (first, last, span)
    return True


def _counts_again(told: tuple[PrintedCount, ...], some_times: bool, is_last: bool, at_end: bool) -> tuple[PrintedCount, ...]:
    """The counts of a row that is as another: where it is worked some times, what is told is the last one's."""
    if some_times or at_end:
        return told if is_last else ()
    return told


def _rest(reading: Reading, start: int, end: int) -> tuple[tuple[PrintedCount, ...], bool]:
    """The counts behind ``Rep Row 2``, and whether nothing else stands there that would be work."""
    end -= len(reading.text[start:end]) - len(
        re.sub(r"[\s.,;]*\bturn\b[\s.]*\Z", "", reading.text[start:end], flags=re.IGNORECASE)
    )
    text = reading.text[start:end]
    found = re.search(r"[(\[{<]?\s*\d[^.(\[{<]*(?:[(\[]\d[^)\]]*[)\]][^.(\[{<]*)?[)\]}>]?\s*\.?\s*\Z", text)
    counts: tuple[PrintedCount, ...] = ()
    if found is not None:
        cur = Cursor(cut(reading.text, reading.how, start + found.start(), end), end)
        counts = printed_counts(bare(cur), Phrases(reading.describing.own, in_round=False).targets)
    rest = text[: found.start()] if found and counts else text
    rest = re.sub(
        r"\b(?:changing|change|turn(?:ing)?|join(?:ing)?|ending|adding|increasing|decreasing|taking)\b[^.(\[{]*",
        "",
        rest,
        flags=re.IGNORECASE,
    )
    return counts, not WORK.search(rest)
