"""Power cuts, in short; ``python -m tests.faults.power`` is the long form."""

from tests.faults import power
from tests.support.shim import needs_the_shim

pytestmark = needs_the_shim


def test_a_power_cut_takes_back_nothing_acknowledged() -> None:
    result = power.run(2000)
    assert result.images == 2000
    assert 200 < result.rolled_back < 1800, "both kinds of moments must have been met, or this shows little"
    assert (result.lost, result.corrupt) == (0, 0)


def test_without_syncing_it_would_show() -> None:
    result = power.run(60, "synchronous=OFF")
    assert result.lost > 0
    assert result.corrupt > 0


def test_without_syncing_the_folder_it_would_show() -> None:
    result = power.run(60, "synchronous=FULL")
    assert result.lost > 0
    assert result.corrupt == 0


def test_without_a_journal_on_the_disk_it_would_show() -> None:
    assert power.run(60, "journal_mode=MEMORY").corrupt > 0
