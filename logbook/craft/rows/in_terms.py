"""Written rows in the other terms: every stitch and doing translated, in abbreviations and full names, both ways.

A word without a counterpart stands as it is and is named, never guessed.
"""

import re
from dataclasses import dataclass

from logbook.craft.words.terms import Terms

_STITCHES = (("sc", "dc"), ("hdc", "htr"), ("dc", "tr"), ("tr", "dtr"), ("dtr", "trtr"), ("trtr", "qtr"))
_NAMES = (
    ("single crochet", "double crochet"),
    ("half double crochet", "half treble crochet"),
    ("double crochet", "treble crochet"),
    ("treble crochet", "double treble crochet"),
    ("triple crochet", "double treble crochet"),
    ("double treble crochet", "triple treble crochet"),
    ("triple treble crochet", "quadruple treble crochet"),
)
_DOINGS = (
    ("sl st", "ss"),
    ("slip stitch", "slip stitch"),
    ("sk", "miss"),
    ("skip", "miss"),
    ("skipped", "missed"),
    ("skipping", "missing"),
    ("yo", "yrh"),
    ("yarn over", "yarn round hook"),
    ("gauge", "tension"),
    ("work even", "work straight"),
)
_BEFORE = ("f", "e")
"""Before a stitch: foundation and extended."""
_WITHOUT = {Terms.US: ("qtr", "quadtr", "quad tr"), Terms.UK: ("quintr", "quin tr", "sextr")}
"""Taller stitches than the other terms have an agreed name for."""


@dataclass(frozen=True, slots=True)
class InTerms:
    """A text in the terms wanted, and the words in it that have no counterpart."""

    text: str
    without: tuple[str, ...]


def in_terms(text: str, source: Terms, target: Terms) -> InTerms:
    """``text`` in the target's terms."""
    if source is target:
        return InTerms(text, ())
    words = _words(source)
    longest_first = sorted((word.replace(" ", "\\s+") for word in words), key=len, reverse=True)
    pattern = re.compile(rf"(?<![A-Za-z])({'|'.join(longest_first)})(s|es)?(?![A-Za-z])", re.IGNORECASE)
    unknown = re.compile(rf"(?<![A-Za-z])(?:{'|'.join(_WITHOUT[source])})(?![A-Za-z])", re.IGNORECASE)
    without = tuple(dict.fromkeys(found[0] for found in unknown.finditer(text)))
    return InTerms(pattern.sub(lambda found: _other(found, words), text), without)


def _other(found: re.Match[str], words: dict[str, str]) -> str:
    plain = " ".join(found[1].split())
    other = words[plain.lower()]
    if plain.isupper() and len(plain) > 1:
        other = other.upper()
    elif plain[:1].isupper():
        other = other[:1].upper() + other[1:]
    return other + (found[2] or "")


def _words(source: Terms) -> dict[str, str]:
    """Every word of the source's terms and what the others say; of two that say the same, the usual one is taken."""
    pairs = [*_DOINGS, *_NAMES, *_STITCHES]
    for us, uk in _STITCHES:
        pairs += [(f"{before}{us}", f"{before}{uk}") for before in _BEFORE]
        pairs += [(f"{us}{dash}{many}tog", f"{uk}{dash}{many}tog") for many in range(2, 13) for dash in ("", "-")]
        pairs += [(f"{post}p{us}", f"r{uk}{post}") for post in ("f", "b")]
    if source is Terms.UK:
        pairs = [(uk, us) for us, uk in pairs]
    return dict(reversed(pairs))
