"""A made piece of the half double crochet vest: 7 mm a stitch and 9 mm a row washed, chain 76 for 74 stitches, 62 rows."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.words.lengths import Units
from logbook.errors import RefusedError
from logbook.tasks.find import Filters
from logbook.tasks.keeping import Logbook
from logbook.tasks.made_pieces import (
    delete_made_piece,
    find_made,
    made_from,
    predicted,
    save_made_piece,
)
from logbook.tasks.made_words import beside_each_other
from logbook.tasks.pieces import PieceAnswer, basis_of_tag, delete_piece, made_pieces, planned_pieces, save_piece, work_out_piece
from logbook.tasks.undoing import undo
from tests.support.cloth import VEST
from tests.support.garments import garment_book, uid_of


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with garment_book(tmp_path / "a.logbook") as made:
        yield made


def planned(book: Logbook) -> PlannedPiece:
    save_piece(book, PlannedPiece(plan=replace(VEST, name="Chorus vest"), swatch=uid_of(book, "H1")))
    return planned_pieces(book)[0]


def answer(book: Logbook) -> PieceAnswer:
    return work_out_piece(basis_of_tag(book, "H1"), VEST)


def test_it_begins_as_planned(book: Logbook) -> None:
    piece = planned(book)
    made = made_from(piece, answer(book), "M", 4.5)
    assert (made.name, made.size, made.chain, made.rows, made.hook_mm) == ("Chorus vest, M", "M", 76, 62, 4.5)
    assert (made.piece, made.swatch) == (piece.uid, piece.swatch)
    assert made.predicted_width_mm == pytest.approx(518, abs=0.1)
    assert made.predicted_length_mm == pytest.approx(558, abs=0.1)


def test_what_was_really_chained_is_what_is_predicted_for(book: Logbook) -> None:
    worked = answer(book)
    as_planned = made_from(planned(book), worked)
    other = predicted(replace(as_planned, chain=80, rows=60), worked)
    assert other.predicted_width_mm == pytest.approx(as_planned.predicted_width_mm + 4 * 7)  # type: ignore[operator]
    assert other.predicted_length_mm == pytest.approx(as_planned.predicted_length_mm - 2 * 9)  # type: ignore[operator]
    assert predicted(replace(as_planned, chain=None, rows=None), worked) == replace(as_planned, chain=None, rows=None)
    sideways = work_out_piece(basis_of_tag(book, "H1"), replace(VEST, sideways=True, armhole_mm=None, neck_mm=None))
    begun = made_from(planned_pieces(book)[0], sideways)
    turned = predicted(replace(begun, rows=(begun.rows or 0) + 1), sideways)
    assert turned.predicted_width_mm == pytest.approx(begun.predicted_width_mm + 9)  # type: ignore[operator]
    assert turned.predicted_length_mm == begun.predicted_length_mm


def test_it_is_saved_found_and_undone(book: Logbook) -> None:
    piece = planned(book)
    made = replace(made_from(piece, answer(book), "M"), washed_width_mm=533.54, fits="Snug at the hip")
    save_made_piece(book, made)
    (saved,) = made_pieces(book)
    assert replace(saved, uid="") == made

    def found(**filters: str) -> list[str]:
        asked = Filters(**filters)  # type: ignore[arg-type]
        return [one.name for one in find_made(book, asked)]

    assert found(words="chorus snug") == ["Chorus vest, M"]
    assert found(words="chorus loose") == []
    assert found(yarn="heather") == ["Chorus vest, M"]
    assert found(yarn="nothing of the kind") == []
    with pytest.raises(RefusedError, match="has been made"):
        delete_piece(book, piece)
    delete_made_piece(book, saved)
    assert made_pieces(book) == []
    undo(book)
    assert made_pieces(book) == [saved]


def test_one_on_its_own_needs_no_plan(book: Logbook) -> None:
    save_made_piece(book, MadePiece(name="Old scarf", chain=33))
    assert [one.name for one in find_made(book, Filters(words="scarf"))] == ["Old scarf"]
    with pytest.raises(RefusedError, match="name"):
        save_made_piece(book, MadePiece(chain=33))


def test_predicted_stands_beside_measured(book: Logbook) -> None:
    made = replace(made_from(planned(book), answer(book)), predicted_width_mm=500.0, washed_width_mm=515.0)
    assert beside_each_other(made, Units.CM) == ["Width: predicted 50.0 cm, measured 51.5 cm (+1.5 cm, +3 %)."]
    assert beside_each_other(replace(made, washed_width_mm=485.0), Units.CM) == [
        "Width: predicted 50.0 cm, measured 48.5 cm (−1.5 cm, −3 %)."
    ]
    assert beside_each_other(replace(made, washed_width_mm=None), Units.CM) == []
