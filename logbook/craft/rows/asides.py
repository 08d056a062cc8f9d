"""What stands in brackets beside the work: the count at a row's end, the side of the cloth, names."""

from collections.abc import Callable
from dataclasses import replace

from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import ANY_STITCH, PrintedCount, Wanted
from logbook.craft.rows.places import HEIGHTS, plain
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.word import NUMBER, OTHER, STITCH
from logbook.craft.rows.words import TOO_MANY

LEADS_TO_COUNT = (
    "total", "of", ":", "you", "should", "will", "now", "have", "there", "are", "st", "counts", "for", "leaving", "this",
    "same", "that", "gives", "giving", "be", "altogether", "leaves", "=", "-",
)  # fmt: skip
"""Words that a count may begin with: ``you should have 24 sts``, ``stitch count: 24``."""
_SAID_BESIDE = ("with", "including", "incl", "counts")
_MOVES = ("in", "next", "each", "rep", "times", "sk", "to", "*", "(", "[", "turn", "tog")
"""Words that stand in work and in no count."""
_AFTER_COUNT = (
    "ending", "in", "total", "at", "row", "around", ".", "-", "rem", "left", "made", "now", "all", "on", "side", "=", "/",
    "altogether", "each",
)  # fmt: skip


def counts_in_brackets(cur: Cursor, targets: Targets) -> tuple[PrintedCount, ...]:
    """``25 sc, 1 ch-5 sp for thumb``: the counts, as far as the things that they count are known."""
    start = cur.at
    counts = printed_counts(cur, targets)
    if counts or any(word.text in _MOVES for word in cur.words[start:]):
        return counts
    end = next((at for at, word in enumerate(cur.words) if at > start + 1 and word.text in (",", "and", ";", "+")), 0)
    found = printed_counts(cur.inside(start, end), targets) if end else ()
    whole = next((count for count in found if count.wanted.kind != "sp"), None)
    later = [word.text for word in cur.words[end + 1 :]]
    if (
        whole is None
        or whole.wanted.kind == "ch"
        or not later
        or not ({"sp", "ch"} & set(later) or cur.words[end + 1].sort == NUMBER)
    ):
        return ()
    if cur.words[start + 1].sort != STITCH and cur.words[start + 1].text != "st" and not cur.words[start].sizes:
        return ()
    cur.at = len(cur.words)
    return found


def printed_counts(cur: Cursor, targets: Targets) -> tuple[PrintedCount, ...]:
    """Reads ``34 dc, 33 ch-1 sps`` or ``67 (67, 79, 85) sts`` to the last word; () if it is something else."""
    found: list[PrintedCount] = []
    start, uncounted = cur.at, False
    while cur.accept(*LEADS_TO_COUNT):
        pass
    while cur.more():
        first = cur.at
        numbers = sizes(cur)
        if numbers and cur.next_is("times") and (cur.sort_is(NUMBER, 1) or cur.next_is("ch", ahead=1)):
            cur.at += 1  # "3 x 3-ch sps"
        unknown = _unknown_noun(cur) if numbers else False
        if unknown and (not cur.more() or cur.next_is(",", "and", ";", "+")):
            cur.accept(",", "and", ";", "+")
            uncounted = True
            continue
        wanted = _counted_thing(cur, targets) if numbers else None
        if numbers and not found and not cur.more():
            wanted = wanted or ANY_STITCH
        if wanted is None or wanted.kind in ("gap", "either"):
            cur.at = start
            return ()
        found.append(PrintedCount(numbers, wanted, cur.span_from(first)))
        if not _goes_on(cur):
            break
    found += _counts_behind(cur, targets) if found else ()
    if cur.next_is("after", "at") and cur.next_is("row", "around", ahead=1):
        cur.at = len(cur.words)  # "92 dc after Rnd 5"
    if cur.more():
        cur.at = start
        return ()
    if len(found) > 1 or uncounted:
        found = [count for count in found if count.wanted.name != "corner"]
    return _told_apart(found)


def _counted_thing(cur: Cursor, targets: Targets) -> Wanted | None:
    """``dc``, ``ch-1 sps``, ``loops on hook``, ``corner sps``; None if no such thing comes next."""
    wanted = targets.places.wanted(cur)
    if wanted is not None and cur.accept("on"):
        cur.accept("hook")
        wanted = ANY_STITCH  # loops on the hook
    if wanted is not None and wanted.kind == "sp" and cur.accept("corner"):
        wanted = replace(wanted, name="corner")
    return wanted


def _goes_on(cur: Cursor) -> bool:
    """Steps over what may stand behind a count, such as ``at end of Row 5, and``; whether another count may follow."""
    if cur.next_is("at") and cur.next_is("ending", ahead=1):
        cur.skip_to((",", ";", "(", ")"))
    while cur.accept(*_AFTER_COUNT):
        pass
    joined = cur.accept(",", "and", ";", "+", "with")
    if cur.next_is(*_SAID_BESIDE, "without"):
        cur.at = len(cur.words)  # "with the ch-3 as the first", "including tch"
        return True
    return joined


