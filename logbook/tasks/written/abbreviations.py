"""The abbreviations that a pattern uses, in US or UK terms."""

import re
from collections.abc import Iterator

from logbook.craft.words.terms import Terms

_ABBREVIATIONS = (
    ("ch", "chain", "chain"),
    ("st", "stitch", "stitch"),
    ("sts", "stitches", "stitches"),
    ("sl st", "slip stitch", ""),
    ("ss", "", "slip stitch"),
    ("sc", "single crochet", ""),
    ("hdc", "half double crochet", ""),
    ("dc", "double crochet", "double crochet"),
    ("htr", "", "half treble crochet"),
    ("tr", "treble crochet", "treble crochet"),
    ("dtr", "double treble crochet", "double treble crochet"),
    ("trtr", "triple treble crochet", "triple treble crochet"),
    ("sp", "space", "space"),
    ("rep", "repeat", "repeat"),
    ("sk", "skip", ""),
    ("yo", "yarn over", ""),
    ("yrh", "", "yarn round hook"),
    ("inc", "increase: 2 stitches in one", "increase: 2 stitches in one"),
    ("dec", "decrease: 2 stitches worked together", "decrease: 2 stitches worked together"),
    ("tog", "together", "together"),
    ("RS", "right side", "right side"),
    ("WS", "wrong side", "wrong side"),
    ("tch", "turning chain", "turning chain"),
    ("beg", "beginning", "beginning"),
)


def abbreviations(text: str, terms: Terms) -> Iterator[str]:
    """Those that stand in the text, each with what it means in these terms."""
    for short, us, uk in _ABBREVIATIONS:
        name = us if terms is Terms.US else uk
        case = 0 if short.isupper() else re.IGNORECASE
        if name and re.search(rf"(?<![A-Za-z]){re.escape(short)}(?![A-Za-z])", text, case):
            yield f"{short}: {name}"
