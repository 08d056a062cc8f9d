"""The chain as a pattern states it: ``ch a multiple of 10 plus 4``, ``multiple of 6 + 1, add 1``, ``10 + 4``.

A pattern counts chains, the turning chain among them, unless it says "stitches", or says apart what to add for
the base chain; then it counts base stitches.
"""

import re

from logbook.craft.swatches.reading_text import KINDS
from logbook.craft.swatches.stitch_pattern import ChainStatement
from logbook.errors import UnreadableError

_LESS = ("less", "minus", "-", "−", "–")
_STITCH = r"(?P<{}>(?:stitch(?:es)?|sts?\.?)(?![a-z]))|(?:chains?|chs?)(?![a-z])"
# Not compiled before it is wanted: that is slow, and few starts of the program need it.
_WORDS = rf"""\s*(?P<chain>(?:ch|chain)\s+)?(?:an?y?\s+)?(?:(?:multiples?|mult\.?)\s*(?:of\s+)?)?
    (?P<m>\d{{1,5}}(?:\s?[nk](?![a-z]))?|(?:even|odd)\s+numbers?(?:\s+of)?|number\s+of|(?<=any[ ])number)\s*
    (?:{_STITCH.format("of_st")})?\s*
    (?:,?\s*(?P<sign>plus|and|less|minus|\+|-|−|–)\s*(?P<b>\d{{1,5}})\s*(?:{_STITCH.format("plus_st")})?)?\s*
    (?:[,;(]?\s*(?:then\s+)?(?:add|plus|\+|and)\s*(?P<t>\d{{1,4}})\s*(?:more\s*|extra\s*)?(?:chains?|chs?)?\s*
    (?:for\s+(?:the\s+)?(?:base|foundation|starting|turning|beginning)\s*(?:chain|ch|row)?)?\s*\)?)?\s*
    (?:[,;(]\s*(?:the\s+)?(?:first|1st)\s+(?:stitch|st|{KINDS})\s+(?:goes\s+)?in(?:to)?\s+(?:the\s+)?
    (?P<first>\d{{1,2}})(?:nd|rd|th)(?:\s*(?:chain|ch))?(?:\s*from\s+(?:the\s+)?hook)?\s*\)?)?\s*\.?\s*\Z"""


def read_chain_words(text: str) -> ChainStatement:
    """What the words say. Raises UnreadableError, with examples, if they say no multiple."""
    found = re.match(_WORDS, text, re.IGNORECASE | re.VERBOSE)
    number = found["m"].lower().rstrip(" nk") if found is not None else ""
    multiple = int(number) if number.isdecimal() else 2 if number.startswith(("even", "odd")) else 1
    if found is None or multiple < 1:
        raise UnreadableError(
            f"Couldn't read “{text.strip()[:60]}”: write it as the pattern does, like “multiple of 10 plus 4”, "
            "“multiple of 6 plus 1, add 1 for the base chain”, “even number” or “any number plus 2”."
        )
    constant = int(found["b"] or 0) + number.startswith("odd")
    if found["sign"] and found["sign"].lower() in _LESS:
        constant = -constant % multiple
    of_stitches = not found["chain"] and (found["of_st"] or found["plus_st"])
    first = None if found["first"] is None else int(found["first"])
    if found["t"] is not None or of_stitches:
        extra = None if found["t"] is None else int(found["t"])
        return ChainStatement(multiple, plus=constant, extra_chains=extra, first_stitch=first)
    return ChainStatement(multiple, chain_constant=constant, first_stitch=first)


def chain_read_back(multiple: int, plus: int | None, extra: int | None, constant: int | None = None) -> str:
    """``10 to a repeat, 4 more; k repeats are 10k + 2 base stitches``; ``constant``: b + t where b alone is not known."""
    more = constant if plus is None or extra is None else plus + extra
    if multiple == 1 and plus is not None:
        return f"Any number of stitches{f' from {plus + 1} on' if plus else ''}" + (
            "." if extra is None else f"; chain {extra} more."
        )
    repeat = f"{multiple} to a repeat"
    chains = "" if more is None else f", {more} more" if more else ", none more"
    if plus is None:
        return f"{repeat}{chains} (chains)."
    return f"{repeat}{chains}; k repeats are {multiple}k{f' + {plus}' if plus else ''} base stitches."