def _counts_behind(cur: Cursor, targets: Targets) -> tuple[PrintedCount, ...]:
    """``(6 blocks)`` of ``19 dc (6 blocks)``: the counts in brackets at the end; steps over what isn't work."""
    if not (cur.next_is("(", "[") and cur.closing() == len(cur.words) - 1):
        return ()
    inside = cur.inside(cur.at + 1, len(cur.words) - 1)
    counts = printed_counts(inside, targets)
    if counts or not any(word.text in _MOVES[:-3] for word in inside.words):
        cur.at = len(cur.words)
    return counts


def _told_apart(found: list[PrintedCount]) -> tuple[PrintedCount, ...]:
    """The counts, each with what it leaves to the others beside it."""
    kinds = [count.wanted.kind for count in found]
    if any(plain(kind) != kind and plain(kind) in kinds for kind in kinds):
        return tuple(replace(count, exact=count.wanted.kind in HEIGHTS) for count in found)
    if "group" in kinds:
        return tuple(replace(count, beside_groups=count.wanted.kind in HEIGHTS) for count in found)
    return tuple(found)


_ADJECTIVES = ("underarm", "long", "small", "big", "open", "complete", "whole", "full", "total", "new", "outer", "inner")
_NOUNS = (
    *("petals", "petal", "points", "point", "corners", "eyes", "rows", "scallops", "scallop", "leaves", "stars", "star"),
    *("blocks", "spokes", "tips"),
)
"""Things that a maker counts and a row does not tell apart: they are left unchecked, as any other noun is."""
_KNOWN = (
    "times",
    "sts",
    "chs",
    "counts",
    "is",
    "this",
    "across",
    "repeats",
    "less",
    "plus",
    "as",
    "rows",
    "rounds",
    "rnds",
    "bs",
    "fs",
)


def counts_other_things(cur: Cursor) -> bool:
    """Steps over ``12 scallops``."""
    start = cur.at
    if sizes(cur) and _unknown_noun(cur) and not cur.more():
        return True
    cur.at = start
    return False


def _unknown_noun(cur: Cursor) -> bool:
    """Steps over adjectives, and over a noun that can't be checked; whether there was one."""
    while cur.next_is(*_ADJECTIVES) and cur.word(1).text not in ("", ",", "and", ")"):
        cur.at += 1
    if cur.accept(*_NOUNS):
        return True
    word, after = cur.word(), cur.word(1)
    plural = word.sort == OTHER and word.text.isalpha() and word.text.endswith("s") and word.text not in _KNOWN
    if not plural or after.text not in ("", ",", "and", ";", "of"):
        return False
    cur.at += 1
    if cur.accept("of"):
        while cur.more() and not cur.next_is(",", "and", ";", "("):
            cur.at += 1
    return True


def sizes(cur: Cursor) -> tuple[int, ...]:
    """``67 (67, 79, 85)`` → all four; () if no number comes next."""
    sized = cur.word().sizes
    first = cur.number(TOO_MANY)
    if first is None:
        return ()
    if sized:
        return sized
    numbers = [first]
    if cur.next_is("(", "[") and cur.sort_is(NUMBER, 1) and (close := cur.closing()) is not None:
        inside = cur.inside(cur.at + 1, close)
        while (number := inside.number(TOO_MANY)) is not None:
            numbers.append(number)
            inside.accept(",", ":", ";")
        if inside.more():
            return ()
        cur.at = close + 1
    return tuple(numbers)


def is_remark(cur: Cursor) -> bool:
    """Whether the words say nothing that moves the hand: the side of the cloth, "first dc made", a colour."""
    texts = [word.text for word in cur.words[cur.at :]]
    if not texts or texts[0] in ("side", "color", "colour") or texts[-1] in ("made", "side", "decreased", "increased"):
        return True
    known = {"st", "sp", "ch", "in", "each", "next", "rep", "sk", "inc", "dec", "counts"}
    plain = all(word.sort in (NUMBER, OTHER) and word.text not in known for word in cur.words[cur.at :])
    return plain and any(text.isalpha() for text in texts)


def name_made(cur: Cursor, is_name: Callable[[str], bool]) -> str:
    """``V-st`` in ``V-st made``: the name that the pattern gives to what was just made; "" if none."""
    texts = [word.text for word in cur.words[cur.at :]]
    if len(texts) in (2, 3) and texts[-1] == "made" and is_name(texts[-2]) and cur.word(len(texts) - 2).sort != STITCH:
        return texts[-2]
    return ""
