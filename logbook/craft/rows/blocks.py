"""Corner to corner: rows of blocks, each some chains and stitches in the space of a block of the row below.

A row that grows begins its first block on chains of its own (``Ch 6, dc in 4th ch from hook and in next 2 ch``); the others are
worked ``sl st in next ch-3 sp, ch 3, 3 dc in same sp``. The slip stitch that leads to a block, and one that ends a row, make no
stitch; slip stitches before the first block only move along.
"""

from collections.abc import Sequence
from dataclasses import replace

from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Chain,
    FromHook,
    Instruction,
    Made,
    Next,
    Repeat,
    Same,
    Skip,
    Target,
    Wanted,
    Work,
)
from logbook.craft.rows.places import BLOCK, COUNTED_BLOCK
from logbook.craft.rows.row_words import ReadRow, RowWords


def in_blocks(rows: Sequence[ReadRow]) -> bool:
    """Whether the rows are corner to corner: one after the first begins a block on chains of its own."""
    return any(_begun(row.words.items) for row in rows[1:])


def with_blocks(rows: Sequence[ReadRow], chains_count: bool) -> list[ReadRow]:
    """The rows with every block as one thing that is made; rows that have none as they are, without counts of blocks.

    ``chains_count``: the text says that the chains of a block are one of its stitches.
    """
    if in_blocks(rows):
        name = COUNTED_BLOCK if chains_count else BLOCK
        return [replace(row, words=_in_blocks(row.words, name, is_first=index == 0)) for index, row in enumerate(rows)]
    return [_without_count(row) for row in rows]


def _without_count(row: ReadRow) -> ReadRow:
    kept = tuple(count for count in row.words.counts if count.wanted.name != BLOCK)
    if kept == row.words.counts:
        return row
    notes = [*row.words.notes, *(count.span for count in row.words.counts if count.wanted.name == BLOCK)]
    return replace(row, words=replace(row.words, counts=kept, notes=notes))


def _in_blocks(words: RowWords, name: str, is_first: bool) -> RowWords:
    items = list(words.items)
    begun = _begun(items, is_first)
    own_chain = 0
    if begun:
        count, block = begun
        own_chain = len(block.made.items) if is_first else 0
        items[:count] = [_named(block, name)]
    items = _joined(items, name)
    if items and isinstance(last := items[-1], Work) and last.made.items == ("sl st",):
        items[-1] = Skip(_wanted(last.into), 1, last.span)
    return replace(words, items=items, in_ring=words.in_ring or is_first, own_chain=own_chain)


def _named(block: Work, name: str) -> Work:
    return replace(block, made=Made(block.made.items, name))


def _begun(items: Sequence[Instruction], is_first: bool = False) -> tuple[int, Work] | None:
    """(how many instructions begin a block on chains of its own, that block); None if they do not."""
    chain = items[0] if items and isinstance(items[0], Chain) else None
    works = list(items[0 if chain is None else 1 :][:2])
    if (chain is None and not is_first) or len(works) < 2:
        return None
    first, others = works
    if not (isinstance(first, Work) and isinstance(first.into, FromHook) and isinstance(others, Work)):
        return None
    into = others.into
    if not (isinstance(into, Next) and into.wanted.kind in ("ch", "st") and others.made == first.made):
        return None
    if chain is not None and chain.count != first.into.chain + into.count:
        return None
    start = first if chain is None else chain
    span = replace(start.span, end=others.span.end)
    made = Made(("ch",) * (first.into.chain - 1) + first.made.items * (1 + into.count), BLOCK)
    return (2 if chain is None else 3), Work(made, Next(ANY_STITCH, 0), span)


def _joined(items: Sequence[Instruction], name: str) -> list[Instruction]:
    """``sl st in a space, chains, stitches in the same space`` made one block there."""
    found: list[Instruction] = []
    for item in items:
        if isinstance(item, Repeat):
            item = replace(item, body=tuple(_joined(item.body, name)))
        found.append(item)
        before = found[-3:]
        if len(before) == 3 and (block := _block(*before)) is not None:
            found[-3:] = [_named(block, name)]
    return found


def _block(moves: Instruction, chain: Instruction, work: Instruction) -> Work | None:
    if not (isinstance(moves, Work) and isinstance(chain, Chain) and isinstance(work, Work)):
        return None
    if moves.made.items != ("sl st",) or not isinstance(work.into, Same) or _wanted(moves.into).kind != "sp":
        return None
    made = Made(("ch",) * chain.count + work.made.items, BLOCK)
    return Work(made, moves.into, replace(moves.span, end=work.span.end))


def _wanted(into: Target) -> Wanted:
    return getattr(into, "wanted", None) or ANY_STITCH


def moves_to_block(items: Sequence[Instruction]) -> int:
    """How many slip stitches stand before a row's first block; 0 if something else does."""
    for count, item in enumerate(items):
        if isinstance(item, Work) and item.made.name in (BLOCK, COUNTED_BLOCK):
            return count
        if not (isinstance(item, Work) and item.made.items == ("sl st",)):
            break
    return 0
