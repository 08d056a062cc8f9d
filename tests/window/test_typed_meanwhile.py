"""What is typed while a save waits for another program is a change of its own: it stays, and the window says it is not saved."""

import gc
import sqlite3
import tkinter as tk
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from logbook.pages import session as session_module
from logbook.pages.session import Session
from logbook.window.assumptions_dialog import show_assumptions
from logbook.window.main_window import MainWindow
from logbook.window.pieces.made_dialog import _MadeDialog
from tests.support.screen import hit, press, wait_until
from tests.support.whole_window import (
    PAGE_FIELDS,
    TYPED,
    Answers,
    dialogs,
    form_of,
    said,
    session_of,
    text_in,
    type_into,
    until_all_is_quiet,
    window,
    words_of,
)

__all__ = ["window"]

on_each_page = pytest.mark.parametrize(("page", "key"), PAGE_FIELDS, ids=["swatches", "pieces", "patterns"])
LATER = "typed later"


@pytest.fixture
def held(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> Iterator[list[str]]:
    """Another program writes until the window has waited for it twice; what is in the list happens before that."""
    monkeypatch.setattr(session_module, "PATIENCE", 20)
    session = session_of(window)
    pause, meanwhile, pauses = session.pause, list[str](), list[int]()
    assert pause is not None
    with closing(sqlite3.connect(session.book.path, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")

        def waits() -> None:
            pauses.append(1)
            if len(pauses) == 2:
                for letter in meanwhile:
                    press_letter(window, letter)
                other.execute("ROLLBACK")
            pause()

        session.pause = waits
        yield meanwhile


def press_letter(window: MainWindow, letter: str) -> None:
    place = window.root.focus_get()
    assert place is not None
    place.event_generate({" ": "<space>"}.get(letter, f"<Key-{letter}>"))


def is_kept(path: Path, text: str) -> bool:
    return text.encode() in path.read_bytes()


@on_each_page
def test_it_stays_and_is_said_not_to_be_saved(window: MainWindow, page: int, key: str, held: list[str]) -> None:
    path = session_of(window).book.path
    type_into(window, page, key)
    held += LATER
    hit(window.root, "<Control-s>")
    assert is_kept(path, TYPED)
    assert not is_kept(path, LATER)
    assert text_in(window, key).endswith(TYPED + LATER)
    assert "not saved" in words_of(window.tabs)
    assert "typed in the meantime is not saved yet" in said(window)
    assert LATER not in said(window)
    hit(window.root, "<Control-s>")
    assert is_kept(path, TYPED + LATER)


@on_each_page
def test_whoever_leaves_is_asked_again(window: MainWindow, page: int, key: str, held: list[str]) -> None:
    type_into(window, page, key)
    held += LATER
    asked = Answers(window, "<Alt-s>", "<Escape>")
    hit(window.root, "<Control-n>")
    until_all_is_quiet(window, asked)
    assert len(asked.heard) == 2
    assert text_in(window, key).endswith(TYPED + LATER)


@pytest.mark.parametrize(("page", "key"), PAGE_FIELDS[:2], ids=["swatches", "pieces"])
def test_it_outlives_what_is_deleted_meanwhile(window: MainWindow, page: int, key: str, held: list[str]) -> None:
    press(window.root, f"<Control-Key-{page + 1}>")
    press(form_of(window).fields[key].input, "<End>")
    held += LATER
    hit(window.root, "<Control-d>")
    assert text_in(window, key).endswith(LATER)
    assert "not saved" in words_of(window.tabs)


def in_a_dialog(window: MainWindow) -> tk.Toplevel:
    wait_until(window.root, lambda: dialogs(window.root))
    return dialogs(window.root)[0]


def test_a_made_piece_stays_open_with_it(window: MainWindow, held: list[str]) -> None:
    path = session_of(window).book.path
    held += LATER

    def work() -> None:
        dialog = in_a_dialog(window)
        assert isinstance(dialog, _MadeDialog)
        press(dialog.fields["notes"].input, "<End>", *"abc", "<Control-s>")
        assert "typed in the meantime is not saved yet" in words_of(dialog)
        assert is_kept(path, "abc")
        assert not is_kept(path, LATER)
        press(dialog.fields["notes"].input, "<Control-s>")
        assert not dialog.winfo_exists()

    press(window.root, "<Control-Key-2>")
    window.root.after(50, work)
    press(window.root, "<Control-m>")
    assert is_kept(path, "abc" + LATER)


def test_the_assumptions_stay_open_with_it(window: MainWindow, held: list[str]) -> None:
    session: Session = session_of(window)
    held += "5"
    show_assumptions(window.root, window.look, session)
    dialog = in_a_dialog(window)
    press(dialog.focus_get() or dialog, "<End>", "<BackSpace>", "2", "<Return>")
    assert dialog.winfo_exists()
    press(dialog.focus_get() or dialog, "<Return>")
    assert not dialog.winfo_exists()
    gc.collect()  # in the thread of the window, not when that of the last backup happens to collect
