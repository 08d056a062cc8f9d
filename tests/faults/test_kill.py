"""Kill −9, in short; ``python -m tests.faults.kill`` is the long form."""

from tests.faults import kill
from tests.faults.work import CYCLE


def test_a_kill_takes_back_nothing_acknowledged_and_leaves_no_half() -> None:
    result = kill.run(100)
    assert result.kills == 100
    assert len(result.during) >= 5, f"killed only during {result.during}, of {CYCLE}"
    assert (result.lost, result.corrupt, result.bad_backups) == (0, 0, 0)


def test_without_one_transaction_for_one_action_it_would_show() -> None:
    result = kill.run(15, "parts")
    assert result.lost + result.corrupt > 0  # which of the two depends on the moment


def test_said_before_it_is_done_it_would_show() -> None:
    assert kill.run(15, "early").lost > 0
