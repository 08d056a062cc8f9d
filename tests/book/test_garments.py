"""Garments in the file: kept, found, renamed swatches followed, undone."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.garments.plan import Garment
from logbook.craft.garments.plan_file import plan_of
from logbook.errors import RefusedError
from logbook.tasks.browsing import swatch_in_hand
from logbook.tasks.garments import delete_garment, garment_called, garments, keep, matching_garments, save_garment
from logbook.tasks.keeping import Logbook
from logbook.tasks.logging_swatches import delete_swatches, save_swatch
from logbook.tasks.undoing import undo
from tests.support.garments import garment_book, uid_of

MEASURES = {"width": "50", "length": "60"}
PIECES = [
    {"name": "back", "shape": "straight panel", "swatch": "H1", "measures": MEASURES},
    {"name": "front", "shape": "straight panel", "swatch": {"stitches": "16 sts = 10 cm"}, "measures": MEASURES},
]
PLAN = plan_of({"name": "Harbour vest", "says": "worked in two", "pieces": PIECES})


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Logbook]:
    with garment_book(tmp_path / "a.logbook") as book:
        yield book


def test_a_garment_is_kept_as_it_was(book: Logbook) -> None:
    uid = save_garment(book, Garment(plan=PLAN, notes="for spring"))
    assert garments(book) == [Garment(uid=uid, plan=PLAN, notes="for spring")]
    assert keep(book, replace(PLAN, ease="4 cm")) == uid
    assert garment_called(book, "Harbour vest").plan.ease == "4 cm"
    undo(book)
    assert garment_called(book, "Harbour vest").plan == PLAN
    delete_garment(book, garments(book)[0])
    assert not garments(book)
    undo(book)
    assert len(garments(book)) == 1


def test_a_new_tag_of_a_swatch_is_followed(book: Logbook) -> None:
    save_garment(book, Garment(plan=PLAN))
    swatch = swatch_in_hand(book, uid_of(book, "H1"))
    assert swatch is not None
    save_swatch(book, replace(swatch, tag="H-9"))
    assert garment_called(book, "Harbour vest").plan.pieces[0].swatch == "H-9"


def test_a_swatch_that_a_garment_needs_stays(book: Logbook) -> None:
    save_garment(book, Garment(plan=PLAN))
    with pytest.raises(RefusedError, match="Harbour vest"):
        delete_swatches(book, [uid_of(book, "H1")])


def test_garments_are_found_by_their_words(book: Logbook) -> None:
    uid = save_garment(book, Garment(plan=PLAN))
    assert matching_garments(book, "harb two") == [uid]
    assert matching_garments(book, "harb three") == []


def test_what_can_not_be_kept_is_said(book: Logbook) -> None:
    save_garment(book, Garment(plan=PLAN))
    with pytest.raises(RefusedError, match="another garment called"):
        save_garment(book, Garment(plan=PLAN))
    with pytest.raises(RefusedError, match="needs a name"):
        save_garment(book, Garment(plan=replace(PLAN, name=" ")))
    elsewhere = replace(PLAN, name="b", pieces=(replace(PLAN.pieces[0], swatch="Z9"),))
    with pytest.raises(RefusedError, match="Z9, which is not in the logbook"):
        save_garment(book, Garment(plan=elsewhere))
    with pytest.raises(RefusedError, match="no garment “x”: the garments are Harbour vest"):
        garment_called(book, "x")
