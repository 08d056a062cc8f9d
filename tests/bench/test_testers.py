"""A small run of the simulation of testers: gauge alone raises no alarm, a size that is off is named."""

from tests.bench.testers import ON_PIECE, WAYS, shares


def test_a_size_that_is_off_is_named_and_gauge_alone_is_not() -> None:
    found = shares(5, WAYS[ON_PIECE], 40, seed=3)
    assert found.false <= 0.05
    assert found.found >= 0.8
