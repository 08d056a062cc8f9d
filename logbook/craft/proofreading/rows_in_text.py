"""The written rows of a finished text, proven as those of a stitch pattern: size by size, the counts in brackets for each."""

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from logbook.craft.proofreading.text_checks import TextProblem
from logbook.craft.rows.lines import TextPart, parts
from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import CLAIM, DOES_NOT_FIT
from logbook.craft.words.terms import Terms

MOST_STRETCHES = 40  # of rows that begin anew; no garment has as many
_CHAIN = re.compile(r"\s*(?:with\b[^,.;]{1,30},?\s*)?(?:ch|chain|make|foundation|begin|(?:\d+\s*ch\b))", re.IGNORECASE)


class Stretch(NamedTuple):
    """Rows that belong together: from ``start`` up to ``end`` in the text."""

    start: int
    end: int


def stretches(text: str, headings: Sequence[str] = ()) -> list[Stretch]:
    """Where rows begin anew with the first one, up to the next such place or heading; with the chain in the line above them."""
    lines = parts(text)
    at_heading = {part.start for part in lines if _is_heading(text, part, headings)}
    found: list[Stretch] = []
    begun: int | None = None
    end = 0
    for index, part in enumerate(lines):
        if begun is not None and (_begins(part) or part.start in at_heading):
            found.append(Stretch(begun, end))
            begun = None
        if begun is None and _begins(part):
            before = lines[index - 1] if index else None
            chained = before is not None and not before.name and _CHAIN.match(text, before.start, before.end)
            begun = before.start if before is not None and chained else _with_name(text, part)
        if begun is not None and part.name:
            end = part.end
    return [*found, Stretch(begun, end)] if begun is not None else found


def _begins(part: TextPart) -> bool:
    return bool(part.name) and part.numbers[:1] in ((0,), (1,))


def _with_name(text: str, part: TextPart) -> int:
    """Where the line with the row's name begins."""
    return text.rfind("\n", 0, part.start) + 1


def _is_heading(text: str, part: TextPart, headings: Sequence[str]) -> bool:
    line = text[part.start : part.end].strip().casefold().rstrip(":")
    return any(line == heading.casefold() for heading in headings if heading)


def rows_problems(text: str, headings: Sequence[str] = (), terms: Terms | None = None) -> Iterator[TextProblem]:
    """Rows that do not fit onto the ones below and counts that they do not hold. What is not understood is no problem here."""
    for stretch in stretches(text, headings)[:MOST_STRETCHES]:
        proof = prove(text[stretch.start : stretch.end], terms, suggest=False)
        for problem in proof.problems:
            if problem.kind in (DOES_NOT_FIT, CLAIM):
                start, end = problem.span.start + stretch.start, problem.span.end + stretch.start
                yield TextProblem(text.count("\n", 0, start) + 1, problem.says, start, max(end, start + 1))
