"""Stitches and where they go: ``2 dc in next st``, ``sc2tog``, ``(dc, ch 1, dc) in next sp``, ``shell in each st across``."""

from collections.abc import Mapping
from dataclasses import replace

from logbook.craft.rows.cursor import BREAKS, CLOSING, LARGEST, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Chain,
    Either,
    First,
    Instruction,
    Last,
    Made,
    Next,
    PrintedCount,
    Repeat,
    Ring,
    Span,
    Target,
    ToEnd,
    Work,
)
from logbook.craft.rows.kinds import WHOLE_STITCH
from logbook.craft.rows.one_for_each import by_kind
from logbook.craft.rows.own_stitches import NO_PLACE
from logbook.craft.rows.place_kinds import GROUP_NAMES, ONE_STITCH_NAMES
from logbook.craft.rows.targets import Each, Targets
from logbook.craft.rows.word import MANY, NUMBER, OTHER, STITCH, TOGETHER
from logbook.craft.rows.words import FOREIGN

LEAST_IN_ALL = 5  # "6 sc around" are so many in all; "2 sc around" could be as many in each


class Stitches:
    """Reads what is made and where. ``names``: stitches made in one place that the pattern has given a name; ``placed``:
    those of them that are described with their place.
    """

    def __init__(self, names: Mapping[str, Made], targets: Targets, placed: Mapping[str, Target] | None = None) -> None:
        self.names = names
        self.placed = placed or {}
        self.targets = targets
        self.unplaced: set[int] = set()  # where stitches start whose place is not said
        self.freely: set[int] = set()  # where increases, and others whose place is not said, start
        self.in_all: PrintedCount | None = None  # how many the row's only stitches are said to be
        self.nothing_yet = False  # the row has only gone to where its yarn is joined
        self.all_in: set[int] = set()  # where stitches start that go "all in" a place, with those before them

    def chain(self, cur: Cursor) -> Chain | None:
        start = cur.at
        if cur.accept("ch"):
            if cur.word().start == cur.word(-1).end:
                cur.accept("-")
            if cur.next_is("of") and cur.sort_is(NUMBER, 1):
                cur.at += 1
            count = cur.number(9999)
            if count is not None and not cur.next_is("sp"):
                return Chain(count, cur.span_from(start))
        elif cur.sort_is(NUMBER) and cur.next_is("ch", ahead=1) and not cur.next_is("sp", "-", ahead=2):
            count = cur.number(9999) or 1
            cur.at += 1
            return Chain(count, cur.span_from(start))
        cur.at = start
        return None

    @staticmethod
    def closes_picot(cur: Cursor) -> bool:
        """Steps over ``in 3rd ch from hook``, ``in first ch``, ``in last st made`` behind a slip stitch that closes a picot."""
        ways = (
            *(("ch", "fromhook"), ("first", "ch"), ("last", "st", "made"), ("topof", "last", "st", "made")),
            *(("same", "st"), ("same", "place"), ("st", "at", "baseof", "ch"), ("baseof", "ch"), ("same", "sc"), ("same", "dc")),
            *(("last", "sc", "made"), ("topof", "last", "sc", "made"), ("last", "dc", "made"), ("topof", "last", "dc", "made")),
        )
        start = cur.at
        if cur.accept("in"):
            cur.ordinal()
            for way in ways:
                if all(cur.next_is(text, ahead=ahead) for ahead, text in enumerate(way)):
                    cur.at += len(way)
                    return True
        cur.at = start
        return False

    def together_in_words(self, cur: Cursor, start: int) -> list[Instruction] | None:
        """``3 ch together with sc``; None (and nothing taken) if it is something else."""
        back = cur.at
        if cur.accept("next") and (over := cur.number()) and over > 1:
            kind = WHOLE_STITCH if cur.accept("st") else cur.stitch()
            if kind and cur.accept("tog", "together") and cur.next_is(*BREAKS, "and", "", "*", ")", "]", "twice", "toend"):
                return self._together(cur, Made((f"{kind}{over}tog",)), over, 1, start)
        cur.at = back
        count = cur.number() if cur.sort_is(NUMBER) and cur.next_is("ch", "st", ahead=1) else None
        worded = self._worded_together(cur, count) if count else None
        if worded is None:
            cur.at = back
            return None
        return self._together(cur, Made((f"{worded[0]}{worded[1]}tog",)), worded[1], 1, start)

    def phrase(self, cur: Cursor, start: int) -> list[Instruction]:
        sized = self.targets.places.names_a_size(cur)
        count = cur.number()
        if cur.accept("-") and not sized:
            raise NotUnderstoodError(cur.span_from(start))
        count = None if sized else count
        word = cur.word()
        if word.sort == MANY:
            cur.at += 1
            made = Made((word.text,) * word.value)
            return [work for _ in range(count or 1) for work in self.work(cur, made, start, 1)]
        if (worded := self._worded_together(cur, count)) is not None:
            return self._together(cur, Made((f"{worded[0]}{worded[1]}tog",)), worded[1], 1, start)
        if word.sort == STITCH and count and count > 1 and cur.next_is("tog", "together", ahead=1):
            cur.at += 2
            return self._together(cur, Made((f"{word.text}{count}tog",)), count, 1, start)
        if word.sort == TOGETHER:
            made = Made((cur.stitch() or "",))
            return self._together(cur, made, word.value, count or 1, start)
        dashed = cur.next_is("-", ahead=1) and cur.next_is("inc", "dec", ahead=2)
        if word.sort == STITCH and (dashed or cur.next_is("inc", "dec", ahead=1)):
            cur.at += 3 if dashed else 2
            if cur.next_is("dec", ahead=-1):
                return self._together(cur, Made((word.text + "2tog",)), 2, count or 1, start)
            return self.work(cur, Made((word.text,) * 2), start, count or 1)
        if word.sort == STITCH and (over := self._next_together(cur)):
            return self._together(cur, Made((f"{word.text}{over}tog",)), over, 1, start)
        if word.text in ("inc", "dec") and word.text in self.names:
            cur.at += 1
            return self.work(cur, self.names[word.text], start, count or 1)
        if cur.accept("dec"):
            self._one_of_it(cur)
            return self._together(cur, Made((WHOLE_STITCH + "2tog",)), 2, count or 1, start)
        if cur.accept("inc"):
            self._one_of_it(cur)
            return self.work(cur, Made((WHOLE_STITCH,) * 2), start, count or 1)
        made_one = self._one(cur, count)
        if made_one is None:
            foreign = next((terms for terms, kinds in FOREIGN.items() if word.text in kinds), None)
            cur.at = start
            says = f"the rows are read in {foreign} terms, which have no such stitch" if foreign else ""
            raise NotUnderstoodError(Span(word.start, word.end), says)
        return self.work(cur, made_one, start, 0 if word.sort == STITCH and count is None else count or 1)

    @staticmethod
    def _one_of_it(cur: Cursor) -> None:
        """Steps over ``1``, ``1 st`` or ``1 sc`` behind an increase or decrease."""
        if cur.sort_is(NUMBER) and cur.word().value == 1 and not cur.next_is("times", "more", ahead=1):
            cur.at += 1
            if not cur.accept("st") and cur.sort_is(STITCH):
                cur.at += 1

    def _worded_together(self, cur: Cursor, count: int | None) -> tuple[str, int] | None:
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
    def _next_together(cur: Cursor) -> int:
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

    def _one(self, cur: Cursor, count: int | None) -> Made | None:
        """One stitch or named group of stitches, not yet so many times."""
        kind = cur.stitch()
        if kind is not None:
            if cur.accept("-"):
                pass
            name = next((name for name in ONE_STITCH_NAMES if cur.accept(name)), None)
            return Made((name or kind,))
        text = cur.word().text
        if text in self.names:
            cur.at += 1
            return self.names[text]
        if text in ONE_STITCH_NAMES:
            cur.at += 1
            return Made((text,))
        if text in GROUP_NAMES:
            raise cur.fail(f"“{text}” is not described in these rows; write, for example, “{text} = 5 dc in same st”")
        return None

    def work(self, cur: Cursor, made: Made, start: int, count: int = 0) -> list[Instruction]:
        """``made`` with what says where it goes. ``count``: so many of it (0: one, and not said)."""
        if made.name == NO_PLACE:
            return [Work(Made(made.items), Next(ANY_STITCH, 0), cur.span_from(start))]
        if cur.next_is("each") and cur.next_is("in", ahead=1):
            cur.at += 1  # "all in"
            self.all_in.add(cur.words[start].start)
        if not count and cur.sort_is(NUMBER) and cur.next_is("in", ahead=1):
            count = cur.number() or 1  # "sc 2 in next st"
        if not count and cur.next_is("twice") and cur.next_is("in", ahead=1):
            cur.at += 1
            count = 2
        around = cur.next_is("next", "each", "same", "first", "last", "st", "ch", ahead=1) or cur.sort_is(STITCH, 1)
        around = around or cur.next_is("skipped", "sk", ahead=2)
        across = cur.next_is("toend") and (cur.next_is("next", "first", "last", ahead=1) or cur.sort_is(NUMBER, 1))
        if cur.accept("in") or (cur.next_is("around") and around) or across:
            if across:
                cur.at += 1
            cur.accept("around")
            cur.accept("of")
            if cur.next_is("toend", "around", "tolast"):
                return self.works(cur, made, start, Each(ANY_STITCH, self.targets.until(cur) or ToEnd()))
            return self.works(cur, Made(made.items * (count or 1), made.name), start, self.targets.target(cur))
        if cur.next_is("next", "each", "everyother"):
            return self.works(cur, Made(made.items * (count or 1), made.name), start, self.targets.target(cur))
        if made.name in self.placed and count < 2 and cur.next_is(*BREAKS, "", "and", "*", "**", ")", "]", "join"):
            return [Work(made, self.placed[made.name], cur.span_from(start))]
        if count > 1 and self.targets.loop_is_ring and self._along_an_edge(cur):
            cur.skip_clause("turn", "join")
            return [Work(Made(made.items * count), Ring(), cur.span_from(start))]
        self.freely.add(cur.words[start].start)
        if cur.next_is("toend", "around") and count > 1 and made.items != ("picot",):
            return self._so_many_across(cur, made, count, start)
        if cur.next_is("toend", "around", "tolast", "to"):
            return self.works(cur, made, start, Each(ANY_STITCH, self.targets.until(cur) or ToEnd()))
        said = WHOLE_STITCH in made.items
        if not count and cur.sort_is(NUMBER) and not cur.next_is("times", "more", ahead=1) and not cur.sort_is(STITCH, 1):
            said = True
            count = cur.number() or 1
            cur.accept("st")
        times = self.targets.times(cur)
        count = (count or 1) * (times.count if times else 1)
        if made.items == ("picot",):
            return [Work(made, Next(ANY_STITCH, 0), cur.span_from(start))]
        if not said:
            self.unplaced.add(cur.words[start].start)
        return self.works(cur, made, start, Next(ANY_STITCH, count))

    def _so_many_across(self, cur: Cursor, made: Made, count: int, start: int) -> list[Instruction]:
        """``20 sc across``: that many in all; two or three could be as many in each."""
        cur.at += 1
        if count < LEAST_IN_ALL:
            raise NotUnderstoodError(cur.span_from(start), "it is not said whether so many go in each, or in all")
        if any(isinstance(item, Work | Repeat) for item in self.targets.items):
            return self.works(cur, made, start, Next(ANY_STITCH, count))
        self.in_all = PrintedCount((count,), ANY_STITCH, cur.span_from(start))
        return self.works(cur, made, start, Each(ANY_STITCH, ToEnd()))

    @staticmethod
    def _along_an_edge(cur: Cursor) -> bool:
        """Whether ``44 sc evenly around armhole opening`` goes on, which picks stitches up along an edge."""
        what = cur.word(1)
        known = ("to", "tolast", "join", "turn", "and", "leave", "with")
        return cur.next_is("toend", "around") and what.sort == OTHER and what.text.isalpha() and what.text not in known

    def works(self, cur: Cursor, made: Made, start: int, where: Target | Each) -> list[Instruction]:
        """One instruction a target: ``dc in 4th ch from hook and in each ch across`` has two."""
        found: list[Instruction] = []
        while True:
            span = cur.span_from(start)
            if isinstance(where, Each):
                found.append(self._for_each(cur, Work(made, Next(where.wanted), span), where, start))
            else:
                found.append(Work(made, where, span))
            steps = ("next", "each", "same", "last", "first")
            if cur.next_is("and") and cur.next_is("toend", "around", ahead=1):
                cur.at += 1  # "sc in 2nd ch from hook and across"
                until = self.targets.until(cur) or ToEnd()
                return [*found, Repeat((Work(made, Next(ANY_STITCH), cur.span_from(start)),), until, cur.span_from(start))]
            moves = made.items == ("sl st",) and cur.next_is("and") and cur.next_is("ch", "corner", "sp", ahead=1)
            moves = moves and (not cur.next_is("ch", ahead=1) or cur.next_is("-", "sp", ahead=2))
            if not (moves or (cur.next_is("and") and cur.next_is("in", *steps, ahead=1))):
                return found
            start = cur.at + 1
            cur.at += 1
            cur.accept("in")
            where = self.targets.target(cur)

    def _for_each(self, cur: Cursor, work: Work, where: Each, start: int) -> Repeat:
        """``sc in each sc across``; with ``and 2 sc in each ch-2 sp`` behind it, whichever comes next."""
        works, until = [work], where.until
        if where.nth > 1:
            kinds = set(work.made.items)
            if len(kinds) > 1 or len(work.made.items) < 2:
                raise NotUnderstoodError(cur.span_from(start), "say what is worked into the others")
            plain = Work(Made((*kinds,)), Next(where.wanted, where.nth - 1), work.span)
            return Repeat((plain, work), until, cur.span_from(start))
        while not where.said and cur.next_is("and"):
            back = cur.at
            cur.at += 1
            other = self._other_for_each(cur)
            if other is None:
                cur.at = back
                break
            made, where = other
            works.append(Work(made, Next(where.wanted), cur.span_from(back + 1)))
            until = where.until
        span = cur.span_from(start)
        if len(works) > 1:
            works = [each for several in works for each in by_kind(several)]
        return Repeat((work if len(works) == 1 else Either(tuple(works), span),), until, span)

    def _other_for_each(self, cur: Cursor) -> tuple[Made, Each] | None:
        try:
            if cur.word().text in CLOSING and (close := cur.closing()) is not None:
                made = self.made(cur.inside(cur.at + 1, close))
                cur.at = close + 1
            else:
                items = self._made_part(cur)
                made = Made(tuple(items)) if items else None
        except NotUnderstoodError:
            return None
        if made is None or not (cur.accept("in") and cur.next_is("each")):
            return None
        where = self.targets.target(cur)
        return (made, where) if isinstance(where, Each) else None

    def _together(self, cur: Cursor, made: Made, over: int, count: int, start: int) -> list[Instruction]:
        """``sc2tog``, ``dc3tog over next 3 sts``, ``sc2tog across``."""
        where: Target | Each = Next(ANY_STITCH, over)
        if not cur.next_is("over", "in", "next", "last", "first"):
            self.freely.add(cur.words[start].start)
        if cur.next_is("toend", "around") and not cur.next_is("next", ahead=1):
            where = Each(ANY_STITCH, self.targets.until(cur) or ToEnd())
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
        times = self.targets.times(cur)
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

    def made(self, cur: Cursor) -> Made | None:
        """``2 dc, ch 2, 2 dc`` or ``[dc, ch 1] 3 times, dc`` to the last word; None if it is something else."""
        items: list[str] = []
        try:
            while cur.more():
                if cur.accept(",", "and", "+"):
                    continue
                one = self._made_part(cur)
                if one is None:
                    return None
                items += one
        except NotUnderstoodError:
            return None
        return Made(tuple(items)) if 0 < len(items) <= LARGEST else None

    def made_once(self, cur: Cursor) -> Made | None:
        """``2 sc``, ``shell``: what comes next, with no word of where it goes."""
        items = self._made_part(cur)
        return Made(tuple(items)) if items else None

    def _made_part(self, cur: Cursor) -> list[str] | None:
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            inner = self.made(cur.inside(cur.at + 1, close))
            cur.at = close + 1
            times = self.targets.times(cur)
            return list(inner.items) * times.count if inner and times else None
        chain = self.chain(cur)
        if chain is not None:
            start = cur.at
            cur.accept(",")
            if cur.accept("slst") and self.closes_picot(cur):
                return ["picot"]
            cur.at = start
            return ["ch"] * chain.count
        sized = self.targets.places.names_a_size(cur)
        count = cur.number()
        if sized:
            cur.accept("-")
            count = 1
        one = self._one(cur, count)
        return None if one is None else list(one.items) * (count or 1)
