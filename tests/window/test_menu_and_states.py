"""Every entry of the menu on every state of a logbook: one sentence, nothing unexpected, bytes unchanged where promised."""

import gc
import os
import shutil
import sqlite3
import tkinter as tk
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from logbook.book.schema import STEPS
from logbook.tasks.keeping import new_book
from logbook.window.main_window import MainWindow
from logbook.window.unexpected import report_unexpected
from tests.support.screen import settle, wait_until
from tests.support.sheets import LEAST, write_sheet
from tests.support.whole_window import chosen_file, dialogs, said, session_of, tags, window, words_of

__all__ = ["window"]

DIARY = b"Dear diary,\n" * 9999


def another_logbook(path: Path) -> None:
    with new_book(path.with_name("other.logbook"), keep_backups=False) as other:
        path.write_bytes(other.path.read_bytes())
    other.path.unlink()


def read_only(window: MainWindow, path: Path) -> None:
    session_of(window).book.read_only = True


def found_damaged(window: MainWindow, path: Path) -> None:
    session_of(window).damage = f"{path.name} is damaged (so it was found): restore the newest backup under a new name."


BEFALLS: dict[str, Callable[[MainWindow, Path], object]] = {
    "read only": read_only,
    "found damaged": found_damaged,
    "moved": lambda _, path: path.rename(path.with_name("moved away.logbook")),
    "gone": lambda _, path: path.unlink(),
    "replaced": lambda _, path: os.replace(shutil.copy(path, path.with_name("new")), path),
    "written over by another logbook": lambda _, path: another_logbook(path),
    "written over": lambda _, path: path.write_bytes(DIARY),
}

ENTRIES: dict[str, Callable[[MainWindow], object]] = {
    "import": lambda window: window.menu.books.import_sheet(),
    "paste rows": lambda window: window.menu.books.paste_rows(),
    "export": lambda window: window.menu.books.export_sheet(),
    "merge": lambda window: window.menu.books.merge(),
    "save a copy": lambda window: window.menu.books.save_copy(),
    "yarns": lambda window: window.menu.books.yarns(),
    "backups": lambda window: window.menu.books.backups(),
    "check": lambda window: window.menu.books.check(),
    "what is assumed": lambda window: window.menu.books.assumptions(),
    "undo": lambda window: window.menu._undo.undo(),
    "redo": lambda window: window.menu._undo.redo(),
    "changes of this record": lambda window: window.menu._undo.history(),
    "typed and not saved": lambda window: window.drafts.offer(),
    "open what is open": lambda window: window.menu.books.open_path(session_of(window).book.path),
    "new": lambda window: window.menu.books.new(),
    "the sample": lambda window: window.menu.books.open_sample(),
}


WITH_FIELDS = ("yarns", "what is assumed")
"""Those that open a dialog to type in."""
MADE = {"export": "out.csv", "save a copy": "copy.logbook", "new": "new.logbook"}
"""What some of them make."""


class Escapes:
    """Leaves every dialog by Escape, once what it shows has come to an end of its own accord or not; keeps what was said."""

    def __init__(self, window: MainWindow) -> None:
        self.heard: list[str] = []
        self._window, self._at = window, ""
        self._look()

    def _look(self) -> None:
        if not self._window.root.winfo_exists():
            return
        self._window.root.after(5, self._look)  # first: a key may bring up what waits for its own end
        for shown in dialogs(self._window.root)[-1:]:
            words = words_of(shown)
            if (
                shown.grab_current() is shown and " …" not in words and self._at != str(shown)
            ):  # “Reading log.csv …” ends by itself
                self._leave(shown, words)

    def _leave(self, shown: tk.Toplevel, words: str) -> None:
        before, self._at = self._at, str(shown)
        self.heard.append(words)
        place = shown.focus_lastfor() or shown
        place.focus_force()
        place.update()
        if place.winfo_exists():
            place.event_generate("<Escape>")
        self._at = before


def contents(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir() if path.is_file()}


