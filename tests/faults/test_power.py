"""Power cuts, in short; ``python -m tests.faults.power`` is the long form."""

import pytest

from tests.faults import power
from tests.support.shim import needs_the_shim

pytestmark = needs_the_shim


@pytest.mark.long
def test_a_power_cut_takes_back_nothing_acknowledged() -> None:
    result = power.run(1000)
    assert result.images == 1000
    assert 200 < result.rolled_back < 800, "both kinds of moments must have been met, or this shows little"
    assert {work for work, _ in power.BESIDE} <= result.beside.keys()
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


@pytest.mark.parametrize("weakness", ["files-unsynced", "in-place"])
def test_a_file_that_has_its_name_before_it_is_whole_would_show(weakness: str) -> None:
    assert power.run(100, weakness).corrupt > 0


def test_a_name_that_is_not_brought_to_the_disk_would_show() -> None:
    assert power.run(100, "folders-unsynced").lost > 0
