"""Counts as patterns give them."""

import pytest

from logbook.craft.words.typed_counts import Of, read_count
from logbook.errors import UnreadableError


@pytest.mark.parametrize("text", ["ch 115", "115 ch", "chain 115", "Ch115", " 115 chains ", "115ch", "chs 115.", "ch. 115"])
def test_of_chains(text: str) -> None:
    assert read_count(text, "a chain") == (115, Of.CHAINS)


@pytest.mark.parametrize("text", ["115 sts", "115 stitches", "115st", "115 st.", "sts 115"])
def test_of_stitches(text: str) -> None:
    assert read_count(text, "a chain") == (115, Of.STITCHES)


def test_a_bare_number_says_neither() -> None:
    assert read_count(" 115 ", "a chain") == (115, Of.NOT_SAID)


@pytest.mark.parametrize("text", ["", "ch", "ch 0", "115 cheese", "ch 1.5", "-3", "ch 115 sts", "sts"])
def test_what_is_no_count(text: str) -> None:
    with pytest.raises(UnreadableError, match="is not a chain: type a whole number from 1"):
        read_count(text, "a chain")
