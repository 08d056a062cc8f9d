"""Stitches made in one place, with no word of which: ``2 dc, ch 2, 2 dc``, ``shell``, ``5 dc``; chains and picots among them."""

from collections.abc import Mapping

from logbook.craft.rows.cursor import CLOSING, LARGEST, Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import Chain, Made
from logbook.craft.rows.place_kinds import GROUP_NAMES, ONE_STITCH_NAMES
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER


class StitchGroups:
    """Reads them. ``names``: stitches made in one place that the pattern has given a name."""

    def __init__(self, names: Mapping[str, Made], targets: Targets) -> None:
        self.names = names
        self.targets = targets

    def chain(self, cur: Cursor) -> Chain | None:
        """``ch 3``, ``3 ch``; None (and nothing taken) if it is something else."""
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

    def one(self, cur: Cursor) -> Made | None:
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

    def made(self, cur: Cursor) -> Made | None:
        """``2 dc, ch 2, 2 dc`` or ``[dc, ch 1] 3 times, dc`` to the last word; None if it is something else."""
        items: list[str] = []
        try:
            while cur.more():
                if cur.accept(",", "and", "+"):
                    continue
                one = self.made_part(cur)
                if one is None:
                    return None
                items += one
        except NotUnderstoodError:
            return None
        return Made(tuple(items)) if 0 < len(items) <= LARGEST else None

    def made_once(self, cur: Cursor) -> Made | None:
        """``2 sc``, ``shell``: what comes next, with no word of where it goes."""
        items = self.made_part(cur)
        return Made(tuple(items)) if items else None

    def made_part(self, cur: Cursor) -> list[str] | None:
        """The stitches of what comes next: ``2 dc``, ``ch 1``, ``[dc, ch 1] 3 times``; None if it is something else."""
        if cur.word().text in CLOSING and (close := cur.closing()) is not None:
            inner = self.made(cur.inside(cur.at + 1, close))
            cur.at = close + 1
            times = self.targets.how_far.times(cur)
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
        one = self.one(cur)
        return None if one is None else list(one.items) * (count or 1)