@pytest.mark.parametrize("entry", ENTRIES)
@pytest.mark.parametrize("befall", BEFALLS)
def test_what_is_open(window: MainWindow, befall: str, entry: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    log = tmp_path / "home" / "errors.log"
    sheet = write_sheet(tmp_path / "sheet.csv", {"tag": "Z-1", **LEAST})
    path = session_of(window).book.path
    made = {entry: tmp_path / name for entry, name in MADE.items()} | {"import": sheet, "merge": tmp_path / "none.logbook"}
    chosen_file(monkeypatch, *[made[entry]] * 3 if entry in made else [""] * 3)
    window.root.clipboard_clear()  # what an earlier test copied is no part of this one
    report_unexpected(window.root, window.look, log, window.watch.deal_with)
    BEFALLS[befall](window, path)
    before = contents(path.parent)
    window.say("")
    escapes = Escapes(window)
    window.root.after(0, lambda: ENTRIES[entry](window))
    wait_until(window.root, lambda: said(window).strip() or escapes.heard)
    wait_until(window.root, lambda: not dialogs(window.root))
    settle(window.root)
    if entry in WITH_FIELDS:
        gc.collect()  # in the thread of the window, not when a worker of the next entry happens to collect
    assert not log.exists(), log.read_text()
    assert not any("Something went wrong" in words for words in escapes.heard)
    after = contents(path.parent)
    assert {name: after[name] for name in before} == before, "nothing that was there may be written to"
    assert after.keys() - before.keys() <= set(MADE.values())


def test_every_entry_is_tried(window: MainWindow) -> None:
    """But those that only show or change the look: a new one is to be thought of here."""
    labels = {
        menu.entrycget(place, "label")
        for menu in window.menu._bar.children.values()
        for place in range((menu.index("end") or 0) + 1)
        if menu.type(place) == "command"
    }
    only_shown = {"A first walk through", "Written rows", "Keys", "About this program", "Larger text", "Smaller text"}
    only_shown |= {"Quit", "Open…"}  # which have tests of their own
    recent = {label for label in labels if label.endswith(".logbook")}
    assert len(labels - only_shown - recent) == len(ENTRIES) - 1  # “Open recent” stands for what is open


def newer(path: Path) -> None:
    with path.open("r+b") as file:
        file.seek(60)
        file.write((len(STEPS) + 1).to_bytes(4, "big"))


def other_program(path: Path) -> None:
    path.unlink()
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("CREATE TABLE recipe (name)")


def pages_broken(path: Path) -> None:
    with path.open("r+b") as file:
        file.seek(3 * 4096)
        file.write(b"\xff" * 4096)


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


STATES: dict[str, tuple[Callable[[Path], object], str]] = {
    "not there": (Path.unlink, "There is no logbook"),
    "empty": (lambda path: path.write_bytes(b""), "empty (0 bytes)"),
    "cut short": (lambda path: os.truncate(path, 4096), "its length is not what it says"),
    "not SQLite": (lambda path: path.write_bytes(DIARY), "some other kind of file"),
    "another program's": (other_program, "another program's file"),
    "a newer schema": (newer, "newer"),
    "damaged": (pages_broken, "is damaged"),
    "a folder": (a_folder, "a folder"),
}


@pytest.mark.parametrize("state", STATES)
def test_what_is_to_be_opened(window: MainWindow, state: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The one that is open stays open, as it was."""
    make, sentence = STATES[state]
    folder = tmp_path / "stick"
    folder.mkdir()
    path = Path(shutil.copy(session_of(window).book.path, folder / "years.logbook"))
    make(path)
    before = contents(folder)
    chosen_file(monkeypatch, path)
    escapes = Escapes(window)
    window.root.after(0, window.menu.books.open)
    wait_until(window.root, lambda: escapes.heard and not dialogs(window.root))
    assert len(escapes.heard) == 1
    assert sentence in escapes.heard[0]
    assert contents(folder) == before
    assert path.name not in window.root.title()
    assert "LC-02" in tags(window)
