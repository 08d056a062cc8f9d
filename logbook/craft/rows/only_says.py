"""Clauses of a row that only say something: nothing to make, no number, no place."""

from logbook.craft.rows.cursor import CLOSING, Cursor
from logbook.craft.rows.place_kinds import GROUP_NAMES, ONE_STITCH_NAMES
from logbook.craft.rows.star_repeats import STARS
from logbook.craft.rows.word import MANY, NUMBER, ORDINAL, STITCH, TOGETHER, Word

_WORK_WORDS = {
    "st", "ch", "sp", "slst", "sk", "inc", "dec", "tch", "begch", "rep", "each", "next", "ring", "fromhook", "topof",
    "centre", "skipped", "unworked", "leave", "rem", "same", "tog", "together", "established", "pattern", "times",
    "twice", "once", "omit", "toend", "around", "tolast", "otherside", "yo", "hook", "loop", "star", "row", "first",
    "last", "opposite", "mirror", "reverse", "likewise", "except", "unless", "alternately", "alternate", "double",
    "half", "increase", "increasing", "decreasing", "shaping", "tss", "fsc", "fhdc", "fdc", "drawup", "corner", "even",
    "straight", "in", "ending",
}  # fmt: skip
"""Words that no clause holds in which there is nothing to do."""


_SAY_SO = {
    "behind", "is", "are", "be", "to", "for", "with", "of", "you", "it", "this", "these", "so", "as", "if", "when", "up", "off",
    "out", "down", "back", "before", "after", "not", "no", "by", "at", "from", "tight", "loose", "careful", "here",
    "on", "will", "should", "can", "may", "do", "all", "over", "tail", "marker", "markers", "end", "facing", "finger",
    "yarn", "invisible", "see", "left", "closed", "work", "thumb", "stuffing", "good", "well", "done",
}  # fmt: skip
"""Words that show that a clause only says something."""
_COLOURS = {
    "color", "colour", "main", "contrast", "contrasting", "mc", "cc", "red", "blue", "green", "white", "cream", "grey",
    "gray", "black", "yellow", "pink", "orange", "purple", "brown", "navy", "teal", "mustard", "ecru", "natural",
    "beige", "rust", "lilac",
}  # fmt: skip


def _is_work(word: Word) -> bool:
    return (
        word.sort in (NUMBER, ORDINAL, STITCH, TOGETHER, MANY)
        or word.text in _WORK_WORDS
        or word.text in GROUP_NAMES
        or word.text in ONE_STITCH_NAMES
        or word.text in CLOSING
        or word.text in CLOSING.values()
        or word.text in STARS
    )


def only_says(cur: Cursor, start: int, at_start: bool) -> bool:
    """Steps over the clause from the ``start``-th word on if it only says something; ``at_start``: the row has made nothing yet.

    A word or two that are not known are none such: they may be a stitch.
    """
    cur.at = start
    cur.skip_clause("turn", "noturn", "join", *STARS)
    clause = cur.words[start : cur.at]
    while clause and clause[-1].text == "and":
        clause = clause[:-1]
        cur.at -= 1
    texts = {word.text for word in clause}
    letter = len(clause) == 1 and len(clause[0].text) == 1
    colour = at_start and (cur.next_is(":") or letter or texts & _COLOURS)
    says = len(clause) > 3 or texts & _SAY_SO or any(text.endswith("ing") for text in texts)
    if not clause or any(_is_work(word) for word in clause) or not (says or colour):
        cur.at = start
        return False
    return True
