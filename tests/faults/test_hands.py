"""A short form of ``tests.faults.hands``, and its ways of finding what is wrong."""

import pytest

from tests.faults.hands import Setting, let_loose

pytestmark = pytest.mark.usefixtures("real_hand")
SECONDS = 5.0


@pytest.mark.long
@pytest.mark.parametrize("empty", [False, True])
def test_a_hand_at_random_finds_nothing_wrong(empty: bool) -> None:
    done, wrong, _ = let_loose(Setting(empty=empty), 10_000, seed=1 + empty, seconds=SECONDS)
    assert not wrong, f"after {len(done)} events: {wrong}"
    assert done


@pytest.mark.parametrize("weakness", ["look-ups"])
def test_a_weakness_is_found(weakness: str) -> None:
    assert let_loose(Setting(weakness=weakness), 2_000, seed=1)[1]
