"""The sample as a logbook."""

from pathlib import Path

from logbook.book.swatches import stitch_patterns
from logbook.book.undo import undo_state
from logbook.tasks.pieces import planned_pieces
from logbook.tasks.sampling import new_sample
from logbook.tasks.undoing import undo
from tests.support.sample_sheets import written_rows


def test_every_stitch_pattern_has_its_written_rows(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book, book.reading() as connection:
        rows = {pattern.name: pattern.rows_text for pattern in stitch_patterns(connection).values()}
    assert rows == written_rows()


def test_rows_and_pieces_are_one_step_after_the_import(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book:
        with book.reading() as connection:
            assert [action.label for action in undo_state(connection).done] == ["import swatches.csv", "plan the sample's pieces"]
        undo(book)
        assert not planned_pieces(book)
        with book.reading() as connection:
            assert not any(pattern.rows_text for pattern in stitch_patterns(connection).values())
