"""The sample as a logbook."""

from pathlib import Path

from logbook.book.swatches import stitch_patterns
from logbook.book.undo import undo_state
from logbook.craft.words.lengths import Units
from logbook.tasks.drift import drift_in
from logbook.tasks.pieces import basis_of, made_pieces, planned_pieces
from logbook.tasks.run_words import changes_today
from logbook.tasks.sampling import new_sample
from logbook.tasks.set_runs import published
from logbook.tasks.size_runs import work_out_run
from logbook.tasks.undoing import undo
from tests.support.sample_sheets import written_rows


def test_every_stitch_pattern_has_its_written_rows(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book, book.reading() as connection:
        rows = {pattern.name: pattern.rows_text for pattern in stitch_patterns(connection).values()}
    assert rows == written_rows()


def test_the_pieces_are_one_step_after_the_import(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book:
        with book.reading() as connection:
            assert [action.label for action in undo_state(connection).done] == ["import swatches.csv", "plan the sample's pieces"]
        undo(book)
        assert not planned_pieces(book)
        assert not made_pieces(book)


def test_one_garment_is_finished_with_its_run_set_and_two_of_it_made(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book:
        (vest,) = (piece for piece in planned_pieces(book) if piece.sizes)
        run = published(vest)
        assert run is not None
        assert (run.date, run.tag) == ("2025-02-08", "LC-02")
        assert "Ch 68 (74, 80, 92, 98, 104)." in run.lines
        answer = work_out_run(basis_of(book, vest.swatch), vest.plan, vest.sizes)
        assert changes_today(run, answer, Units.CM) == ()
        assert answer.run.all_differ
        assert [(made.size, made.chain) for made in made_pieces(book)] == [("1X", 98), ("M", 80)]
        assert [drift_in(book).of(hand).stitches.pieces for hand in ("Noémie", "Tove", "")] == [1, 1, 0]
