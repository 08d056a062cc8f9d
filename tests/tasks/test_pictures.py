"""Pictures with swatches and made pieces: taken in, brought along wherever the logbook goes, and every trouble a sentence."""

import errno
import os
import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.book import pictures as kept
from logbook.book.pictures import folder_of
from logbook.craft.pieces.made_piece import MadePiece
from logbook.errors import RefusedError
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.exporting import export
from logbook.tasks.importing import import_into_new
from logbook.tasks.keeping import Logbook, back_up, open_book, restore
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.made_pieces import save_made_piece
from logbook.tasks.merging import merge
from logbook.tasks.pictures import (
    add_to_swatch,
    along_with,
    names_of,
    picture,
    picture_file,
    take_in,
    with_picture,
    without_picture,
)
from logbook.tasks.undoing import undo
from tests.support.garments import garment_book, uid_of
from tests.support.pictures import GPS, exif, huge_png, jpeg, png


def save_copy(book: Logbook, target: Path) -> str:
    """A copy with its pictures, as the window saves one."""
    book.save_copy(target)
    return along_with(book.path, target)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with garment_book(tmp_path / "mine" / "a.logbook") as made:
        yield made


@pytest.fixture(autouse=True)
def _folder(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()


def file_of(tmp_path: Path, content: bytes, name: str = "cat.png") -> Path:
    (tmp_path / name).write_bytes(content)
    return tmp_path / name


def pictures_of(book: Logbook, tag: str = "H1") -> str:
    swatch = swatch_in_hand(book, uid_of(book, tag))
    assert swatch is not None
    return swatch.pictures


def test_one_is_taken_in_by_what_it_holds_for_the_users_eyes_alone(book: Logbook, tmp_path: Path) -> None:
    name = add_to_swatch(book, "H1", file_of(tmp_path, jpeg(segments=exif()), "IMG 1.JPG"))
    assert pictures_of(book) == name
    assert name.endswith(".jpg")
    assert GPS not in picture(book, name)
    assert picture_file(book, name).parent == tmp_path / "mine" / "a.pictures"
    assert folder_of(book.path).stat().st_mode & 0o777 == 0o700
    assert picture_file(book, name).stat().st_mode & 0o777 == 0o600
    undo(book)
    assert pictures_of(book) == ""
    assert picture(book, name)  # its file stays, to be done again


def test_the_same_twice_is_one(book: Logbook, tmp_path: Path) -> None:
    first = add_to_swatch(book, "H1", file_of(tmp_path, png()))
    second = add_to_swatch(book, "H1", file_of(tmp_path, png(), "again.png"))
    assert first == second
    assert pictures_of(book) == first
    assert len(list(folder_of(book.path).iterdir())) == 1
    assert without_picture(pictures_of(book), first) == ""


@pytest.mark.parametrize(
    ("content", "name", "says"),
    [
        (b"a letter", "letter.jpg", "is not a picture that can be kept"),
        (huge_png(), "huge.png", "20,000 by 20,000 pixels"),
        (png()[:40], "cut.png", "cut off"),
        (jpeg()[:-4], "cut.jpg", "cut off"),
        (b"", "empty.gif", "is not a picture"),
    ],
)
def test_what_is_no_whole_picture_is_refused_in_a_sentence(
    book: Logbook, tmp_path: Path, content: bytes, name: str, says: str
) -> None:
    with pytest.raises(RefusedError, match=says) as refused:
        add_to_swatch(book, "H1", file_of(tmp_path, content, name))
    assert name in str(refused.value)
    assert pictures_of(book) == ""
    assert not folder_of(book.path).exists()


def test_a_pipe_a_folder_and_nothing_are_refused(book: Logbook, tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.png")
    (tmp_path / "folder.png").mkdir()
    for name in ("pipe.png", "folder.png", "nothing.png"):
        with pytest.raises(RefusedError, match=name):
            take_in(book, tmp_path / name)


def test_a_full_disk_is_said_and_leaves_nothing_half_done(book: Logbook, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(path: Path, content: bytes) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(kept, "write_in_place", full)
    with pytest.raises(RefusedError, match=r"cat\.png.*No space left"):
        add_to_swatch(book, "H1", file_of(tmp_path, png()))
    assert pictures_of(book) == ""


def test_a_picture_that_is_missing_or_broken_is_a_sentence_and_can_be_taken_in_again(book: Logbook, tmp_path: Path) -> None:
    name = add_to_swatch(book, "H1", file_of(tmp_path, png()))
    (folder_of(book.path) / name).write_bytes(png()[:30])
    with pytest.raises(RefusedError, match="is damaged: add it again"):
        picture(book, name)
    add_to_swatch(book, "H1", tmp_path / "cat.png")
    assert picture(book, name) == png()
    shutil.rmtree(folder_of(book.path))
    with pytest.raises(RefusedError, match="The picture is missing"):
        picture(book, name)
    with pytest.raises(RefusedError, match="not the name of a picture"):
        picture(book, "../../etc/passwd")
    export(book, tmp_path / "all.csv")  # nothing else is stopped


def test_too_many_are_refused() -> None:
    many = "; ".join(f"{number:064x}.png" for number in range(100))
    with pytest.raises(RefusedError, match="100 pictures"):
        with_picture(many, f"{'f' * 64}.png")


def test_they_go_along_with_a_copy_a_sheet_a_backup_and_a_merge(book: Logbook, tmp_path: Path) -> None:
    first = add_to_swatch(book, "H1", file_of(tmp_path, png()))
    second = take_in(book, file_of(tmp_path, png(4, 4), "made.png"))
    save_made_piece(book, MadePiece(name="Vest", pictures=second))
    assert set(names_of(book)) == {first, second}

    assert save_copy(book, tmp_path / "copy.logbook") == ""
    with open_book(tmp_path / "copy.logbook") as copy:
        assert picture(copy, first) == png()

    result = export(book, tmp_path / "sheet.xlsx")
    assert result.notes == ()
    assert {file.name for file in (tmp_path / "sheet.pictures").iterdir()} == {first, second}
    import_into_new(tmp_path / "other.logbook", tmp_path / "sheet.xlsx")
    with open_book(tmp_path / "other.logbook") as other:
        assert pictures_of(other) == first
        assert picture(other, second) == png(4, 4)

    backup = back_up(book)
    restore(backup, tmp_path / "restored.logbook")
    with open_book(tmp_path / "restored.logbook") as restored:
        assert picture(restored, first) == png()

    with garment_book(tmp_path / "mine" / "empty.logbook") as empty:
        merge(empty, book.path, "theirs")
        assert picture(empty, second) == png(4, 4)


def test_two_sides_of_a_merge_keep_both_pictures(book: Logbook, tmp_path: Path) -> None:
    save_copy(book, tmp_path / "b.logbook")
    first = add_to_swatch(book, "H1", file_of(tmp_path, png()))
    with open_book(tmp_path / "b.logbook") as other:
        second = add_to_swatch(other, "H1", file_of(tmp_path, png(5, 5)))
    answer = merge(book, tmp_path / "b.logbook")
    assert answer.questions == ()
    assert pictures_of(book) == f"{first}; {second}"
    assert picture(book, second) == png(5, 5)


def test_what_could_not_come_along_is_told(book: Logbook, tmp_path: Path) -> None:
    add_to_swatch(book, "H1", file_of(tmp_path, png()))
    shutil.rmtree(folder_of(book.path))
    assert save_copy(book, tmp_path / "copy.logbook") == (
        "1 picture is not in copy.pictures: missing, or there is no room for it."
    )
    assert export(book, tmp_path / "all.csv").notes == ("1 picture is not in all.pictures: missing, or there is no room for it.",)


def test_export_and_import_of_a_swatch_with_pictures_are_equal_cell_by_cell(book: Logbook, tmp_path: Path) -> None:
    add_to_swatch(book, "H1", file_of(tmp_path, png()))
    swatch = swatch_in_hand(book, uid_of(book, "H1"))
    assert swatch is not None
    save_swatch(book, replace(swatch, notes="seen"))
    export(book, tmp_path / "one.csv")
    import_into_new(tmp_path / "b.logbook", tmp_path / "one.csv")
    with open_book(tmp_path / "b.logbook") as other:
        export(other, tmp_path / "two.csv")
    assert (tmp_path / "one.csv").read_bytes() == (tmp_path / "two.csv").read_bytes()
