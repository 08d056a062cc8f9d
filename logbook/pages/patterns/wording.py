"""The words of stitch dictionaries for what a pattern says of its chain, written and read."""

import re

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import counted
from logbook.craft.words.numbers import read_whole
from logbook.errors import RefusedError, UnreadableError

NOT_SAID = "not given"
COVERS = (NOT_SAID, "nothing", "a stitch", *(f"a stitch and {counted(n, 'chain')}" for n in range(1, 7)))
"""What the chains skipped before the first stitch may count as."""

_COVER = re.compile(r"a\s+stitch(?:\s+and\s+(\d+)\s+chains?)?\Z", re.IGNORECASE)
_ORDINAL = re.compile(r"(\d+)\s*(?:st|nd|rd|th)\Z", re.IGNORECASE)


def read_ordinal(text: str) -> int:
    """``2nd``, ``4th`` or a bare ``2``, from 1 to 1000. Raises UnreadableError."""
    found = _ORDINAL.match(text)
    return read_whole(found[1] if found else text, "a chain from the hook", 1, 1000)


def cover_words(cover: int | None) -> str:
    """What skipped chains that lie over ``cover`` base chains count as; None: not said."""
    if cover is None or cover < 2:
        return COVERS[0 if cover is None else cover + 1]
    return f"a stitch and {counted(cover - 1, 'chain')}"


def read_cover(text: str) -> int | None:
    """How many base chains skipped chains lie over that count as ``text`` says. Raises UnreadableError."""
    if text.casefold() in COVERS[:3]:
        return (None, 0, 1)[COVERS.index(text.casefold())]
    found = _COVER.match(text)
    if found is None:
        raise UnreadableError(
            f"Skipped chains can't count as “{text[:40]}”: type “nothing”, “a stitch”, or “a stitch and 2 chains”."
        )
    return 1 + int(found[1] or 0)


def statement(pattern: StitchPattern) -> str:
    """``multiple of 6 plus 1, add 1 for the base chain``; "" while the multiple is not known."""
    if pattern.multiple is None:
        return ""
    try:
        extra = pattern.extra()
    except RefusedError:
        extra = pattern.extra_chains
    plus = f" plus {pattern.plus}" if pattern.plus else ""
    repeat = "any number of stitches" if pattern.multiple == 1 else f"multiple of {pattern.multiple}"
    if not extra:
        return f"{repeat}{'' if pattern.multiple == 1 else ' stitches'}{plus}"
    return f"{repeat}{plus}, add {extra} for the base chain"


def in_short(pattern: StitchPattern) -> str:
    """The multiple and the plus as a cell of a list: ``6 plus 1``."""
    if pattern.multiple is None:
        return ""
    return f"{pattern.multiple} plus {pattern.plus}" if pattern.plus else str(pattern.multiple)
