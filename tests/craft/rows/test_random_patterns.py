"""Random patterns that fit by construction are proven; spoilt in one step they are caught, or do fit when laid by hand."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof
from logbook.craft.words.terms import Terms
from tests.support.laying_by_hand import Steps, Thing, fits, laid_on_chain, random_pattern, spoilt
from tests.support.random_rows import KINDS, tried

SEEDS = st.integers(0, 2**32 - 1)


def proof_of(rows: list[Steps]) -> Proof:
    return prove("\n".join(row.text() for row in rows), Terms.US, chains_count=False, suggest=False)


def stitches(row: list[Thing]) -> int:
    return sum(isinstance(thing, str) for thing in row)


def check_against_hand(rows: list[Steps], proof: Proof) -> None:
    """The proof says of every chain up to some length what laying by hand says of it."""
    assert proof.smallest is not None
    if proof.multiple is None:
        assert [chains for chains in range(1, 80) if fits(rows, chains)] == [proof.smallest]
        return
    assert proof.chain_constant is not None
    for chains in range(proof.smallest, proof.smallest + 3 * proof.multiple + 3):
        proven = (chains - proof.chain_constant) % proof.multiple == 0
        assert fits(rows, chains) == proven, chains
        if proven:
            repeats = (chains - proof.chain_constant) // proof.multiple
            for row, count in zip(laid_on_chain(rows, chains), proof.rows, strict=True):
                assert (count.stitches.at(repeats), count.spaces.at(repeats)) == (stitches(row), len(row) - stitches(row))


@settings(max_examples=60, deadline=None)
@given(SEEDS, st.integers(1, 4))
def test_what_fits_by_construction_is_proven_with_its_multiple(seed: int, count: int) -> None:
    rows, multiple, constant = random_pattern(random.Random(seed), count)
    proof = proof_of(rows)
    assert proof.problems == ()
    assert (proof.multiple, proof.chain_constant) == (multiple, constant % multiple)
    check_against_hand(rows, proof)


@settings(max_examples=100, deadline=None)
@given(SEEDS, st.integers(1, 4))
def test_what_is_spoilt_is_caught_or_fits_all_the_same(seed: int, count: int) -> None:
    rng = random.Random(seed)
    rows = spoilt(rng, random_pattern(rng, count)[0])
    proof = proof_of(rows)
    if len(proof.rows) == len(rows):
        check_against_hand(rows, proof)
    else:
        assert proof.problems
        assert not [chains for chains in range(60, 110) if fits(rows, chains)]


@pytest.mark.parametrize("is_spoilt", [False, True], ids=["fits", "spoilt"])
@pytest.mark.parametrize("kind", KINDS)
def test_random_rows_of_every_kind_agree_with_laying_by_hand(kind: str, is_spoilt: bool) -> None:
    assert [says for seed in range(4) if (says := tried(kind, seed, is_spoilt))] == []
