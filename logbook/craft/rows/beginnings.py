"""Where a row says that it begins: ``start with a magic ring``, ``starting in 2nd ch from hook``."""

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace

from logbook.craft.rows.cursor import BREAKS, CLOSING, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import ANY_STITCH, Chain, First, Next, Same, Skip, Wanted
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER, ORDINAL, OTHER, STITCH, Word

_PLACES = (
    "in", "next", "each", "same", "first", "last", "*", "**", "(", "[", "toend", "around", "join", "rejoin", "attach",
    "slst", "rep",
)  # fmt: skip
"""Words that a place or other work begins with: what comes later is not where the row begins."""


def from_nth(cur: Cursor) -> Cursor:
    """``dc in 2nd st``, ``from 3rd st on`` at a row's beginning: with the stitches before it skipped."""
    depth = 0
    words = cur.words
    for at, word in enumerate(words):
        depth += (word.text in CLOSING) - (word.text in CLOSING.values())
        if depth or word.text in CLOSING.values() or (word.text in CLOSING and _closes_later(words, at)):
            continue
        nth = at + 1 if words[at + 1 : at + 2] else at
        begins = word.text in ("from", "starting", "beginning", "begin", "beg", "start")
        nth += begins and words[nth].text in ("in", "with", "at", "from")
        if (
            (begins or word.text == "in")
            and words[nth].sort == ORDINAL
            and words[nth].value > 1
            and _is_stitch(words[nth + 1 : nth + 3])
        ):
            start = at
            while not begins and start and words[start - 1].sort in (STITCH, NUMBER):
                start -= 1
            place = words[start].start
            skipped = (
                ("sk", OTHER, 0),
                ("first", OTHER, 0),
                (str(words[nth].value - 1), NUMBER, words[nth].value - 1),
                ("st", OTHER, 0),
                (",", OTHER, 0),
            )
            skips = [Word(text, place, place, sort, value) for text, sort, value in skipped]
            rest = (
                words[nth + 2 :]
                if begins
                else (*words[start:nth], replace(words[nth], text="next", sort=OTHER), *words[nth + 1 :])
            )
            while begins and rest and rest[0].text in ("on", "onward", "onwards", ","):
                rest = rest[1:]
            return Cursor((*words[:start], *skips, *rest), words[-1].end)
        if word.text in _PLACES:
            break
    return cur


def _closes_later(words: Sequence[Word], at: int) -> bool:
    return CLOSING[words[at].text] in {word.text for word in words[at:]}


def _is_stitch(words: Sequence[Word]) -> bool:
    """Whether a stitch is named, and no part of something."""
    return (
        bool(words)
        and (words[0].text == "st" or words[0].sort == STITCH)
        and [word.text for word in words[1:]] not in (["of"], ["from"])
    )


class Beginnings:
    """Reads such phrases."""

    def __init__(self, row: RowWords, targets: Targets) -> None:
        self.row = row
        self.targets = targets

    @staticmethod
    def turning_chain(cur: Cursor) -> Chain | None:
        """``tch 3``, ``beg ch of 3``; None if no number of chains is told."""
        start = cur.at
        ahead = 2 if cur.next_is("of", "-", ahead=1) else 1
        if not cur.next_is("tch", "begch") or not cur.sort_is(NUMBER, ahead):
            return None
        cur.at += ahead
        return Chain(cur.number() or 1, cur.span_from(start))

    @staticmethod
    def at_ring(cur: Cursor) -> bool:
        """Steps over ``start with a magic ring``."""
        start = cur.at
        begins = cur.accept("begin", "beginning", "starting", "start")
        if begins and cur.accept("with", "in", "by") and cur.accept("ring") and cur.next_is(*BREAKS, "and", ""):
            return True
        cur.at = start
        return False

    def at_hook(self, cur: Cursor) -> Skip | None:
        """``starting in 2nd ch from hook``, ``beginning in 2nd sc``: what is before it is skipped; None if it is no such."""
        start = cur.at
        if cur.accept("starting", "beginning", "begin", "start", "beg"):
            cur.accept("with", "in", "at")
            which = cur.ordinal()
            if which is not None and cur.accept("ch") and (cur.accept("fromhook") or cur.next_is(*BREAKS, "")) and which > 1:
                return Skip(Wanted("ch"), which - 1, cur.span_from(start))
            if which is not None and which > 1 and _is_stitch(cur.words[cur.at : cur.at + 2]):
                self.targets.places.wanted(cur)
                if cur.next_is(*BREAKS, ""):
                    return Skip(ANY_STITCH, which - 1, cur.span_from(start), first=True)
        cur.at = start
        return None

    def where_begun(self, cur: Cursor) -> bool:
        """Steps over ``starting in same st as join``: where the row begins anyhow."""
        start = cur.at
        cur.at += 1
        if cur.accept("in", "with", "at"):
            cur.accept("joining", "join")
            where: object = None
            if cur.sort_is(ORDINAL) and cur.word().value == 1:
                cur.at += 1
                where = First(self.targets.places.wanted_or_any(cur))
                if cur.next_is("fromhook"):
                    where = None
            elif not cur.sort_is(ORDINAL):
                with suppress(NotUnderstoodError):
                    where = self.targets.target(cur)
            while cur.accept("as", "join", "joining", "slst", "at", "baseof", "ch", "-") or (
                cur.sort_is(NUMBER) and cur.next_is("-", ahead=-1)
            ):
                cur.at += 1 if cur.sort_is(NUMBER) else 0
            if isinstance(where, Same | First) or (isinstance(where, Next) and where.count == 1):
                self.row.notes.append(cur.span_from(start))
                return True
        cur.at = start
        return False
