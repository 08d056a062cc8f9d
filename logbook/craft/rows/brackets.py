"""Brackets: ``(dc, ch 1, dc) in next sp``, ``[sc, inc] 6 times``, ``6 times: (sc, inc)``, and what is only said in them."""

from collections.abc import Callable
from dataclasses import replace

from logbook.craft.rows.chain_sayings import said_to_count
from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.doings import Doings
from logbook.craft.rows.instructions import ANY_STITCH, Instruction, Made, Next, Repeat, Span, Times, ToEnd, Work
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.said_beside import SaidBeside, only_moves
from logbook.craft.rows.stitches import Stitches
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER, STITCH


class Brackets:
    """Reads them. ``sequence`` reads all phrases of a cursor."""

    def __init__(
        self,
        row: RowWords,
        targets: Targets,
        stitches: Stitches,
        said: SaidBeside,
        doings: Doings,
        sequence: Callable[[Cursor, list[Instruction]], list[Instruction]],
    ) -> None:
        self.row = row
        self.targets = targets
        self.stitches = stitches
        self.said = said
        self.doings = doings
        self.sequence = sequence

    def bracket(self, cur: Cursor, items: list[Instruction]) -> list[Instruction]:
        """What stands in brackets next, with where it goes or how often; nothing if it is only said."""
        start, close = cur.at, cur.closing()
        if close is None:
            raise NotUnderstoodError(Span(cur.word().start, cur.words[-1].end), "this bracket is never closed")
        inside = self._without_saying(cur.inside(cur.at + 1, close))
        cur.at = close + 1
        if len(inside.words) == 1 and inside.next_is("inc", "dec") and cur.next_is("in", "next", "each", "over"):
            cur.words = (*cur.words[:start], *inside.words, *cur.words[close + 1 :])
            cur.at = start
            return self.stitches.phrase(cur, start)
        made = self.stitches.groups.made(inside)
        inside.at = 0
        if cur.sort_is(NUMBER) and cur.next_is("more", ahead=1):
            cur.skip_to(BREAKS)
            raise NotUnderstoodError(cur.span_from(start), "say how many times in all")
        times = self.targets.how_far.times(cur) or self._starred_times(cur)
        if made is not None and times is None and cur.next_is("in") and only_moves(items):
            begun = self.doings.begun(cur, inside, start)
            if begun is not None:
                return begun
        if made is None and cur.next_is("in") and inside.accept("slst") and inside.accept(","):
            return self.doings.led_to(cur, inside, start)
        if made is not None and (cur.next_is("in") or (cur.next_is("each") and cur.next_is("in", ahead=1))):
            repeated = Made(made.items * (times.count if times else 1), made.name)
            return self.stitches.work(cur, repeated, start)
        if made == Made(("picot",)):
            cur.accept("for")
            cur.accept("picot")
            return [Work(made, Next(ANY_STITCH, 0), cur.span_from(start))]
        repeats = cur.next_is("toend", "around", "to", "tolast", "rep")
        if times is None and self.said.aside(inside, items, repeats):
            return []
        ahead = cur.at
        cur.accept(",", ";")
        until = times or (
            self.targets.how_far.until(cur) if not cur.accept("rep") else self.targets.how_far.until(cur) or ToEnd()
        )
        if until is None:
            cur.at = ahead
            raise NotUnderstoodError(cur.span_from(start), "it is not said where this goes, or how often")
        body = self.sequence(inside, [])
        if not body:
            raise NotUnderstoodError(cur.span_from(start))
        return [Repeat(tuple(body), until, cur.span_from(start))]

    def _without_saying(self, inside: Cursor) -> Cursor:
        """``ch 4 (counts as tr), 2 tr, ch 2, 3 tr`` without what its chains count as, which is kept."""
        chain = self.stitches.groups.chain(inside)
        at, close = inside.at, inside.closing() if inside.word().text in CLOSING else None
        inside.at = 0
        said = said_to_count(inside.inside(at + 1, close)) if chain is not None and close is not None else None
        if chain is None or close is None or said is None:
            return inside
        self.row.said[chain.span.start] = said
        return Cursor((*inside.words[:at], *inside.words[close + 1 :]), inside.after)

    @staticmethod
    def _starred_times(cur: Cursor) -> Times | None:
        """``(sc, inc) *6``."""
        if cur.next_is("*") and cur.sort_is(NUMBER, 1) and cur.next_is(*BREAKS, "(", "[", "", ahead=2):
            cur.at += 1
            return Times(cur.number() or 1)
        return None

    def told_before(self, cur: Cursor) -> Repeat | None:
        """``6 times: (sc, inc)``, ``6 x [sc, inc]``, ``rep the following 6 times: sc, inc``; None if it is something else."""
        start = cur.at
        if cur.accept("rep"):
            cur.accept("next", "this")
        counted = cur.sort_is(NUMBER) and cur.next_is("times", ahead=1) and cur.next_is(":", ",", "(", "[", "{", ahead=2)
        if not counted:
            cur.at = start
            return None
        count = cur.number() or 1
        cur.at += 1
        marked = cur.accept(":")
        cur.accept(",")
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            inside, cur.at = cur.inside(cur.at + 1, close), close + 1
            ends = cur.next_is("", "and", "toend", "around", *BREAKS, *CLOSING, "-", "turn", "join")
        else:
            begin = cur.at
            cur.skip_to((".", ";", "join", "turn"))
            inside, ends = cur.inside(begin, cur.at), marked
        body = self.sequence(inside, []) if ends else []
        if not body:
            cur.at = start
            return None
        return Repeat(tuple(body), Times(count), cur.span_from(start))


def unbracketed(cur: Cursor) -> Cursor:
    """``to end (last dc goes in top of tch)`` without the brackets: it is said of the work, not beside it."""
    words = list(cur.words)
    for at, word in enumerate(cur.words):
        if word.text not in CLOSING or not (cur.next_is("last", "ending", ahead=at + 1 - cur.at) and at + 4 < len(words)):
            continue
        cur.at, back = at, cur.at
        close, cur.at = cur.closing(), back
        inner = {each.text for each in cur.words[at + 2 : close]} if close else set()
        worked = cur.words[at + 2].sort == STITCH or cur.words[at + 2].text in ("one", "with", "by")
        if close and worked and {"in", "topof"} & inner and not {*CLOSING} & inner:
            words[at], words[close] = replace(word, text=","), replace(cur.words[close], text=",")
    return Cursor(tuple(words), cur.after)


def how_deep(cur: Cursor) -> int:
    """How deep brackets stand in brackets."""
    deepest = depth = 0
    for word in cur.words:
        depth += (word.text in CLOSING) - (word.text in CLOSING.values())
        deepest = max(deepest, depth)
    return deepest
