"""A picture taken in with a swatch or a made piece from the command line."""

from pathlib import Path

import pytest

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.swatches.picture_names import picture_names
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.keeping import open_book
from logbook.tasks.made_pieces import save_made_piece
from logbook.tasks.pictures import picture
from logbook.tasks.pieces import made_pieces
from tests.support.command_line import done, done_json, refused
from tests.support.garments import uid_of
from tests.support.pictures import png

VEST = "Usher's vest for Tadeo"


@pytest.fixture
def photograph(tmp_path: Path) -> Path:
    (tmp_path / "vest.png").write_bytes(png(30, 20))
    return tmp_path / "vest.png"


def test_it_is_added_to_a_swatch(wardrobe: Path, photograph: Path) -> None:
    said = done("picture", photograph, "--swatch", "FA-02", "--book", wardrobe)
    assert said == "vest.png was added to swatch FA-02.\n"
    with open_book(wardrobe) as book:
        swatch = swatch_in_hand(book, uid_of(book, "FA-02"))
        assert swatch is not None
        assert picture(book, picture_names(swatch.pictures)[-1]) == png(30, 20)


def test_it_is_added_to_a_made_piece(wardrobe: Path, photograph: Path) -> None:
    name = done_json("picture", photograph, "--made", VEST, "--book", wardrobe)["picture"]
    with open_book(wardrobe) as book:
        assert [name in made.pictures for made in made_pieces(book) if made.name == VEST] == [True]
    assert done("picture", photograph, "--made", VEST, "--book", wardrobe) == f"vest.png was added to “{VEST}”.\n"


def test_what_it_is_of_must_be_there_once(wardrobe: Path, photograph: Path) -> None:
    assert "no swatch with the tag “ZZ”" in refused(1, "picture", photograph, "--swatch", "ZZ", "--book", wardrobe)
    assert "no made piece called “Scarf”" in refused(1, "picture", photograph, "--made", "Scarf", "--book", wardrobe)
    with open_book(wardrobe) as book:
        save_made_piece(book, MadePiece(name=VEST))
    assert f"2 made pieces are called “{VEST}”" in refused(1, "picture", photograph, "--made", VEST, "--book", wardrobe)


def test_what_it_shows_is_asked_for(wardrobe: Path, photograph: Path) -> None:
    said = refused(2, "picture", photograph, "--book", wardrobe)
    assert "--swatch" in said
    assert "--made" in said
