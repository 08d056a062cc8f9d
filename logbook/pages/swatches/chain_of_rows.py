"""What the written rows of a swatch's stitch pattern say of its chain, once they are proven."""

from dataclasses import replace
from functools import lru_cache
from typing import Any

from logbook.craft.rows.report import Proof
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.pages.patterns.proving import ToProve
from logbook.pages.patterns.rows_card import CHAIN_FIGURES, contradictions, row_figures
from logbook.pages.patterns.wording import NOT_SAID


def with_chain(pattern: StitchPattern) -> StitchPattern:
    """The pattern with the chain and the rows that its written rows are proven on; as it is where they are not."""
    proof = _proof(pattern.rows_text, pattern.terms)
    if proof is None or not proof.proven or proof.multiple is None:
        return pattern
    rows = row_figures(proof) if pattern.set_up_rows is None and pattern.rows_in_repeat is None else {}
    found: dict[str, Any] = {name: getattr(proof, name) for name in CHAIN_FIGURES} | rows
    return replace(pattern, **found)


def contradiction(pattern: StitchPattern) -> str:
    """Where proven rows say something else of the chain than the pattern; "" where they do not, or nothing is proven."""
    proof = _proof(pattern.rows_text, pattern.terms)
    said = contradictions(proof, pattern) if proof is not None else {}
    return " ".join(said.values())


@lru_cache(maxsize=8)
def _proof(text: str, terms: str) -> Proof | None:
    """None for rows so long that they can't be proven while one types."""
    wanted = ToProve(text, terms or NOT_SAID, suggests=False)
    return wanted.proof() if wanted.is_quick else None
