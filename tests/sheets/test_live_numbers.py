from pathlib import Path

from tests.sheets.live_numbers import KINDS, tried


def test_a_spreadsheet_comes_to_the_numbers_of_the_program_with_other_inputs(tmp_path: Path) -> None:
    assert tried(tmp_path, times=len(KINDS), seed=11) == []
