"""Stitches worked together: ``sc2tog``, ``dc3tog over next 3 sts``, ``hdc 2 sts together``, ``3 ch together with sc``."""

from dataclasses import replace

from logbook.craft.rows.cursor import BREAKS, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import ANY_STITCH, First, Instruction, Last, Made, Next, Repeat, Ring, Target, ToEnd, Work
from logbook.craft.rows.kinds import WHOLE_STITCH
from logbook.craft.rows.targets import Each, Targets
from logbook.craft.rows.word import NUMBER


class Together:
    """Reads them, with where they go. ``freely``: where stitches start whose place is not said, to which these are added."""

    def __init__(self, targets: Targets, freely: set[int]) -> None:
        self.targets = targets
        self.freely = freely
        self.nothing_yet = False  # the row has only gone to where its yarn is joined

    def in_words(self, cur: Cursor, start: int) -> list[Instruction] | None:
        """``3 ch together with sc``; None (and nothing taken) if it is something else."""
        back = cur.at
        if cur.accept("next") and (over := cur.number()) and over > 1:
            kind = WHOLE_STITCH if cur.accept("st") else cur.stitch()
            if kind and cur.accept("tog", "together") and cur.next_is(*BREAKS, "and", "", "*", ")", "]", "twice", "toend"):
                return self.work(cur, Made((f"{kind}{over}tog",)), over, 1, start)
        cur.at = back
        count = cur.number() if cur.sort_is(NUMBER) and cur.next_is("ch", "st", ahead=1) else None
        worded = self.worded(cur, count) if count else None
        if worded is None:
            cur.at = back
            return None
        return self.work(cur, Made((f"{worded[0]}{worded[1]}tog",)), worded[1], 1, start)

    def worded(self, cur: Cursor, count: int | None) -> tuple[str, int] | None:
        """``hdc 2 sts together``, ``3 ch together with sc``: (stitch, how many); None (and nothing taken) if it is not."""
        start = cur.at
        kind = cur.stitch() if count is None else None
        over = count if kind is None else cur.number()
        if over is not None and over > 1 and (kind or cur.next_is("st", "ch")):
            if not cur.accept("st", "ch"):
                cur.stitch()
            if cur.accept("tog", "together"):
                if kind is None and cur.accept("with", "in", "as"):
                    kind = cur.stitch()
                if kind is not None:
                    return kind, over
        cur.at = start
        return None

    @staticmethod
    def next_places(cur: Cursor) -> int:
        """``sc next 2 sts together``: how many; 0 (and nothing taken) if it is something else. Leaves ``tog`` taken."""
        start = cur.at
        cur.at += 1
        if cur.accept("next", "first", "last") and (count := cur.number()) and count > 1:
            if not cur.accept("st"):
                cur.stitch()
            if cur.accept("tog", "together"):
                return count
        cur.at = start
        return 0

    def work(self, cur: Cursor, made: Made, over: int, count: int, start: int) -> list[Instruction]:
        """``sc2tog``, ``dc3tog over next 3 sts``, ``sc2tog across``."""
        where: Target | Each = Next(ANY_STITCH, over)
        if not cur.next_is("over", "in", "next", "last", "first"):
            self.freely.add(cur.words[start].start)
        if cur.next_is("toend", "around") and not cur.next_is("next", ahead=1):
            where = Each(ANY_STITCH, self.targets.how_far.until(cur) or ToEnd())
        elif cur.accept("over", "in", "toend", "around") or cur.next_is("next", "last", "first"):
            where = self._same_and_next(cur, over) or self.targets.target(cur)
        if isinstance(where, Each):
            span = cur.span_from(start)
            body = Work(made, Next(where.wanted, over), span, together=True)
            return [Repeat((body,), where.until, span)]
        if isinstance(where, Ring):
            return [Work(made, where, cur.span_from(start))] * count
        if isinstance(where, First):
            where = Next(where.wanted, over)
        if isinstance(where, Next | Last) and where.count == 1 and over > 1:
            where = replace(where, count=over)
        if not isinstance(where, Next | Last) or where.count != over:
            raise NotUnderstoodError(cur.span_from(start), f"{over} stitches together need {over} places")
        times = self.targets.how_far.times(cur)
        work = Work(made, where, cur.span_from(start), together=True)
        return [work] * (count * (times.count if times else 1))

    def _same_and_next(self, cur: Cursor, over: int) -> Next | None:
        """``over same st and next st``, where yarn was joined and nothing is worked yet; None if it is something else."""
        start = cur.at
        if self.nothing_yet and cur.accept("same"):
            self.targets.places.wanted_or_any(cur)
            if cur.accept("and", ",") and cur.accept("next"):
                more = cur.number() or 1
                wanted = self.targets.places.wanted_or_any(cur)
                if more == over - 1:
                    return Next(wanted, over)
        cur.at = start
        return None
