"""Repeats told by stars: ``*…; rep from * across``, ``*…* 6 times``, and what the last repeat does instead."""

from collections.abc import Callable
from dataclasses import replace

from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import Instruction, Last, Next, Repeat, Span, Times, ToEnd, Until, Work
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.words import NUMBER, STITCH

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

    def close(self, cur: Cursor, items: list[Instruction], stars: Stars) -> None:
        """``*…* across``, ``*…* 6 times``; alone the second star only ends what is repeated later."""
        start, star = cur.at, cur.word().text
        cur.at += 1
        until = self.targets.until(cur)
        if until is None:
            if star in self._closed:
                raise cur.fail()
            self._closed.add(star)
            return
        self._put(cur, items, stars, star, until, start, f"nothing stands between the two {star}")

    def repeat(self, cur: Cursor, items: list[Instruction], stars: Stars) -> None:
        """``rep from * across``, ``rep between *s 3 more times``."""
        start = cur.at
        cur.at += 1
        cur.accept("from", "between")
        star = cur.word().text
        if star not in STARS:
            raise cur.fail("“repeat” needs the * it goes back to")
        cur.at += 1
        cur.accept("s")
        self._closed.discard(star)
        if star not in stars:
            raise NotUnderstoodError(cur.span_from(start), f"there is no {star} to repeat from")
        if cur.accept("to") and not cur.accept(*STARS):
            cur.at -= 1
        until = self._until_of_star(cur)
        self._put(cur, items, stars, star, until, start, f"nothing stands between the {star} and its repeat")

    def _put(self, cur: Cursor, items: list[Instruction], stars: Stars, star: str, until: Until, start: int, empty: str) -> None:
        """Makes what stands since the star a repeat; ``empty`` is what is wrong where that is nothing."""
        begin = stars.pop(star)
        body = tuple(items[begin:])
        if not body:
            raise NotUnderstoodError(cur.span_from(start), empty)
        last = self._ending(cur, body, begin, stars)
        items[begin:] = [Repeat(body, until, cur.span_from(start)), *last]

    def _until_of_star(self, cur: Cursor) -> Until:
        more = cur.sort_is(NUMBER) and cur.next_is("more", ahead=1)
        more = more or (cur.next_is("once", "twice") and cur.next_is("more", ahead=1))
        if cur.word().sizes and not cur.word().value:  # "0 (1, 2) more times"
            cur.skip_to(BREAKS)
            return Times(1)
        until = self.targets.until(cur)
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
        if cur.next_is("last") and cur.sort_is(STITCH, 1) and cur.next_is("in", ahead=2) and isinstance(body[-1], Work):
            cur.at += 1  # "working last dc in top of tch"
            instead = self.phrase(cur, [])
            same = bool(instead) and isinstance(instead[0], Work) and body[-1].made.items[-1:] == instead[0].made.items
            if not same:
                raise NotUnderstoodError(cur.span_from(start))
            return [*body[:-1], *instead]
        if not cur.accept("ending"):
            cur.at = start
            return []
        last = cur.accept("last")
        if last:
            cur.accept("rep")
        if cur.accept("at", "in") or cur.word().text in STARS:
            star = cur.word().text
            if star not in stars:
                raise cur.fail("the place where the last repeat ends is not marked")
            cur.at += 1
            return list(body[: stars.pop(star) - begin])
        cur.accept("with")
        instead = self.phrase(cur, [])
        ends = body[-1]
        alike = isinstance(ends, Work) and bool(instead) and isinstance(instead[0], Work) and _takes_its_place(ends, instead[0])
        return [*body[:-1], *instead] if last or alike else list(instead)

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
        return list(body[:-count])


def _takes_its_place(ends: Work, instead: Work) -> bool:
    """Whether a row's end is the repeat's own last stitch made elsewhere, or less of it in the last such place."""
    if ends.made == instead.made:
        return True
    own, last = ends.into, instead.into
    same_place = isinstance(own, Next) and isinstance(last, Last) and own.wanted == last.wanted and own.wanted.kind != "st"
    return same_place and set(ends.made.items) == set(instead.made.items)
