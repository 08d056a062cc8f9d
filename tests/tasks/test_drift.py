"""What made pieces teach: s_d² = (4·0.02² + Σd²)/(4 + M) with d = ln(measured/predicted), give or take t(4 + M)·s_d.

One piece 3 % wider: d = ln 1.03 = 0.0295588, s_d² = (0.0016 + 0.00087372)/5 = 0.00049474, s_d = 2.22428 %, t(5) = 2.570582:
5.7177 %. Before it: t(4) = 2.776445 · 2 % = 5.5529 %.
"""

from pathlib import Path

import pytest

from logbook.book.pieces import predicted_and_measured, put_made_piece
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.pieces.piece import PiecePlan
from logbook.errors import RefusedError
from logbook.tasks.chain import chain_for_tag
from logbook.tasks.drift import drift_in
from logbook.tasks.note_words import said
from tests.support.books import small_book


def test_made_pieces_teach_the_next_prediction(tmp_path: Path) -> None:
    with small_book(tmp_path / "book.logbook") as book:
        plan = PiecePlan(width_mm=460)
        before = chain_for_tag(book, "S-01", plan)
        assert before.drift.give_or_take == pytest.approx(0.0555289, abs=1e-6)
        with book.writing("made") as writing:
            put_made_piece(writing, MadePiece(name="vest", predicted_width_mm=400, washed_width_mm=412))
        after = chain_for_tag(book, "S-01", plan)
        assert after.drift.give_or_take == pytest.approx(0.0571770, abs=1e-6)
        assert (
            said(after.notes)[-1] == "A whole piece strays from its swatch by up to 5.7 % besides that: learnt from 1 made piece."
        )
        assert [option.chain for option in after.options] == [option.chain for option in before.options]
        assert drift_in(book) == after.drift


def test_a_piece_teaches_once_and_only_if_it_was_measured(tmp_path: Path) -> None:
    with small_book(tmp_path / "book.logbook", 0) as book:
        with book.writing("made") as writing:
            put_made_piece(writing, MadePiece(name="not washed", predicted_width_mm=400, worked_width_mm=410))
            put_made_piece(
                writing,
                MadePiece(
                    name="both", predicted_width_mm=400, washed_width_mm=412, predicted_length_mm=500, washed_length_mm=490
                ),
            )
            put_made_piece(writing, MadePiece(name="length alone", predicted_length_mm=500, washed_length_mm=510))
        with book.reading() as connection:
            assert predicted_and_measured(connection) == [(400, 412), (500, 510)]
        assert drift_in(book).pieces == 2


def test_a_size_of_nothing_is_refused(tmp_path: Path) -> None:
    with (
        small_book(tmp_path / "book.logbook", 0) as book,
        pytest.raises(RefusedError, match="more than 0"),
        book.writing("made") as writing,
    ):
        put_made_piece(writing, MadePiece(name="vest", predicted_width_mm=400, washed_width_mm=0))
