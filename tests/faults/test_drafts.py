"""Ends while a real hand types, in short: once by a signal nobody hears of, once by a display that dies."""

import os

import pytest

from tests.faults import drafts
from tests.support.hand import missing


@pytest.mark.long
@pytest.mark.skipif(bool(missing()) and "CI" not in os.environ, reason=f"a real hand needs {' and '.join(missing())}")
@pytest.mark.parametrize("end", ["kill -9", "X server killed"])
def test_what_was_typed_is_offered_again(end: str) -> None:
    result = drafts.run(1, seed=3, ends=(end,))
    assert not result.faults
    assert result.offered[end] == 1


@pytest.mark.long
@pytest.mark.skipif(bool(missing()), reason=f"a real hand needs {' and '.join(missing())}")
def test_it_shows_when_nothing_is_written() -> None:
    result = drafts.run(1, "unwritten", ends=("kill -9",))
    assert [fault for fault in result.faults if "nothing was offered" in fault]
