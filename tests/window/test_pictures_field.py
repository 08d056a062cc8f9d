"""The pictures of a record in its form: small ones drawn one by one, large ones on demand, and troubles in words."""

import tkinter as tk
import webbrowser
from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.errors import RefusedError
from logbook.pages.picture_shelf import NOT_COPIED, PictureShelf
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.keeping import Logbook, new_book
from logbook.window import picture_images, pictures_field
from logbook.window.look import Look
from logbook.window.picture_images import pillow, shown
from logbook.window.pictures_field import PicturesField
from tests.support.pictures import jpeg, png
from tests.support.screen import press, wait_until


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with new_book(tmp_path / "a.logbook") as made:
        yield made


@pytest.fixture
def field(root: tk.Tk, look: Look, book: Logbook) -> PicturesField:
    made = PicturesField(root, look, "Pictures", PictureShelf(Session(book, Settings())))
    made.pack(fill="x")
    root.update()
    return made


def taken(field: PicturesField, tmp_path: Path, content: bytes, name: str) -> str:
    (tmp_path / name).write_bytes(content)
    field.take(tmp_path / name)
    return field.text.split("; ")[-1]


def test_each_has_a_button_that_shows_it_small(field: PicturesField, root: tk.Tk, tmp_path: Path) -> None:
    first = taken(field, tmp_path, png(300, 200), "a.png")
    taken(field, tmp_path, png(20, 20), "b.png")
    wait_until(root, lambda: all(str(button.cget("image")) for button in field.buttons.values()))
    assert len(field.buttons) == 2
    side = 9 * field.look.base.measure("0")
    assert 0 < field.images[first].width() <= side
    press(field.buttons[first], "<Delete>")
    assert first not in field.text
    assert len(field.buttons) == 1


def test_a_copied_file_or_its_path_is_pasted(
    field: PicturesField, root: tk.Tk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first, second = tmp_path / "my vest.png", tmp_path / "b.png"
    first.write_bytes(png(4, 4))
    second.write_bytes(png(6, 6))
    root.clipboard_clear()
    root.clipboard_append(f"{first.as_uri()}\n{second}\n")
    press(field.add_button, "<<Paste>>")
    assert len(field.buttons) == 2
    said: list[str] = []
    monkeypatch.setattr(pictures_field, "tell", lambda _parent, _look, sentence: said.append(sentence))
    root.clipboard_clear()
    root.clipboard_append("dear Ida")
    press(field.add_button, "<<Paste>>")
    assert said == [NOT_COPIED]
    assert len(field.buttons) == 2


def test_one_that_is_missing_or_cut_says_so_and_the_others_are_shown(field: PicturesField, root: tk.Tk, tmp_path: Path) -> None:
    first = taken(field, tmp_path, png(5, 5), "a.png")
    second = taken(field, tmp_path, png(6, 6), "b.png")
    folder = tmp_path / "a.pictures"
    (folder / first).unlink()
    field.text = ""
    field.text = f"{first}; {second}"
    wait_until(root, lambda: bool(str(field.buttons[second].cget("image"))))
    assert field.buttons[first].cget("text") == "Picture 1: missing"


def test_without_pillow_png_is_shown_and_jpeg_opens_in_a_viewer(
    field: PicturesField, root: tk.Tk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(picture_images, "pillow", lambda: None)
    drawn = taken(field, tmp_path, png(300, 200), "a.png")
    other = taken(field, tmp_path, jpeg(), "b.jpg")
    button = field.buttons[other]
    wait_until(root, lambda: str(button.cget("text")) == "Picture 2: opens in a viewer" and drawn in field.images)
    assert 0 < field.images[drawn].width() <= 9 * field.look.base.measure("0")
    opened: list[str] = []
    monkeypatch.setattr(webbrowser, "open", lambda address: opened.append(address) or True)
    button.invoke()
    assert opened[0].endswith(other)
    assert (
        field.said[0] == f"Sent to the system's viewer. If it does not show there, open {Path(opened[0].removeprefix('file://'))}"
    )


def test_what_is_no_picture_can_not_be_drawn(root: tk.Tk) -> None:
    with pytest.raises(RefusedError, match=r"(can't be shown|viewer)"):
        shown(root, jpeg(), 100, 100)


def test_a_jpeg_is_drawn_by_pillow_the_right_way_up(root: tk.Tk, tmp_path: Path) -> None:
    if pillow() is None:
        pytest.skip("Pillow, the extra “pictures”, is not installed")
    picture = pillow().new("RGB", (400, 200), "red")
    exif = picture.getexif()
    exif[0x0112] = 6
    picture.save(tmp_path / "a.jpg", exif=exif)
    drawn = shown(root, (tmp_path / "a.jpg").read_bytes(), 100, 100)
    assert (drawn.width(), drawn.height()) == (50, 100)
