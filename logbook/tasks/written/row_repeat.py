"""Which rows of a stitch pattern are repeated, and the sentence that says so where its own text does not."""

from functools import lru_cache

from logbook.craft.rows.instructions import WrittenPattern
from logbook.craft.rows.reader import read
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.terms import Terms
from logbook.tasks.written.practice import proven_rows


def repeat_line(pattern: StitchPattern) -> str:
    """``Repeat rows 2–5.``; "" where the rows say so themselves, where there are none, and where it isn't known."""
    rows = _read(pattern.rows_text, pattern.terms)
    found = None if rows.repeat_from is not None or not rows.rows else _repeated(pattern, rows)
    if found is None:
        return ""
    first, last = found
    row = "round" if rows.rows[-1].in_round else "row"
    return f"Repeat {row} {first}." if first == last else f"Repeat {row}s {first}–{last}."


def repeat_unknown(pattern: StitchPattern) -> bool:
    """Whether there are rows of which nobody has said which are repeated."""
    rows = _read(pattern.rows_text, pattern.terms)
    return bool(rows.rows) and rows.repeat_from is None and _repeated(pattern, rows) is None


@lru_cache(maxsize=32)
def _read(text: str, terms: str) -> WrittenPattern:
    return read(text, Terms(terms) if terms else Terms.US) if text.strip() else WrittenPattern(())


def _repeated(pattern: StitchPattern, rows: WrittenPattern) -> tuple[int, int] | None:
    """The first and the last row that are repeated: as the pattern's own figures say, else as the rows prove."""
    last = rows.rows[-1].number
    if pattern.rows_in_repeat is not None:
        end = last - (pattern.closing_rows or 0)
        begin = end - pattern.rows_in_repeat + 1
        return (begin, end) if begin >= rows.rows[0].number else None
    proof = proven_rows(pattern.rows_text, pattern.terms)
    return (proof.leads_back_to, last) if proof is not None and proof.leads_back_to is not None else None
