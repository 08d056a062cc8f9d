"""The window starts whatever lies about: settings, names and folders that hardly anybody has."""

import gc
import json
import os
import signal
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.tasks.keeping import new_book
from logbook.window.main import run
from logbook.window.main_window import MainWindow
from tests.support.screen import wait_until

Start = tuple[str, str | None]
"""The title of the window that stands, and what is noted of the settings."""


@pytest.fixture
def started(screen: str, monkeypatch: pytest.MonkeyPatch) -> Iterator[list[Start]]:
    """What stood when the window was ready to work; it is closed at once."""
    found: list[Start] = []

    def work(window: MainWindow, note: str | None) -> int:
        window.root.deiconify()
        window.root.update()
        found.append((window.root.title(), note))
        return 0

    monkeypatch.setattr(MainWindow, "work", work)
    yield found
    gc.collect()  # here, where its window was made, and not in a thread of a later test


def made(path: Path) -> Path:
    new_book(path).close()
    return path


def test_half_a_character_in_the_settings(started: list[Start], users_folder: Path, tmp_path: Path) -> None:
    users_folder.mkdir(parents=True)
    kept = {"recent": ["/no\ud800.logbook"], "opened": ["\ud800"], "units": "in"}
    (users_folder / "settings.json").write_text(json.dumps(kept))
    assert run(made(tmp_path / "a.logbook")) == 0
    ((title, note),) = started
    assert title.startswith("a.logbook")
    assert note is not None
    assert "opened, recent" in note


@pytest.mark.skipif(os.name != "posix", reason="pipes as on Unix")
def test_a_pipe_in_the_place_of_the_settings_is_not_waited_for(started: list[Start], users_folder: Path, tmp_path: Path) -> None:
    users_folder.mkdir(parents=True)
    os.mkfifo(users_folder / "settings.json")
    assert run(made(tmp_path / "a.logbook")) == 0
    assert "could not be read" in str(started[0][1])


@pytest.mark.skipif(sys.platform != "linux", reason="names that are no text")
def test_a_logbook_whose_name_is_no_text(started: list[Start], tmp_path: Path) -> None:
    book = made(tmp_path / os.fsdecode(b"caf\xe9.logbook"))
    for _ in range(2):  # the second time it is among those opened last
        assert run(book) == 0
    assert [title[:3] for title, _ in started] == ["caf", "caf"]
    assert [note for _, note in started] == [None, None]


def test_an_end_from_outside_is_told_to_the_window(monkeypatch: pytest.MonkeyPatch, screen: str, tmp_path: Path) -> None:
    kept: list[str] = []

    def work(window: MainWindow, note: str | None) -> int:
        signal.raise_signal(signal.SIGTERM)
        wait_until(window.root, lambda: kept)
        return 0

    monkeypatch.setattr(MainWindow, "work", work)
    monkeypatch.setattr(MainWindow, "cut_short", lambda window: kept.append("what is typed"))
    monkeypatch.setattr("logbook.window.ending.os.kill", lambda *_: None)
    handler = signal.getsignal(signal.SIGTERM)
    assert run(made(tmp_path / "a.logbook")) == 0
    assert signal.getsignal(signal.SIGTERM) == handler
    gc.collect()


@pytest.mark.parametrize("home", [None, "."])
def test_no_python_file_of_the_folder_or_the_home_is_run(
    started: list[Start], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, home: str | None
) -> None:
    monkeypatch.chdir(tmp_path)
    for name in (".Logbook.py", f".{Path(sys.argv[0]).stem}.py"):
        Path(name).write_text("open('it ran', 'w').close()")
    if home is None:
        monkeypatch.delenv("HOME", raising=False)
    else:
        monkeypatch.setenv("HOME", home)
    assert run(made(tmp_path / "a.logbook")) == 0
    assert started
    assert not Path("it ran").exists()
