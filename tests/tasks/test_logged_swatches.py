"""What a sheet is written from: slices of a logbook that says the same from the first to the last."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from logbook.book.swatches import swatches
from logbook.errors import RefusedError
from logbook.tasks import logged_swatches
from logbook.tasks.exporting import export
from logbook.tasks.keeping import Logbook
from logbook.tasks.logged_swatches import StoredSwatches
from logbook.tasks.sampling import new_sample
from tests.support.books import put_worked
from tests.support.logged import cells_of


@pytest.fixture
def full(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Logbook]:
    """The sample, read seven swatches at a time."""
    monkeypatch.setattr(logged_swatches, "_AT_ONCE", 7)
    with new_sample(tmp_path) as book:
        yield book


def test_rows_and_swatches_are_those_of_the_logbook(full: Logbook) -> None:
    stored = StoredSwatches(full)
    with full.reading() as connection:
        whole = swatches(connection)
    assert list(stored) == whole
    assert len(stored) == len(whole)
    assert stored.readings == sum(len(swatch.readings) for swatch in whole)
    assert [tuple(row) for row in stored.rows()] == [cells_of(swatch)[: len(stored.columns)] for swatch in whole]
    by_yarn = [list(some) for some in stored.by_yarn()]
    assert {swatch.uid for some in by_yarn for swatch in some} == {swatch.uid for swatch in whole}
    with_yarn = [{swatch.yarn.uid for swatch in some if swatch.yarn} for some in by_yarn if some[0].yarn]
    assert all(len(yarns) == 1 for yarns in with_yarn)
    assert len(with_yarn) == len({swatch.yarn.uid for swatch in whole if swatch.yarn})


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_what_is_written_to_meanwhile_is_not_half_one_half_the_other(full: Logbook, ending: str, tmp_path: Path) -> None:
    target = tmp_path / f"out.{ending}"
    target.write_text("old")

    def progress(done: int, total: int) -> None:
        with full.again() as other, other.writing("log meanwhile") as writing:
            put_worked(writing, 1)

    with pytest.raises(RefusedError, match="was changed while it was written out: export it again"):
        export(full, target, progress)
    assert target.read_text() == "old"
