"""A damaged logbook: its newest backup, and whose name it has in the end."""

import errno
import os
import shutil
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from logbook.tasks.browsing import swatch_in_hand, swatch_lines
from logbook.tasks.keeping import AlteredError, DamagedError, back_up, check_thoroughly, open_book, usual_logbook
from logbook.tasks.logging_swatches import delete_swatches
from logbook.window import main
from logbook.window.main_window import MainWindow
from tests.support.screen import settle
from tests.support.whole_window import Answers, session_of, tags, window

__all__ = ["window"]


def damage(path: Path) -> bytes:
    """Spoils a page of the file, once it has a backup, and gives what it holds then."""
    content = bytearray(path.read_bytes())
    content[4096 * 2 : 4096 * 3] = os.urandom(4096)
    path.write_bytes(content)
    return bytes(content)


@pytest.fixture
def usual(sample_file: Path, users_folder: Path) -> Path:
    """The usual logbook, with a backup."""
    usual_logbook().parent.mkdir(parents=True)
    path = Path(shutil.copy(sample_file, usual_logbook()))
    with open_book(path) as book:
        back_up(book)
    return path


def opened(window: MainWindow, *answers: str) -> tuple[Path, list[str]]:
    """What a start without a logbook chosen opens, and what was asked."""
    given = Answers(window, *answers)
    book = main._book(window, None)
    assert book is not None
    book.close()
    assert given.all_given
    return book.path, given.heard


def test_the_restored_one_is_what_opens_next_time(window: MainWindow, usual: Path) -> None:
    content = damage(usual)
    usual.with_name(f"{usual.name}-journal").write_bytes(b"")
    path, heard = opened(window, "<Alt-r>", "<Alt-u>")
    assert "Should it take the name swatches.logbook" in heard[1]
    assert path == usual
    assert opened(window) == (usual, [])
    assert usual.with_name("swatches damaged.logbook").read_bytes() == content
    assert usual.with_name("swatches damaged.logbook-journal").exists()
    assert not usual.with_name("swatches restored.logbook").exists()


def test_both_names_can_be_kept(window: MainWindow, usual: Path) -> None:
    content = damage(usual)
    path, _ = opened(window, "<Alt-r>", "<Escape>")
    assert path == usual.with_name("swatches restored.logbook")
    assert usual.read_bytes() == content


def test_one_that_can_not_be_set_aside_is_said(window: MainWindow, usual: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    content = damage(usual)

    def refuse(*places: Path) -> None:
        if places[0] == usual:
            raise OSError(errno.EPERM, os.strerror(errno.EPERM))
        os.rename(*places)

    monkeypatch.setattr(os, "link", refuse)
    path, heard = opened(window, "<Alt-r>", "<Alt-u>", "<Escape>")
    assert "could not be set aside" in heard[2]
    assert path == usual.with_name("swatches restored.logbook")
    assert usual.read_bytes() == content


def test_a_second_one_gets_a_name_of_its_own(window: MainWindow, usual: Path) -> None:
    contents = []
    for _ in range(2):
        contents.append(damage(usual))
        assert opened(window, "<Alt-r>", "<Alt-u>")[0] == usual
    asides = [usual.with_name(f"swatches damaged{number}.logbook") for number in ("", " 2")]
    assert [aside.read_bytes() for aside in asides] == contents


def altered(path: Path) -> AlteredError:
    """Changes a record behind the logbook's back; what the thorough check says of it."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("UPDATE swatch SET hook_mm = 9.5 WHERE tag = 'LC-02'")
    with pytest.raises(AlteredError) as raised:
        check_thoroughly(path)
    return raised.value


def hook(window: MainWindow) -> float | None:
    book = session_of(window).book
    (uid,) = (line.uid for line in swatch_lines(book) if line.tag == "LC-02")
    found = swatch_in_hand(book, uid)
    return None if found is None else found.hook_mm


def test_what_was_altered_is_repaired_from_its_other_copy_and_nothing_newer_lost(window: MainWindow, usual: Path) -> None:
    window.show(open_book(usual))
    settle(window.root)
    was = hook(window)
    session = session_of(window)
    newest = swatch_lines(session.book)[0]
    session.write(lambda: delete_swatches(session.book, [newest.uid]))  # after the backup
    damage = altered(usual)
    content = usual.read_bytes()
    answers = Answers(window, "<Alt-r>", "<Alt-u>")
    assert window.watch.deal_with(damage)
    assert answers.all_given
    assert "was kept as" in answers.heard[0]
    assert session_of(window).book.is_at(usual)
    assert hook(window) == was != 9.5
    assert newest.tag not in tags(window)
    assert check_thoroughly(usual) == len(tags(window))
    assert usual.with_name("swatches damaged.logbook").read_bytes() == content


def test_the_repair_can_be_left(window: MainWindow, usual: Path) -> None:
    window.show(open_book(usual))
    settle(window.root)
    damage = altered(usual)
    there = sorted(usual.parent.iterdir())
    answers = Answers(window, "<Escape>")
    window.watch.deal_with(damage)
    assert answers.all_given
    assert sorted(usual.parent.iterdir()) == there


def test_damage_found_while_it_is_open(window: MainWindow, usual: Path) -> None:
    window.show(open_book(usual))
    settle(window.root)  # the page stands before the damage comes
    before = tags(window)
    content = damage(usual)
    answers = Answers(window, "<Alt-r>", "<Alt-u>")
    assert window.watch.deal_with(DamagedError("a page of it", usual.name))
    assert answers.all_given
    session = session_of(window)
    assert session.book.is_at(usual)
    assert tags(window) == before
    line = swatch_lines(session.book)[0]
    session.write(lambda: delete_swatches(session.book, [line.uid]))
    session.book.close()
    with open_book(usual) as book:
        assert {one.tag for one in swatch_lines(book)} == before - {line.tag}
    assert usual.with_name("swatches damaged.logbook").read_bytes() == content
