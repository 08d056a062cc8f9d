"""Every number of a published garment that would be otherwise now is told, and no other."""

import json
from collections.abc import Callable
from typing import Any

import pytest

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.published import ChangedNumber, changes, published_of, published_text
from tests.support.shaped_pieces import cloth, garment

SLEEVE = {
    "name": "sleeve",
    "shape": "tapered panel",
    "measures": {"start width": "24 cm", "end width": "40 cm", "length": "45 cm"},
}
BAND = {"name": "band", "shape": "straight panel", "measures": {"width": "40 cm", "length": "3 cm"}}


@pytest.fixture(scope="module")
def size() -> GarmentInSize:
    (made,) = garment({"name": "g", "pieces": [SLEEVE, BAND]}, cloth(6.25, 5))
    return made


def told(size: GarmentInSize, change: Callable[[dict[str, Any]], object]) -> list[ChangedNumber]:
    """What is told where the pieces as published are changed so."""
    value = json.loads(published_text("2026-03-01", {}, [size]))
    change(value["sizes"][size.name])
    return list(changes(published_of(json.dumps(value)), [size]))


def test_what_is_as_it_was_tells_nothing(size: GarmentInSize) -> None:
    assert told(size, lambda pieces: None) == []


@pytest.mark.parametrize("what", ["chain", "first", "last", "rows"])
def test_each_number_is_told_by_itself(size: GarmentInSize, what: str) -> None:
    sleeve = size.piece("sleeve")
    now = {"chain": sleeve.chain, "first": sleeve.foundation, "last": sleeve.counts[-1], "rows": sleeve.rows}[what]
    assert now is not None
    assert told(size, lambda pieces: pieces["sleeve"].update({what: now + 2})) == [
        ChangedNumber(size.name, "sleeve", what, now + 2, now)
    ]


def test_the_stitches_of_the_start_go_with_their_chain(size: GarmentInSize) -> None:
    said = told(size, lambda pieces: pieces["sleeve"].update(chain=10, first=9))
    assert [change.what for change in said] == ["chain"]


def test_other_rows_of_shaping_are_told_where_no_number_is(size: GarmentInSize) -> None:
    def later(pieces: dict[str, Any]) -> None:
        pieces["sleeve"]["levels"][1][0] += 1

    assert told(size, later) == [ChangedNumber(size.name, "sleeve", "levels", None, None)]


def test_a_piece_and_a_size_that_are_new_or_gone(size: GarmentInSize) -> None:
    assert told(size, lambda pieces: pieces.pop("band")) == [ChangedNumber(size.name, "band", "piece", 0, 1)]
    assert told(size, lambda pieces: pieces.update(hood=pieces["band"])) == [ChangedNumber(size.name, "hood", "piece", 1, 0)]
    before = published_of(published_text("2026-03-01", {}, [size]))
    assert list(changes(before, [])) == [ChangedNumber(size.name, "", "size", 1, 0)]
    assert list(changes(before._replace(sizes={}), [size])) == [ChangedNumber(size.name, "", "size", 0, 1)]
