"""What a text says that its first chains count as: ``(counts as dc and ch 2)``, ``ch 1 at start of row is never a st``."""

from dataclasses import dataclass

from logbook.craft.rows.cursor import Cursor, NotUnderstoodError
from logbook.craft.rows.instructions import Span
from logbook.craft.rows.places import HEIGHTS
from logbook.craft.rows.word import NUMBER, STITCH, Word

_CHAINS = ("ch", "begch", "tch")
_VERBS = ("counts", "=", "is", "are", "makes", "be")
_DENIALS = ("not", "no", "nothing")
_ALWAYS = {"throughout", "always", "each", "later", "unless", "anywhere", "all", "any", "whole"}
_AROUND = {
    *_CHAINS, *_VERBS, *_DENIALS, *_ALWAYS, "sk", "skipped", "-", ":", ",", "first", "beg", "beginning", "start",
    "starting", "at", "of", "row", "around", "in", "this", "these", "those", "same", "it", "its", "which", "will",
    "your", "to", "begin", "turn", "here", "and", "or", "stated", "otherwise", "only", "as", "for", "st", "sts",
    "height", "side", "note", "notes", "section", "pattern", "follows", "that", "base", "foundation", "you", "edge",
    "!", "neither", "reckoned", "with", "ending", "whole", "1st", "unworked", "times", "ever", "included", "next", "on", "just",
    "being", "be", "topof",
    "one", "also", "“", "”", '"', "last", "slst", "from", "but", "when", "they", "any", "way", "join", "again",
}  # fmt: skip
"""Words that may stand around what is said; with any other it is something else."""
_OF_CHAINS = {
    *_CHAINS, "skipped", "sk", "unworked", "these", "first", "your", "beg", "-", "of", "row", "same", "will", "at", "beginning",
    "start",
}  # fmt: skip
"""Words that may stand around chains that are one stitch."""


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
    whole, cur = cur, _without_kind_of_row(cur)
    if cur is not whole:
        of_row = said_to_count(cur)
        whole.at = whole.at if of_row is None else len(whole.words)
        return of_row
    if cur.words[-1:] and cur.words[-1].text == "." and cur.more():
        cur = cur.inside(cur.at, len(cur.words) - 1)
    words = cur.words[cur.at :]
    while words and words[0].text in ("your", "for", "as"):
        words = words[1:]
        if words and (words[0].text == "first" or words[0].sort in (NUMBER, STITCH)):
            said = _counted_as(cur, 0)
            if said is not None:
                start, cur.at = cur.at, len(cur.words)
                return SaidToCount(*said, 0, False, cur.span_from(start))
    return _without_verb(cur, words) or _with_verb(cur, words)


def _without_verb(cur: Cursor, words: tuple[Word, ...]) -> SaidToCount | None:
    """``first dc``, ``first 3 ch = 1 dc``, ``counting the skipped chs as a dc``."""
    texts = [word.text for word in words]
    first = texts[:1] in (["first"], ["1st"]) and texts[2:3] != ["in"] and len(words) > 1 and words[1].sort == STITCH
    if first and (texts[2:] == ["made"] or set(texts[2:]) <= _AROUND):
        start, cur.at = cur.at, len(cur.words)
        return SaidToCount(words[1].text, 0, 0, False, 0, False, cur.span_from(start))  # "ch 3 (first dc)"
    if (stands := _stands_for(cur, words)) is not None:
        return stands
    if texts[:1] == ["counts"] and "as" in texts[2:]:
        about = texts.index("as")
        if {*_CHAINS} & set(texts[1:about]):
            return said_to_count(Cursor((*words[1:about], words[0], *words[about:]), words[-1].end))
    return None


