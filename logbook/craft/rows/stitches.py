"""Stitches and where they go: ``2 dc in next st``, ``sc2tog``, ``(dc, ch 1, dc) in next sp``, ``shell in each st across``."""

from collections.abc import Mapping

from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    ANY_STITCH,
    Either,
    Instruction,
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
from logbook.craft.rows.stitch_groups import StitchGroups
from logbook.craft.rows.targets import Each, Targets
from logbook.craft.rows.together import Together
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
        self.all_in: set[int] = set()  # where stitches start that go "all in" a place, with those before them
        self.groups = StitchGroups(names, targets)
        self.together = Together(targets, self.freely)

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
        if (worded := self.together.worded(cur, count)) is not None:
            return self.together.work(cur, Made((f"{worded[0]}{worded[1]}tog",)), worded[1], 1, start)
        if word.sort == STITCH and count and count > 1 and cur.next_is("tog", "together", ahead=1):
            cur.at += 2
            return self.together.work(cur, Made((f"{word.text}{count}tog",)), count, 1, start)
        if word.sort == TOGETHER:
            made = Made((cur.stitch() or "",))
            return self.together.work(cur, made, word.value, count or 1, start)
        dashed = cur.next_is("-", ahead=1) and cur.next_is("inc", "dec", ahead=2)
        if word.sort == STITCH and (dashed or cur.next_is("inc", "dec", ahead=1)):
            cur.at += 3 if dashed else 2
            if cur.next_is("dec", ahead=-1):
                return self.together.work(cur, Made((word.text + "2tog",)), 2, count or 1, start)
            return self.work(cur, Made((word.text,) * 2), start, count or 1)
        if word.sort == STITCH and (over := self.together.next_places(cur)):
            return self.together.work(cur, Made((f"{word.text}{over}tog",)), over, 1, start)
        if word.text in ("inc", "dec") and word.text in self.names:
            cur.at += 1
            return self.work(cur, self.names[word.text], start, count or 1)
        if cur.accept("dec"):
            self._one_of_it(cur)
            return self.together.work(cur, Made((WHOLE_STITCH + "2tog",)), 2, count or 1, start)
        if cur.accept("inc"):
            self._one_of_it(cur)
            return self.work(cur, Made((WHOLE_STITCH,) * 2), start, count or 1)
        made_one = self.groups.one(cur)
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

    def work(self, cur: Cursor, made: Made, start: int, count: int = 0) -> list[Instruction]:
        """``made`` with what says where it goes. ``count``: so many of it (0: one, and not said)."""
        if made.name == NO_PLACE:
            return [Work(Made(made.items), Next(ANY_STITCH, 0), cur.span_from(start))]
        if cur.next_is("each") and cur.next_is("in", ahead=1):
            cur.at += 1  # "all in"
            self.all_in.add(cur.words[start].start)
        count = count or self._count_behind(cur)
        led = self._leads_to_place(cur)
        if led and cur.next_is("toend", "around", "tolast"):
            return self.works(cur, made, start, Each(ANY_STITCH, self.targets.how_far.until(cur) or ToEnd()))
        if led or cur.next_is("next", "each", "everyother"):
            return self.works(cur, Made(made.items * (count or 1), made.name), start, self.targets.target(cur))
        if made.name in self.placed and count < 2 and cur.next_is(*BREAKS, "", "and", "*", "**", ")", "]", "join"):
            return [Work(made, self.placed[made.name], cur.span_from(start))]
        if count > 1 and self.targets.loop_is_ring and self._along_an_edge(cur):
            cur.skip_clause("turn", "join")
            return [Work(Made(made.items * count), Ring(), cur.span_from(start))]
        return self._placed_freely(cur, made, start, count)

    @staticmethod
    def _count_behind(cur: Cursor) -> int:
        """``sc 2 in next st``, ``sc twice in next st``: how many; 0 if that is not said there."""
        if cur.sort_is(NUMBER) and cur.next_is("in", ahead=1):
            return cur.number() or 1
        if cur.next_is("twice") and cur.next_is("in", ahead=1):
            cur.at += 1
            return 2
        return 0

    @staticmethod
    def _leads_to_place(cur: Cursor) -> bool:
        """Steps over ``in``, ``around`` or ``across`` before the name of a place."""
        around = cur.next_is("next", "each", "same", "first", "last", "st", "ch", ahead=1) or cur.sort_is(STITCH, 1)
        around = around or cur.next_is("skipped", "sk", ahead=2)
        across = cur.next_is("toend") and (cur.next_is("next", "first", "last", ahead=1) or cur.sort_is(NUMBER, 1))
        if not (cur.accept("in") or (cur.next_is("around") and around) or across):
            return False
        cur.at += across
        cur.accept("around")
        cur.accept("of")
        return True

    def _placed_freely(self, cur: Cursor, made: Made, start: int, count: int) -> list[Instruction]:
        """``made`` with no word of its place: ``20 sc across``, ``sc to last 2 sts``, ``sc 5``, ``5 sc``."""
        self.freely.add(cur.words[start].start)
        if cur.next_is("toend", "around") and count > 1 and made.items != ("picot",):
            return self._so_many_across(cur, made, count, start)
        if cur.next_is("toend", "around", "tolast", "to"):
            return self.works(cur, made, start, Each(ANY_STITCH, self.targets.how_far.until(cur) or ToEnd()))
        said = WHOLE_STITCH in made.items
        if not count and cur.sort_is(NUMBER) and not cur.next_is("times", "more", ahead=1) and not cur.sort_is(STITCH, 1):
            said = True
            count = cur.number() or 1
            cur.accept("st")
        times = self.targets.how_far.times(cur)
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
                until = self.targets.how_far.until(cur) or ToEnd()
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
                made = self.groups.made(cur.inside(cur.at + 1, close))
                cur.at = close + 1
            else:
                items = self.groups.made_part(cur)
                made = Made(tuple(items)) if items else None
        except NotUnderstoodError:
            return None
        if made is None or not (cur.accept("in") and cur.next_is("each")):
            return None
        where = self.targets.target(cur)
        return (made, where) if isinstance(where, Each) else None
