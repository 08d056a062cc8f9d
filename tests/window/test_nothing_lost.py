"""What may befall the logbook while something is typed: it is said in a sentence, and what was typed is still there."""

import os
import shutil
import sqlite3
import time
from collections.abc import Callable, Iterator
from contextlib import closing, contextmanager
from dataclasses import replace
from pathlib import Path

import pytest

from logbook import sample
from logbook.pages import session as session_module
from logbook.tasks import exporting, importing
from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.tasks.keeping import back_up, new_book, open_book
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.pieces import planned_pieces, save_piece
from logbook.tasks.stitch_patterns import save_pattern
from logbook.window import watch
from logbook.window.background import Cancelled
from logbook.window.main_window import MainWindow
from logbook.window.unexpected import report_unexpected
from tests.support.screen import hit, press, wait_until
from tests.support.whole_window import (
    PAGE_FIELDS,
    TYPED,
    Answers,
    chosen_file,
    dialogs,
    form_of,
    refusal,
    said,
    session_of,
    tags,
    text_in,
    type_into,
    until_all_is_quiet,
    window,
    words_of,
)

__all__ = ["window"]

on_each_page = pytest.mark.parametrize(("page", "key"), PAGE_FIELDS, ids=["swatches", "pieces", "patterns"])


def is_typed(window: MainWindow, key: str) -> bool:
    return text_in(window, key).endswith(TYPED)


def is_kept(path: Path) -> bool:
    """Whether what was typed reached the file at ``path``."""
    return TYPED.encode() in path.read_bytes()


def come_back(window: MainWindow) -> None:
    """The user comes back to the window from another one."""
    window.root.event_generate("<FocusIn>")
    window.root.update()


@contextmanager
def another_program(path: Path) -> Iterator[sqlite3.Connection]:
    connection = sqlite3.connect(path, isolation_level=None)
    connection.execute("BEGIN IMMEDIATE")
    yield connection
    connection.close()


