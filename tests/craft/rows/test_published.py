"""Patterns as they are published are read whole with the counts that their writer worked out; their altered twins are named."""

import pytest

from tests.craft.rows.published_patterns import Published, mends, outcome, published

PATTERNS = published()


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda pattern: f"{pattern.kind}, {pattern.name}")
def test_a_published_pattern_and_its_altered_twin(pattern: Published) -> None:
    assert outcome(pattern) == ("read", "named")


def test_there_are_enough_of_every_kind() -> None:
    kinds = [pattern.kind for pattern in PATTERNS]
    assert len(kinds) >= 150
    assert all(kinds.count(kind) >= 8 for kind in set(kinds))


def test_no_mend_is_offered_that_does_not_mend() -> None:
    offered = [mend for pattern in PATTERNS[::5] for mend in mends(pattern.twin)]
    assert len(offered) > 5
    assert all(offered)
