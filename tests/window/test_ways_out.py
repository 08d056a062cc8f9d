"""Where the logbook can't take what is typed any more, there is a way out that takes it along."""

from pathlib import Path

import pytest

from logbook.book.logbook import WrittenOverError
from logbook.tasks.keeping import back_up, new_book, open_book
from logbook.window.main_window import MainWindow
from tests.support.screen import hit, press, settle
from tests.support.whole_window import (
    PAGE_FIELDS,
    TYPED,
    Answers,
    chosen_file,
    form_of,
    refusal,
    session_of,
    text_in,
    type_into,
    until_all_is_quiet,
    window,
)

__all__ = ["window"]

on_each_page = pytest.mark.parametrize(("page", "key"), PAGE_FIELDS, ids=["swatches", "pieces", "patterns"])


@pytest.fixture
def mine(window: MainWindow) -> MainWindow:
    """The window on a logbook of one's own."""
    window.show(open_book(session_of(window).book.path))
    settle(window.root)  # the list asks for gauges when it is drawn
    return window


@on_each_page
def test_a_full_disk(mine: MainWindow, page: int, key: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    back_up(session_of(mine).book)
    type_into(mine, page, key)
    form = mine.page_in_hand()
    notes = form.editor.fields["notes"] if hasattr(form, "editor") else form.form.fields["notes"]  # type: ignore[union-attr]
    notes.text = "much to say " * 2000
    connection = session_of(mine).book.connection
    connection.execute(f"PRAGMA max_page_count = {connection.execute('PRAGMA page_count').fetchone()[0]}")
    hit(mine.root, "<Control-s>")
    assert "save a copy on another disk" in refusal(mine)
    chosen_file(monkeypatch, tmp_path / "elsewhere.logbook")
    asked = Answers(mine, "<Alt-g>")
    mine.menu.books.save_copy()
    until_all_is_quiet(mine, asked)
    assert "without what is typed and not saved" in asked.heard[0]
    assert session_of(mine).book.path.name == "elsewhere.logbook"
    assert text_in(mine, key).endswith(TYPED)
    press(form_of(mine).fields[key].input, "<Control-s>")
    assert TYPED.encode() in (tmp_path / "elsewhere.logbook").read_bytes()


def test_a_copy_on_the_full_disk_itself_is_refused(mine: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    type_into(mine, 0, "yarn")
    chosen_file(monkeypatch, Path("/dev/full/copy.logbook"))
    asked = Answers(mine, "<Escape>")
    mine.menu.books.save_copy()
    until_all_is_quiet(mine, asked)
    assert "/dev/full" in asked.heard[0]
    assert text_in(mine, "yarn").endswith(TYPED)


def test_nothing_typed_and_nothing_wrong_asks_nothing(mine: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    chosen_file(monkeypatch, tmp_path / "copy.logbook")
    mine.menu.books.save_copy()
    assert session_of(mine).book.path.name != "copy.logbook"
    open_book(tmp_path / "copy.logbook").close()


def test_a_logbook_cut_to_nothing_while_it_is_open(mine: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    back_up(session_of(mine).book)
    type_into(mine, 0, "yarn")
    session_of(mine).book.path.write_bytes(b"")
    chosen_file(monkeypatch, tmp_path / "copy.logbook")
    asked = Answers(mine, "<Alt-r>", "<Alt-k>")
    mine.menu.books.save_copy()
    until_all_is_quiet(mine)
    assert "newest good backup" in asked.heard[0]
    assert not (tmp_path / "copy.logbook").exists()
    assert text_in(mine, "yarn").endswith(TYPED)
    press(form_of(mine).fields["yarn"].input, "<Control-s>")
    assert TYPED.encode() in session_of(mine).book.path.read_bytes()


def test_no_copy_is_made_of_what_is_no_logbook_any_more(tmp_path: Path) -> None:
    with new_book(tmp_path / "a.logbook") as book:
        for content in (b"", b"Dear diary,\n" * 9999):
            book.path.write_bytes(content)
            with pytest.raises(WrittenOverError):
                book.save_copy(tmp_path / "copy.logbook")
            assert not (tmp_path / "copy.logbook").exists()


def test_a_backup_that_was_declined_is_offered_again_with_a_copy(
    mine: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    back_up(session_of(mine).book)
    type_into(mine, 0, "yarn")
    session_of(mine).book.path.write_bytes(b"")
    asked = Answers(mine, "<Escape>")
    hit(mine.root, "<Control-s>")
    until_all_is_quiet(mine, asked)
    assert text_in(mine, "yarn").endswith(TYPED)
    asked = Answers(mine, "<Alt-r>")
    chosen_file(monkeypatch, tmp_path / "copy.logbook")
    mine.menu.books.save_copy()
    until_all_is_quiet(mine, asked)
    assert "newest good backup" in asked.heard[0]
    press(form_of(mine).fields["yarn"].input, "<Control-s>")
    assert TYPED.encode() in session_of(mine).book.path.read_bytes()
