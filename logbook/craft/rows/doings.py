"""What a row does that is no plain stitch in a place: stitches of several steps, foundation stitches, loops, work even."""

from dataclasses import replace

from logbook.craft.rows.cursor import BREAKS, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    NEW_YARN,
    Either,
    First,
    Instruction,
    Last,
    Made,
    Next,
    Repeat,
    Ring,
    Same,
    Span,
    Times,
    ToEnd,
    Work,
)
from logbook.craft.rows.own_stitches import OwnStitches
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import Each, Targets
from logbook.craft.rows.word import NUMBER, STITCH


class Doings:
    """Reads them. ``own``: the stitches that the pattern itself describes; ``row``: what is known of the row so far."""

    def __init__(self, own: OwnStitches, row: RowWords, targets: Targets, stitches: Stitches) -> None:
        self.own = own
        self.row = row
        self.targets = targets
        self.stitches = stitches
        self.first_row = False

    def led_to(self, cur: Cursor, inside: Cursor, start: int) -> list[Instruction]:
        """``(sl st, ch 3, 3 dc) in next ch-3 sp``: the slip stitch leads there, the rest goes into the same place."""
        cur.at += 1
        where = self.targets.target(cur)
        chain = self.stitches.groups.chain(inside)
        inside.accept(",")
        made = self.stitches.groups.made(inside) if chain is not None else None
        if chain is None or made is None or isinstance(where, Each):
            raise NotUnderstoodError(cur.span_from(start))
        span = cur.span_from(start)
        return [Work(Made(("sl st",)), where, span), chain, Work(made, Same(), span)]

    def begun(self, cur: Cursor, inside: Cursor, start: int) -> list[Instruction] | None:
        """``(ch 3, 2 dc, ch 2, 3 dc) in first ch-2 sp`` begins a row with those chains; None if it is something else."""
        back = cur.at
        chain = self.stitches.groups.chain(inside)
        inside.accept(",")
        made = self.stitches.groups.made(inside) if chain is not None else None
        if chain is None or made is None or not cur.accept("in") or set(made.items) <= {"ch", "sl st"}:
            cur.at = back
            return None
        where = self.targets.target(cur)
        if isinstance(where, Each) or (isinstance(where, Next) and where.count > 1):
            cur.at = back
            return None
        span = cur.span_from(start)
        if isinstance(where, Same | First | Ring):
            into = where if isinstance(where, First | Ring) else Same(where.wanted)
            return [chain, Work(made, into, span)]
        return [Work(Made(("sl st",), NEW_YARN), where, span), chain, Work(made, Same(), span)]

    def yarn_joined(self, cur: Cursor) -> list[Instruction] | None:
        """``join B with sl st in any corner``: the row begins there; None if it says no place."""
        start = cur.at
        if not cur.accept("join", "rejoin", "attach"):
            return None
        while cur.more() and not cur.next_is("in", "to", *BREAKS, "(", "[") and cur.word().sort not in (STITCH, NUMBER):
            cur.at += 1
        if cur.accept("in", "to") and not cur.next_is("mc", "ring"):
            try:
                where = self.targets.target(cur)
            except NotUnderstoodError:
                where = None
            if (
                isinstance(where, First | Last | Next | Same)
                and getattr(where, "count", 1) == 1
                and cur.next_is("", "and", *BREAKS)
            ):
                return [Work(Made(("sl st",), NEW_YARN), where, cur.span_from(start))]
            if self.first_row and where is None and not cur.next_is("ring", "first"):
                cur.skip_clause()  # "in 9th st from center back": an edge of another piece
                return [Work(Made(("sl st",), NEW_YARN), First(ANY_STITCH), cur.span_from(start))]
        cur.at = start
        return None

    def ring_of(self, cur: Cursor) -> list[Instruction] | None:
        """``magic ring with 6 sc``, ``MR 6``; None if it is something else."""
        start = cur.at
        if cur.accept("ring") or (cur.next_is("ring", ahead=1) and cur.accept("in") and cur.accept("ring")):
            cur.accept("with", "of", ":", "-")
            if cur.sort_is(NUMBER) and (cur.sort_is(STITCH, 1) or cur.next_is(*BREAKS, "(", "[", "", ahead=1)):
                count = cur.number() or 1
                return [Work(Made((cur.stitch() or "sc",) * count), Ring(), cur.span_from(start))]
        cur.at = start
        return None

    def steps(self, cur: Cursor) -> list[Instruction]:
        """A stitch of several steps, as the pattern has described it."""
        start = cur.at
        cur.at += 1
        if cur.accept("over"):
            cur.accept("next")
            cur.number()
            cur.accept("st")
        span = cur.span_from(start)
        return [_with_span(item, span) for item in self.own.steps[cur.words[start].text]]

    def hook_inserted(self, cur: Cursor) -> list[Instruction] | None:
        """``insert hook in next bar, yo, pull up a loop``; None if it is something else."""
        start = cur.at
        if cur.accept("insert") and cur.accept("hook") and cur.accept("in"):
            where = self.targets.target(cur)
            while cur.accept(",", "and", "yo", "yrh"):
                pass
            if cur.accept("tss"):
                return self.stitches.works(cur, Made(("tss",)), start, where)
        cur.at = start
        return None

    @staticmethod
    def row_of(cur: Cursor, items: list[Instruction]) -> bool:
        """Whether ``in sc across``, ``1 row of sc`` or ``sc row`` begins: one into each. Steps up to the stitch."""
        start = cur.at
        begins = cur.next_is("in", "row", "around") or cur.sort_is(NUMBER)
        if not begins or any(isinstance(item, Work | Repeat) for item in items):
            return False
        if cur.next_is("in") and cur.sort_is(STITCH, 1) and cur.next_is("toend", "around", "", ".", ahead=2):
            return True
        if cur.sort_is(NUMBER) and cur.word().value == 1 and cur.next_is("row", "around", ahead=1):
            cur.at += 1
        elif (
            cur.sort_is(NUMBER)
            and cur.word().value == 1
            and cur.next_is("more", ahead=1)
            and cur.next_is("row", "around", ahead=2)
        ):
            cur.at += 2
        if cur.accept("row", "around") and cur.accept("of", "in") and cur.sort_is(STITCH):
            return True
        cur.at = start
        return False

    def even(self, cur: Cursor, start: int) -> list[Instruction]:
        """``work even in sc``: one into each."""
        cur.accept("in")
        kind = cur.stitch()
        if kind is None:
            raise NotUnderstoodError(cur.span_from(start), "say in which stitch, or “Rep Row 2”")
        span = cur.span_from(start)
        return [Repeat((Work(Made((kind,)), Next(ANY_STITCH), span),), self.targets.how_far.until(cur) or ToEnd(), span)]

    def foundation(self, cur: Cursor) -> list[Instruction]:
        """``25 fsc``: chain and row 1 in one."""
        start = cur.at
        count = cur.number()
        kind = cur.word().text[1:]
        cur.at += 1
        count = count or cur.number() or 1
        self.row.in_ring = True
        span = cur.span_from(start)
        return [Repeat((Work(Made((kind,)), Ring(), span),), Times(count), span)]


def _with_span(item: Instruction, span: Span) -> Instruction:
    if isinstance(item, Repeat):
        return replace(item, body=tuple(_with_span(inner, span) for inner in item.body), span=span)
    if isinstance(item, Either):
        return replace(item, works=tuple(replace(work, span=span) for work in item.works), span=span)
    return replace(item, span=span)
