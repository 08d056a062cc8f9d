"""The window tests cannot pass by doing nothing: skipped for want of a screen, or with errors nobody sees."""

import os
import shutil
import subprocess
import sys
import tkinter as tk
from pathlib import Path
from tkinter import font

import pytest

from tests.support.display import own_display
from tests.support.fits import SCREENS
from tests.support.plain_font import FAMILY
from tests.support.screen import callback_errors_raised, focused, wait_until

ROOT = Path(__file__).parent.parent


@pytest.mark.parametrize(("ci", "outcome"), [("", "2 skipped"), ("true", "2 errors")])
def test_a_missing_screen_and_a_missing_hand(ci: str, outcome: str, tmp_path: Path) -> None:
    surroundings = {k: v for k, v in os.environ.items() if k not in ("DISPLAY", "CI")}
    surroundings |= {"PATH": str(tmp_path), "CI": ci, "DISPLAY": ":9999"}
    if sys.platform != "linux":
        pytest.skip("there is always a screen here")
    tests = [
        "tests/window/test_folding.py",
        "tests/window/test_hand_behind.py",
        "-k",
        "starts or title_of_the_window",
        "-rs",
        "-n",
        "0",
        "-p",
        "no:cacheprovider",
    ]
    run = subprocess.run(
        [sys.executable, "-m", "pytest", *tests],
        cwd=ROOT, env=surroundings, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert outcome in run.stdout
    assert "no screen to show windows on" in run.stdout
    assert "a real hand needs Xvfb and openbox and xdotool" in run.stdout
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


def test_a_keyboard_that_nobody_here_has_is_not_found(root: tk.Tk) -> None:
    another = tk.Tk()
    wait_until(another, another.winfo_viewable)
    another.focus_force()
    wait_until(another, lambda: another.focus_get() is not None and root.focus_get() is None)
    with pytest.raises(AssertionError, match="not within"):
        focused(root, seconds=0.02)
    assert focused(another, seconds=0) is another
    another.destroy()


@pytest.mark.parametrize("dpi", SCREENS, indirect=True)
def test_the_screen_and_the_font_are_not_those_of_the_machine(root: tk.Tk, dpi: int) -> None:
    assert font.nametofont("TkDefaultFont", root).actual("family") in (FAMILY, "fixed") or os.environ.get("LOGBOOK_TEST_FONTS")
    assert root.winfo_fpixels("1i") == pytest.approx(dpi, abs=1)


@pytest.mark.skipif(shutil.which("Xvfb") is None, reason="no Xvfb to start")
def test_a_screen_of_ones_own_and_then_what_was_before(monkeypatch: pytest.MonkeyPatch) -> None:
    program = "import tkinter; print(round(tkinter.Tk().winfo_fpixels('1i')))"
    for before in (":9999", None):
        if before is None:
            monkeypatch.delenv("DISPLAY", raising=False)
        else:
            monkeypatch.setenv("DISPLAY", before)
        with own_display(dpi=144) as display:
            assert os.environ["DISPLAY"] == display != before
            shown = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
            assert shown.stdout == "144\n"
        assert os.environ.get("DISPLAY") == before
