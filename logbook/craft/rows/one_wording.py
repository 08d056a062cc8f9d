"""Words that say one thing in many ways made alike before they are read: ``on next dc``, ``rep from +``, ``loosely``."""

import itertools
from dataclasses import replace

from logbook.craft.rows.word import NUMBER, OTHER, STITCH, Word

_INTO = ("on", "onto", "over", "inside", "under", "upon", "through", "across")
_PLACES_FOLLOW = ("next", "following", "foll", "each", "every", "first", "last", "same", "top", "all", "both")
_ROWS = ("row", "rnd", "round", "rows", "rnds", "rounds", "way", "along", "across")
_MARKS = ("#", "@", "~", "+", "§", "^", "¶", "◊", "‡", "¤")
_HARMLESS = frozenset(
    (
        *("loosely", "firmly", "carefully", "tightly", "neatly", "gently", "lightly", "slightly", "simply", "exactly", "finally"),
        *("lastly", "firstly", "secondly", "thirdly", "closely", "securely", "snugly", "fairly", "quickly", "slowly", "normally"),
        *("usually", "regularly", "continuously", "consecutively", "immediately", "subsequently", "directly", "really"),
        *("actually", "initially", "fully", "completely", "wholly", "entirely", "thoroughly", "cleanly", "smoothly"),
        *("accordingly", "additionally", "invisibly", "temporarily", "deliberately", "purposely", "intentionally", "equally"),
        *("consistently", "comfortably", "properly", "correctly", "rather", "quite"),
    )
)
"""Words that say how a stitch is worked and change nothing that is counted; any other of their kind is not passed over."""
_LOOPS = ("loop", "loops", "space", "spaces", "sp", "sps", "arch", "arches")
_CHAINS = ("chain", "chains", "ch", "chs")
_SAME: tuple[tuple[tuple[tuple[str, ...], ...], tuple[str, ...]], ...] = (
    ((("taken", "regarded", "treated"), ("as",)), ("counts", "as")),
    ((("pass", "passing"), ("over",)), ("sk",)),
    ((("passed",), ("over",)), ("skipped",)),
    ((("last",), ("of",), ("them", "these", "those")), ("last", "st")),
    ((("first",), ("of",), ("them", "these", "those")), ("first", "st")),
    ((_LOOPS, ("of",), _CHAINS), ("sp",)),
)
"""Ways of the older prose, word by word, and what they are written as."""
_GROUPS = ("shell", "group", "fan", "cluster")


def alike(raw: list[Word]) -> list[Word]:
    """The words, with one way of saying what is said in several."""
    raw = _reworded(_without_instead(raw))
    marks = _marks(raw)
    found: list[Word] = []
    for at, word in enumerate(raw):
        following = raw[at + 1].text if at + 1 < len(raw) else ""
        after = raw[at + 2].text if at + 2 < len(raw) else ""
        if word.text in marks:
            found.append(replace(word, text="†"))
        elif word.text in _INTO and following in _PLACES_FOLLOW and after not in _ROWS and not _skips(found):
            found.append(replace(word, text="in"))
        elif (
            word.text in ("more", "further", "additional")
            and at
            and raw[at - 1].sort == NUMBER
            and raw[at + 1 : at + 2]
            and raw[at + 1].sort == STITCH
        ) or word.text in _HARMLESS:
            continue
        elif word.text in _GROUPS and _of_stitches(raw[at + 1 : at + 4]) and not _into(found):
            while found and found[-1].text in ("a", "half", "-"):
                found.pop()
        elif word.text == "only" and _so_many(raw[max(at - 2, 0) : at]) and following in ("", "turn", ".", ","):
            found += [replace(word, text=text) for text in (",", "leave", "rest")]
        elif word.text == "of" and found and _of_group(raw, at):
            continue
        else:
            found.append(word)
    return found


def _reworded(raw: list[Word]) -> list[Word]:
    """The words with phrases of the older prose as they are written today."""
    found: list[Word] = []
    at = 0
    while at < len(raw):
        for way, instead in _SAME:
            words = raw[at : at + len(way)]
            if len(words) == len(way) and all(word.text in each for word, each in zip(words, way, strict=True)):
                found += [replace(raw[at], text=text, end=words[-1].end, sort=OTHER, value=0) for text in instead]
                at += len(way)
                break
        else:
            loop = raw[at].text in _LOOPS and len(raw) > at + 3 and raw[at + 1].text == "of" and raw[at + 3].text in _CHAINS
            if loop and raw[at + 2].sort == NUMBER:  # "space of 1 chain"
                found += [raw[at + 2], replace(raw[at + 3], text="ch"), replace(raw[at], text="sp")]
                at += 4
            else:
                found.append(raw[at])
                at += 1
    return found


def _so_many(before: list[Word]) -> bool:
    """``12 sts``."""
    return (
        len(before) == 2
        and before[0].sort == NUMBER
        and (before[1].text in ("st", "sts", "stitches") or before[1].sort == STITCH)
    )


def _skips(before: list[Word]) -> bool:
    return bool(before) and before[-1].text in ("skip", "skipping", "sk", "miss", "missing", "yarn", "carry")


def _into(before: list[Word]) -> bool:
    return bool(before) and before[-1].text in ("in", "into", "next", "each", "of", "every", "first", "last", "same")


def _of_stitches(after: list[Word]) -> bool:
    """``of 3 dc``."""
    return len(after) == 3 and after[0].text == "of" and after[1].sort == NUMBER and after[2].sort == STITCH


def _of_group(raw: list[Word], at: int) -> bool:
    return raw[at - 1].text in _GROUPS and _of_stitches(raw[at : at + 3]) and not _into(raw[: at - 1])


def _marks(raw: list[Word]) -> set[str]:
    """Marks that stand for stars in these words: those that a repeat goes back to, or a pair of them."""
    texts = [word.text for word in raw]
    named = {mark for before, mark in itertools.pairwise(texts) if before in ("from", "between")}
    return {mark for mark in _MARKS if mark in named or (mark != "+" and texts.count(mark) == 2)}


def _without_instead(raw: list[Word]) -> list[Word]:
    """Without ``(instead of 3)`` and ``instead of 5 dc``."""
    texts = [word.text for word in raw]
    if "instead" not in texts:
        return raw
    at = texts.index("instead")
    if at and texts[at - 1] in ("(", "[") and any(text in (")", "]") for text in texts[at:]):
        end = next(index for index in range(at, len(texts)) if texts[index] in (")", "]"))
        return _without_instead([*raw[: at - 1], *raw[end + 1 :]])
    if texts[at + 1 : at + 2] == ["of"] and raw[at + 2 : at + 3] and raw[at + 2].sort == NUMBER:
        end = at + 3
        while end < len(raw) and raw[end].sort == STITCH:
            end += 1
        clause = max((back for back in range(at) if texts[back] in (",", ";")), default=-1)
        repeats = clause > 0 and any(text in ("rep", "repeat") for text in texts[:clause])
        told = not {"ending", "end", "ends", "finish", "finishing", "only"} & set(texts[clause:at])
        ends = [replace(raw[at], text=text, sort=OTHER) for text in ("ending", "last", "rep", "with")] if repeats and told else []
        working = clause + 1 + (texts[clause + 1 : clause + 2] in (["working"], ["work"], ["making"]))
        return _without_instead([*raw[: clause + 1], *ends, *raw[working if ends else clause + 1 : at], *raw[end:]])
    return raw
