"""What pages list, and the sample they start from."""

from pathlib import Path

import pytest

from logbook.book.search import Filters
from logbook.book.undo import undo
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.tasks.browsing import (
    assumptions_of,
    matching_patterns,
    matching_swatches,
    pattern_list,
    pattern_uses,
    save_assumptions,
    swatch_in_hand,
    swatch_lines,
    swatches_of_pattern,
    swatches_of_same_yarn,
)
from logbook.tasks.find import find
from logbook.tasks.keeping import Logbook, check_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.sampling import new_sample
from logbook.tasks.stitch_patterns import save_pattern
from tests.support.books import COTTON, SHELLS, swatch


@pytest.fixture
def uids(book: Logbook) -> list[str]:
    """Two swatches of a yarn in shells, the second newer, and one of no yarn in an unnamed stitch."""
    first = swatch(1, yarn=COTTON, pattern=SHELLS, date="2026-01-01")
    second = swatch(2, yarn=COTTON, pattern=SHELLS, date="2026-02-01", colour="Étoile")
    third = swatch(3, yarn=None, pattern=StitchPattern(name="mesh"), date="")
    return [save_swatch(book, one) for one in (first, second, third)]


def test_lines_are_newest_first_without_a_date_last(book: Logbook, uids: list[str]) -> None:
    lines = swatch_lines(book)
    assert [line.uid for line in lines] == [uids[1], uids[0], uids[2]]
    assert [line.uid for line in lines] == matching_swatches(book, Filters())
    assert [one.swatch.uid for one in find(book, Filters())] == matching_swatches(book, Filters())
    new = lines[0]
    assert (new.tag, new.yarn, new.stitch, new.hook_mm, new.colour) == (
        "S-02",
        COTTON.name,
        SHELLS.name,
        5.0,
        "Étoile",
    )
    assert (lines[2].yarn, lines[2].stitch) == ("", "mesh")


def test_matching(book: Logbook, uids: list[str]) -> None:
    assert matching_swatches(book, Filters(words="etoile etang")) == [uids[1]]
    assert matching_swatches(book, Filters(words="etoile mesh")) == []


def test_swatches_of_the_same_yarn(book: Logbook, uids: list[str]) -> None:
    first, third = swatch_in_hand(book, uids[0]), swatch_in_hand(book, uids[2])
    assert first is not None
    assert third is not None
    assert [one.uid for one in swatches_of_same_yarn(book, first)] == uids[:2]
    assert swatches_of_same_yarn(book, third) == []
    assert swatches_of_same_yarn(book, swatch(9, yarn=COTTON)) == []


def test_patterns(book: Logbook, uids: list[str]) -> None:
    save_pattern(book, StitchPattern(name="Arches", notes="lies flat"))
    patterns = pattern_list(book)
    assert [pattern.name for pattern in patterns] == ["Arches", SHELLS.name, "mesh"]
    arches, shells, mesh = (pattern.uid for pattern in patterns)
    assert [line.uid for line in swatches_of_pattern(book, shells)] == [uids[1], uids[0]]
    assert pattern_uses(book) == {shells: 2, mesh: 1}
    assert matching_patterns(patterns, "FLAT arch") == [arches]
    assert matching_patterns(patterns, "") == [arches, shells, mesh]


def test_assumptions_are_kept_and_undone(book: Logbook) -> None:
    wanted = Assumptions(count_step=0.5, most_edge_stitches=2)
    save_assumptions(book, wanted)
    assert assumptions_of(book) == wanted
    assert undo(book).label == "change the assumptions"
    assert assumptions_of(book) == Assumptions()


def test_the_sample_is_whole_and_keeps_no_backups(tmp_path: Path, users_folder: Path) -> None:
    with new_sample(tmp_path) as book:
        assert check_book(book, deep=True).problems == ()
        assert len(swatch_lines(book)) == 43
    assert not users_folder.exists()
