"""The measurement of the window brings the screen it needs."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
SMALL = """
from tests.bench import window
window.SWATCHES, window.RUNS, window.KEYS = 20, 1, "l"
window.BARE = window.BARE.replace("10_000", "200")
window.keep_bytecode = lambda _: None  # what is compiled already will do
window.main()
"""


@pytest.mark.parametrize("xvfb", [True, False])
def test_without_a_display(xvfb: bool, tmp_path: Path) -> None:
    if xvfb and shutil.which("Xvfb") is None:
        pytest.skip("no Xvfb to start")
    surroundings = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "WAYLAND_DISPLAY")}
    if not xvfb:
        surroundings["PATH"] = str(tmp_path)
    ran = subprocess.run(
        [sys.executable, "-c", SMALL], cwd=ROOT, env=surroundings, capture_output=True, encoding="utf-8", check=False
    )
    if xvfb:
        assert (ran.returncode, ran.stderr) == (0, "")
        assert "start to usable window" in ran.stdout
    else:
        assert ran.returncode == 1
        assert ran.stderr == "There is no screen to show windows on: set DISPLAY or install Xvfb.\n"
