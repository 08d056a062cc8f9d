"""Phrases that are no work, or only end a row: colours, markers, tails, turning, joining, the stitches left, the count."""

from collections.abc import Sequence

from logbook.craft.rows.asides import LEADS_TO_COUNT, counts_other_things, printed_counts
from logbook.craft.rows.cursor import BREAKS, Cursor
from logbook.craft.rows.instructions import Chain, Instruction
from logbook.craft.rows.place_kinds import GROUP_NAMES, ONE_STITCH_NAMES
from logbook.craft.rows.row_words import RowWords
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER, ORDINAL, STITCH, TOGETHER, Word

_OTHER_WORK = {
    "fasten", "cut", "change", "changing", "place", "mark", "move", "stuff", "weave", "being", "taking", "take", "care",
    "careful", "pull", "rotate", "rotating", "switch", "switching", "carry", "carrying", "drop", "dropping", "pick",
    "insert", "tie", "secure", "sew", "remove", "begin", "continue", "finish", "tighten", "close", "closing", "use",
    "drawup", "stop", "using", "rejoin", "return", "slip", "adjust", "pm", "push", "pushing", "keep", "keeping", "ensure",
    "ensuring", "sure", "hold", "holding", "marking", "moving", "wrap", "wind", "tightening", "removing", "stuffing", "cutting",
    "noting", "note", "leaving", "check", "weaving", "twist", "securing", "position", "attach", "break", "breaking",
}  # fmt: skip
"""Words that a phrase begins with that is no work."""
_LEFT = ("next", "rest", "them", "rem", "last", "tch", "unworked", "st", "these", "those", "same", "other", "it")


