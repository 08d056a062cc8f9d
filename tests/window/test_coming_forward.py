"""A second start on the logbook that is shown brings the window to the front."""

import shutil
import subprocess
import sys
from pathlib import Path

from logbook.tasks.keeping import open_book
from logbook.window.main_window import MainWindow
from tests.support.screen import wait_until
from tests.support.whole_window import session_of, window

__all__ = ["window"]


def test_a_second_start_opens_no_second_window(window: MainWindow, tmp_path: Path) -> None:
    window.show(open_book(Path(shutil.copy(session_of(window).book.path, tmp_path / "mine.logbook"))))
    window.root.withdraw()
    second = subprocess.Popen(
        [sys.executable, "-m", "logbook", str(tmp_path / "mine.logbook")], stdout=subprocess.PIPE, text=True
    )
    wait_until(window.root, lambda: second.poll() is not None)
    assert second.communicate()[0] == "mine.logbook is open already: its window is in front.\n"
    assert second.returncode == 0
    assert window.root.state() == "normal"


def test_the_sample_is_nobodys(window: MainWindow, users_folder: Path) -> None:
    assert session_of(window).is_sample
    assert not (users_folder / "windows").exists()


def test_another_logbook_shown_is_the_one_that_counts(window: MainWindow, tmp_path: Path, users_folder: Path) -> None:
    for name in ("one", "two"):
        window.show(open_book(Path(shutil.copy(session_of(window).book.path, tmp_path / f"{name}.logbook"))))
    assert len(list((users_folder / "windows").iterdir())) == 1
    window.show_none("It is gone.")
    assert not list((users_folder / "windows").iterdir())
