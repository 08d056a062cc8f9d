import random
from pathlib import Path

import pytest

from tests.sheets import live_garments, live_numbers


@pytest.mark.long
def test_a_spreadsheet_comes_to_the_numbers_of_the_program_with_other_inputs(tmp_path: Path) -> None:
    """Pieces, sizes and garments of every kind, and rounding by itself, in one run of the spreadsheet program."""
    chance = random.Random(11)
    every = [live_numbers.trial_of_rounding(tmp_path), *live_numbers.trials(tmp_path, len(live_numbers.KINDS), chance)]
    every += live_garments.trials(tmp_path, len(live_garments.KINDS), chance)
    assert live_numbers.differing(every, tmp_path) == []
