"""The nearest change to the words that would mend a row: one number a little larger or smaller, there or in the row below."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from logbook.craft.rows.instructions import (
    Chain,
    Instruction,
    Last,
    Made,
    Next,
    Repeat,
    Skip,
    Span,
    Times,
    ToLast,
    Work,
    WrittenRow,
)


@dataclass(frozen=True, slots=True)
class Change:
    """A row with one number changed: what stands at ``span``, and what would stand there instead."""

    row: WrittenRow
    span: Span
    was: str
    instead: str


def changes(row: WrittenRow, by: int, text: str) -> Iterator[Change]:
    """The row with one of its numbers changed by ``by``, each number once."""
    for body, span, old, new in _bodies(row.body, by):
        was = " ".join(text[span.start : span.end].split())
        yield Change(replace(row, body=body), span, was, _rewritten(was, old, new))
    opening = row.opening
    if opening is not None and opening.at_hook and opening.chains + by > 0:
        old, new = opening.chains + 1, opening.chains + 1 + by
        was = " ".join(text[opening.span.start : opening.span.end].split())
        wider = replace(opening, chains=opening.chains + by)
        yield Change(replace(row, opening=wider), opening.span, was, re.sub(rf"\b{old}(?:st|nd|rd|th)", _ordinal(new), was, count=1))


def _bodies(body: tuple[Instruction, ...], by: int) -> Iterator[tuple[tuple[Instruction, ...], Span, int, int]]:
    """(the body with one number changed, where it stands, the number, the new one)"""
    for at, item in enumerate(body):
        before, after = body[:at], body[at + 1 :]
        for changed, span, old, new in _changed(item, by):
            yield (*before, changed, *after), span, old, new


def _changed(item: Instruction, by: int) -> Iterator[tuple[Instruction, Span, int, int]]:
    if isinstance(item, Repeat):
        for body, span, old, new in _bodies(item.body, by):
            yield replace(item, body=body), span, old, new
        if isinstance(item.until, Times | ToLast) and item.until.count + by > 0:
            count = item.until.count
            yield replace(item, until=replace(item.until, count=count + by)), item.span, count, count + by
    elif isinstance(item, Chain | Skip):
        if item.count + by > 0:
            yield replace(item, count=item.count + by), item.span, item.count, item.count + by
    else:
        yield from _changed_work(item, by)


def _changed_work(work: Work, by: int) -> Iterator[tuple[Instruction, Span, int, int]]:
    kinds = set(work.made.items)
    count = len(work.made.items)
    if len(kinds) == 1 and count + by > 0 and not work.made.name and not work.together:
        made = Made(work.made.items[:1] * (count + by))
        yield replace(work, made=made), work.span, count, count + by
    if isinstance(work.into, Next | Last) and work.into.count > 1 - min(by, 0) and not work.together:
        into = replace(work.into, count=work.into.count + by)
        yield replace(work, into=into), work.span, work.into.count, work.into.count + by


def _rewritten(phrase: str, old: int, new: int) -> str:
    """The phrase with its number changed; one that names none (a single stitch) gets it in front."""
    changed, times = re.subn(rf"\b{old}(?=\D|\Z)", str(new), phrase, count=1)
    return changed if times else f"{new} {phrase}"


def _ordinal(number: int) -> str:
    ending = "th" if 10 < number % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"
