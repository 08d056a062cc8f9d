"""Kill −9, in short; ``python -m tests.faults.kill`` is the long form."""

import pytest

from tests.faults import kill, kill_backups, kill_merge
from tests.faults.work import CYCLE


@pytest.mark.long
def test_a_kill_takes_back_nothing_acknowledged_and_leaves_no_half() -> None:
    result = kill.run(100)
    assert result.kills == 100
    assert len(result.during) >= 5, f"killed only during {result.during}, of {CYCLE}"
    assert (result.lost, result.corrupt, result.bad_backups) == (0, 0, 0)


def test_a_kill_in_each_phase_of_a_backup_leaves_no_bad_one() -> None:
    result = kill_backups.run(4)
    assert result.kills == 4
    assert (result.lost, result.corrupt, result.bad_backups) == (0, 0, 0)


def test_a_backup_that_has_its_name_before_it_is_whole_would_show() -> None:
    assert kill_backups.run(20, "in-place").bad_backups > 0


def test_without_one_transaction_for_one_action_it_would_show() -> None:
    assert kill.run(60, "parts").lost > 0


def test_said_before_it_is_done_it_would_show() -> None:
    assert kill.run(60, "early").lost > 0


def test_a_kill_in_a_merge_leaves_it_as_before_or_merged() -> None:
    result = kill_merge.run(12)
    assert result.kills == 12
    assert (result.lost, result.corrupt) == (0, 0)


def test_a_merge_that_is_no_one_transaction_would_show() -> None:
    assert kill_merge.run(60, "parts").lost > 0