class Beside:
    """Takes such phrases off a row, and notes in ``row`` what they say."""

    def __init__(self, row: RowWords, targets: Targets) -> None:
        self.row = row
        self.targets = targets

    def takes(self, cur: Cursor, items: list[Instruction]) -> bool:
        """Whether what comes next was such a phrase; ``items``: what the row does before it."""
        return (
            self._turns(cur, items)
            or self._joins(cur, items)
            or self.leaves(cur)
            or self.rest_is_left(cur)
            or self._names_colour_or_side(cur)
            or self._counts_at_end(cur)
            or self._stands_beside(cur)
        )

    def _turns(self, cur: Cursor, items: list[Instruction]) -> bool:
        worked = any(not isinstance(item, Chain) for item in items)
        if cur.next_is("turn") and _has(cur, "otherside"):
            cur.skip_to(("otherside",))  # "turn to work along the other side of the chain"
            return True
        if cur.accept("turn"):
            cur.accept("here")
            self.row.turn_after = True if worked else self.row.turn_after
            self.row.turn_before = self.row.turn_before or not worked
            return True
        if cur.accept("noturn"):
            self.row.turn_after = False
            return True
        return False

    def _joins(self, cur: Cursor, items: list[Instruction]) -> bool:
        start = cur.at
        if not cur.accept("join"):
            return False
        worked = any(not isinstance(item, Chain) for item in items)
        self.row.joined_at = len(items) if worked else self.row.joined_at
        cur.skip_clause("turn", "noturn")
        clause = cur.words[start + 1 : cur.at]
        if worked:
            self.row.joins_to = joined_to(clause)
        elif any(word.sort == STITCH for word in clause) and not any(word.text == "slst" for word in clause):
            cur.at = start + 1 + next(index for index, word in enumerate(clause) if word.sort == STITCH)
        return True

    def leaves(self, cur: Cursor) -> bool:
        """``leaving last 4 sts unworked``."""
        start = cur.at
        if not (cur.next_is("leave") and (cur.next_is(*_LEFT, ahead=1) or cur.sort_is(NUMBER, 1))):
            return False
        cur.skip_clause("turn", "noturn")
        clause = cur.words[start : cur.at]
        if {word.text for word in clause} & {"tail", "long", "end", "cm", "inch", "inches", "mm", "m"}:
            cur.at = start
            return False
        self.row.leaves_rest = True
        texts = [word.text for word in clause]
        named = "last" in texts and "rem" not in texts
        self.row.leaves = next((word.value for word in clause if word.sort == NUMBER), int(named))
        return True

    def rest_is_left(self, cur: Cursor) -> bool:
        """``remaining 6 sc are left``, ``which is left``, ``let the other sts rest``."""
        start = cur.at
        named = cur.next_is("rem", "rest", "which", "let", "other", "centre")
        counted = (
            cur.sort_is(NUMBER)
            and cur.next_is("st", ahead=1)
            and cur.next_is("left", "rem", "unworked", "unused", "are", ahead=2)
        )
        told_not = cur.next_is("not", "ignoring", "ignore") and cur.next_is("other", "rem", "last", "these", "rest", ahead=1)
        if not (named or counted or told_not):
            return False
        cur.skip_clause("turn", "noturn")
        clause = cur.words[start : cur.at]
        texts = {word.text for word in clause[1:]}
        if not (told_not or {"left", "unworked", "unused", "rest"} & texts or {"not", "worked"} <= texts):
            cur.at = start
            return False
        self.row.leaves_rest = True
        said = next((word.value for word in clause if word.sort == NUMBER), 0)
        middle = cur.words[start].text == "centre" and cur.words[start + 1].sort != NUMBER
        self.row.leaves = sum(word.value for word in clause if word.sort == NUMBER) + 1 if middle else said
        return True

    def _names_colour_or_side(self, cur: Cursor) -> bool:
        if cur.next_is("fasten", "change") or (cur.next_is("with", "using") and _names_yarn(cur)):
            cur.at += 1
            while cur.more() and not (cur.next_is(*BREAKS) or begins_work(cur)):
                cur.at += 1
            return True
        if cur.accept("forward", "fwd"):
            cur.accept("pass")
            return True
        return cur.accept("side")

    def _stands_beside(self, cur: Cursor) -> bool:
        """Ends, tails, colours, markers; kept as a note."""
        start = cur.at
        if cur.next_is("return") and cur.next_is("pass", ":", "-", ahead=1):
            cur.at = len(cur.words)  # the way back of a two-pass row makes no stitch
        elif self._no_work_begins(cur):
            _skip_to_work(cur)
        else:
            return False
        if cur.at == start:
            cur.at += 1
        self.row.notes.append(cur.span_from(start))
        if any(word.sort in (STITCH, TOGETHER, NUMBER) for word in cur.words[start : cur.at]):
            self.row.unsure.append(cur.span_from(start))
        return True

    def _no_work_begins(self, cur: Cursor) -> bool:
        told_not = cur.next_is("not") and cur.word(1).text in _OTHER_WORK
        if cur.next_is("same") and cur.next_is("is", ahead=1) and cur.next_is("row", "around", ahead=2):
            return True  # "this is Round 1"
        if (
            cur.next_is("in", "on", "over")
            and cur.next_is("first", "next", ahead=1)
            and cur.sort_is(NUMBER, 2)
            and cur.next_is("st", ahead=3)
            and cur.next_is(":", ahead=4)
        ):
            self.row.leaves_rest = True
            return True  # "work over the first 8 sts only:"
        if cur.next_is(*_MAY_MAKE) and (_has_stitch(cur) or cur.next_is("with", "by", ahead=1)):
            return False
        if cur.next_is("placing", "put", "putting", "slip", "insert") and _has(cur, "marker", "markers", "pm"):
            return True
        if (
            cur.next_is("on", "for", "over")
            and cur.next_is("these", "same", ahead=1)
            and cur.sort_is(NUMBER, 2)
            and cur.next_is("st", ahead=3)
        ):
            return True  # "work on these 12 sts only"
        if cur.word().text in _OTHER_WORK or cur.next_is("nojoin") or told_not:
            return True
        at_end = cur.next_is("at") and cur.next_is("ending", ahead=1)
        return (cur.next_is("leave") and _has(cur, "tail")) or (
            at_end and _has(cur, "change", "changing", "fasten", "cut", "drop")
        )

    def says_beside(self, inside: Cursor) -> bool:
        """Whether what stands in brackets begins with a word of what is no work, and makes nothing."""
        return inside.word().text in _OTHER_WORK and not _has_stitch(inside)

    def _counts_at_end(self, cur: Cursor) -> bool:
        """``34 sts``, ``= 20 sts`` or ``73 sc`` behind the work, at the row's end or before it turns."""
        start = cur.at
        cur.accept("=")
        before = cur.word(-1).text if start else ""
        led = cur.at
        while start and cur.next_is(*LEADS_TO_COUNT):
            cur.at += 1
        led_to = cur.at > led and cur.sort_is(NUMBER)
        if not led_to:
            cur.at = led
        signed = led_to or before in ("-", "=", ":", "/")
        ended = before in (".", ";", "turn", "noturn", ")", "]", "toend", "around") or cur.word(-2).text in (
            "toend",
            "around",
            "st",
            ")",
        )
        if not (cur.sort_is(NUMBER) and (signed or (ended and before != "and") or cur.next_is("st", ahead=1)) and start):
            cur.at = start
            return False
        end = cur.at
        while end < len(cur.words) and cur.words[end].text not in (".", "turn", "join", "noturn"):
            end += 1
        if signed or ended:
            other = cur.inside(cur.at, end)
            if counts_other_things(other):
                cur.at = end
                self.row.notes.append(cur.span_from(start))
                return True
        counts = printed_counts(cur.inside(cur.at, end), self.targets)
        rest = {word.text for word in cur.words[end:]} - {".", "turn", "join", "noturn", ",", "with", "slst", "first", "in", "st"}
        if not counts or (not signed and rest and before not in (".", ";") and not cur.next_is("st", ahead=1)):
            cur.at = start
            return False
        self.row.counts = counts
        cur.at = end
        return True


