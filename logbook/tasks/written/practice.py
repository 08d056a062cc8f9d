"""The practice piece: the chain and every row's count for a few repeats, to film or to learn the stitch on."""

from functools import lru_cache

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.words.counting import counted
from logbook.craft.words.terms import Terms

REPEATS = 3
"""So many repeats, or as many as the rows need at least."""
LEAST_CHAINS = 14  # of single stitches more are worked, so that there is something to hold


@lru_cache(maxsize=32)
def proven_rows(text: str, terms: str) -> Proof | None:
    """The proof of written rows; None where they are not proven, or there are none."""
    proof = prove(text, Terms(terms) if terms else None, suggest=False) if text.strip() else None
    return proof if proof is not None and proof.proven else None


def practice_piece(pattern: StitchPattern, named: bool = False) -> str:
    """``Practice piece: ch 20. Row 1: 19 sts. Row 2: …``; "" where rows are not proven, or are rounds worked from a ring.

    ``named``: with the name of the stitch pattern.
    """
    proof = proven_rows(pattern.rows_text, pattern.terms)
    if proof is None or proof.smallest is None:
        return ""
    chain, repeats = proof.smallest, 0
    if proof.multiple and proof.chain_constant is not None:
        least = -(-(max(proof.smallest, LEAST_CHAINS) - proof.chain_constant) // proof.multiple)
        repeats = max(least, REPEATS)
        chain = proof.multiple * repeats + proof.chain_constant
    counts = (_count(row.name, row.stitches.at(repeats), row.spaces.at(repeats)) for row in proof.rows)
    of = f" in {pattern.name}" if named and pattern.name else ""
    return f"Practice piece{of}: ch {chain}. {' '.join(counts)}"


def _count(name: str, stitches: int, spaces: int) -> str:
    told = counted(stitches, "st") if not spaces else f"{counted(stitches, 'st')}, {counted(spaces, 'sp')}"
    return f"{name}: {told}."
