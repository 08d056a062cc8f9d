import tkinter as tk
from pathlib import Path

import pytest

from logbook.errors import RefusedError
from logbook.window import unexpected
from logbook.window.look import Look
from logbook.window.unexpected import report_unexpected


@pytest.fixture
def told(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, str]]:
    heard: list[tuple[str, str]] = []
    monkeypatch.setattr(unexpected, "tell", lambda root, look, text, details="": heard.append((text, details)))
    return heard


def fail_in_callback(root: tk.Tk, error: Exception) -> None:
    def fail() -> None:
        try:
            int("my secret yarn")
        except ValueError as problem:
            raise error from problem

    root.after(0, fail)
    root.update()


def test_it_is_shown_and_logged_without_the_makers_data(
    root: tk.Tk, look: Look, tmp_path: Path, told: list[tuple[str, str]]
) -> None:
    log = tmp_path / "new folder" / "errors.log"
    report_unexpected(root, look, log)
    fail_in_callback(root, KeyError("my secret yarn"))
    fail_in_callback(root, KeyError("again"))
    written = log.read_text("utf-8")
    assert written.count("builtins.KeyError") == 2
    assert "builtins.ValueError\nwhich led to:" in written
    assert "in fail" in written
    assert written.count("my secret yarn") == written.count('int("my secret yarn")')
    assert len(told) == 2
    assert "did not expect" in told[0][0]
    assert str(log) in told[0][1]


def test_a_log_that_cannot_be_written_is_said(root: tk.Tk, look: Look, tmp_path: Path, told: list[tuple[str, str]]) -> None:
    (tmp_path / "file").write_text("in the way")
    report_unexpected(root, look, tmp_path / "file" / "errors.log")
    fail_in_callback(root, KeyError("x"))
    assert "could not be written" in told[0][1]
    assert "KeyError" in told[0][1]


def test_an_error_the_program_foresaw_speaks_for_itself(
    root: tk.Tk, look: Look, tmp_path: Path, told: list[tuple[str, str]]
) -> None:
    report_unexpected(root, look, tmp_path / "errors.log")
    fail_in_callback(root, RefusedError("That tag is taken: choose another."))
    assert told == [("That tag is taken: choose another.", "")]
    assert not (tmp_path / "errors.log").exists()


@pytest.mark.parametrize("error", [KeyError("popdown"), RefusedError("That tag is taken: choose another.")])
def test_an_error_that_cannot_be_shown_is_written_down_and_the_main_loop_goes_on(
    root: tk.Tk, look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], error: Exception
) -> None:
    def cannot(*_: object) -> None:
        raise ZeroDivisionError("my secret yarn")

    monkeypatch.setattr(unexpected, "tell", cannot)
    log = tmp_path / "errors.log"
    report_unexpected(root, look, log)
    went_on: list[bool] = []

    def fail() -> None:
        root.after(1, went_on.append, True)
        root.after(2, root.quit)
        raise error

    root.after(0, fail)
    root.mainloop()
    assert went_on
    written = log.read_text("utf-8")
    assert "builtins.ZeroDivisionError" in written
    assert type(error).__name__ in written
    assert "my secret yarn" not in written.replace('("my secret yarn")', "")
    assert str(log) in capsys.readouterr().err


def test_nothing_that_goes_wrong_with_the_last_resort_gets_out(
    root: tk.Tk, look: Look, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def cannot(*_: object) -> str:
        raise MemoryError

    monkeypatch.setattr(unexpected, "write_down", cannot)
    report_unexpected(root, look, tmp_path / "errors.log")
    root.report_callback_exception(KeyError, KeyError("x"), None)
