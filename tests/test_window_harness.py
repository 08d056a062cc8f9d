"""The window tests cannot pass by doing nothing: skipped for want of a screen, or with errors nobody sees."""

import os
import subprocess
import sys
import tkinter as tk
from pathlib import Path

import pytest

from tests.support.screen import callback_errors_raised, wait_until

ROOT = Path(__file__).parent.parent


@pytest.mark.parametrize(("ci", "outcome"), [("", "1 skipped"), ("true", "1 error")])
def test_a_missing_screen(ci: str, outcome: str, tmp_path: Path) -> None:
    surroundings = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "CI")}
    surroundings |= {"PATH": str(tmp_path), "CI": ci, "DISPLAY": ":9999"}
    if sys.platform != "linux":
        pytest.skip("there is always a screen here")
    tests = ["tests/window/test_folding.py", "-k", "starts", "-rs", "-n", "0", "-p", "no:cacheprovider"]
    run = subprocess.run(
        [sys.executable, "-m", "pytest", *tests],
        cwd=ROOT, env=surroundings, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert outcome in run.stdout
    assert "no screen to show windows on" in run.stdout
    assert run.returncode == (1 if ci else 0)


def test_an_error_in_a_callback_fails_the_test(root: tk.Tk) -> None:
    def fail() -> None:
        raise KeyError("in a callback")

    # Reported to the window while these lines run, and so not to the fixture.
    outer = root.report_callback_exception
    root.after_idle(fail)
    with pytest.raises(ExceptionGroup) as caught, callback_errors_raised(root):
        root.update()
    root.report_callback_exception = outer
    assert isinstance(caught.value.exceptions[0], KeyError)


def test_waiting_ends(root: tk.Tk) -> None:
    with pytest.raises(AssertionError, match="not within"):
        wait_until(root, lambda: False, seconds=0.02)