@on_each_page
def test_in_use_elsewhere(window: MainWindow, page: int, key: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(session_module, "PATIENCE", 2)
    path = session_of(window).book.path
    type_into(window, page, key)
    moments: list[str] = []

    def tick() -> None:
        moments.append(said(window))
        window.root.after(20, tick)

    with another_program(path) as other:
        tick()
        hit(window.root, "<Control-s>")
        assert "is being written by another window or program" in refusal(window)
        assert any("waiting for it" in moment for moment in moments)
        assert len(moments) > 5, "the window stood still"
        assert is_typed(window, key)
        window.root.after(50, lambda: other.execute("ROLLBACK"))
        hit(window.root, "<Control-s>")
    assert is_kept(path)


def test_while_it_waits_nothing_else_takes_what_is_typed_away(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(session_module, "PATIENCE", 3)
    type_into(window, 0, "yarn")
    with another_program(session_of(window).book.path):
        for key in ("<Control-n>", "<Control-z>", "<Control-s>", "<Control-q>"):
            window.root.after(40, lambda key=key: window.root.focus_get().event_generate(key))  # type: ignore[misc,union-attr]
        hit(window.root, "<Control-s>")
    assert not dialogs(window.root)
    assert is_typed(window, "yarn")


def change_what_is_in_hand(window: MainWindow) -> None:
    """As another window would, over a connection of its own."""
    page = window.page_in_hand()
    assert page is not None
    with session_of(window).book.again() as other:
        match window.tabs.index("current"):
            case 0:
                swatch = swatch_in_hand(other, page.form.uid)  # type: ignore[attr-defined]
                assert swatch is not None
                save_swatch(other, replace(swatch, colour="changed elsewhere"))
            case 1:
                piece = next(one for one in planned_pieces(other) if one.uid == page.form.uid)  # type: ignore[attr-defined]
                save_piece(other, replace(piece, notes="changed elsewhere"))
            case _:
                save_pattern(other, replace(page.form.saved, notes="changed elsewhere"))  # type: ignore[attr-defined]


@on_each_page
def test_another_window_changed_the_same_record(window: MainWindow, page: int, key: str) -> None:
    path = session_of(window).book.path
    type_into(window, page, key)
    change_what_is_in_hand(window)
    for answer, kept in (("<Escape>", False), ("<Alt-s>", True)):
        asked = Answers(window, answer)
        hit(window.root, "<Control-s>")
        assert "was changed elsewhere" in asked.heard[0]
        assert is_typed(window, key)
        assert is_kept(path) is kept
    press(window.root, "<Control-z>")
    assert b"changed elsewhere" in path.read_bytes()


@on_each_page
def test_another_window_changed_something_else(window: MainWindow, page: int, key: str) -> None:
    type_into(window, page, key)
    with session_of(window).book.again() as other:
        delete_swatches(other, [next(line.uid for line in swatch_lines(other) if line.tag == "LC-06")])
    come_back(window)
    assert "Another window has changed this logbook" in said(window)
    assert is_typed(window, key)
    assert "LC-06" not in tags(window)
    hit(window.root, "<Control-s>")
    wait_until(window.root, lambda: is_kept(session_of(window).book.path))


def moved(path: Path) -> None:
    path.rename(path.with_name("moved away.logbook"))


def replaced(path: Path) -> None:
    os.replace(shutil.copy(path, path.with_name("from the cloud")), path)


@on_each_page
@pytest.mark.parametrize("befall", [moved, replaced, Path.unlink], ids=["moved", "replaced", "gone"])
def test_the_file_is_not_there_any_more(
    window: MainWindow, befall: Callable[[Path], object], page: int, key: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = session_of(window).book.path
    type_into(window, page, key)
    befall(path)
    before = path.read_bytes() if path.exists() else None
    hit(window.root, "<Control-s>")
    assert "was moved or replaced" in refusal(window)
    assert is_typed(window, key)
    chosen_file(monkeypatch, tmp_path / "saved.logbook")
    answers = Answers(window, "<Alt-s>", "<Alt-g>")
    come_back(window)
    until_all_is_quiet(window, answers)
    assert "Save a copy" in answers.heard[0]
    assert session_of(window).book.path.name == "saved.logbook"
    assert is_typed(window, key)
    hit(window.root, "<Control-s>")
    assert is_kept(tmp_path / "saved.logbook")
    assert (path.read_bytes() if path.exists() else None) == before


@on_each_page
@pytest.mark.parametrize("by", ["another logbook", "no logbook"])
def test_the_file_is_written_over(window: MainWindow, by: str, page: int, key: str, tmp_path: Path) -> None:
    session = session_of(window)
    back_up(session.book)
    with new_book(tmp_path / "other.logbook") as other:
        content = other.path.read_bytes() if by == "another logbook" else b"Dear diary,\n" * 9999
    type_into(window, page, key)
    session.book.path.write_bytes(content)
    path = session.book.path
    answers = Answers(window, "<Alt-r>", *(["<Alt-k>"] if by == "no logbook" else []))  # another's logbook is not set aside
    come_back(window)
    until_all_is_quiet(window, answers)
    assert "The newest good backup" in answers.heard[0]
    assert session_of(window).book.path.name.endswith("restored.logbook")
    assert is_typed(window, key)
    hit(window.root, "<Control-s>")
    wait_until(window.root, lambda: is_kept(session_of(window).book.path))
    assert path.read_bytes() == content


def test_a_logbook_written_over_can_be_opened_anew(window: MainWindow, tmp_path: Path) -> None:
    path = session_of(window).book.path
    with new_book(tmp_path / "other.logbook") as other:
        content = other.path.read_bytes()
    path.write_bytes(content)
    window.menu.books.open_path(path)
    assert tags(window) == set()
    path.write_bytes(b"Dear diary,\n" * 9999)
    answers = Answers(window, "<Escape>")
    window.menu.books.open_path(path)
    assert "some other kind of file" in answers.heard[0]
    assert window.session is None
    assert "Open" in said(window)
    window.menu.books.open_path(tmp_path / "other.logbook")
    assert session_of(window).book.path.name == "other.logbook"


@on_each_page
def test_a_place_that_can_only_be_read(
    window: MainWindow, page: int, key: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = session_of(window).book.path
    book = open_book(path)
    book.read_only = True
    window.show(book)
    window.root.update()
    assert "(read only)" in window.root.title()
    assert "editing is off" in said(window)
    field = type_into(window, page, key)
    before = path.read_bytes()
    shown = window.page_in_hand()
    assert {name for name, button in shown.row.buttons.items() if "disabled" not in button.state()} <= {  # type: ignore[union-attr]
        "Revert",
        "Put back",
    }
    hit(window.root, "<Control-s>")
    assert "editing is off" in refusal(window)
    assert is_typed(window, key)
    assert path.read_bytes() == before
    chosen_file(monkeypatch, tmp_path / "mine.logbook")
    answers = Answers(window, "<Alt-g>")
    window.menu.books.save_copy()
    until_all_is_quiet(window, answers)
    assert is_typed(window, key)
    press(field, "<Control-s>")
    assert is_kept(tmp_path / "mine.logbook")
    assert path.read_bytes() == before


@on_each_page
def test_a_full_disk(window: MainWindow, page: int, key: str) -> None:
    book = session_of(window).book
    type_into(window, page, key)
    pages = book.connection.execute("PRAGMA page_count").fetchone()[0]
    book.connection.execute(f"PRAGMA max_page_count = {pages}")
    form = window.page_in_hand()
    long = "much to say " * 2000
    notes = form.editor.fields["notes"] if hasattr(form, "editor") else form.form.fields["notes"]  # type: ignore[union-attr]
    notes.text = long
    before = tags(window)
    hit(window.root, "<Control-s>")
    assert "The disk is full" in refusal(window)
    assert is_typed(window, key)
    assert text_in(window, "notes") == long
    book.connection.execute("PRAGMA max_page_count = 1000000")
    hit(window.root, "<Control-s>")
    assert is_kept(book.path)
    assert tags(window) == before


@on_each_page
def test_an_error_nobody_expected(
    window: MainWindow, page: int, key: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    log = tmp_path / "errors.log"
    report_unexpected(window.root, window.look, log, window.watch.deal_with)
    session = session_of(window)
    type_into(window, page, key)

    def fail(_: object) -> None:
        raise KeyError(TYPED)

    with monkeypatch.context() as patched:
        patched.setattr(type(session), "write", lambda self, action: fail(action))
        answers = Answers(window, "<Escape>")
        hit(window.root, "<Control-s>")
        until_all_is_quiet(window, answers)
    assert "Something went wrong" in answers.heard[0]
    assert "KeyError" in log.read_text("utf-8")
    assert TYPED not in log.read_text("utf-8")
    assert is_typed(window, key)
    hit(window.root, "<Control-s>")
    assert is_kept(session.book.path)


@on_each_page
@pytest.mark.parametrize(
    ("answer", "left", "kept"), [("<Escape>", False, False), ("<Alt-s>", True, True), ("<Alt-d>", True, False)]
)
def test_leaving_with_something_typed(
    window: MainWindow, page: int, key: str, answer: str, left: bool, kept: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    gone: list[bool] = []
    monkeypatch.setattr(window, "close_down", lambda: gone.append(True))
    type_into(window, page, key)
    other_page = (page + 1) % len(PAGE_FIELDS)
    press(window.root, f"<Control-Key-{other_page + 1}>")
    answers = Answers(window, answer)
    hit(window.root, "<Control-q>")
    assert "not saved" in answers.heard[0]
    assert bool(gone) is left
    assert is_kept(session_of(window).book.path) is kept
    if not left:
        assert window.tabs.index("current") == page
        assert is_typed(window, key)


@on_each_page
def test_undo_and_redo_with_something_typed(window: MainWindow, page: int, key: str) -> None:
    session = session_of(window)
    with session.book.again() as other:
        delete_swatches(other, [next(line.uid for line in swatch_lines(other) if line.tag == "LC-06")])
    come_back(window)
    type_into(window, page, key)
    for keys in ("<Control-z>", "<Control-Shift-Z>"):
        Answers(window, "<Escape>")
        press(window.root, keys)
        assert is_typed(window, key)
        assert "LC-06" not in tags(window)
    Answers(window, "<Alt-d>")
    press(window.root, "<Control-z>")
    assert "discarded, and nothing else yet" in said(window)
    assert not is_typed(window, key)
    assert "LC-06" not in tags(window)
    type_into(window, page, key)
    Answers(window, "<Alt-s>")
    press(window.root, "<Control-z>")
    assert "saved now" in said(window)
    assert is_typed(window, key)
    assert is_kept(session.book.path)
    press(window.root, "<Control-z>")
    assert not is_typed(window, key)
    press(window.root, "<Control-z>")
    assert "LC-06" in tags(window)
    press(window.root, "<Control-Shift-Z>", "<Control-Shift-Z>")
    assert "LC-06" not in tags(window)
    assert is_typed(window, key)


def test_what_is_typed_on_the_page_shown_is_asked_of_first(window: MainWindow) -> None:
    type_into(window, *PAGE_FIELDS[0])
    type_into(window, *PAGE_FIELDS[2])
    answers = Answers(window, "<Escape>")
    press(window.root, "<Control-z>")
    assert answers.heard[0].startswith("What you typed for double crochet is not saved.")
    assert len(answers.heard) == 1
    assert is_typed(window, PAGE_FIELDS[2][1])
    window.page_at(0)
    assert is_typed(window, PAGE_FIELDS[0][1])


def test_damage_found_after_opening_stops_writing_and_offers_the_backup(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = Path(shutil.copy(session_of(window).book.path, tmp_path / "years.logbook"))
    with open_book(path) as book:
        back_up(book)
    with sqlite3.connect(path) as broken:
        broken.execute("UPDATE swatch_words SET folded = 'nonsense'")
    broken.close()
    monkeypatch.setattr(watch, "CHECK_AFTER_MS", 200)
    answers = Answers(window, "<Alt-n>")
    window.menu.books.open_path(path)
    type_into(window, 0, "yarn")
    until_all_is_quiet(window, answers)
    assert "The newest good backup" in answers.heard[0]
    damaged = path.read_bytes()
    hit(window.root, "<Control-s>")
    assert "is damaged" in refusal(window)
    assert is_typed(window, "yarn")
    assert path.read_bytes() == damaged


def test_damage_in_what_is_shown_first_offers_the_backup_too(window: MainWindow, tmp_path: Path) -> None:
    """The start looks at no page before it shows it: what can't be shown is said like damage that is found later."""
    path = Path(shutil.copy(session_of(window).book.path, tmp_path / "years.logbook"))
    with open_book(path) as book:
        back_up(book)
    with closing(sqlite3.connect(path)) as sound:
        (page,) = sound.execute("SELECT rootpage FROM sqlite_schema WHERE name = 'reading'").fetchone()
    with path.open("r+b") as file:
        file.seek((page - 1) * 4096)
        file.write(b"\xff" * 200)
    damaged = path.read_bytes()
    report_unexpected(window.root, window.look, tmp_path / "errors.log", window.watch.deal_with)
    answers = Answers(window, "<Alt-n>")
    window.show(open_book(path))
    until_all_is_quiet(window, answers)
    assert "The newest good backup" in answers.heard[0]
    assert "is damaged" in said(window)
    assert path.read_bytes() == damaged
    assert not (tmp_path / "errors.log").exists()


def test_a_sound_logbook_is_checked_and_nothing_said(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    checked: list[int] = []
    monkeypatch.setattr(watch, "CHECK_AFTER_MS", 1)
    thorough = watch.check_thoroughly
    monkeypatch.setattr(watch, "check_thoroughly", lambda path, go_on: checked.append(thorough(path, go_on)))
    window.watch.book_shown()
    before = said(window)
    wait_until(window.root, lambda: checked)
    assert checked == [43]
    assert said(window) == before


def test_leaving_does_not_wait_for_the_check(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    heard: list[str] = []

    def endless(path: Path, go_on: Callable[[], object]) -> None:
        heard.append("begun")
        try:
            deadline = time.monotonic() + 20
            while time.monotonic() < deadline:
                go_on()
        except Cancelled:
            heard.append("stopped")
            raise

    monkeypatch.setattr(watch, "CHECK_AFTER_MS", 1)
    monkeypatch.setattr(watch, "check_thoroughly", endless)
    window.watch.book_shown()
    wait_until(window.root, lambda: heard)
    window.watch.end()
    assert heard == ["begun", "stopped"]


class TestSheetsCancelled:
    """In the question for a file, while it is read or written, and when the plan is seen."""

    def test_no_file_is_chosen(self, window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
        left = chosen_file(monkeypatch, "", "")
        before = session_of(window).book.path.read_bytes()
        press(window.root, "<Control-i>", "<Control-e>")
        assert not left
        assert session_of(window).book.path.read_bytes() == before

    @pytest.mark.parametrize("step", ["the plan", "the writing"])
    def test_an_import(self, window: MainWindow, step: str, monkeypatch: pytest.MonkeyPatch) -> None:
        path = session_of(window).book.path
        chosen_file(monkeypatch, sample.folder() / sample.FAULTY)
        before, had = path.read_bytes(), tags(window)

        def endless(writing: object, rows: object, progress: Callable[[int, int], None]) -> None:
            real(writing, rows, progress)  # type: ignore[arg-type]
            deadline = time.monotonic() + 5
            while time.monotonic() < deadline:
                progress(1, 7)  # raises once it is cancelled

        real = importing._write
        monkeypatch.setattr(importing, "_write", endless)
        keys = {"Without those rows": "<Alt-c>" if step == "the plan" else "<Alt-i>", "Importing": "<Escape>"}
        pressed = pressing(window, keys)
        press(window.root, "<Control-i>")
        wait_until(window.root, lambda: len(pressed) == (1 if step == "the plan" else 2))
        until_all_is_quiet(window)
        assert (path.read_bytes(), tags(window)) == (before, had)

    def test_an_export(self, window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        target = tmp_path / "log.csv"
        target.write_text("as it was")
        chosen_file(monkeypatch, target)

        def endless(stream: object, swatches: object, progress: Callable[[int, int], None]) -> None:
            deadline = time.monotonic() + 5
            while time.monotonic() < deadline:
                progress(1, 7)

        monkeypatch.setattr(exporting, "write_csv", endless)
        pressing(window, {"Writing log.csv": "<Escape>"})
        press(window.root, "<Control-e>")
        until_all_is_quiet(window)
        assert target.read_text() == "as it was"
        assert sorted(path.name for path in tmp_path.iterdir() if "log.csv" in path.name) == ["log.csv"]

    def test_with_something_typed(self, window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
        chosen_file(monkeypatch, sample.folder() / sample.FAULTY)
        before = session_of(window).book.path.read_bytes()
        type_into(window, 0, "yarn")
        asked = Answers(window, "<Escape>")
        press(window.root, "<Control-i>")
        assert "not saved" in asked.heard[0]
        assert is_typed(window, "yarn")
        assert session_of(window).book.path.read_bytes() == before


def pressing(window: MainWindow, keys: dict[str, str]) -> list[str]:
    """Presses a key in the dialog that says something; gives which were pressed, as they are."""
    pressed: list[str] = []

    def look_for_it() -> None:
        held = [shown for shown in dialogs(window.root) if shown.grab_current() is shown]
        words = next((words for words in keys if held and words not in pressed and words in words_of(held[0])), None)
        if words is not None:
            pressed.append(words)
            place = held[0].focus_lastfor() or held[0]
            place.focus_force()
            place.update()
            place.event_generate(keys[words])
        if len(pressed) < len(keys) and not finished:
            window.root.after(5, look_for_it)

    finished: list[bool] = []
    window.root.bind("<Destroy>", lambda _: finished.append(True), add="+")
    window.root.after(5, look_for_it)
    return pressed


@pytest.mark.parametrize(
    "text", ["=1+1", "two\nlines", "צמר רך 100", "🧶👩🏽\u200d🎨", "007", "'\"; DROP TABLE swatch", "x" * 32_767]
)
def test_texts_that_hurt_through_the_form(window: MainWindow, text: str) -> None:
    """More of them go through forms, sheets and undo without a window."""
    field = type_into(window, 0, "notes", "")
    window.root.clipboard_clear()
    window.root.clipboard_append(text)
    field.event_generate("<<SelectAll>>")
    field.event_generate("<<Paste>>")
    window.root.update()
    assert text_in(window, "notes").endswith(text)
    press(field, "<Control-s>")
    page = window.page_in_hand()
    kept = swatch_in_hand(session_of(window).book, page.form.uid)  # type: ignore[union-attr]
    assert kept is not None
    assert kept.notes == text_in(window, "notes")
    assert text in kept.notes


def test_a_character_that_can_not_be_kept_is_named_and_stays(window: MainWindow) -> None:
    field = type_into(window, 0, "notes", "")
    before = session_of(window).book.path.read_bytes()
    field.insert("end", "bell \x07")  # type: ignore[attr-defined]
    window.root.update()
    press(field, "<Control-s>")
    assert "see the marked field" in refusal(window)
    assert "U+0007" in words_of(form_of(window).fields["notes"])
    assert text_in(window, "notes").endswith("bell \x07")
    assert session_of(window).book.path.read_bytes() == before
