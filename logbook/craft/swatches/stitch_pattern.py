"""A stitch pattern, and what it says of chains and rows.

With k repeats the base stitches are S = m·k + b and the starting chain C = S + t, where m is the multiple, b the plus and t the
extra chains. With the first stitch in the j-th chain from the hook, t = (j − 1) − v, v being how many base chains the skipped
chains lie over: 0 when they count as nothing, 1 as a stitch, 1 + n as a stitch and n chains over n skipped ones.
"""

import re
from dataclasses import dataclass, replace

from logbook.errors import RefusedError, UnreadableError


@dataclass(frozen=True, slots=True, kw_only=True)
class StitchPattern:
    """One stitch pattern. Counts of stitches, chains and rows; None: not said.

    ``extra_chains`` is t where the pattern states it; ``first_stitch`` and ``skip_cover`` are j and v where it says those.
    ``half_plus`` is the plus for ending on half a repeat (the half itself not counted in), where the pattern allows that.
    ``terms`` is ``US``, ``UK`` or "" (not said); ``rows_text`` are the written rows.
    """

    uid: str = ""
    name: str = ""
    multiple: int | None = None
    plus: int | None = None
    extra_chains: int | None = None
    first_stitch: int | None = None
    skip_cover: int | None = None
    half_plus: int | None = None
    set_up_rows: int | None = None
    rows_in_repeat: int | None = None
    closing_rows: int | None = None
    terms: str = ""
    rows_text: str = ""
    notes: str = ""

    def extra(self) -> int | None:
        """t, from wherever it is said; None if nowhere. Raises RefusedError if the two ways of saying it disagree."""
        return extra_chains(self.extra_chains, self.first_stitch, self.skip_cover)


def with_first_stitch(pattern: StitchPattern, said: StitchPattern) -> StitchPattern:
    """``pattern`` with what ``said`` tells of the turning chain, where it does not tell it itself.

    Raises RefusedError if both do.
    """
    if said.extra() is None:
        return pattern
    if pattern.extra() is not None:
        raise RefusedError(f"The stitch pattern “{pattern.name}” says its own extra chains, {pattern.extra()}: leave them out.")
    return replace(pattern, extra_chains=said.extra_chains, first_stitch=said.first_stitch, skip_cover=said.skip_cover)


COVER_MATTERS = 3
"""From this chain from the hook on, the chains skipped before the first stitch may count as a stitch."""


def extra_chains(stated: int | None, first_stitch: int | None, skip_cover: int | None) -> int | None:
    """t as stated, or (j − 1) − v from the first stitch's chain j and what the skipped chains cover v.

    None if neither is given, and where v is not and would matter: from the 3rd chain on the skipped ones may count as a
    stitch or as nothing. Raises RefusedError if they disagree or the skipped chains cover more than was skipped.
    """
    if first_stitch is None:
        if skip_cover is not None:
            raise RefusedError(
                "Give the chain from the hook that the first stitch goes into, too, so that the skipped chains can be counted."
            )
        return stated
    if first_stitch < 1:
        raise RefusedError("The first stitch goes into the 1st chain from the hook or a later one.")
    if skip_cover is None and first_stitch >= COVER_MATTERS:
        if stated is not None and stated > first_stitch - 1:
            raise RefusedError(f"The extra chains ({stated}) are more than the {first_stitch - 1} chains that are skipped.")
        return stated
    derived = first_stitch - 1 - (skip_cover or 0)
    if derived < 0:
        raise RefusedError(
            f"Skipped chains ({first_stitch - 1}) can't count as {skip_cover} stitches: type 0 where they count as nothing, "
            "1 where they count as a stitch, and add the chains they leave unworked below them."
        )
    if stated is not None and stated != derived:
        raise RefusedError(
            f"The extra chains ({stated}) do not agree with a first stitch in chain {first_stitch} whose skipped "
            f"chains count as {skip_cover or 0}: that makes {derived}."
        )
    return derived


@dataclass(frozen=True, slots=True)
class ChainStatement:
    """What a sentence of a stitch dictionary says: the multiple, then the plus of base stitches or the chain constant b + t.

    ``first_stitch``: into which chain from the hook the first one goes, if it says that too.
    """

    multiple: int
    plus: int | None = None
    extra_chains: int | None = None
    chain_constant: int | None = None
    first_stitch: int | None = None


_UNITS = r"(?:sts?|stitches|chains?|ch)?"
# Not compiled before it is wanted: that is slow, and few starts of the program need it.
_STATEMENT = rf"""\s*(?P<chain>(?:ch|chain)\s+)?(?:an?y?\s+)?(?:multiples?|mult\.?)\s+of\s+(?P<m>\d+)\s*{_UNITS}\s*
    (?:(?P<sign>plus|and|less|minus|\+|-|−)\s*(?P<b>\d+)\s*(?P<chains>chains?|ch)?{_UNITS})?\s*
    (?:[,;(]?\s*(?:add|plus|\+|and)\s*(?P<t>\d+)\s*(?:more\s*)?(?:chains?|ch)?\s*
    (?:for\s+(?:the\s+)?(?:base|foundation|starting|turning)\s+(?:chain|ch|row))?\s*\)?)?\s*\.?\s*\Z"""


def read_multiple(text: str) -> ChainStatement:
    """Reads ``multiple of 6 plus 1``, ``multiple of 6 plus 1, add 1 for the base chain``, ``chain a multiple of 6 plus 2``,
    ``multiple of 10 less 1`` (a plus of 9). Raises UnreadableError otherwise.
    """
    found = re.match(_STATEMENT, text, re.IGNORECASE | re.VERBOSE)
    if found is None or int(found["m"]) < 1:
        raise UnreadableError(
            f"“{text.strip()[:60]}” does not say a multiple: write “multiple of 6 plus 1” or “chain a multiple of 6 plus 2”."
        )
    multiple, constant = int(found["m"]), int(found["b"] or 0)
    if found["sign"] and found["sign"].lower() in ("less", "minus", "-", "−"):
        constant = -constant % multiple
    if found["chain"] or found["chains"]:
        return ChainStatement(multiple, chain_constant=constant)
    return ChainStatement(multiple, plus=constant, extra_chains=int(found["t"]) if found["t"] else None)