def _with_verb(cur: Cursor, words: tuple[Word, ...]) -> SaidToCount | None:
    """``counts as dc and ch 2``, ``beg ch-3 does not count as a st``."""
    texts = [word.text for word in words]
    verb = next((at for at, text in enumerate(texts) if text in _VERBS), -1)
    denied = next((at for at, text in enumerate(texts) if text in _DENIALS), -1)
    if verb < 0 and denied < 0:
        return None
    ahead = min(at for at in (verb, denied) if at >= 0)
    if any(text not in _AROUND and word.sort != NUMBER for text, word in zip(texts[:ahead], words, strict=False)):
        return None
    named = any(text in (*_CHAINS, "skipped", "sk", "this", "same", "these", "it") for text in texts[:ahead])
    if texts[ahead] not in ("counts", "not") and not (named or ahead == 0):
        return None
    if texts[ahead] == "=" and (words[ahead + 1 : ahead + 2] and words[ahead + 1].sort == NUMBER and words[ahead + 1].value != 1):
        return None  # a count
    said = _denied(cur, texts) if denied >= 0 else _counted_as(cur, verb)
    if said is None:
        return None
    stitch, chains, over, throughout = said
    of, skipped = _spoken_of(cur, cur.at, ahead)
    start, cur.at = cur.at, len(cur.words)
    return SaidToCount(stitch, chains, over, throughout or bool(_ALWAYS & set(texts[:ahead])), of, skipped, cur.span_from(start))


def _without_kind_of_row(cur: Cursor) -> Cursor:
    """``at start of a dc row`` without its stitch."""
    words = cur.words[cur.at :]
    of_row = [
        at
        for at, word in enumerate(words)
        if word.sort == STITCH and [each.text for each in words[at + 1 : at + 2]] in (["row"], ["around"])
    ]
    if not of_row or words[of_row[0] - 1].text not in ("of", "in", "at", "each", "all", "any", "on"):
        return cur
    return Cursor(tuple(word for at, word in enumerate(words) if at not in of_row), cur.word(len(words)).start)


def counted_by_parts(cur: Cursor, chains: int) -> SaidToCount | None:
    """``(1 dc + 1 ch)`` beside a row's first chains; None if they are not so many."""
    start = cur.at
    try:
        stitch, spare, over = _counted(cur)
    except NotUnderstoodError:
        stitch, spare, over = "", 0, 0
    if stitch and spare and not over and not cur.more() and 0 <= chains - spare - HEIGHTS.get(stitch, 0) + 1 <= 2:
        return SaidToCount(stitch, spare, 0, False, 0, False, cur.span_from(start))
    cur.at = start
    return None


def one_stitch(cur: Cursor, chains: int) -> SaidToCount | None:
    """``(dc)``, ``(1 dc)`` beside a row's first chains; None if they are not as high."""
    start = cur.at
    cur.at += cur.sort_is(NUMBER) and cur.word().value == 1
    kind = cur.stitch()
    if kind and not cur.more() and HEIGHTS.get(kind, 0) in (chains, chains + 1):
        return SaidToCount(kind, 0, 0, False, 0, False, cur.span_from(start))
    cur.at = start
    return None


def _stands_for(cur: Cursor, words: tuple[Word, ...]) -> SaidToCount | None:
    """``3 skipped chs form first dc``, ``first 3 ch = 1 dc``: chains, and the one stitch that they are."""
    at = next((at for at, word in enumerate(words) if word.sort == STITCH), 0)
    before = [word.text for word in words[:at]]
    named = {*_CHAINS} & set(before)
    own = before[-1:] == ["first"] or before[-2:] == ["your", "first"]
    known = all(word.sort == NUMBER or word.text in _OF_CHAINS for word in words[:at])
    if named and own and known and (lies := _over(words[at + 1 :])):
        start, (of, skipped) = cur.at, _spoken_of(cur, cur.at, at)
        chains = of - HEIGHTS.get(words[at].text, 0) - lies
        cur.at = len(cur.words)
        return SaidToCount(words[at].text, chains, lies, False, of, True, cur.span_from(start)) if chains > 0 else None
    if not (named and own and known) or any(word.text not in ("made", "of", "row", "around", "edge") for word in words[at + 1 :]):
        return None
    start, (of, skipped) = cur.at, _spoken_of(cur, cur.at, at)
    cur.at = len(cur.words)
    return SaidToCount(words[at].text, 0, 0, False, of, skipped or "unworked" in before, cur.span_from(start))


def _over(words: tuple[Word, ...]) -> int:
    """Over how many chains the first space lies: ``, the first space and the 2 chains beneath it``; 0 if it is something else."""
    texts = [word.text for word in words if word.text not in (",", "and", "first", "it", "to")]
    number = next((word.value for word in words if word.sort == NUMBER), 0)
    shape = [text for text in texts if not text.isdigit() and text not in ("one", "two", "three", "four")]
    return number if shape in (["sp", "ch", below] for below in ("beneath", "under", "below", "underneath")) else 0


