"""Repeats told by stars: ``*…; rep from * across``, ``*…* 6 times``, and what the last repeat does instead."""

from collections.abc import Callable
from dataclasses import replace

from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import (
    Chain,
    First,
    FromHook,
    Instruction,
    Made,
    Next,
    Repeat,
    Same,
    Span,
    Times,
    ToEnd,
    Until,
    Work,
)
from logbook.craft.rows.last_repeat import leads_to_last, takes_its_place, under_chains
from logbook.craft.rows.targets import Each, Targets
from logbook.craft.rows.word import NUMBER

STARS = ("*", "**", "***", "†")
Stars = dict[str, int]  # a star → how many instructions come before it


class StarRepeats:
    """Reads them. ``phrase`` reads one phrase, ``sequence`` all phrases of a cursor."""

    def __init__(
        self,
        targets: Targets,
        phrase: Callable[[Cursor, list[Instruction]], list[Instruction]],
        sequence: Callable[[Cursor, list[Instruction]], list[Instruction]],
    ) -> None:
        self.targets = targets
        self.phrase = phrase
        self.sequence = sequence
        self._closed: set[str] = set()
        self._fewer = False

    def close(self, cur: Cursor, items: list[Instruction], stars: Stars) -> None:
        """``*…* across``, ``*…* 6 times``; alone the second star only ends what is repeated later."""
        start, star = cur.at, cur.word().text
        cur.at += 1
        if cur.next_is(",") and cur.next_is("toend", "around", ahead=1):
            cur.at += 1
        until = self.targets.how_far.until(cur) or self._said_to_repeat(cur)
        if until is None:
            if star in self._closed:
                raise cur.fail()
            self._closed.add(star)
            return
        self._put(cur, items, stars, star, until, start, f"there is nothing between the two {star}")

    def _said_to_repeat(self, cur: Cursor) -> Until | None:
        """``*…* rep 6 times``, ``*…*, repeat around``; None if another phrase follows."""
        start = cur.at
        cur.accept(",", ";")
        if cur.accept("rep") and not cur.next_is("from", "between", *STARS):
            return self.targets.how_far.until(cur) or ToEnd()
        cur.at = start
        return None

    def repeat(self, cur: Cursor, items: list[Instruction], stars: Stars) -> None:
        """``rep from * across``, ``rep between *s 3 more times``."""
        start = cur.at
        cur.at += 1
        named = cur.accept("from", "between")
        if not named and not [star for star in stars if star != "**"] and self._all_again(cur, items, start):
            return
        if cur.accept("asterisk", "asterisks", "star", "stars") and len(stars) == 1 and cur.word().text not in STARS:
            self._again(cur, items, stars, next(iter(stars)), start)
            return
        star = self._star(cur, start, stars)
        if cur.accept("to", "and", "-") and not cur.accept(*STARS):
            cur.at -= 1
        self._again(cur, items, stars, star, start)

    def _all_again(self, cur: Cursor, items: list[Instruction], start: int) -> bool:
        """``sc, inc, repeat 6 times``: all since the row's first chains; False if it is something else."""
        back = cur.at
        begin = next((at for at, item in enumerate(items) if not (isinstance(item, Chain) or _slips(item))), len(items))
        body = items[begin:]
        told = (
            cur.next_is("toend", "around", "to", "tolast")
            or cur.sort_is(NUMBER)
            or cur.next_is("once", "twice", "times", "total")
        )
        if not body or not told or any(isinstance(item, Repeat) for item in body):
            return False
        if isinstance(first := body[0], Work) and isinstance(first.into, First | FromHook | Same):
            return False
        until = self._until_of_star(cur)
        if until == ToEnd() and cur.word(-1).text not in ("toend", "around"):
            cur.at = back
            return False
        items[begin:] = [Repeat(tuple(body), until, cur.span_from(start))]
        return True

    def _again(self, cur: Cursor, items: list[Instruction], stars: Stars, star: str, start: int) -> None:
        self._closed.discard(star)
        until = self._until_of_star(cur)
        self._put(cur, items, stars, star, until, start, f"there is nothing between the {star} and its repeat")

    @staticmethod
    def _star(cur: Cursor, start: int, stars: Stars) -> str:
        """The star that a repeat goes back to; the only one where none is named."""
        star = cur.word().text
        if star not in STARS:
            only = [each for each in stars if each != "**"]
            if len(only) != 1 or cur.next_is("", *BREAKS):
                raise cur.fail("“repeat” needs the * it goes back to")
            return only[0]
        cur.at += 1
        cur.accept("s")
        if star not in stars:
            raise NotUnderstoodError(cur.span_from(start), f"there is no {star} to repeat from")
        return star

    def _put(self, cur: Cursor, items: list[Instruction], stars: Stars, star: str, until: Until, start: int, empty: str) -> None:
        """Makes what stands since the star a repeat; ``empty`` is what is wrong where that is nothing."""
        begin = stars.pop(star)
        body = tuple(items[begin:])
        if not body:
            raise NotUnderstoodError(cur.span_from(start), empty)
        self._fewer = False
        last = self._ending(cur, body, begin, stars)
        if self._fewer and isinstance(until, Times):
            until = Times(until.count - 1, max(until.or_else - 1, 0))  # what is done instead is the last of them
        items[begin:] = [Repeat(body, until, cur.span_from(start)), *last] if until != Times(0) else last

    def _until_of_star(self, cur: Cursor) -> Until:
        more = cur.sort_is(NUMBER) and cur.next_is("more", ahead=1)
        more = more or (cur.next_is("once", "twice") and cur.next_is("more", ahead=1))
        if cur.word().sizes and not cur.word().value:  # "0 (1, 2) more times"
            cur.skip_to(BREAKS)
            return Times(1)
        until = self.targets.how_far.until(cur)
        if isinstance(until, Times):
            more = cur.accept("more") or more
            return Times(until.count + 1, 0 if more else until.count)
        return until or ToEnd()

    def _ending(self, cur: Cursor, body: tuple[Instruction, ...], begin: int, stars: Stars) -> list[Instruction]:
        """``ending last rep at **``, ``ending last rep with sc in last st``, ``omitting last ch 1``: what the last repeat does
        instead.
        """
        start = cur.at
        cur.accept(",", ";")
        cur.accept("and")
        if cur.accept("omit"):
            return self._omitting(cur, body)
        if (elsewhere := self._last_stitch_elsewhere(cur, body, start)) is not None:
            return elsewhere
        cur.accept("but")
        if cur.next_is("sk") and (skips := self._skips_last(cur)):
            self._fewer = True
            return [*body[:-1], *skips]
        if cur.accept("ending_with"):
            self._fewer = True
            return [*body[:-1], *self.phrase(cur, [])]
        if (part := self._once_more_to(cur, stars)) is not None:
            return list(body[: part - begin])
        names_last = self._says_it_ends(cur)
        if names_last is None:
            cur.at = start
            return []
        if cur.accept("at", "in") or cur.word().text in STARS:
            return list(body[: self._marked(cur, stars) - begin])
        cur.accept("with")
        return self._instead(cur, body, names_last)

    def _last_stitch_elsewhere(self, cur: Cursor, body: tuple[Instruction, ...], start: int) -> list[Instruction] | None:
        """``working last dc in tch``: the repeat with its last stitch made there; None if it is something else."""
        ends = body[-1]
        if not isinstance(ends, Work) or not (leads_to_last(cur, ends.made.items) or leads_to_last(cur, ends.made.items[-1:])):
            return None
        cur.accept("in")
        where = self.targets.target(cur)
        if isinstance(where, Each):
            raise NotUnderstoodError(cur.span_from(start))
        counted = any(word.sort == NUMBER for word in cur.words[start : min(start + 4, cur.at)])
        many = len(ends.made.items) if counted else 1
        last = Work(Made(ends.made.items[-many:]), where, cur.span_from(start))
        if isinstance(ends.into, Next) and ends.into.count > 1 and not counted:
            others = replace(ends, into=replace(ends.into, count=ends.into.count - 1))
            return [*body[:-1], others, last]
        return [*body[:-1], last]

    @staticmethod
    def _says_it_ends(cur: Cursor) -> bool | None:
        """Steps over ``ending last rep``, ``last rep from * to **``; whether the last repeat is named, None if no end is."""
        last = cur.next_is("last") and cur.next_is("rep", ahead=1)
        cur.at += 2 if last else 0
        if not cur.accept("ending", "finish") and not (last and cur.accept("from", "is")):
            return None
        if last and cur.word().text in STARS and cur.next_is("to", ahead=1):
            cur.at += 2
        last = cur.accept("last") or last
        if last:
            cur.accept("rep")
        return last

    def _instead(self, cur: Cursor, body: tuple[Instruction, ...], names_last: bool) -> list[Instruction]:
        """``sc in last st`` behind ``ending with``: the last repeat with that at its end, or that behind all of them."""
        ends = body[-1]
        instead = self.phrase(cur, [])
        if cur.next_is("instead"):
            cur.skip_to(BREAKS)
            names_last = True
        alike = isinstance(ends, Work) and bool(instead) and isinstance(instead[0], Work) and takes_its_place(ends, instead[0])
        self._fewer = names_last or alike
        if self._fewer:
            return [*body[:-1], *instead]
        if cur.next_is(*BREAKS, "join", "slst", "and", "") and (under := under_chains(body, instead)) is not None:
            return [*instead, replace(under, if_left=True)]
        return list(instead)

    def _marked(self, cur: Cursor, stars: Stars) -> int:
        """Where the mark stands that the last repeat goes to: ``at **``."""
        star = cur.word().text
        if star not in stars:
            raise cur.fail("the place where the last repeat ends is not marked")
        cur.at += 1
        if cur.accept("on", "in") and cur.accept("last"):
            cur.accept("rep")
        self._fewer = True
        return stars.pop(star)

    def _skips_last(self, cur: Cursor) -> list[Instruction]:
        """``skipping 1 sc at end of last rep``; [] if it is something else."""
        start = cur.at
        skips = self.phrase(cur, [])
        cur.accept("at", "in")
        cur.accept("ending")
        cur.accept("of")
        if cur.next_is("last") and cur.next_is("rep", ahead=1):
            cur.at += 2
            return skips
        cur.at = start
        return []

    @staticmethod
    def _once_more_to(cur: Cursor, stars: Stars) -> int | None:
        """``then from * to ** once more``: how many instructions stand before that; None if it is something else."""
        start = cur.at
        cur.accept("and")
        cur.accept("rep")
        if cur.accept("from") and cur.word().text in STARS and cur.next_is("to", "-", ahead=1) and cur.word(2).text in stars:
            mark = cur.word(2).text
            cur.at += 3
            cur.accept("once")
            cur.accept("more", "again")
            return stars.pop(mark)
        cur.at = start
        return None

    def _omitting(self, cur: Cursor, body: tuple[Instruction, ...]) -> list[Instruction]:
        start = cur.at
        cur.accept("last")
        close = cur.closing() if cur.word().text in CLOSING else None
        if close is not None:
            left_out = self.sequence(cur.inside(cur.at + 1, close), [])
            cur.at = close + 1
        else:
            left_out = self.phrase(cur, [])
        cur.skip_to((",", ";", "."))
        count = len(left_out)
        same = [replace(item, span=Span(0, 0)) for item in left_out] == [replace(i, span=Span(0, 0)) for i in body[-count:]]
        if not same or count >= len(body):
            raise NotUnderstoodError(cur.span_from(start), "what is left out is not the end of the repeat")
        self._fewer = True
        return list(body[:-count])


def _slips(item: Instruction) -> bool:
    return isinstance(item, Work) and item.made.items == ("sl st",)
