"""Garments of several pieces: joins and what mends them, sizes, edgings, and plans that are refused."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.garments.body import sizes_of
from logbook.craft.garments.garment import work_out_garment
from logbook.craft.garments.joins import JoinVerdict
from logbook.craft.garments.plan_file import plan_of, plan_value
from logbook.craft.garments.remedies import remedy_for, with_measure
from logbook.craft.sizes.trade_charts import WOMEN
from logbook.errors import LogbookError
from tests.support.shaped_pieces import cloth, garment, piece

PLAIN = cloth(6.25, 5)
BACK = {"name": "back", "shape": "straight panel", "measures": {"width": "50 cm", "length": "56 cm", "armhole": "20 cm"}}
SLEEVE = {"name": "sleeve", "shape": "tapered panel", "alike": 2,
          "measures": {"start width": "22 cm", "end width": "34 cm", "length": "45 cm"}}  # fmt: skip
TO_ARMHOLE = {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"}


def jumper(**said: Any) -> dict[str, Any]:
    front = {**BACK, "name": "front"}
    return {"name": "jumper", "pieces": [BACK, front, SLEEVE], "joins": [TO_ARMHOLE], **said}


def test_an_armhole_of_two_pieces_is_the_sum_and_of_one_twice_its_depth() -> None:
    (size,) = garment(jumper(), PLAIN)
    (join,) = size.joins
    # 55 · 6.25 = 343.75; two armholes of 40 rows: 400
    assert (join.a.mm, join.b_mm, join.verdict) == (343.75, 400, JoinVerdict.TROUBLE)
    assert join.rate == (2, 3)  # 55 to 80 is 0.6875; 2/3 is nearest with numbers up to 9
    (size,) = garment(jumper(joins=[{**TO_ARMHOLE, "to": ["back"]}]), PLAIN)
    assert size.joins[0].b_mm == 400


def test_what_is_offered_for_a_join_that_does_not_fit_makes_it_fit() -> None:
    plan = plan_of(jumper())
    cloths = dict.fromkeys(("back", "front", "sleeve"), PLAIN)
    sizes = sizes_of(plan, None)
    (size,) = work_out_garment(plan, sizes, cloths)
    remedy = remedy_for(plan, sizes[0], cloths, size.joins[0])
    assert remedy is not None
    assert (remedy.piece, remedy.measure, remedy.more) == ("sleeve", "end width", 8)
    (mended,) = work_out_garment(plan, [with_measure(sizes[0], "sleeve", "end width", remedy.mm)], cloths)
    assert mended.joins[0].verdict is JoinVerdict.FITS
    assert mended.joins[0].a.count == size.joins[0].a.count + 8


@pytest.mark.parametrize(
    ("end", "verdict"),
    [("40 cm", "fits"), ("39.3 cm", "fits"), ("38.2 cm", "ease in"), ("37.2 cm", "trouble"), ("42.6 cm", "trouble")],
)
def test_fits_eases_in_or_is_trouble(end: str, verdict: str) -> None:
    # 63, 63, 61, 59 and 69 stitches to 400 mm: 393.75 (1.6 %), 381.25 (4.7 %), 368.75 (7.8 %), 431.25
    plan = jumper()
    plan["pieces"] = [*plan["pieces"][:2], {**SLEEVE, "measures": {**SLEEVE["measures"], "end width": end}}]  # type: ignore[dict-item]
    (size,) = garment(plan, PLAIN)
    assert size.joins[0].verdict == verdict


def test_side_to_side_the_rows_must_be_equal() -> None:
    front = {**BACK, "name": "front", "measures": {**BACK["measures"], "length": "57 cm"}}  # type: ignore[dict-item]
    plan = {"name": "g", "pieces": [BACK, front], "joins": [{"of": "back", "edge": "side", "to": ["front"], "at": "side"}]}
    (size,) = garment(plan, PLAIN)
    assert size.joins[0].verdict is JoinVerdict.TROUBLE
    assert size.joins[0].trouble is not None
    assert size.joins[0].trouble.figures == {"a": 72, "b": 74, "along": "rows"}


def test_an_inset_wants_its_depth_straight_on_the_sleeve() -> None:
    measures = {**BACK["measures"], "inset": "5 cm"}  # type: ignore[dict-item]
    body = [{**BACK, "measures": measures}, {**BACK, "name": "front", "measures": measures}]
    sleeve = {**SLEEVE, "measures": {**SLEEVE["measures"], "end width": "40 cm"}}  # type: ignore[dict-item]
    (size,) = garment({"name": "g", "pieces": [*body, sleeve], "joins": [TO_ARMHOLE]}, PLAIN)
    assert [(level.row, level.stitches) for level in size.pieces[0].levels] == [(0, 80), (73, 64), (112, 64)]
    assert size.joins[0].trouble is not None
    assert size.joins[0].trouble.kind == "inset"
    straight = {**sleeve, "measures": {**sleeve["measures"], "straight": "5 cm"}}
    (size,) = garment({"name": "g", "pieces": [*body, straight], "joins": [TO_ARMHOLE]}, PLAIN)
    assert size.joins[0].verdict is JoinVerdict.FITS


def test_an_edging_takes_up_stitches_by_the_two_gauges() -> None:
    plan = {
        "name": "g",
        "pieces": [
            BACK,
            {"name": "band", "shape": "edging", "along": ["back", "side"], "measures": {"depth": "2 cm"}},
        ],
    }
    (size,) = garment(plan, {"back": cloth(7, 9), "band": cloth(6, 6)})
    band = size.piece("band")
    # 560/9 = 62 rows less 22 of the armhole: 40 rows of 9 mm are 360 mm: 60 stitches, 3 to 2 rows; 20/6 = 3 rows
    assert (band.foundation, band.rows, band.chain) == (60, 3, None)
    assert (band.picked[0].rate, band.picked[0].over) == ((3, 2), 0)


def test_a_border_all_round_a_blanket_grows_at_its_corners() -> None:
    blanket = {"name": "blanket", "shape": "straight panel", "measures": {"width": "80 cm", "length": "100 cm"}}
    around = [["blanket", ["start", "right side", "end", "left side"]]]
    border = {"name": "border", "shape": "edging", "worked": "round", "along": around, "measures": {"depth": "3 cm"}}
    (size,) = garment({"name": "g", "pieces": [blanket, border]}, cloth(5, 5))
    # 3600/5 = 720; the even number nearest 2q/p is 2, at four corners: 8 more a round, six rounds
    assert size.piece("border").counts == (728, 736, 744, 752, 760, 768)


def test_sizes_come_from_the_chart_and_what_a_size_types_wins() -> None:
    back = {**BACK, "measures": {"width": "(chest + ease) / 2", "length": "56 cm"}}
    sizes = {"chart": "women", "only": ["S", "M"], "typed": [{"size": "M", "ease": "10 cm", "back": {"length": "60 cm"}}]}
    plan = plan_of({"name": "g", "ease": "5 cm", "sizes": sizes, "pieces": [back]})
    small, medium = work_out_garment(plan, sizes_of(plan, WOMEN), {"back": PLAIN})
    assert small.pieces[0].foundation == 71  # (835 + 50)/2 = 442.5: 70.8
    assert (medium.pieces[0].foundation, medium.pieces[0].rows) == (83, 120)  # (940 + 100)/2 = 520: 83.2


def test_in_repeats_new_stitches_are_plain_until_they_make_a_repeat() -> None:
    shells = cloth(6, 8, multiple=6, plus=1)
    sleeve = piece("tapered panel", {"start width": "22 cm", "end width": "34 cm", "length": "45 cm"}, shells)
    # 220 mm: 36.7 of 6k + 1 → 37 (222 mm); 340/6 = 56.7, odd → 57
    assert (sleeve.foundation, sleeve.counts[-1]) == (37, 57)
    whole = piece(
        "tapered panel", {"start width": "22 cm", "end width": "34 cm", "length": "45 cm"}, shells, **{"whole repeats": True}
    )
    assert (whole.counts[-1] - whole.foundation) % 12 == 0


def test_half_fronts_have_one_neck_edge() -> None:
    measures = {"width": "25 cm", "length": "56 cm", "neck width": "9 cm", "neck depth": "8 cm", "armhole": "20 cm"}
    front = piece("half front", measures, PLAIN)
    # 40 stitches; N 14 over 16 rows: the half 7, then 7 one a row
    assert (front.planned.alike, front.foundation, front.counts[-1]) == (2, 40, 26)
    assert front.counts[112 - 16] == 33
    assert front.edges["shoulder"].count == 26
    assert front.edges["front"].count == 96


def test_a_plan_comes_back_as_it_was() -> None:
    plan = plan_of(jumper(sizes={"chart": "women", "end": "low", "only": ["S"]}, ease="-6 %", says="Work it twice."))
    assert plan_of(plan_value(plan)) == plan


@given(
    start=st.integers(50, 900), end=st.integers(50, 900), length=st.integers(20, 900), straight=st.integers(0, 10),
    p=st.floats(3, 15), q=st.floats(3, 20), right=st.booleans(),
)  # fmt: skip
def test_a_taper_adds_up(start: int, end: int, length: int, straight: int, p: float, q: float, right: bool) -> None:
    measures = {"start width": f"{start} mm", "end width": f"{end} mm", "length": f"{length} mm", "straight": f"{straight} mm"}
    try:
        made = piece("tapered panel", measures, cloth(round(p, 2), round(q, 2)), **{"right side rows": right})
    except LogbookError:
        return
    shapings = made.shapings[0] if made.shapings else None
    assert made.counts[-1] == made.foundation + (2 * shapings.by * len(shapings.at) if shapings else 0)
    assert (made.counts[-1] - made.foundation) % 2 == 0
    if shapings and not right:
        d, rows = len(shapings.at), shapings.rows
        assert made.off_line_mm <= made.stitch_mm * (0.5 + d * d / (4 * rows)) + 1e-6


@given(
    width=st.integers(300, 900),
    neck=st.integers(60, 250),
    depth=st.integers(20, 200),
    form=st.sampled_from(["square", "round", "v"]),
)
def test_a_neck_leaves_equal_shoulders(width: int, neck: int, depth: int, form: str) -> None:
    measures = {"width": f"{width} mm", "length": "500 mm", "neck width": f"{neck} mm", "neck depth": f"{depth} mm"}
    try:
        back = piece("straight panel", measures, PLAIN, neck=form)
    except LogbookError:
        return
    shoulder = back.edges["shoulder"].count
    assert back.counts[-1] == 2 * shoulder
    lost = [before - now for before, now in zip((back.foundation, *back.counts), back.counts, strict=False)]
    assert all(each >= 0 for each in lost)
    assert sum(lost) == back.foundation - 2 * shoulder


@given(
    st.sampled_from(["raglan yoke", "round yoke"]),
    st.integers(300, 600),
    st.integers(150, 350),
    st.integers(700, 1400),
    st.integers(220, 500),
)
def test_a_yoke_adds_up(shape: str, neck: int, depth: int, body: int, arm: int) -> None:
    measures = {"neck round": f"{neck} mm", "yoke depth": f"{depth} mm", "body round": f"{body} mm",
                "upper arm round": f"{arm} mm", "underarm": "6 cm"}  # fmt: skip
    try:
        yoke = piece(shape, measures, PLAIN)
    except LogbookError:
        return
    parts, lines = yoke.parts, 4 * yoke.parts.get("lines", 0)
    # all stitches of the last round are the body and both arms, less what is added under the arms twice over
    assert yoke.counts[-1] == parts["body"] + 2 * parts["arm"] - 4 * parts["underarm"]
    assert parts["body"] == pytest.approx(body / 6.25, abs=2.01)
    assert parts["arm"] == pytest.approx(arm / 6.25, abs=1.01)
    assert lines in (0, 4)


@pytest.mark.parametrize(
    ("shape", "worked", "edges", "stitches", "rows"),
    [
        ("straight panel", "up", ["side"], 84, 100),  # 500 + 2 · 12.5 = 525: 84
        ("straight panel", "up", ["left side"], 82, 100),
        ("half front", "up", ["side"], 82, 100),  # one side alone is sewn
        ("straight panel", "up", ["start"], 80, 102),  # 500 + 12.5 = 512.5: 102.5, the lower
        ("straight panel", "sideways", ["side"], 80, 105),  # its sides are its first and last row
        ("straight panel", "sideways", ["start"], 80, 102),
        ("straight panel", "round", ["start"], 80, 102),
    ],
)
def test_a_seam_is_added_once_at_each_joined_edge(shape: str, worked: str, edges: list[str], stitches: int, rows: int) -> None:
    measures = {"width": "50 cm", "length": "50 cm"}
    pieces = [{"name": name, "shape": shape, "worked": worked, "seam": "12.5 mm", "measures": measures} for name in ("a", "b")]
    joins = [{"of": "a", "edge": edge, "to": ["b"], "at": edge} for edge in edges]
    (size,) = garment({"name": "g", "pieces": pieces, "joins": joins}, PLAIN)
    assert [(piece.foundation, piece.rows) for piece in size.pieces] == [(stitches, rows)] * 2
