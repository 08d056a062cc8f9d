"""Yarns and stitch patterns renamed, merged and deleted, each in one step of undo."""

from dataclasses import replace

import pytest

from logbook.book.undo import undo
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from logbook.tasks.browsing import Filters, matching_swatches, swatch_in_hand
from logbook.tasks.keeping import Logbook, check_book
from logbook.tasks.known_names import NameOf, delete_unused, known_by_name, merge, rename, what_merging_does
from logbook.tasks.logging_swatches import save_swatch
from tests.support.books import COTTON, SHELLS, held, swatch

LINEN = Yarn(name="Étang coton", fibre="linen", ball_price=4.5, currency="EUR")


@pytest.fixture
def uids(book: Logbook) -> dict[str, str]:
    """Two swatches of one cotton, one of it under another spelling; by yarn."""
    for number, yarn in enumerate((COTTON, COTTON, LINEN), 1):
        save_swatch(book, swatch(number, yarn=yarn, pattern=SHELLS))
    return {one.record.name: uid for uid, one in known_by_name(book, NameOf.YARN).items()}


def yarns_of(book: Logbook) -> dict[str, int]:
    return {one.record.name: one.swatches for one in known_by_name(book, NameOf.YARN).values()}


def test_a_new_name_holds_for_all_swatches_and_is_found(book: Logbook, uids: dict[str, str]) -> None:
    rename(book, NameOf.YARN, uids[COTTON.name], "Pond cotton")
    assert yarns_of(book) == {"Étang coton": 1, "Pond cotton": 2}
    assert len(matching_swatches(book, Filters(words="pond"))) == 2
    with pytest.raises(RefusedError, match="another yarn of that name"):
        rename(book, NameOf.YARN, uids[COTTON.name], LINEN.name)
    with pytest.raises(RefusedError, match="needs a name"):
        rename(book, NameOf.YARN, uids[COTTON.name], " ")


def test_merging_moves_every_swatch_takes_what_was_missing_and_is_undone_at_once(book: Logbook, uids: dict[str, str]) -> None:
    before = held(book)
    told = what_merging_does(book, NameOf.YARN, uids[LINEN.name], uids[COTTON.name])
    assert told == (
        "1 swatch of “Étang coton” will belong to “Étang cotton”, and “Étang coton” is taken off the list. "
        "“Étang cotton” keeps its own fibre."
    )
    assert merge(book, NameOf.YARN, uids[LINEN.name], uids[COTTON.name]) == 1
    (one,) = known_by_name(book, NameOf.YARN).values()
    assert one == (replace(COTTON, uid=uids[COTTON.name], ball_price=4.5, currency="EUR"), 3)
    assert matching_swatches(book, Filters(words="coton")) == []
    assert check_book(book, deep=True).ok
    undo(book)
    assert held(book) == before


def test_stitch_patterns_that_count_repeats_otherwise_are_not_merged(book: Logbook) -> None:
    for number, multiple in enumerate((6, 8), 1):
        save_swatch(book, swatch(number, yarn=COTTON, pattern=StitchPattern(name=f"shells {multiple}", multiple=multiple)))
    six, eight = known_by_name(book, NameOf.PATTERN)
    before = held(book)
    for call in (what_merging_does, merge):
        with pytest.raises(RefusedError, match="“shells 8” has multiple 8, “shells 6” 6: what was measured in repeats"):
            call(book, NameOf.PATTERN, six, eight)
    assert held(book) == before


def test_patterns_merge_and_their_swatches_keep_their_readings(book: Logbook) -> None:
    kept = save_swatch(book, swatch(1, yarn=COTTON, pattern=SHELLS))
    moved = save_swatch(book, swatch(2, yarn=COTTON, pattern=StitchPattern(name="shells")))
    uid = {one.record.name: uid for uid, one in known_by_name(book, NameOf.PATTERN).items()}
    readings = swatch_in_hand(book, moved).readings  # type: ignore[union-attr]
    merge(book, NameOf.PATTERN, uid["shells"], uid[SHELLS.name])
    now, other = swatch_in_hand(book, moved), swatch_in_hand(book, kept)
    assert now is not None
    assert other is not None
    assert (now.pattern, now.readings) == (other.pattern, readings)


def test_what_is_used_stays_and_what_is_not_goes(book: Logbook, uids: dict[str, str]) -> None:
    with pytest.raises(RefusedError, match="Swatches still use it"):
        delete_unused(book, NameOf.YARN, uids[COTTON.name])
    merge(book, NameOf.YARN, uids[LINEN.name], uids[COTTON.name])
    with pytest.raises(RefusedError, match="not in the logbook any more"):
        merge(book, NameOf.YARN, uids[LINEN.name], uids[COTTON.name])
    with pytest.raises(RefusedError, match="the same yarn"):
        merge(book, NameOf.YARN, uids[COTTON.name], uids[COTTON.name])
    with pytest.raises(RefusedError, match="not in the logbook any more"):
        delete_unused(book, NameOf.YARN, uids[LINEN.name])


def test_one_that_no_swatch_uses_goes_and_comes_back(book: Logbook) -> None:
    for number in (1, 2):
        save_swatch(book, swatch(number, yarn=COTTON, pattern=StitchPattern(name=f"moss {number}")))
    one, two = known_by_name(book, NameOf.PATTERN)
    merge(book, NameOf.PATTERN, one, two)
    undo(book)
    first = next(uid for uid in matching_swatches(book, Filters(words="S-01")))
    save_swatch(book, replace(swatch(1, yarn=COTTON), uid=first, pattern=None))
    delete_unused(book, NameOf.PATTERN, one)
    assert list(known_by_name(book, NameOf.PATTERN)) == [two]
    undo(book)
    assert list(known_by_name(book, NameOf.PATTERN)) == [one, two]