def _spoken_of(cur: Cursor, start: int, ahead: int) -> tuple[int, bool]:
    """(how many chains are spoken of, whether of those skipped at the hook)"""
    words = cur.words[start : start + ahead]
    of = 0
    for at, word in enumerate(words):
        if word.text in (*_CHAINS, "skipped", "sk"):
            beside = [*words[max(at - 1, 0) : at], *words[at + 1 : at + 3]]
            of = of or next((each.value for each in beside if each.sort == NUMBER), 0)
    return of, any(word.text in ("skipped", "sk") for word in words)


def _denied(cur: Cursor, texts: list[str]) -> tuple[str, int, int, bool] | None:
    words = cur.words[cur.at :]
    if any(text not in _AROUND and word.sort not in (NUMBER, STITCH) for text, word in zip(texts, words, strict=True)):
        return None
    counted = {"included", "counts", "st", "height"} & set(texts) or any(word.sort == STITCH for word in words)
    first_stitch = next((at for at, word in enumerate(words) if word.sort == STITCH), len(words))
    spoken = min(at for at, text in enumerate(texts) if text in (*_VERBS, *_DENIALS))
    if not counted or first_stitch < spoken or _goes_to_next(texts):
        return None
    return "", 0, 0, bool(_ALWAYS & set(texts))


def _goes_to_next(texts: list[str]) -> bool:
    return any(text == "next" and texts[at + 1 : at + 2] not in (["row"], ["around"]) for at, text in enumerate(texts))


def _counted_as(cur: Cursor, verb: int) -> tuple[str, int, int, bool] | None:
    inside = cur.inside(cur.at + verb + 1, len(cur.words))
    marked = cur.words[cur.at + verb].text
    while inside.accept("always", "also", "each", ":"):
        pass
    if marked == "counts" and [word.text for word in inside.words[inside.at :]] in (["it"], ["same", "st"]):
        return "st", 0, 0, False  # "sk first st (ch 3 replaces it)"
    if not inside.accept("as", "for") and marked == "counts" and not inside.next_is("first", "1st"):
        return None
    if marked == "=" and (inside.next_is("ch") or any(word.text == "=" for word in inside.words)):
        return None  # "ch = chain, sc = single crochet"
    stitch, chains, over = _counted(inside)
    if inside.next_is("on", "over", "at") and not any(
        word.text in ("counts", "next", "each", "in", *_CHAINS, *_DENIALS) for word in inside.words[inside.at :]
    ):
        rest = tuple(word for word in inside.words[inside.at :] if word.text in _ALWAYS)  # "on the tr just reached"
    else:
        rest = inside.words[inside.at :]
    if not stitch or any(word.text not in _AROUND and word.sort not in (NUMBER, STITCH) for word in rest):
        return None
    return stitch, chains, over, bool(_ALWAYS & {word.text for word in (*rest, *inside.words[: inside.at])})


def _counted(cur: Cursor) -> tuple[str, int, int]:
    """The stitch, the chains after it, and the skipped foundation chains beside it, in whatever order they stand."""
    stitch, chains, over, parted = "", 0, 0, False
    while True:
        while cur.accept("first", "your", "one", "1st", "edge", "beg"):
            pass
        count = cur.number()
        if cur.accept("base", "foundation") or (cur.next_is("skipped", "sk") and cur.next_is("base", "foundation", ahead=1)):
            cur.accept("skipped", "sk")
            cur.accept("base", "foundation")
            cur.accept("ch", "st")
            over += count or 1
        elif cur.accept("skipped", "sk"):
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
        if not (cur.next_is("and", ",", "+") and _goes_on(cur)):
            break
        cur.at += 1
    if cur.accept("over"):
        over = cur.number() or 1
        cur.accept("skipped", "sk")
        cur.accept("ch", "st")
    return stitch, chains, over


def _goes_on(cur: Cursor) -> bool:
    """Whether behind ``and`` more is named that the chains stand for."""
    ahead = 2 if cur.word(1).text == "first" else 1
    word = cur.word(ahead)
    if word.text in ("first", "1st", "base", "edge"):
        return True
    return word.sort in (NUMBER, STITCH) or word.text in ("ch", "skipped", "sk", "st")
