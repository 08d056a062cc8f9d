"""What stands in brackets beside the work: what chains count as, the count at a row's end, the side of the cloth."""

from collections.abc import Callable
from dataclasses import dataclass

from logbook.craft.rows.cursor import Cursor
from logbook.craft.rows.instructions import ANY_STITCH, PrintedCount, Span
from logbook.craft.rows.targets import Targets
from logbook.craft.rows.words import NUMBER, OTHER, STITCH, TOO_MANY

_SAID_BESIDE = ("with", "including", "incl", "counts")


@dataclass(frozen=True, slots=True)
class SaidToCount:
    """What the text says that chains count as. ``stitch`` "": nothing; ``st``: a stitch, whichever is made next.

    ``of``: the chains it speaks of (0: the ones it stands beside). ``skipped``: it speaks of those skipped at the hook.
    """

    stitch: str
    chains: int
    over: int
    throughout: bool
    of: int
    skipped: bool
    span: Span


def said_to_count(cur: Cursor) -> SaidToCount | None:
    """Reads ``counts as dc and ch 2 here and throughout``, ``beg ch-3 does not count as a st``; None if it is something else."""
    texts = [word.text for word in cur.words[cur.at :]]
    if "counts" not in texts:
        return None
    start, said = cur.at, texts.index("counts")
    before = cur.words[cur.at : cur.at + said]
    known = {
        "not",
        "ch",
        "begch",
        "tch",
        "skipped",
        "sk",
        "-",
        "first",
        "beg",
        "side",
        "note",
        "notes",
        ":",
        "this",
        "these",
        "those",
        "will",
        "your",
        "always",
    }
    if any(word.text not in known and word.sort != NUMBER for word in before):
        return None
    numbers = [word.value for word in before if word.sort == NUMBER]
    of = numbers[0] if numbers else 0
    skipped = any(word.text in ("skipped", "sk") for word in before)
    denied = any(word.text == "not" for word in before)
    cur.at += said + 1
    stitch, chains, over = _counted(cur)
    if cur.accept("not", "no"):
        denied = True
        cur.accept("as")
        cur.accept("st")
    throughout = cur.accept("throughout")
    if cur.more() or not (stitch or denied):
        cur.at = start
        return None
    return SaidToCount("" if denied else stitch, 0 if denied else chains, over, throughout, of, skipped, cur.span_from(start))


def _counted(cur: Cursor) -> tuple[str, int, int]:
    """The stitch, the chains after it, and the skipped foundation chains beside it, in whatever order they stand."""
    stitch, chains, over, parted = "", 0, 0, False
    if not cur.accept("as"):
        return stitch, chains, over
    while True:
        while cur.accept("first", "your", "one"):
            pass
        if cur.next_is("no", "nothing"):
            return stitch, chains, over
        count = cur.number()
        if cur.accept("skipped", "sk"):
            cur.accept("ch", "st")
            over += count or 1
        elif cur.accept("ch"):
            cur.accept("-")
            count = count or cur.number() or 1
            cur.accept("sp")
            if cur.accept("skipped", "sk"):
                over += count
            elif stitch and chains and not parted:
                over, chains, parted = over + chains, count, True  # "1 ch, 1 dc and 1 ch": the first is the one skipped below
            else:
                chains += count
                parted = bool(stitch)
        elif (kind := cur.stitch()) is not None or cur.accept("st"):
            stitch = kind or stitch or "st"
            cur.accept("st")
        else:
            raise cur.fail()
        if not cur.accept("and", ",", "+"):
            break
    if cur.accept("over"):
        over = cur.number() or 1
        cur.accept("skipped", "sk")
        cur.accept("ch", "st")
    return stitch, chains, over


def printed_counts(cur: Cursor, targets: Targets) -> tuple[PrintedCount, ...]:
    """Reads ``34 dc, 33 ch-1 sps`` or ``67 (67, 79, 85) sts`` to the last word; () if it is something else."""
    found: list[PrintedCount] = []
    start = cur.at
    while cur.more():
        first = cur.at
        numbers = sizes(cur)
        wanted = targets.places.wanted(cur) if numbers else None
        if wanted is not None and cur.accept("on"):
            cur.accept("hook")
            wanted = ANY_STITCH  # loops on the hook
        if numbers and not found and not cur.more():
            wanted = wanted or ANY_STITCH
        if wanted is None or wanted.kind in ("gap", "either"):
            cur.at = start
            return ()
        found.append(PrintedCount(numbers, wanted, cur.span_from(first)))
        for word in ("ending", "in", "total", "at", "row", "around", "."):
            cur.accept(word)
        if not cur.accept(",", "and", ";") and not cur.next_is(*_SAID_BESIDE):
            break
        if cur.next_is(*_SAID_BESIDE):
            cur.at = len(cur.words)  # "with the ch-3 as the first", "including tch"
    if cur.more():
        cur.at = start
        return ()
    return tuple(found)


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
    if not texts or texts[0] in ("side", "color", "colour") or texts[-1] in ("made", "side"):
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
