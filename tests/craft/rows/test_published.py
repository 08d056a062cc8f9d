"""Patterns as they are published are read whole with the counts that their writer worked out; their altered twins are named."""

import pytest

from tests.craft.rows.published_patterns import Published, outcome, published

PATTERNS = published()


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda pattern: f"{pattern.kind}, {pattern.name}")
def test_a_published_pattern_and_its_altered_twin(pattern: Published) -> None:
    assert outcome(pattern) == ("read", "named")


def test_there_are_enough_of_every_kind() -> None:
    kinds = [pattern.kind for pattern in PATTERNS]
    assert len(kinds) >= 150
    assert all(kinds.count(kind) >= 8 for kind in set(kinds))
