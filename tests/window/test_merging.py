"""Merging another logbook from the menu: what both changed is shown side by side, and one step of undo takes it back."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import open_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.window.main_window import MainWindow
from tests.support.garments import uid_of
from tests.support.screen import press, wait_until
from tests.support.whole_window import chosen_file, dialogs, said, session_of, window, words_of

__all__ = ["window"]


def coloured(path: Path, colour: str) -> None:
    with open_book(path) as book:
        swatch = swatch_in_hand(book, uid_of(book, "LC-02"))
        assert swatch is not None
        save_swatch(book, replace(swatch, colour=colour))


@pytest.mark.parametrize(("key", "colour"), [("<Alt-t>", "red"), ("<Alt-h>", "blue"), ("<Escape>", "blue")])
def test_whose_word_goes(window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, key: str, colour: str) -> None:
    book = session_of(window).book
    other = Path(shutil.copy(book.path, tmp_path / "other.logbook"))
    coloured(other, "red")
    coloured(book.path, "blue")
    session_of(window).notice_others()
    chosen_file(monkeypatch, other)
    window.say("")
    heard: list[str] = []

    def answer() -> None:
        for shown in dialogs(window.root):
            if "Whose word goes" in words_of(shown) and not heard:
                heard.append(words_of(shown))
                press(shown, key)
        if not heard:
            window.root.after(5, answer)

    answer()
    window.menu.books.merge()
    wait_until(window.root, lambda: heard and not dialogs(window.root))
    assert "Both logbooks changed the same things: 1 difference" in heard[0]
    swatch = swatch_in_hand(book, uid_of(book, "LC-02"))
    assert swatch is not None
    assert swatch.colour == colour
    if key != "<Escape>":
        wait_until(window.root, lambda: said(window))
        assert said(window).startswith("Merged other.logbook")
