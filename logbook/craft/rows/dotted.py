"""Abbreviations with full stops, ``1 tr. into each ch.``, without them: letter by letter as long as before."""

import re

_SHORT = r"(?:tr|dc|sc|hdc|htr|dtr|ch|chs|st|sts|sp|sps|lp|lps|sl|ss|tog|rnd|beg|blk|grp|cl|pc|dec|inc|patt|yo|yrh|lps|tch|fin)"
_STYLE = re.compile(
    rf"\b{_SHORT}\.[ ]"
    r"(?:in|into|from|to|round|around|on|over|each|across|along|of|and|missed|next|the|together)\b|\b[dsh]\.[ ]?c\."
)
"""A stop inside a sentence: only then is every such stop looked at."""
_INITIALS = re.compile(
    r"\b(?P<letters>[fb]\.r\.|r\.|h\.d\.|h\.|d\.|s\.|t\.)[ ]?(?P<last>tr\.(?:[fb]\.)?|c\.|ch\.|s\.|st\.)", re.IGNORECASE
)
_NAMES = {
    "f.r.tr.": "rtrf", "b.r.tr.": "rtrb", "r.tr.f.": "rtrf", "r.tr.b.": "rtrb", "h.d.c.": "hdc", "d.c.": "dc", "s.c.": "sc",
    "h.tr.": "htr", "d.tr.": "dtr", "s.s.": "ss", "t.ch.": "tch",
}  # fmt: skip
_STOP = re.compile(rf"(?<![\w.]){_SHORT}\.(?=\s*(?:[,;:)\]*]|[a-z\d(\[])|\s*$)", re.MULTILINE)
_INSIDE = re.compile(rf"(?<=\d){_SHORT}\.(?=\s*(?:[,;:)\]*]|[a-z\d(\[]))")


def undotted(text: str) -> str:
    """The text with blanks for the stops that only shorten words, if it writes its stitches so; else as it is."""
    if not _STYLE.search(text):
        return text
    text = _INITIALS.sub(_named, text)
    for stop in (_STOP, _INSIDE):
        text = stop.sub(lambda found: found[0] if _ends_line(found) else found[0][:-1] + " ", text)
    return text


def _named(found: re.Match[str]) -> str:
    name = _NAMES.get(re.sub(r"\s", "", found[0]).lower(), "")
    if not name:
        return found[0]
    ends = found.string[found.end() :].lstrip(" ")[:1]
    stop = "." if ends.isupper() or ends in ("", "\n") else ""
    return (name + stop).ljust(len(found[0]))


def _ends_line(found: re.Match[str]) -> bool:
    return found.string[found.end() :].lstrip(" ")[:1] in ("", "\n")