_MAY_MAKE = ("insert", "begin", "finish", "keep", "keeping", "use", "using", "hold", "take", "return")
"""Words that a phrase begins with that may make something all the same."""


def _has_stitch(cur: Cursor) -> bool:
    rest = cur.inside(cur.at, len(cur.words))
    rest.skip_to(BREAKS)
    clause = cur.words[cur.at : cur.at + rest.at]
    return any(
        (word.sort == STITCH and following.text in ("in", "each", "next", "toend", "around")) or word.text == "each"
        for word, following in zip(clause, [*clause[1:], Word("", 0, 0)], strict=True)
    )


def _skip_to_work(cur: Cursor) -> None:
    """On to where the phrase ends, or ``and`` goes on with work."""
    while cur.more():
        cur.skip_to((*BREAKS, "otherside", "and"))
        if not cur.next_is("and"):
            return
        chain = (cur.next_is("ch", ahead=1) and cur.sort_is(NUMBER, 2)) or (cur.sort_is(NUMBER, 1) and cur.next_is("ch", ahead=2))
        ahead = 2 if cur.sort_is(NUMBER, 1) else 1
        stitch = cur.sort_is(STITCH, ahead) and cur.next_is("in", "each", "next", "toend", "around", ahead=ahead + 1)
        if chain or stitch or cur.next_is("sk", ahead=1):
            return
        cur.at += 1


def begins_work(cur: Cursor, ahead: int = 0) -> bool:
    """Whether so far ahead work begins: ``1 ch``, ``ch 3``, ``2 sc in``, ``sc in``."""
    if cur.next_is("ch", ahead=ahead):
        return cur.sort_is(NUMBER, ahead + 1)
    ahead += cur.sort_is(NUMBER, ahead)
    word = cur.word(ahead)
    return (word.text == "ch" and cur.sort_is(NUMBER, ahead - 1)) or (
        word.sort in (STITCH, TOGETHER) and cur.next_is("in", "each", "next", "over", "toend", "around", ahead=ahead + 1)
    )


def joined_to(words: Sequence[Word]) -> str:
    """Whether a round is joined to its first chains ("chain") or to its first stitch ("stitch"); "" if that is not said."""
    texts = [word.text for word in words]
    top = texts.index("topof") + 1 if "topof" in texts else len(texts)
    first = top + (texts[top : top + 1] == ["first"])
    if words[first : first + 1] and _is_stitch(words[first]):
        return "stitch"  # "to top of first sc"
    if any(text in ("topof", "begch", "tch") for text in texts) or any(
        texts[index] == "ch" and (index + 1 < len(texts) or words[index - 1].sort == ORDINAL or words[index - 1].sort == NUMBER)
        for index in range(1, len(texts))
    ):
        return "chain"
    return "stitch" if "first" in texts and any(_is_stitch(word) for word in words) else ""


def _is_stitch(word: Word) -> bool:
    return word.sort in (STITCH, TOGETHER) or word.text in (*ONE_STITCH_NAMES, *GROUP_NAMES)


def _has(cur: Cursor, *texts: str) -> bool:
    """Whether one of the words comes before the phrase ends."""
    rest = cur.inside(cur.at, len(cur.words))
    rest.skip_to(BREAKS)
    return any(word.text in texts for word in cur.words[cur.at : cur.at + rest.at])


def _names_yarn(cur: Cursor) -> bool:
    """Whether "with" names a colour: its letter, or nothing that is left of it ("with A" reads like an article), no stitch."""
    text = cur.word(1).text
    if text in ("color", "colour", "cc", "mc", "", *BREAKS) or (len(text) == 1 and text.isalpha()):
        return True
    rest = cur.inside(cur.at, len(cur.words))
    rest.skip_to(BREAKS)
    clause = cur.words[cur.at : cur.at + rest.at]
    return not any(word.sort in (STITCH, TOGETHER) or word.text in ("slst", "ch", "st") for word in clause)
