"""A backup folder that can't be written to: saving goes on, it is said once, and another folder is offered."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.settings import Settings, load_settings, save_settings
from logbook.tasks.keeping import back_up, backups_of, newest_good_backup, open_book
from logbook.window import idle_backups
from logbook.window.main_window import MainWindow
from tests.support.screen import hit, wait_until
from tests.support.whole_window import TYPED, Answers, said, session_of, type_into, until_all_is_quiet, window

__all__ = ["window"]


@pytest.fixture
def mine(window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> MainWindow:
    """The window on a logbook of one's own, with a file where the folder of the backups should be."""
    monkeypatch.setenv("LOGBOOK_HOME", str(tmp_path / "home"))
    (tmp_path / "home").mkdir(exist_ok=True)
    (tmp_path / "home" / "backups").write_text("no folder")
    path = Path(shutil.copy(session_of(window).book.path, tmp_path / "mine.logbook"))
    window.show(open_book(path))
    window.root.update()
    return window


def go_idle(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(idle_backups, "IDLE_MS", 50)
    window.backups.book_shown()


def chosen_folder(monkeypatch: pytest.MonkeyPatch, *folders: Path) -> None:
    left = [str(folder) for folder in folders]
    monkeypatch.setattr("tkinter.filedialog.askdirectory", lambda **_: left.pop(0))


def test_saving_goes_on_and_another_folder_is_taken(mine: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "stick").mkdir()
    chosen_folder(monkeypatch, tmp_path / "home" / "backups", tmp_path / "stick")
    asked = Answers(mine, "<Alt-c>", "<Alt-c>")
    type_into(mine, 0, "yarn")
    hit(mine.root, "<Control-s>")
    path = session_of(mine).book.path
    assert TYPED.encode() in path.read_bytes()
    go_idle(mine, monkeypatch)
    until_all_is_quiet(mine, asked)
    assert "can't be made" in asked.heard[0]
    wait_until(mine.root, lambda: "from now on" in said(mine))
    assert load_settings()[0].backups == str(tmp_path / "stick")
    assert [one.path.is_relative_to(tmp_path / "stick") for one in backups_of(session_of(mine).book)] == [True]
    found = newest_good_backup(path)
    assert found is not None
    assert found.path.is_relative_to(tmp_path / "stick")


def test_going_on_without_is_asked_once(mine: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    asked = Answers(mine, "<Alt-g>")
    go_idle(mine, monkeypatch)
    until_all_is_quiet(mine, asked)
    tries: list[int] = []
    look = mine.backups._look
    mine.backups._look = lambda: (tries.append(1), look())[1]  # type: ignore[method-assign]
    wait_until(mine.root, lambda: len(tries) > 3 and mine.backups._work is None)
    assert len(asked.heard) == 1
    type_into(mine, 0, "yarn")
    hit(mine.root, "<Control-s>")
    assert TYPED.encode() in session_of(mine).book.path.read_bytes()


def test_what_was_made_before_another_folder_was_chosen_is_still_found(tmp_path: Path, mine: MainWindow) -> None:
    (tmp_path / "home" / "backups").unlink()
    with open_book(session_of(mine).book.path) as book:
        first = back_up(book)
        save_settings(replace(Settings(), backups=str(tmp_path / "stick")))
        second = back_up(book)
        assert second.is_relative_to(tmp_path / "stick")
        assert {one.path for one in backups_of(book)} == {first, second}
