"""Two logbooks brought together, in short; ``python -m tests.faults.merge`` is the long form."""

import pytest

from tests.faults import merge


def test_two_histories_come_together_alike_both_ways_and_all_that_is_doubtful_is_asked() -> None:
    merge.run(15, 5)


@pytest.mark.parametrize("weakness", ["unasked", "one-sided"])
def test_what_is_decided_without_a_word_or_lost_would_show(weakness: str) -> None:
    with merge.weakened(weakness), pytest.raises(AssertionError):
        merge.run(200, 5, shrink=False)  # it ends with the first that shows it
