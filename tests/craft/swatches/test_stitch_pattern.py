import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.stitch_pattern import ChainStatement, StitchPattern, extra_chains, read_multiple
from logbook.errors import RefusedError, UnreadableError


@pytest.mark.parametrize(
    ("first", "cover", "extra"),
    [(2, 0, 1), (3, 0, 2), (3, 1, 1), (4, 1, 2), (2, None, 1), (5, 1, 3), (6, 2, 3), (8, 3, 4), (1, 0, 0)],
)  # sc, hdc, hdc as a stitch, dc, dc as nothing, tr, mesh, filet, and the very first chain
def test_extra_chains_from_the_first_stitch(first: int, cover: int | None, extra: int) -> None:
    assert extra_chains(None, first, cover) == extra
    assert extra_chains(extra, first, cover) == extra
    with pytest.raises(RefusedError, match=f"that makes {extra}"):
        extra_chains(extra + 1, first, cover)
    assert StitchPattern(first_stitch=first, skip_cover=cover).extra() == extra


def test_what_skipped_chains_count_as_is_never_taken_for_granted() -> None:
    assert [extra_chains(None, first, None) for first in (1, 2, 3, 4)] == [0, 1, None, None]
    assert extra_chains(2, 4, None) == 2
    with pytest.raises(RefusedError, match="more than the 3 chains"):
        extra_chains(4, 4, None)


def test_extra_chains_as_stated_or_not_at_all() -> None:
    assert extra_chains(2, None, None) == 2
    assert extra_chains(None, None, None) is None


@pytest.mark.parametrize(
    ("first", "cover", "says"),
    [
        (None, 1, "Give the chain from the hook"),
        (0, None, "1st chain from the hook or a later one"),
        (2, 2, "Skipped chains .1. can't count as 2 stitches"),
        (4, 5, "Skipped chains .3. can't count as 5 stitches"),
    ],
)
def test_what_cannot_be_is_refused(first: int | None, cover: int | None, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        extra_chains(None, first, cover)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("multiple of 6 plus 1", ChainStatement(6, plus=1)),
        ("Multiple of 6 sts plus 1", ChainStatement(6, plus=1)),
        ("a multiple of 6 + 1", ChainStatement(6, plus=1)),
        ("multiples of 6 + 1.", ChainStatement(6, plus=1)),
        ("mult. of 6 + 1", ChainStatement(6, plus=1)),
        ("multiple of 6", ChainStatement(6, plus=0)),
        ("any multiple of 2", ChainStatement(2, plus=0)),
        ("multiple of 10 less 1", ChainStatement(10, plus=9)),
        ("multiple of 10 − 1", ChainStatement(10, plus=9)),
        ("multiple of 6 plus 1, add 1 for the base chain", ChainStatement(6, plus=1, extra_chains=1)),
        ("multiple of 6 sts plus 1 (add 1 for base chain)", ChainStatement(6, plus=1, extra_chains=1)),
        ("multiple of 6 + 1 + 1 for the turning chain", ChainStatement(6, plus=1, extra_chains=1)),
        ("chain a multiple of 6 plus 2", ChainStatement(6, chain_constant=2)),
        ("Ch a multiple of 6 plus 2", ChainStatement(6, chain_constant=2)),
        ("multiple of 6 chains plus 2 chains", ChainStatement(6, chain_constant=2)),
    ],
)
def test_sentences_of_stitch_dictionaries(text: str, said: ChainStatement) -> None:
    assert read_multiple(text) == said


@pytest.mark.parametrize("text", ["", "6 plus 1", "multiple of 0", "multiple of six", "multiple of 6 times 2", "x" * 300])
def test_what_says_no_multiple_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError, match="does not say a multiple: write “multiple of 6 plus 1”"):
        read_multiple(text)


@given(st.integers(1, 99), st.integers(0, 30), st.integers(0, 6))
def test_every_statement_reads(multiple: int, plus: int, extra: int) -> None:
    said = read_multiple(f"multiple of {multiple} plus {plus}, add {extra} for the base chain")
    assert said == ChainStatement(multiple, plus, extra)
