"""The window as a whole: pages, menus, undo, sheets, and what may befall the logbook under it."""

import json
import shutil
import sqlite3
import tkinter as tk
from dataclasses import replace
from pathlib import Path

import pytest

from logbook import sample
from logbook.book.backups import listed
from logbook.settings import Settings
from logbook.tasks.browsing import assumptions_of, swatch_in_hand, swatch_lines
from logbook.tasks.keeping import backup_folder, backups_of, new_book, open_book
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.undoing import history
from logbook.window import idle_backups, rescue
from logbook.window.keyboard import take_back
from logbook.window.main_window import PAGES, MainWindow
from tests.support.dialogs import while_asked
from tests.support.screen import press, wait_until
from tests.support.whole_window import dialogs, said, session_of, tags, window

__all__ = ["window"]


def test_each_page_is_a_key_away(window: MainWindow) -> None:
    for number in range(len(PAGES)):
        press(window.root, f"<Control-Key-{number + 1}>")
        assert window.tabs.index("current") == number
        assert window.page_in_hand() is not None


def test_nothing_waits_any_more_when_a_window_is_gone(root: tk.Tk) -> None:
    """Another window of the program would be told of it, as a fault."""
    other = tk.Tk()
    MainWindow(other, Settings())
    take_back(other)
    assert other.tk.call("after", "info")
    other.destroy()
    assert not other.tk.call("after", "info")


def test_text_size_changes_at_once_and_is_remembered(window: MainWindow, users_folder: Path) -> None:
    before = window.look.line
    press(window.root, "<Control-plus>", "<Control-plus>")
    assert window.look.percent == 150
    assert window.look.line > before * 1.3
    assert json.loads((users_folder / "settings.json").read_text("utf-8"))["text_size"] == 150
    press(window.root, "<Control-minus>")
    assert window.look.percent == 125


def test_a_deletion_is_undone_and_done_again_by_key(window: MainWindow) -> None:
    book = session_of(window).book
    gone = next(line for line in swatch_lines(book) if line.tag == "LC-03")
    delete_swatches(book, [gone.uid])
    session_of(window).records_changed(None)
    press(window.root, "<Control-z>")
    assert "LC-03" in tags(window)
    assert "delete swatch LC-03" in said(window)
    press(window.root, "<Control-Shift-Z>")
    assert "LC-03" not in tags(window)


