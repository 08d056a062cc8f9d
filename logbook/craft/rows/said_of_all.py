"""Lines that are no row: what a pattern says of all its rows, its starting chain, its multiple, its stitches, and notes."""

import re
from dataclasses import replace

from logbook.craft.rows.chain_sayings import SaidToCount, said_to_count
from logbook.craft.rows.cursor import Cursor, NotUnderstoodError
from logbook.craft.rows.lines import LEADS_TO_ROW, WORK, TextPart, makes
from logbook.craft.rows.reading import Reading, bare
from logbook.craft.rows.sayings import bare_of_chain, chains_count, saying
from logbook.craft.rows.word import NUMBER
from logbook.craft.rows.words import cut

_FOUNDATION = re.compile(
    r"\s*(?:work\s+|make\s+)?(?:\d+\s+)?(?:f(?:sc|hdc|dc)|foundation\s+(?:sc|hdc|dc|single|half|double))\b", re.IGNORECASE
)
LONGEST_SENTENCE = 300  # letters in what is said of chains
_SAYS_COUNT = re.compile(
    r"\bcount|\bnot\b|\bnever\b|n['’]t\b|=|\bis\s+(?:always\s+)?(?:an?|one|1)\b|\bare\b|\bequals?\b|\bacts?\b|\bstand|\breplace|\breckon|\bno\b",
    re.IGNORECASE,
)


def speaks_of_all(reading: Reading, part: TextPart, named: bool) -> bool:
    """Lines that are no row: the starting chain, the multiple, what chains count as, a stitch's description, notes."""
    text = reading.text[part.start : part.end]
    if part.name and not (re.match(r"foundation|base", part.name, re.I) and not re.search(r"from\s+(?:the\s+)?hook", text, re.I)):
        return False
    if not text.strip():
        return True
    if reading.describing.described(part.start):
        reading.note(part)
        return True
    text = _without_sayings(reading, part) if named else _unless_saying(reading, part)
    if not text.strip(" .,;()\n\t"):
        reading.note(part)
        return True
    led = LEADS_TO_ROW.search(reading.text, part.start, part.end) if named and reading.rows else None
    if led is not None and not makes(reading.text[led.end() : part.end]):
        reading.lead = replace(part, start=led.start())
        return True
    if (
        named
        and not reading.rows
        and _FOUNDATION.match(text)
        and not re.search(r"\byo\b|\binsert\b|\byrh\b", text, re.IGNORECASE)
    ):
        reading.read_row(replace(part, name="Foundation row"))
        return True
    base = not reading.rows and _base(reading, part, text, named)
    works = makes(text) or (not named and WORK.search(text) is not None and not base)
    if base and not (works and re.search(r"from\s+(?:the\s+)?hook", text, re.I)):
        return True
    if named and (not reading.rows or not works):
        if (
            re.search(r"from\s+(?:the\s+)?hook\b.*\bin\s+(?:each|next)|rep\s+from\s+\*", text, re.I)
            and not reading.rows
            and works
            and not re.search(r"\bmeans?\b", text, re.I)
        ):
            return False
        reading.note(part)
        return True
    if works:
        return False
    reading.note(part)
    return True


def _without_sayings(reading: Reading, part: TextPart) -> str:
    """The line with blanks for what it says that chains count as, which is kept for all rows."""
    text = reading.text[part.start : part.end]
    for sentence in re.finditer(r"[^.;(\n][^.;()\n]*", text):
        start, end = part.start + sentence.start(), part.start + sentence.end()
        of_all = chains_count(sentence[0]) is not None and not makes(sentence[0])
        said = None if of_all else _said_somewhere(reading, start, end)
        if said is not None:
            reading.throughout.append(replace(said, throughout=True))
        if said is not None or of_all:
            text = text[: sentence.start()] + " " * (end - start) + text[sentence.end() :]
    return text


def _unless_saying(reading: Reading, part: TextPart) -> str:
    """The line, "" if all of it says what chains count as: among rows without names any other line may be one."""
    text = reading.text[part.start : part.end]
    said = said_to_count(bare(reading.cursor(part))) if _SAYS_COUNT.search(text) else None
    if said is not None:
        reading.throughout.append(replace(said, throughout=True))
    return "" if said is not None or (chains_count(text) is not None and not makes(text)) else text


def _said_somewhere(reading: Reading, start: int, end: int) -> SaidToCount | None:
    """What that sentence says that chains count as, at its beginning or from where it first speaks of chains."""
    if end - start > LONGEST_SENTENCE or not _SAYS_COUNT.search(reading.text, start, end):
        return None
    cur = bare(Cursor(cut(reading.text, reading.how, start, end), end))
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


def _base(reading: Reading, part: TextPart, text: str, named: bool) -> bool:
    """``Ch 68 (74, 86, 92), join``; ``Multiple of 6 plus 2``."""
    found = saying(reading.text[: part.start] + text, part.start, part.end)
    if not named and WORK.search(bare_of_chain(text)):
        return False
    reading.chain_sizes = reading.chain_sizes or found.chain
    reading.stated = reading.stated or found.stated
    return found.chain is not None or found.stated is not None
