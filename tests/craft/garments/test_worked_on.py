"""A body and sleeves that are worked on from a yoke: no chain of their own, but the stitches that are there."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.garments.body import sizes_of
from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize, work_out_garment, work_out_possible
from logbook.craft.garments.joins import JoinVerdict
from logbook.craft.garments.outline import outline
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.garments.remedies import remedy_for, with_measure
from logbook.errors import LogbookError
from tests.support.shaped_pieces import cloth, garment

PLAIN = cloth(6.25, 5)
YOKE = {
    "neck round": "48 cm", "yoke depth": "24 cm", "body round": "100 cm", "upper arm round": "36 cm", "underarm": "6 cm",
}  # fmt: skip


def jumper(shape: str = "raglan yoke", body: str = "100 cm", sleeve: str = "36 cm", **yoke: str) -> dict[str, Any]:
    around = {"worked": "round"}
    return {
        "name": "jumper",
        "pieces": [
            {"name": "sleeve", "shape": "tapered panel", "alike": 2, **around,
             "measures": {"start width": sleeve, "end width": "22 cm", "length": "45 cm"}},
            {"name": "body", "shape": "straight panel", **around, "measures": {"width": body, "length": "34 cm"}},
            {"name": "yoke", "shape": shape, "measures": {**YOKE, **yoke}},
        ],
        "joins": [
            {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
            {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
        ],
    }  # fmt: skip


def pieces(of: Any, size: GarmentInSize) -> tuple[Any, ...]:
    return tuple(of(size.piece(name)) for name in ("body", "sleeve"))


def test_they_go_on_over_the_stitches_of_the_yoke() -> None:
    (size,) = garment(jumper(), PLAIN)
    # the yoke has 159 for the body and 57 for an arm; 100 and 36 cm alone would be 160 and 58
    assert pieces(lambda piece: (piece.chain, piece.foundation), size) == ((None, 159), (None, 57))
    assert pieces(lambda piece: (piece.on.piece, piece.on.stitches, piece.on.added), size) == (
        ("yoke", 159, 10),
        ("yoke", 57, 10),
    )
    assert size.piece("sleeve").counts[-1] == 35  # 220/6.25 = 35.2, odd as 57
    assert [(join.verdict, join.difference_mm, join.goes_on) for join in size.joins] == [(JoinVerdict.FITS, 0, True)] * 2


def test_they_hang_down_from_the_yoke_in_the_drawing() -> None:
    (size,) = garment(jumper(), PLAIN)
    for name in ("body", "sleeve"):
        shape = outline(size.piece(name))
        assert shape.upside_down
        assert {y for _, y in shape.edges["start"][0]} == {shape.height}


def test_a_seam_takes_nothing_where_there_is_none() -> None:
    plan = jumper()
    plan["pieces"][0]["seam"] = plan["pieces"][1]["seam"] = "1 cm"
    (size,) = garment(plan, PLAIN)
    assert pieces(lambda piece: piece.rows, size) == (68, 90)


def test_in_repeats_or_in_another_stitch_it_begins_by_its_own_width() -> None:
    lace = cloth(6.25, 5, multiple=6)
    (size,) = garment(jumper(), {"yoke": PLAIN, "body": lace, "sleeve": cloth(5, 5)})
    # 100 cm: 160/6 = 26.7 repeats of 6; 36 cm of 5 mm: 72
    assert pieces(lambda piece: (piece.chain, piece.foundation, piece.on.stitches), size) == ((None, 162, 159), (None, 72, 57))


def test_one_that_is_far_off_is_a_trouble_with_what_mends_it() -> None:
    plan = plan_of(jumper(body="120 cm", sleeve="30 cm"))
    cloths: dict[str, Cloth] = dict.fromkeys(("yoke", "body", "sleeve"), PLAIN)
    (size,) = work_out_garment(plan, sizes_of(plan, None), cloths)
    assert [join.verdict for join in size.joins] == [JoinVerdict.TROUBLE, JoinVerdict.TROUBLE]
    for join, more in zip(size.joins, (-33, 9), strict=True):
        remedy = remedy_for(plan, size.size, cloths, join)
        assert remedy is not None
        assert remedy.more == more
        (mended,) = work_out_garment(plan, [with_measure(size.size, remedy.piece, remedy.measure, remedy.mm)], cloths)
        assert next(one for one in mended.joins if one.planned == join.planned).difference_mm == 0


def test_without_its_yoke_it_is_not_worked_out() -> None:
    with pytest.raises(LogbookError, match="neck is too wide"):
        garment(jumper(**{"neck round": "150 cm"}), PLAIN)
    plan = plan_of(jumper(**{"neck round": "150 cm"}))
    (size,) = sizes_of(plan, None)
    possible = work_out_possible(plan, size, dict.fromkeys(("yoke", "body", "sleeve"), PLAIN))
    assert possible.garment.pieces == ()
    assert {name: "worked on from “yoke”" in said for name, said in possible.pieces.items()} == {
        "yoke": False, "body": True, "sleeve": True,
    }  # fmt: skip


@given(
    shape=st.sampled_from(["raglan yoke", "round yoke"]),
    body=st.integers(500, 1500), arm=st.integers(160, 550), neck=st.integers(300, 600), depth=st.integers(120, 350),
    p=st.floats(3, 14), q=st.floats(3, 14),
)  # fmt: skip
def test_what_is_worked_on_always_has_the_counts_of_its_yoke(
    shape: str, body: int, arm: int, neck: int, depth: int, p: float, q: float
) -> None:
    said = {"neck round": f"{neck} mm", "yoke depth": f"{depth} mm", "body round": f"{body} mm", "upper arm round": f"{arm} mm"}
    try:
        (size,) = garment(jumper(shape, "body round of yoke", "upper arm round of yoke", **said), cloth(round(p, 2), round(q, 2)))
    except LogbookError:
        return
    yoke = size.piece("yoke").parts
    assert pieces(lambda piece: piece.foundation, size) == (yoke["body"], yoke["arm"])
    assert {join.verdict for join in size.joins} == {JoinVerdict.FITS}
