from pathlib import Path

import pytest

from tests.sheets.calculator import tried


@pytest.mark.long
def test_a_spreadsheet_reckons_what_the_program_says(tmp_path: Path) -> None:
    assert tried(tmp_path, times=5, seed=7) == []
