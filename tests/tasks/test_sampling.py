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


def test_everything_in_the_sample_can_be_undone_to_its_swatches(tmp_path: Path) -> None:
    with new_sample(tmp_path) as book:
        with book.reading() as connection:
            steps = [action.label for action in undo_state(connection).done]
        assert steps[:2] == ["import swatches.csv", "write the sample's rows"]
        for _ in steps[1:]:
            undo(book)
        assert not planned_pieces(book)
        with book.reading() as connection:
            assert not any(pattern.rows_text for pattern in stitch_patterns(connection).values())
