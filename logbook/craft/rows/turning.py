"""What belongs to which row: turns, chains made at a row's end for the next one, and what the first chains count as."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from logbook.craft.rows.blocks import moves_to_block, with_blocks
from logbook.craft.rows.chain_sayings import SaidToCount
from logbook.craft.rows.instructions import (
    NEW_YARN,
    Chain,
    Counts,
    Fault,
    FromHook,
    Instruction,
    Opening,
    PrintedCount,
    Skip,
    Wanted,
    Work,
    WrittenRow,
    works_of,
)
from logbook.craft.rows.openings import Shown, at_hook, turning_chain
from logbook.craft.rows.row_words import ReadRow, RowWords


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows, each with its own chains; the starting chain, if row 1 makes it; chains that are written twice."""

    rows: tuple[WrittenRow, ...]
    base: PrintedCount | None
    faults: tuple[Fault, ...]


def written_rows(rows: Sequence[ReadRow], throughout: Sequence[SaidToCount]) -> Rows:
    """Gives each row its chains. ``throughout``: what is said of all rows' first chains."""
    between = _Between(list(throughout))
    said = [*throughout, *(each for row in rows for each in row.words.said.values())]
    in_order = with_blocks(rows, any(each.stitch for each in said))
    written = tuple(between.row(row, index == 0) for index, row in enumerate(in_order))
    return Rows(written, between.base, tuple(between.faults))


@dataclass(slots=True)
class _Between:
    """What is carried over from one row to the next."""

    throughout: list[SaidToCount]
    carried: tuple[Chain, SaidToCount | None] | None = None
    base: PrintedCount | None = None
    faults: list[Fault] = field(default_factory=list)
    earlier: dict[int, Counts] = field(default_factory=dict)  # so many chains → what they stood for where that was said
    done_number: int = 0
    done: list[tuple[int, RowWords]] = field(default_factory=list)  # each row before, by the number of the row below it
    edge: Counts | None = None  # what the chains skipped at the hook stand for, if a stitch

    def row(self, row: ReadRow, is_first: bool) -> WrittenRow:
        items, said, words = list(row.words.items), dict(row.words.said), row.words
        after_join = words.joined_at is not None and len(items) > words.joined_at
        if self.carried is not None:
            chain, what = self.carried
            if items and isinstance(again := items[0], Chain):
                says = (
                    f"{row.part.name} begins with chains, but the row before it ends with some already: leave out one of the two."
                )
                self.faults.append(Fault(row.number, says, again.span))
                del items[0]
            items.insert(0, chain)
            if what is not None:
                said.setdefault(chain.span.start, what)
        turns = not row.part.in_round if words.turn_after is None else words.turn_after
        self.carried = self._for_next(items, said) if turns or after_join else None
        if is_first and len(items) > 1 and isinstance(base := items[0], Chain) and isinstance(_at_hook(items[1]), Work):
            self.base = PrintedCount((base.count,), Wanted("ch"), base.span)
            del items[0]
        moves = _moves(items)
        self.done.append((self.done_number, words))
        self.done_number = row.number
        own = None if is_first else next((work for work in works_of(items) if isinstance(work.into, FromHook)), None)
        if own is not None:
            says = f"{row.part.name} works into chains of its own, and it is not clear which."
            self.faults.append(Fault(row.number, says, own.span))
        opening = self._opening(items, said, is_first, words.joins_to)
        return WrittenRow(
            row.number, row.part.name, row.part.span, row.part.in_round, moves, opening, tuple(items),
            words.turn_before, turns, words.joined_at is not None, words.leaves_rest, words.leaves, words.counts, words.in_ring,
            words.and_onto, self._onto(words.onto), words.own_chain,
        )  # fmt: skip

    def _onto(self, said: int) -> int:
        """The row whose rest a row is worked onto; 0 if none."""
        if said >= 0:
            return said
        return next((before for before, row in reversed(self.done) if row.leaves_rest), 0)

    @staticmethod
    def _for_next(items: list[Instruction], said: dict[int, SaidToCount]) -> tuple[Chain, SaidToCount | None] | None:
        """Takes the chains off a row's end that come before its turn: they are the next row's."""
        worked = any(not isinstance(item, Chain) for item in items)
        if worked and isinstance(last := items[-1], Chain):
            items.pop()
            return last, said.get(last.span.start)
        return None

    def _opening(self, items: list[Instruction], said: dict[int, SaidToCount], is_first: bool, joins_to: str) -> Opening | None:
        """Takes the first chains off the row, and tells what they may count as."""
        if not items:
            return None
        first = _at_hook(items[0]) if is_first else None
        chain = items[0]
        if first is not None:
            opening = at_hook(first, items, self._said(said, first.span.start, 0))
            if len(opening.options) == 1 and opening.options[0].stitch:
                self.edge = opening.options[0]
            if isinstance(first, Skip):
                del items[0]
        elif isinstance(chain, Chain):
            del items[0]
            earlier = self.earlier.get(chain.count) or (self.edge if chain.count > 2 else None)
            shown = Shown(joins_to, earlier)
            opening = turning_chain(chain, items, self._said(said, chain.span.start, chain.count), shown)
            if (len(opening.options) == 1 or opening.settled) and chain.count > 1:
                self.earlier.setdefault(chain.count, opening.options[0])
        elif isinstance(chain, Skip) and chain.first and any("tss" in work.made.items for work in works_of(items)):
            opening = Opening(0, (Counts("tss"),), "loop", chain.span, settled=True)  # the loop on the hook is the first
        else:
            opening = None
        for what in said.values():
            if what.throughout:
                of = what.of or (opening.chains if opening else 0)
                self.throughout.append(replace(what, of=of, skipped=False))
        return opening

    def _said(self, said: dict[int, SaidToCount], start: int, chains: int) -> SaidToCount | None:
        """What the text says of the chains that begin there: beside them, elsewhere in the row by their number, or once for
        all.
        """
        if start in said:
            return said[start]
        own = [each for each in said.values() if (each.of == chains if chains else each.skipped)]
        if own:
            return own[0]
        fitting = [each for each in self.throughout if each.skipped == (not chains) and each.of in (0, chains)]
        return fitting[-1] if fitting else None


def _moves(items: list[Instruction]) -> tuple[Work | Skip, ...]:
    """Takes the slip stitches off the row that come before its first chains, and what is skipped before yarn is joined."""
    count = 0
    yarn = next((at for at, item in enumerate(items) if isinstance(item, Work) and item.made.name == NEW_YARN), -1)
    led = next((at for at, item in enumerate(items) if not isinstance(item, Skip)), 0)
    led = led if led and _slips(items[led]) else yarn
    while count < len(items) and (_slips(item := items[count]) or (count < led and isinstance(item, Skip))):
        count += 1
    joined = count and isinstance(last := items[count - 1], Work) and last.made.name == NEW_YARN
    if not (count and count < len(items) and (joined or isinstance(items[count], Chain) or moves_to_block(items) == count)):
        return ()
    moves = tuple(item for item in items[:count] if isinstance(item, Work | Skip))
    del items[:count]
    return moves


def _slips(item: Instruction) -> bool:
    return isinstance(item, Work) and item.made.items == ("sl st",)


def _at_hook(item: Instruction) -> Work | Skip | None:
    """The instruction, if it is a first one that skips chains at the hook."""
    if isinstance(item, Work) and isinstance(item.into, FromHook):
        return item
    return item if isinstance(item, Skip) and item.wanted.kind == "ch" else None
