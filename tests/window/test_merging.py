"""Merging another logbook from the menu: what both changed is shown side by side, and one step of undo takes it back."""

import shutil
import tkinter as tk
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import open_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.merging import Question
from logbook.window.look import Look
from logbook.window.main_window import MainWindow
from logbook.window.merge_dialog import ask_whose
from logbook.window.sentence import Sentence
from tests.support.dialogs import while_asked
from tests.support.garments import uid_of
from tests.support.screen import press, wait_until
from tests.support.whole_window import chosen_file, dialogs, said, session_of, window, words_of

__all__ = ["window"]


def coloured(path: Path, **colours: str) -> None:
    """Swatches LC-02 and LC-01 get other colours."""
    with open_book(path) as book:
        for name, colour in colours.items():
            swatch = swatch_in_hand(book, uid_of(book, name.replace("_", "-")))
            assert swatch is not None
            save_swatch(book, replace(swatch, colour=colour))


def colours(window: MainWindow) -> list[str]:
    book = session_of(window).book
    found = [swatch_in_hand(book, uid_of(book, tag)) for tag in TAGS]
    return [one.colour for one in found if one is not None]


TAGS = ("LC-01", "LC-02")


@pytest.mark.parametrize(
    ("keys", "wanted"),
    [
        (["<Alt-t>", "<Alt-h>", "<Alt-m>"], {"red", "blue"}),
        (["<Alt-h>", "<Alt-h>", "<Alt-m>"], {"blue"}),
        (["<Control-a>", "<Alt-t>", "<Alt-m>"], {"red"}),
        (["<Alt-t>", "<Alt-m>", "<Escape>"], {"blue"}),  # one is still open, so nothing is merged yet
    ],
)
def test_whose_word_goes(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, keys: list[str], wanted: set[str]
) -> None:
    book = session_of(window).book
    other = Path(shutil.copy(book.path, tmp_path / "other.logbook"))
    coloured(other, LC_01="red", LC_02="red")
    coloured(book.path, LC_01="blue", LC_02="blue")
    session_of(window).notice_others()
    chosen_file(monkeypatch, other)
    window.say("")
    heard: list[str] = []

    def answer() -> None:
        for shown in dialogs(window.root):
            if "Which one is kept" in words_of(shown) and not heard:
                heard.append(words_of(shown))
                for key in keys:
                    press(shown.focus_get() or shown, key)
                    window.root.update()
        if not heard:
            window.root.after(5, answer)

    answer()
    window.menu.books.merge()
    wait_until(window.root, lambda: heard and not dialogs(window.root))
    assert "Both logbooks changed the same things: 2 differences" in heard[0]
    if keys[-1] != "<Escape>":
        wait_until(window.root, lambda: said(window))
        assert said(window).startswith("Merged other.logbook")
    assert set(colours(window)) == wanted


def test_a_long_text_is_whole_in_large_text_and_nothing_is_beyond_the_window(root: tk.Tk, look: Look) -> None:
    look.apply(percent=200)
    text = "a little tighter than at home, " * 12
    cut: list[str] = []

    def measure(dialog: tk.Toplevel) -> None:
        dialog.update()
        right = dialog.winfo_rootx() + dialog.winfo_width()
        inside = dialog.inside.winfo_children()  # type: ignore[attr-defined]
        assert any(text in str(one.cget("text")) for one in inside if isinstance(one, Sentence))
        cut.extend(str(one) for one in inside if one.winfo_rootx() + one.winfo_width() > right)

    while_asked(root, measure)
    ask_whose(root, look, "b", (Question("swatch A", "notes", text, "loose", ("swatches", "1", "notes")),))
    assert not cut
