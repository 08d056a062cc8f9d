"""What a row does that is no plain stitch in a place: stitches of several steps, foundation stitches, loops, work even."""

from dataclasses import replace

from logbook.craft.rows.cursor import Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Either,
    Instruction,
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


class Doings:
    """Reads them. ``own``: the stitches that the pattern itself describes; ``row``: what is known of the row so far."""

    def __init__(self, own: OwnStitches, row: RowWords, targets: Targets, stitches: Stitches) -> None:
        self.own = own
        self.row = row
        self.targets = targets
        self.stitches = stitches

    def led_to(self, cur: Cursor, inside: Cursor, start: int) -> list[Instruction]:
        """``(sl st, ch 3, 3 dc) in next ch-3 sp``: the slip stitch leads there, the rest goes into the same place."""
        cur.at += 1
        where = self.targets.target(cur)
        chain = self.stitches.chain(inside)
        inside.accept(",")
        made = self.stitches.made(inside) if chain is not None else None
        if chain is None or made is None or isinstance(where, Each):
            raise NotUnderstoodError(cur.span_from(start))
        span = cur.span_from(start)
        return [Work(Made(("sl st",)), where, span), chain, Work(made, Same(), span)]

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

    def even(self, cur: Cursor, start: int) -> list[Instruction]:
        """``work even in sc``: one into each."""
        cur.accept("in")
        kind = cur.stitch()
        if kind is None:
            raise NotUnderstoodError(cur.span_from(start), "say in which stitch, or “Rep Row 2”")
        span = cur.span_from(start)
        return [Repeat((Work(Made((kind,)), Next(ANY_STITCH), span),), self.targets.until(cur) or ToEnd(), span)]

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
