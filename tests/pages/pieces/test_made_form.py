"""A made piece of the vest in half double crochet: 7 mm a stitch, 9 mm a row, chain 76, 62 rows: 51.8 by 55.8 cm."""

from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.words.dates import date_words
from logbook.pages.picture_shelf import PictureShelf
from logbook.pages.pieces.made_form import Begun, MadeForm
from logbook.pages.pieces.made_list import MadeList, cells, sort_keys
from logbook.pages.session import Session
from logbook.tasks.made_pieces import made_from
from logbook.tasks.pieces import PieceAnswer, basis_of_tag, made_pieces, planned_pieces, work_out_piece
from tests.support.cloth import VEST
from tests.support.pictures import png


@pytest.fixture
def answer(session: Session) -> PieceAnswer:
    return work_out_piece(basis_of_tag(session.book, "H1"), VEST)


@pytest.fixture
def form(session: Session, answer: PieceAnswer) -> MadeForm:
    vest = next(piece for piece in planned_pieces(session.book) if piece.name == "Vest")
    return MadeForm(session, made_from(vest, answer, hook_mm=4.5), answer)


def test_the_prediction_follows_what_was_really_chained(form: MadeForm) -> None:
    assert (form.texts["predicted width"], form.texts["predicted length"]) == ("51.8 cm", "55.8 cm")
    form.type_in("chain", "80")
    form.type_in("rows", "60")
    assert (form.texts["predicted width"], form.texts["predicted length"]) == ("54.6 cm", "54 cm")
    form.type_in("washed width", "56.2")
    assert form.beside() == "Width: predicted 54.6 cm, measured 56.2 cm (+1.6 cm, +2.9 %)."


@pytest.fixture
def in_sizes(session: Session) -> MadeForm:
    """Begun in S, a chain of 76; M is of 90 by 70 rows."""
    vest = next(piece for piece in planned_pieces(session.book) if piece.name == "Vest")
    widths = {"S": (VEST.width_mm, VEST.length_mm), "M": (616.0, 630.0)}

    def begun(size: str) -> Begun | None:
        if size not in widths:
            return None
        width, length = widths[size]
        answer = work_out_piece(basis_of_tag(session.book, "H1"), replace(VEST, width_mm=width, length_mm=length))
        return made_from(vest, answer, size), answer

    first = begun("S")
    assert first is not None
    return MadeForm(session, *first, begun)


def test_another_size_brings_its_numbers_in(in_sizes: MadeForm) -> None:
    assert [in_sizes.texts[key] for key in ("name", "chain", "predicted width")] == ["Vest, S", "76", "51.8 cm"]
    in_sizes.type_in("size", "")
    in_sizes.type_in("size", "M")
    texts = [in_sizes.texts[key] for key in ("name", "chain", "rows", "predicted width", "predicted length")]
    assert texts == ["Vest, M", "90", "70", "61.6 cm", "63 cm"]
    assert in_sizes.beside() == ""
    in_sizes.type_in("size", "S")
    assert not in_sizes.is_dirty


def test_what_was_typed_by_hand_stays_with_another_size_and_is_said(in_sizes: MadeForm) -> None:
    in_sizes.type_in("chain", "80")
    in_sizes.type_in("size", "M")
    assert (in_sizes.texts["chain"], in_sizes.texts["rows"]) == ("80", "70")
    assert in_sizes.texts["predicted width"] == "54.6 cm"  # of the 80 that were chained
    assert in_sizes.beside() == "Size M; what you typed yourself stays: Chained 80."
    in_sizes.type_in("chain", "81")
    assert in_sizes.beside() == ""
    in_sizes.type_in("size", "Q")
    assert in_sizes.beside() == "The piece has no size Q: the numbers stay those of M."


def test_it_is_saved_listed_and_deleted(session: Session, form: MadeForm) -> None:
    form.type_in("name", "Vest for the stage manager")
    form.type_in("washed width", "53.4 cm")
    form.type_in("fits", "Snug")
    assert form.save() == {}
    listed = MadeList(session)
    (made,) = listed.pieces.values()
    name = "Vest for the stage manager"
    assert cells(made, session.units) == (f"{name}\nmade: chain 76", name, date_words(made.date), "76", "62", "53.4 cm")
    assert sort_keys(made)[3:] == (76, 62, 534)
    assert listed.find("snug") == [made.uid]
    assert listed.find("nobody") == []
    assert listed.find(" ") is None
    (said,) = listed.of(made.piece)
    assert said.endswith("chain 76, 62 rows. Width: predicted 51.8 cm, measured 53.4 cm (+1.6 cm, +3.1 %). Snug.")
    assert listed.of("") == []
    again = MadeForm(session, made)
    assert again.is_saved
    assert again.texts["washed width"] == "53.4 cm"
    again.type_in("chain", "90")  # without the piece it came from, what was predicted stays
    assert again.texts["predicted width"] == "51.8 cm"
    again.delete()
    assert made_pieces(session.book) == []


def test_a_picture_added_and_taken_off_again_leaves_nothing_to_save(session: Session, form: MadeForm, tmp_path: Path) -> None:
    shelf = PictureShelf(session)
    for size in (2, 3):
        (tmp_path / f"{size}.png").write_bytes(png(size, size))
    form.type_in("pictures", shelf.add("", tmp_path / "2.png"))
    form.save()
    (made,) = made_pieces(session.book)
    for own in (form, MadeForm(session, made)):
        before = own.texts["pictures"]
        own.type_in("pictures", shelf.add(before, tmp_path / "3.png"))
        assert own.is_dirty
        own.type_in("pictures", shelf.take_off(own.texts["pictures"], shelf.names(own.texts["pictures"])[-1]))
        assert not own.is_dirty
        assert own.draft() is None


@pytest.mark.parametrize(
    ("key", "text", "says"),
    [
        ("name", " ", "Name it"),
        ("chain", "a few", "“a few” is not a count"),
        ("chain", "0", "“0” is not a count"),
        ("hook", "big", "“big” is not a hook"),
        ("washed width", "0", "more than 0"),
        ("date", "last week", "“last week” is not a date"),
        ("date", "20260531", "“20260531” is not a date"),
        ("date", "2026-W22-7", "“2026-W22-7” is not a date"),
    ],
)
def test_what_is_wrong_is_said_and_not_saved(session: Session, form: MadeForm, key: str, text: str, says: str) -> None:
    form.type_in(key, text)
    assert says in form.save()[key]
    assert made_pieces(session.book) == []


def test_one_on_its_own_asks_for_a_name_alone(session: Session) -> None:
    form = MadeForm(session, MadePiece())
    assert not form.is_saved
    form.type_in("name", "Old scarf")
    form.type_in("chain", "33")
    assert form.save() == {}
    assert cells(next(iter(MadeList(session).pieces.values())), session.units)[3:] == ("33", "–", "–")
