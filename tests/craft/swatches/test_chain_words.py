"""The chain as patterns state it."""

import pytest

from logbook.craft.swatches.chain_words import chain_read_back, read_chain_words
from logbook.craft.swatches.stitch_pattern import ChainStatement
from logbook.errors import UnreadableError


@pytest.mark.parametrize(
    ("text", "multiple", "constant"),
    [
        ("ch a multiple of 10 plus 4", 10, 4),
        ("Chain a multiple of 10 + 4.", 10, 4),
        ("multiple of 10 plus 4", 10, 4),
        ("multiple 10, plus 4", 10, 4),
        ("10 + 4", 10, 4),
        ("10+4", 10, 4),
        ("mult of 10 + 4 ch", 10, 4),
        ("multiple of 10 less 1", 10, 9),
        ("multiple of 10 − 6", 10, 4),
        ("10", 10, 0),
        ("6n + 1", 6, 1),
        ("chain 6k + 1", 6, 1),
        ("even number", 2, 0),
        ("ch an even number", 2, 0),
        ("an odd number of ch", 2, 1),
        ("any multiple of 4 + 3", 4, 3),
        ("a multiple of 8 ch + 5", 8, 5),
    ],
)
def test_of_chains_unless_it_says_otherwise(text: str, multiple: int, constant: int) -> None:
    assert read_chain_words(text) == ChainStatement(multiple, chain_constant=constant)


@pytest.mark.parametrize(
    ("text", "plus", "extra"),
    [
        ("multiple of 6 + 1, add 1", 1, 1),
        ("multiple of 6 plus 1, add 1 for the base chain", 1, 1),
        ("multiple of 6 plus 1 (add 2 for base chain)", 1, 2),
        ("6 + 1 + 1", 1, 1),
        ("multiple of 6 stitches plus 1", 1, None),
        ("multiple of 6 sts + 1", 1, None),
        ("multiple of 6 plus 1 stitch", 1, None),
    ],
)
def test_of_stitches_where_it_says_so(text: str, plus: int, extra: int | None) -> None:
    assert read_chain_words(text) == ChainStatement(6, plus=plus, extra_chains=extra)


@pytest.mark.parametrize("text", ["", "six", "0 + 4", "multiple of plus 4", "10 + four", "number", "numbers 4"])
def test_what_says_no_multiple(text: str) -> None:
    with pytest.raises(UnreadableError, match="write it as the pattern does") as raised:
        read_chain_words(text)
    examples = [part.split("”")[0] for part in str(raised.value).split("“")[2:]]
    assert examples
    assert [read_chain_words(example).multiple for example in examples] == [10, 6, 2, 1]


def test_any_number() -> None:
    assert read_chain_words("any number of stitches, add 2 for the base chain") == ChainStatement(1, plus=0, extra_chains=2)
    assert read_chain_words("any number of stitches") == ChainStatement(1, plus=0)
    for chains, constant in {"any number": 0, "chain any number": 0, "any number + 2": 2, "any number of ch plus 2": 2}.items():
        assert read_chain_words(chains) == ChainStatement(1, chain_constant=constant)
    assert read_chain_words("any number of sts plus 2") == ChainStatement(1, plus=2)
    for words in ("any number of sts plus 2 for turning chain", "any number plus 2 for the turning ch"):
        assert read_chain_words(words) == ChainStatement(1, plus=0, extra_chains=2)


def test_even_and_odd() -> None:
    assert read_chain_words("an even number of stitches, add 1 for the turning chain") == ChainStatement(
        2, plus=0, extra_chains=1
    )
    assert read_chain_words("chain an even number") == ChainStatement(2, chain_constant=0)
    assert read_chain_words("odd number of sts") == ChainStatement(2, plus=1)


@pytest.mark.parametrize(
    "text",
    [
        "multiple 10, plus 4, first stitch in 4th",
        "Multiple of 10 plus 4, first dc in 4th ch from hook",
        "ch a multiple of 10 + 4 (first double crochet in the 4th ch)",
        "10 + 4; 1st st goes into 4th chain from the hook.",
    ],
)
def test_the_chain_of_the_first_stitch_said_with_it(text: str) -> None:
    assert read_chain_words(text) == ChainStatement(10, chain_constant=4, first_stitch=4)


def test_read_back() -> None:
    assert chain_read_back(10, 2, 2) == "10 to a repeat, 4 more; k repeats are 10k + 2 base stitches."
    assert chain_read_back(6, 0, 0) == "6 to a repeat, none more; k repeats are 6k base stitches."
    assert chain_read_back(1, 0, 2) == "Any number of stitches; chain 2 more."
    assert chain_read_back(10, None, None, 4) == "10 to a repeat, 4 more (chains)."
