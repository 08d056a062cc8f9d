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
    Opening,
    Repeat,
    Skip,
    Span,
    Times,
    ToLast,
    Work,
    WrittenRow,
)
from logbook.craft.rows.openings import counted_otherwise
from logbook.craft.rows.places import HEIGHTS
from logbook.craft.rows.sentences import Speaker
from logbook.craft.words.counting import ordinal


@dataclass(frozen=True, slots=True)
class MendedRow:
    """A row with one number changed: what stands at ``span``, and what would stand there instead."""

    row: WrittenRow
    span: Span
    was: str
    instead: str


def changes(row: WrittenRow, by: int, speaker: Speaker) -> Iterator[MendedRow]:
    """The row with one of its numbers changed by ``by``, each number once; those that the words do not show are left alone."""
    opening = row.opening
    if by == 1 and opening is not None and not (opening.at_hook or opening.said) and opening.chains > 1:
        yield _other_count(row, opening, speaker)
    for body, span, old in _bodies(row.body, by):
        was = _phrase(span, speaker)
        instead = _rewritten(was, old, by)
        if instead:
            yield MendedRow(replace(row, body=body), span, was, instead)
    if opening is not None and opening.at_hook and opening.chains + by > 0:
        was = _phrase(opening.span, speaker)
        instead = re.sub(r"\b\d+(?:st|nd|rd|th)\b", ordinal(opening.chains + 1 + by), was, count=1)
        yield MendedRow(replace(row, opening=replace(opening, chains=opening.chains + by)), opening.span, was, instead)


def _phrase(span: Span, speaker: Speaker) -> str:
    return " ".join(speaker.text[span.start : span.end].split())


def _other_count(row: WrittenRow, opening: Opening, speaker: Speaker) -> MendedRow:
    """The row with its turning chain said to count, or not to, against what its next stitch shows."""
    counts = counted_otherwise(opening, row.body)
    was = _phrase(opening.span, speaker)
    said = (
        f"counts as {counts.stitch}" + (f" and ch {counts.chains}" if counts.chains else "")
        if counts.stitch
        else "does not count"
    )
    changed = replace(opening, options=(counts,), said=True)
    return MendedRow(replace(row, opening=changed), opening.span, was, f"{was} ({said})")


def _bodies(body: tuple[Instruction, ...], by: int) -> Iterator[tuple[tuple[Instruction, ...], Span, int]]:
    """(the body with one number changed, where it stands, the number as it was)"""
    for at, item in enumerate(body):
        before, after = body[:at], body[at + 1 :]
        for changed, span, old in _changed(item, by):
            yield (*before, changed, *after), span, old


def _changed(item: Instruction, by: int) -> Iterator[tuple[Instruction, Span, int]]:
    if isinstance(item, Repeat):
        for body, span, old in _bodies(item.body, by):
            yield replace(item, body=body), span, old
        if isinstance(item.until, Times | ToLast) and item.until.count + by > 0:
            count = item.until.count
            yield replace(item, until=replace(item.until, count=count + by)), item.span, count
    elif isinstance(item, Chain | Skip):
        if item.count + by > 0:
            yield replace(item, count=item.count + by), item.span, item.count
    elif isinstance(item, Work):
        yield from _changed_work(item, by)


def _changed_work(work: Work, by: int) -> Iterator[tuple[Instruction, Span, int]]:
    count = len(work.made.items)
    if (
        set(work.made.items) <= HEIGHTS.keys()
        and len(set(work.made.items)) == 1
        and count + by > 0
        and not work.made.name
        and not work.together
    ):
        made = Made(work.made.items[:1] * (count + by))
        yield replace(work, made=made), work.span, count
    if isinstance(work.into, Next | Last) and work.into.count > 1 - min(by, 0) and not work.together:
        into = replace(work.into, count=work.into.count + by)
        yield replace(work, into=into), work.span, work.into.count


def _rewritten(phrase: str, old: int, by: int) -> str:
    """The phrase with its number changed; one that means a single stitch gets it in front; "" if the words show no such number.

    "Rep from * 2 more times" means three in all, so the number one less is looked for too.
    """
    for shown in (old, old - 1) if phrase.lower().startswith("rep") else (old,):
        changed, times = re.subn(rf"(?<![\d-]){shown}(?!\d)", str(shown + by), phrase, count=1)
        if times and shown + by > 0:
            return changed
    return f"{old + by} {phrase}" if old == 1 and by > 0 and not re.match(r"(?:rep|sk|miss|skip|\(|\[)", phrase, re.I) else ""
