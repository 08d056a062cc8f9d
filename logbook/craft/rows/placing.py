"""Where stitches go whose place is told before them, or behind several of them."""

from dataclasses import replace
from itertools import islice

from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    Chain,
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
    ToEnd,
    TurningChain,
    Work,
)
from logbook.craft.rows.last_repeat import leads_to_last
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import Each, Targets
from logbook.craft.rows.word import NUMBER


class Placing:
    """Reads such places. ``items``: what the row does before them."""

    def __init__(self, row: RowWords, targets: Targets, stitches: Stitches) -> None:
        self.row = row
        self.targets = targets
        self.stitches = stitches
        self.into_ring = False  # what says no place goes into the ring

    def placed(self, new: list[Instruction], items: list[Instruction]) -> list[Instruction]:
        """What was just read, with those before it that go into its place too.

        Refuses ``dc, ch 1, dc in next st``, which could mean one place or two.
        """
        if new and isinstance(new[0], Work) and new[0].span.start in self.stitches.all_in:
            return [self._with_those_before(new[0], items), *new[1:]]
        if len(items) > 1 and new and isinstance(new[0], Work) and new[0].span.start not in self.stitches.unplaced:
            before = items[-2]
            if isinstance(items[-1], Chain) and isinstance(before, Work) and before.span.start in self.stitches.unplaced:
                if isinstance(new[0].into, Ring):
                    items[:] = [self.in_the_ring(item) for item in items]
                    return new
                if self._together_in_space(new[0], items):
                    return [self._with_those_before(new[0], items), *new[1:]]
                span = Span(before.span.start, new[0].span.end)
                raise NotUnderstoodError(span, "put what goes into one place in brackets, or say where each stitch goes")
        return new

    @staticmethod
    def where_moved_to(new: list[Instruction], items: list[Instruction]) -> list[Instruction]:
        """``sl st to next corner sp, ch 3, 2 dc in corner``: into the space that the slip stitch went to."""
        work = new[0] if new else None
        if not (
            isinstance(work, Work) and len(items) > 1 and isinstance(items[-1], Chain) and isinstance(moved := items[-2], Work)
        ):
            return new
        only_moves = all(isinstance(item, Work) and item.made.items == ("sl st",) for item in islice(items, len(items) - 1))
        into = work.into
        if not (only_moves and isinstance(into, Next) and into.count == 1 and into.wanted.kind == "sp"):
            return new
        if moved.place_kind != "sp":
            return new
        return [replace(work, into=Same(into.wanted)), *new[1:]]

    def _together_in_space(self, work: Work, items: list[Instruction]) -> bool:
        """Whether ``3 dc, ch 2, 3 dc in next sp`` goes into one place: as much before the chains as behind, or the same one."""
        before = items[-2]
        if isinstance(work.into, Same):
            return all(isinstance(item, Work | Chain) for item in items)
        if not (isinstance(before, Work) and isinstance(before.into, Next) and isinstance(work.into, Next | Last | First)):
            return False
        wanted, made = work.into.wanted, before.made.items * before.into.count
        return wanted.kind == "sp" and getattr(work.into, "count", 1) == 1 and len(made) > 1 and made == work.made.items

    def _with_those_before(self, work: Work, items: list[Instruction]) -> Work:
        """``2 dc, ch 2, 3 dc all in next sp``: taken off ``items``, those before it go into the same place."""
        made: list[str] = list(work.made.items)
        start = work.span.start
        while items:
            item = items[-1]
            if isinstance(item, Work) and item.span.start in self.stitches.unplaced and isinstance(item.into, Next):
                made[:0] = item.made.items * item.into.count
            elif (
                isinstance(item, Chain)
                and len(items) > 1
                and isinstance(items[-2], Work)
                and items[-2].span.start in self.stitches.unplaced
            ):
                made[:0] = ["ch"] * item.count
            else:
                break
            start = items.pop().span.start
        return replace(work, made=Made(tuple(made)), span=Span(start, work.span.end))

    def place_first(self, cur: Cursor, items: list[Instruction], start: int) -> list[Instruction] | None:
        """``in first st work 2 sc``; ``… and in each ch across``, which goes on as before it; None if it is neither."""
        before = items[-1] if items else None
        if cur.next_is("each") and cur.next_is("in", ahead=1) and cur.next_is("ring", ahead=2):
            cur.at += 3
            items[:] = [self.in_the_ring(item) for item in items]
            return []  # "3 ch, 8 tr, all in a magic ring"
        goes_on = cur.next_is("and", ",", ahead=-1) and isinstance(before, Work)
        if not cur.accept("in"):
            if not (goes_on and cur.next_is("next", "each")):
                return None
        elif cur.next_is(*BREAKS, "toend"):
            return []  # "in back loops only," alone: which loop is worked changes no place
        if cur.next_is("mc"):
            return None
        where = self.targets.target(cur)
        if isinstance(before, Repeat) and isinstance(where, Each) and not where.said and cur.next_is(*BREAKS, ""):
            self.row.notes.append(cur.span_from(start))
            self.row.unsure.append(cur.span_from(start))
            return []  # "sc in each st across, working into the top of each bobble"
        if (
            goes_on
            and isinstance(before, Work)
            and (cur.next_is(*BREAKS, "and", "", "turn") or cur.next_is("and", ahead=start - 1 - cur.at))
        ):
            return self.stitches.works(cur, before.made, start, where)
        cur.accept(",", ":")
        if isinstance(where, Ring) and not items:
            self.into_ring = True
            return []
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            made = self.stitches.groups.made(cur.inside(cur.at + 1, close))
            cur.at = close + 1
        else:
            made = self._made_list(cur)
        if isinstance(where, Each):
            cur.accept("toend", "around")
        if made is None or cur.next_is("in", "next", "each", "times") or cur.sort_is(NUMBER):
            raise NotUnderstoodError(cur.span_from(start))
        return self.stitches.works(cur, made, start, where)

    def _made_list(self, cur: Cursor) -> Made | None:
        """``1 dc, 1 tr and 1 dc`` behind the place that all of them go into."""
        made = self.stitches.groups.made_once(cur)
        while made is not None and cur.next_is(",", "and"):
            start = cur.at
            cur.at += 1
            cur.accept("and")
            try:
                more = self.stitches.groups.made_once(cur)
            except NotUnderstoodError:
                more = None
            if more is None or cur.next_is("in", "next", "each", "times", "toend", "around", "over") or cur.sort_is(NUMBER):
                cur.at = start
                break
            made = Made(made.items + more.items)
        return made

    def last_of_each(self, cur: Cursor, items: list[Instruction]) -> list[Instruction] | None:
        """``…in each dc across, working last dc in top of tch``, ``…, including top of tch``; None if it is something else."""
        before = items[-1] if items else None
        if not (isinstance(before, Repeat) and len(before.body) == 1 and isinstance(before.until, ToEnd)):
            return None
        work, start = before.body[0], cur.at
        if cur.accept("first") and (cur.accept("one", "st") or cur.stitch()) and cur.accept("in", "topof"):
            cur.skip_clause("turn", "noturn", "join")
            self.row.notes.append(cur.span_from(start))
            self.row.unsure.append(cur.span_from(start))
            return []  # "working first sc in top of ch-3"
        cur.at = start
        if isinstance(work, Either):
            work = work.works[0]
        if not isinstance(work, Work):
            return None
        if cur.accept("including", "incl") or leads_to_last(cur, work.made.items):
            cur.accept("in")
            where = self.targets.target(cur)
            if isinstance(where, TurningChain | Last | Next):
                return [Work(work.made, where, cur.span_from(start))]
        cur.at = start
        return None

    def in_the_ring(self, item: Instruction) -> Instruction:
        """The same, its stitches that say no place in the ring."""
        if isinstance(item, Repeat):
            return replace(item, body=tuple(map(self.in_the_ring, item.body)))
        if isinstance(item, Work) and isinstance(item.into, Next) and item.span.start in self.stitches.unplaced:
            return replace(item, made=Made(item.made.items * item.into.count, item.made.name), into=Ring())
        return item
