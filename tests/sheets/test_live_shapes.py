"""Which pieces of a garment are live in its sheet."""

from typing import Any

import pytest

from logbook.craft.garments.body import GarmentSize
from logbook.craft.garments.garment import work_out_garment
from logbook.craft.garments.plan_file import plan_of
from logbook.sheets.live_shapes import is_live
from tests.support.shaped_pieces import cloth

BACK = {"width": "50 cm", "length": "56 cm", "armhole": "20 cm", "neck width": "16 cm", "neck depth": "6 cm"}


@pytest.mark.parametrize(
    ("inset", "own", "live"),
    [
        ({"inset": "3 cm"}, {"width": "55 cm"}, True),
        ({"inset": "3 cm"}, {"inset": "0 cm"}, False),
        ({}, {"inset": "3 cm"}, False),
    ],
)
def test_formulas_of_one_size_are_not_taken_for_one_that_has_other_measures(
    inset: dict[str, str], own: dict[str, Any], live: bool
) -> None:
    plan = plan_of({"name": "g", "pieces": [{"name": "back", "shape": "straight panel", "measures": {**BACK, **inset}}]})
    of = cloth(6, 5)
    sizes = work_out_garment(plan, [GarmentSize(name="A"), GarmentSize(name="B", pieces={"back": own})], {"back": of})
    assert is_live([size.piece("back") for size in sizes], of, {}) is live
