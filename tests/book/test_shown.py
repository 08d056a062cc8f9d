"""A logbook that a window shows is known to a second start."""

import threading
from pathlib import Path

from logbook.book.shown import ShownBook, ask_for_window

BOOK = Path("mine.logbook")


def kept(folder: Path) -> list[str]:
    return sorted(path.suffix for path in folder.iterdir())


def names(folder: Path, book: Path = BOOK) -> list[Path]:
    """What a window keeps in the folder while it shows the logbook."""
    shown = ShownBook(folder, book)
    found = list(folder.iterdir())
    shown.close()
    return found


def test_without_a_window_nobody_comes(tmp_path: Path) -> None:
    assert not ask_for_window(tmp_path / "windows", BOOK, 0)
    assert not (tmp_path / "windows").exists()


def test_the_window_that_shows_it_comes(tmp_path: Path) -> None:
    shown = ShownBook(tmp_path, BOOK)
    came: list[bool] = []
    second = threading.Thread(target=lambda: came.append(ask_for_window(tmp_path, BOOK, 20)))
    second.start()
    while not shown.asked():
        assert second.is_alive()
    second.join()
    assert came == [True]
    assert not shown.asked()
    shown.close()
    assert kept(tmp_path) == []


def test_one_that_stands_still_is_not_waited_for_for_ever(tmp_path: Path) -> None:
    shown = ShownBook(tmp_path, BOOK)
    assert not ask_for_window(tmp_path, BOOK, 0)
    assert not shown.asked()
    shown.close()


def test_another_logbook_is_another_window(tmp_path: Path) -> None:
    shown = ShownBook(tmp_path, BOOK)
    assert not ask_for_window(tmp_path, Path("yours.logbook"), 20)
    shown.close()


def test_the_same_logbook_by_another_name(tmp_path: Path) -> None:
    book = tmp_path / "mine.logbook"
    book.touch()
    (tmp_path / "link.logbook").symlink_to(book)
    by_link = names(tmp_path / "windows", tmp_path / "link.logbook")
    assert by_link == names(tmp_path / "windows", book)


def test_what_a_dead_window_left_is_cleared_away(tmp_path: Path) -> None:
    (lock,) = names(tmp_path)
    lock.touch()
    assert not ask_for_window(tmp_path, BOOK, 20)
    assert kept(tmp_path) == []


def test_what_was_asked_of_a_dead_window_is_not_asked_of_the_next(tmp_path: Path) -> None:
    (lock,) = names(tmp_path)
    lock.with_suffix(".asked").touch()
    shown = ShownBook(tmp_path, BOOK)
    assert not shown.asked()
    shown.close()


def test_a_second_window_on_it_leaves_asking_to_the_first(tmp_path: Path) -> None:
    first, second = ShownBook(tmp_path, BOOK), ShownBook(tmp_path, BOOK)
    (lock,) = tmp_path.glob("*.lock")
    lock.with_suffix(".asked").touch()
    assert not second.asked()
    assert first.asked()
    second.close()
    first.close()


def test_a_folder_that_cannot_be_written_to_is_no_reason_not_to_start(tmp_path: Path) -> None:
    (tmp_path / "windows").write_text("no folder")
    assert not ask_for_window(tmp_path / "windows", BOOK, 20)
