"""What is typed is kept as it is typed, and offered again by the next window after one that died.

Ends by signals and by a dying X server, with real keys: tests/faults/drafts.py.
"""

import os
import shutil
import tkinter as tk
from collections.abc import Callable
from pathlib import Path

import pytest

from logbook.settings import state_folder
from logbook.tasks.keeping import open_book
from logbook.tasks.logging_swatches import delete_swatches
from logbook.window import draft_keeper
from logbook.window.main_window import MainWindow
from logbook.window.pieces.chart_dialog import _ChartDialog
from logbook.window.pieces.made_dialog import _MadeDialog
from tests.support.dialogs import while_asked
from tests.support.screen import hit, press, wait_until
from tests.support.whole_window import (
    PAGE_FIELDS,
    TYPED,
    Answers,
    dialogs,
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


@pytest.fixture
def mine(window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> MainWindow:
    """The window on a logbook of one's own, whose drafts are looked at often."""
    monkeypatch.setenv("LOGBOOK_HOME", str(tmp_path / "home"))
    monkeypatch.setattr(draft_keeper, "KEEP_MS", 10)
    monkeypatch.setattr(draft_keeper, "OFFER_MS", 1)
    path = Path(shutil.copy(session_of(window).book.path, tmp_path / "mine.logbook"))
    window.show(open_book(path))
    window.root.update()
    return window


def kept() -> list[Path]:
    return sorted((state_folder() / "drafts").rglob("*.json"))


def is_kept(text: str = TYPED) -> bool:
    return any(text in path.read_text() for path in kept())


def die_and_start_again(window: MainWindow, *answers: str) -> Answers:
    """The drafts are left as by a window that was killed, and the logbook is shown anew."""
    wait_until(window.root, is_kept)
    window.drafts.end(leave=True)
    answered = Answers(window, *answers)
    window.show(open_book(session_of(window).book.path))
    return answered


@on_each_page
def test_it_is_offered_and_taken_up(mine: MainWindow, page: int, key: str) -> None:
    type_into(mine, page, key)
    text = text_in(mine, key)
    asked = die_and_start_again(mine, "<Return>")
    until_all_is_quiet(mine, asked)
    assert TYPED in asked.heard[0]
    assert "not saved yet" in said(mine)
    assert mine.tabs.index("current") == page
    assert text_in(mine, key) == text
    assert is_kept(), "it must be kept again, by this window"
    hit(mine.root, "<Control-s>")
    wait_until(mine.root, lambda: not kept())
    assert TYPED.encode() in session_of(mine).book.path.read_bytes()


@on_each_page
def test_what_is_saved_or_reverted_is_dropped(mine: MainWindow, page: int, key: str) -> None:
    for way in ("<Control-s>", "<Control-r>"):
        type_into(mine, page, key)
        wait_until(mine.root, is_kept)
        hit(mine.root, way)
        wait_until(mine.root, lambda: not kept())


def test_what_was_saved_just_before_the_end_is_not_offered(mine: MainWindow) -> None:
    type_into(mine, 0, "yarn")
    wait_until(mine.root, is_kept)
    (path,) = kept()
    content = path.read_bytes()
    hit(mine.root, "<Control-s>")
    wait_until(mine.root, lambda: not kept())
    path.write_bytes(content)
    asked = Answers(mine, "<Escape>")
    mine.drafts.offer()
    assert not asked.heard
    assert not kept()


def test_an_end_from_outside_keeps_it_at_once(mine: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(mine.drafts, "_look", lambda: None)
    wait_until(mine.root, lambda: not mine.drafts._writing)
    type_into(mine, 0, "yarn")
    mine.cut_short()
    assert is_kept()


def test_a_new_swatch_comes_whole(mine: MainWindow) -> None:
    press(mine.root, "<Control-n>")
    type_into(mine, 0, "yarn")
    asked = die_and_start_again(mine, "<Return>")
    until_all_is_quiet(mine, asked)
    assert "A new swatch" in asked.heard[0]
    assert text_in(mine, "yarn") == TYPED
    assert mine.page_in_hand().form.saved is None  # type: ignore[union-attr]


def test_what_was_deleted_meanwhile_is_a_new_one(mine: MainWindow) -> None:
    type_into(mine, 0, "yarn")
    stitch = text_in(mine, "stitch pattern")
    wait_until(mine.root, is_kept)
    page = mine.page_in_hand()
    with session_of(mine).book.again() as other:
        delete_swatches(other, [page.form.uid])  # type: ignore[union-attr]
    asked = die_and_start_again(mine, "<Return>")
    until_all_is_quiet(mine, asked)
    assert "not in the logbook any more" in asked.heard[0]
    assert page is not mine.page_in_hand()
    assert text_in(mine, "yarn").endswith(TYPED)
    assert text_in(mine, "stitch pattern") == stitch


def test_a_wanted_width(mine: MainWindow) -> None:
    page = mine.page_in_hand()
    page.chain.width.text = TYPED  # type: ignore[union-attr]
    page.side.chain._foldings["swatches.ways"].header.invoke()  # type: ignore[union-attr]
    page.chain._ticks["sideways"].set(True)  # type: ignore[union-attr]
    asked = die_and_start_again(mine, "<Return>")
    until_all_is_quiet(mine, asked)
    texts = mine.page_in_hand().chain.texts()  # type: ignore[union-attr]
    assert (texts.width, texts.sideways) == (TYPED, True)


def test_a_made_piece(mine: MainWindow) -> None:
    press(mine.root, "<Control-Key-2>")

    def type_and_die(dialog: tk.Toplevel) -> None:
        assert isinstance(dialog, _MadeDialog)
        press(dialog.fields["notes"].input, "<End>", *TYPED.replace(" ", ""))
        wait_until(mine.root, lambda: is_kept("riversand"))
        mine.drafts.end(leave=True)
        dialog.close()

    while_asked(mine.root, type_and_die)
    press(mine.root, "<Control-m>")
    piece = mine.page_in_hand().form.uid  # type: ignore[union-attr]
    seen: list[tuple[str, str]] = []

    def look() -> None:
        """From within: the dialog holds whoever waits for the window."""
        for dialog in dialogs(mine.root):
            if isinstance(dialog, _MadeDialog):
                seen.append((dialog.fields["notes"].text, dialog._form.read().made.piece))
                dialog.close()
        if not seen:
            mine.root.after(10, look)

    Answers(mine, "<Return>")
    mine.show(open_book(session_of(mine).book.path))
    look()
    wait_until(mine.root, lambda: seen)
    assert seen == [("riversand", piece)]


def test_a_body_chart(mine: MainWindow) -> None:
    """Its table is long to type, so it comes back, and giving it up asks."""
    press(mine.root, "<Control-Key-2>")
    heard: list[str] = []

    def type_and_die(dialog: tk.Toplevel) -> None:
        assert isinstance(dialog, _ChartDialog)
        dialog.name.text = "my own"

        def stay() -> None:
            asked = [child for child in dialog.winfo_children() if isinstance(child, tk.Toplevel)]
            if not asked:
                mine.root.after(10, stay)
                return
            heard.append(words_of(asked[0]))
            asked[0].leave()  # type: ignore[attr-defined]

        stay()
        dialog.leave()
        assert dialog.winfo_exists()
        wait_until(mine.root, lambda: is_kept("my own"))
        mine.drafts.end(leave=True)
        dialog.close()

    while_asked(mine.root, type_and_die)
    press(mine.root, "<Control-b>")
    assert "“my own” is not saved" in heard[0]
    seen: list[tuple[str, int]] = []

    def look() -> None:
        for dialog in dialogs(mine.root):
            if isinstance(dialog, _ChartDialog):
                seen.append((dialog.name.text, len(dialog.table.rows)))
                dialog.close()
        if not seen:
            mine.root.after(10, look)

    Answers(mine, "<Return>")
    mine.show(open_book(session_of(mine).book.path))
    look()
    wait_until(mine.root, lambda: seen)
    assert seen[0][0] == "my own"
    assert seen[0][1] > 4


def test_not_now_offers_it_again_and_the_menu_does(mine: MainWindow) -> None:
    type_into(mine, 0, "yarn")
    until_all_is_quiet(mine, die_and_start_again(mine, "<Escape>"))
    assert not text_in(mine, "yarn").endswith(TYPED)
    assert is_kept()
    asked = Answers(mine, "<Return>")
    mine.drafts.offer()
    until_all_is_quiet(mine, asked)
    assert text_in(mine, "yarn").endswith(TYPED)


def test_thrown_away_it_is_gone(mine: MainWindow) -> None:
    type_into(mine, 0, "yarn")
    until_all_is_quiet(mine, die_and_start_again(mine, "<Alt-d>"))
    assert not kept()
    mine.drafts.offer()
    assert "There is no unsaved work" in said(mine)


def test_other_units_come_back_with_it(mine: MainWindow) -> None:
    type_into(mine, 1, "length", "9")
    wait_until(mine.root, lambda: bool(kept()))
    mine.drafts.end(leave=True)
    path = kept()[0]
    path.write_text(path.read_text().replace('"units": "cm"', '"units": "in"'))
    asked = Answers(mine, "<Return>")
    mine.show(open_book(session_of(mine).book.path))
    until_all_is_quiet(mine, asked)
    assert mine.settings.units == "in"


def test_of_the_sample_nothing_is_kept(window: MainWindow) -> None:
    type_into(window, 0, "yarn")
    window.drafts.keep_now()
    assert not kept()


def test_a_disk_that_does_not_take_it_is_said_once(mine: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    heard: list[str] = []

    def full(self: object, drafts: object) -> None:
        raise OSError(28, os.strerror(28))

    monkeypatch.setattr("logbook.book.drafts.DraftFile.keep", full)
    monkeypatch.setattr(mine, "say", heard.append)
    type_into(mine, 0, "yarn")
    tries: list[int] = []
    looks: Callable[[], None] = mine.drafts._look
    monkeypatch.setattr(mine.drafts, "_look", lambda: (tries.append(1), looks())[1])
    wait_until(mine.root, lambda: len(tries) > 5)
    assert len([one for one in heard if "is lost" in one]) == 1
