"""Undo as a machine of states, in short; ``python -m tests.faults.undo`` is the long form."""

import pytest

from logbook.errors import RefusedError
from tests.faults import undo


@pytest.mark.long
def test_undo_all_is_the_first_state_and_redo_all_the_last() -> None:
    undo.run(30, 30)


def test_a_change_that_is_not_kept_would_show() -> None:
    with undo.weakened("forgetful"), pytest.raises((AssertionError, RefusedError)):
        undo.run(200, 20, shrink=False)  # it ends with the first that shows it