def test_a_faulty_sheet_brings_its_good_rows_only_if_wanted(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    chosen = str(sample.folder() / sample.FAULTY)
    monkeypatch.setattr("tkinter.filedialog.askopenfilename", lambda **_: chosen)
    before = tags(window)
    for key, more in (("<Alt-c>", 0), ("<Alt-i>", 7)):
        while_asked_for_import(window, key)
        press(window.root, "<Control-i>")
        wait_until(window.root, lambda: not dialogs(window.root))
        wait_until(window.root, lambda more=more: len(tags(window)) == len(before) + more)
    assert "7 swatches added" in said(window)
    press(window.root, "<Control-z>")
    assert tags(window) == before


def while_asked_for_import(window: MainWindow, key: str) -> None:
    """Presses ``key`` in the dialog that shows the plan: the one before it only shows how far the reading is."""

    def look_for_it() -> None:
        plans = [found for found in dialogs(window.root) if found.title().startswith("Import") and found.grab_current() is found]
        if plans:
            plans[0].event_generate(key)
        else:
            window.root.after(5, look_for_it)

    window.root.after(5, look_for_it)


def test_an_export_writes_the_whole_log(window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "log.csv"
    monkeypatch.setattr("tkinter.filedialog.asksaveasfilename", lambda **_: str(target))
    press(window.root, "<Control-e>")
    wait_until(window.root, lambda: f"{len(tags(window))} swatches written" in said(window))
    assert target.read_bytes() == (sample.folder() / sample.SWATCHES).read_bytes()


def test_another_program_that_wrote_is_noticed_on_coming_back(window: MainWindow) -> None:
    book = session_of(window).book
    with book.again() as other:
        delete_swatches(other, [next(line.uid for line in swatch_lines(other) if line.tag == "LC-06")])
    window.root.event_generate("<FocusIn>")
    window.root.update()
    assert "Another window has changed this logbook" in said(window)


def test_a_write_waits_for_another_program_without_freezing(window: MainWindow) -> None:
    session = session_of(window)
    session.book.connection.execute("PRAGMA busy_timeout = 0")
    other = sqlite3.connect(session.book.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    window.root.after(150, lambda: other.execute("ROLLBACK"))
    uid = swatch_lines(session.book)[0].uid
    session.write(lambda: delete_swatches(session.book, [uid]))
    other.close()
    assert uid not in {line.uid for line in swatch_lines(session.book)}


def test_a_read_only_logbook_says_so(window: MainWindow, tmp_path: Path) -> None:
    book = new_book(tmp_path / "stick.logbook")
    session_of(window).book.close()
    book.read_only = True
    window.show(book)
    assert "editing is off" in said(window)


def test_a_damaged_logbook_is_offered_its_newest_backup(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "years.logbook"
    shutil.copy(session_of(window).book.path, path)
    with open_book(path) as book:
        book.back_up()
    content = path.read_bytes()[:-4096]
    path.write_bytes(content)
    asked: list[str] = []

    def answer(parent: object, look: object, sentence: str, answers: object, **_: object) -> str:
        asked.append(sentence)
        return "restore"

    monkeypatch.setattr(rescue, "ask", answer)
    window.menu.books.open_path(path)
    assert "damaged" in asked[0]
    assert "43 swatches" in asked[0]
    assert session_of(window).book.path.name == "years restored.logbook"
    assert path.read_bytes() == content


def test_the_last_logbooks_are_remembered(window: MainWindow, tmp_path: Path) -> None:
    session_of(window).book.close()
    window.show(new_book(tmp_path / "mine.logbook"))
    assert window.settings.recent[0].endswith("mine.logbook")


def test_every_menu_dialog_opens_and_closes_by_key(window: MainWindow) -> None:
    books = window.menu.books
    for opened in (books.backups, books.assumptions, books.about):
        while_asked(window.root, lambda dialog: dialog.event_generate("<Escape>"))
        opened()
        wait_until(window.root, lambda: not dialogs(window.root))


def test_help_is_open_once_beside_the_work_and_closes_by_key(window: MainWindow) -> None:
    books = window.menu.books
    for opened in (books.help, books.help, books.keys, books.rows_help):
        opened()
    titles = [shown.title().partition(":")[0] for shown in dialogs(window.root)]
    assert titles == ["A first walk through", "Keys", "Written rows"]
    for shown in dialogs(window.root):
        assert shown.grab_current() is None
        press(shown, "<Escape>")
    assert not dialogs(window.root)


def first_entry(place: tk.Misc) -> tk.Entry | None:
    for child in place.winfo_children():
        if isinstance(child, tk.Entry):
            return child
        if (found := first_entry(child)) is not None:
            return found
    return None


def test_assumptions_are_saved_and_undone(window: MainWindow) -> None:
    def change(dialog: tk.Toplevel) -> None:
        entry = first_entry(dialog)
        assert entry is not None
        entry.delete(0, "end")
        entry.insert(0, "2")
        dialog.event_generate("<Alt-s>")

    while_asked(window.root, change)
    window.menu.books.assumptions()
    wait_until(window.root, lambda: not dialogs(window.root))
    assert assumptions_of(session_of(window).book).tape_mm == 2
    press(window.root, "<Control-z>")
    assert assumptions_of(session_of(window).book).tape_mm == 1


def test_the_history_of_a_swatch_names_what_was_there_before(window: MainWindow) -> None:
    book = session_of(window).book
    line = next(line for line in swatch_lines(book) if line.tag == "LC-02")
    swatch = swatch_in_hand(book, line.uid)
    assert swatch is not None
    save_swatch(book, replace(swatch, colour="soot", readings=swatch.readings[1:]))
    lines = history(book, line.uid)
    assert ("colour", "ivory", "soot") in {(one.field, one.before, one.after) for one in lines}
    assert any(one.field.startswith("reading") and one.before for one in lines)


def test_a_save_waits_for_no_backup_and_an_idle_window_and_a_closing_one_make_them(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "mine.logbook"
    shutil.copy(session_of(window).book.path, path)
    monkeypatch.setattr(idle_backups, "IDLE_MS", 200)
    window.show(open_book(path))
    session = session_of(window)
    first, second = (line.uid for line in swatch_lines(session.book) if line.tag in ("WM-05", "WM-06"))
    session.write(lambda: delete_swatches(session.book, [first]))
    assert backups_of(session.book) == []
    wait_until(window.root, lambda: len(backups_of(session.book)) == 1)
    wait_until(window.root, lambda: window.backups._work is None)
    assert session.book.is_backed_up()
    monkeypatch.setattr(idle_backups, "IDLE_MS", 60_000)
    window.backups.book_shown()
    session.write(lambda: delete_swatches(session.book, [second]))
    folder = backup_folder() / session.book.uid
    window.backups.end()
    assert [backup.swatches for backup in listed(folder)] == [41, 42]
