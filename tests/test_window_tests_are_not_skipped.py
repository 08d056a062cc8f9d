"""Without a screen the window tests say why they are skipped; on a build machine that is a failure."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent


@pytest.mark.parametrize(("ci", "outcome"), [("", "1 skipped"), ("true", "1 error")])
def test_a_missing_screen(ci: str, outcome: str, tmp_path: Path) -> None:
    surroundings = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "CI")}
    surroundings |= {"PATH": str(tmp_path), "CI": ci, "DISPLAY": ":9999"}
    if sys.platform != "linux":
        pytest.skip("there is always a screen here")
    tests = ["tests/window/test_folding.py", "-k", "starts", "-rs", "-p", "no:cacheprovider"]
    run = subprocess.run(
        [sys.executable, "-m", "pytest", *tests],
        cwd=ROOT, env=surroundings, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert outcome in run.stdout
    assert "no screen to show windows on" in run.stdout
    assert run.returncode == (1 if ci else 0)
