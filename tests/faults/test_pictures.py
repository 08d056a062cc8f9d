"""Every fault of a picture ends in a sentence or in the picture kept; ``python -m tests.faults.pictures`` also tries 5,000."""

import os
from pathlib import Path

import pytest

pytest.importorskip("resource", reason="limits as on Unix")

from tests.faults.pictures import NOT_WRITABLE, TRIALS, tried


def test_every_trial_ends_in_a_sentence_or_the_picture_kept(tmp_path: Path) -> None:
    came = dict(tried(tmp_path))
    if os.getuid() == 0:
        came.pop(NOT_WRITABLE)  # root writes everywhere
    assert len(came) >= len(TRIALS) - 1
    assert [f"{what}: {said}" for what, said in came.items() if said.startswith("WRONG")] == []
