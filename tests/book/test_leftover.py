"""A journal left beside the file is rolled back only into the file it is of."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from logbook.book.logbook import open_logbook
from logbook.book.thorough_check import check_thoroughly
from logbook.book.trouble import DamagedError
from tests.support.books import edit, held, small_book

_KILLED = """
import os, sys
from pathlib import Path
from logbook.book.logbook import open_logbook
from tests.support.books import put_worked
with open_logbook(Path(sys.argv[1])) as book, book.writing("never finished") as writing:
    book.connection.execute("PRAGMA cache_size = 5")
    for number in range(100, 200):
        put_worked(writing, number, notes="x" * 500)
    os._exit(9)
"""


def left_by_a_kill(path: Path, count: int = 3) -> None:
    small_book(path, count).close()
    assert subprocess.run([sys.executable, "-c", _KILLED, str(path)], check=False).returncode == 9


@pytest.fixture
def path(tmp_path: Path) -> Path:
    left_by_a_kill(tmp_path / "a.logbook")
    return tmp_path / "a.logbook"


def test_its_own_is_taken_back(path: Path) -> None:
    with open_logbook(path) as book:
        assert len(held(book)["swatch"]) == 3
    assert check_thoroughly(path) == 3
    assert list(path.parent.iterdir()) == [path]


def test_a_file_put_in_the_place_of_the_killed_one_stays_as_it_is(path: Path, tmp_path: Path) -> None:
    """The journal beside it is of another file: it is put aside, not rolled back."""
    (tmp_path / "other").mkdir()
    with small_book(tmp_path / "other" / "b.logbook", 5) as other:
        edit(other, "S-05", notes="y" * 3000)
        wanted = held(other)
    content = (tmp_path / "other" / "b.logbook").read_bytes()
    journal = path.with_name("a.logbook-journal").read_bytes()
    path.write_bytes(content)
    with open_logbook(path) as book:
        assert held(book) == wanted
        edit(book, "S-01", colour="rust")
    assert check_thoroughly(path) == 5
    assert path.with_name("a.logbook-journal of another").read_bytes() == journal


def test_neither_way_whole_not_a_byte_is_changed(path: Path) -> None:
    data = bytearray(path.read_bytes())
    data[4096 * 2 : 4096 * 4] = os.urandom(4096 * 2)
    journal = path.with_name("a.logbook-journal")
    cut = journal.read_bytes()[:2000] + bytes(2000)
    path.write_bytes(data)
    journal.write_bytes(cut)
    with pytest.raises(DamagedError):
        open_logbook(path)
    assert path.read_bytes() == data
    assert journal.read_bytes() == cut


@pytest.mark.skipif(os.name == "nt", reason="links as on Unix")
def test_by_its_other_name_the_journal_is_found_and_it_is_said_that_it_has_two(path: Path, tmp_path: Path) -> None:
    os.link(path, tmp_path / "second.logbook")
    with open_logbook(tmp_path / "second.logbook") as book:
        assert len(held(book)["swatch"]) == 3
        assert "more than one name" in book.warning
    assert check_thoroughly(path) == 3
    shutil.rmtree(tmp_path)


@pytest.mark.skipif(os.name == "nt", reason="links as on Unix")
def test_a_name_in_another_folder_does_not_show_a_write_cut_off_as_if_it_were_whole(path: Path, tmp_path: Path) -> None:
    (tmp_path / "other").mkdir()
    second = tmp_path / "other" / "second.logbook"
    os.link(path, second)
    content = path.read_bytes()
    with pytest.raises(DamagedError, match="Open it by its other name first"):
        open_logbook(second)
    assert path.read_bytes() == content
    with open_logbook(path) as book:
        assert len(held(book)["swatch"]) == 3
        assert "more than one name" in book.warning
    with open_logbook(second) as book:
        edit(book, "S-01", colour="rust")
    assert check_thoroughly(path) == 3
