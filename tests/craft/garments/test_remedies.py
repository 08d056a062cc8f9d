"""A join that does not fit is named with what would mend it, and taken it does: over random garments."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from logbook.craft.garments.body import sizes_of
from logbook.craft.garments.garment import work_out_garment
from logbook.craft.garments.joins import Joined, JoinVerdict
from logbook.craft.garments.plan_file import plan_of
from logbook.craft.garments.remedies import remedy_for, with_measure
from logbook.craft.garments.templates import template
from logbook.errors import LogbookError
from tests.support.shaped_pieces import cloth

PITCH = st.integers(30, 140).map(lambda tenths: tenths / 10)


def mm(low: int, high: int) -> st.SearchStrategy[str]:
    return st.integers(low, high).map(lambda length: f"{length} mm")


@st.composite
def sewn(draw: st.DrawFn) -> dict[str, Any]:
    """Back, front and sleeves whose measures know nothing of one another."""
    inset = draw(st.booleans())

    def body(name: str) -> dict[str, Any]:
        measures = {"width": draw(mm(350, 700)), "length": draw(mm(400, 700)), "armhole": draw(mm(140, 300)),
                    "neck width": draw(mm(100, 240)), "neck depth": draw(mm(30, 130))}  # fmt: skip
        if inset:
            measures["inset"] = draw(mm(10, 50))
        neck = draw(st.sampled_from(["round", "square", "v"]))
        return {
            "name": name,
            "shape": "straight panel",
            "neck": neck,
            "measures": measures,
            "seam": draw(st.sampled_from(["", "5 mm"])),
        }

    sleeve = {"start width": draw(mm(180, 300)), "end width": draw(mm(240, 600)), "length": draw(mm(300, 500)),
              "straight": draw(mm(0, 60))}  # fmt: skip
    front = body("front")
    back = body("back")
    if inset:
        front["measures"]["inset"] = back["measures"]["inset"]
    return {
        "name": "g",
        "pieces": [back, front, {"name": "sleeve", "shape": "tapered panel", "alike": 2, "measures": sleeve}],
        "joins": [
            {"of": "front", "edge": "shoulder", "to": ["back"], "at": "shoulder"},
            {"of": "front", "edge": "side", "to": ["back"], "at": "side"},
            {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
        ],
    }  # fmt: skip


@st.composite
def from_a_yoke(draw: st.DrawFn) -> dict[str, Any]:
    """A yoke, body and sleeves whose measures know nothing of one another."""
    yoke = {"neck round": "500 mm", "yoke depth": draw(mm(160, 320)), "body round": draw(mm(700, 1500)),
            "upper arm round": draw(mm(260, 520)), "underarm": draw(mm(0, 100))}  # fmt: skip
    sleeve = {"start width": draw(mm(220, 600)), "end width": draw(mm(180, 260)), "length": "420 mm"}
    body = {"width": draw(mm(600, 1700)), "length": "300 mm"}
    shape = draw(st.sampled_from(["raglan yoke", "round yoke"]))
    return {
        "name": "g",
        "pieces": [
            {"name": "yoke", "shape": shape, "measures": yoke},
            {
                "name": "body",
                "shape": "straight panel",
                "worked": "round",
                "measures": body,
            },
            {"name": "sleeve", "shape": "tapered panel", "worked": "round", "alike": 2, "measures": sleeve},
        ],
        "joins": [
            {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
            {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
        ],
    }


def mended(value: dict[str, Any], p: float, q: float) -> int:
    """Takes what is offered until nothing is in the way, each join by itself; how many remedies that took."""
    plan = plan_of(value)
    cloths = dict.fromkeys((piece.name for piece in plan.pieces), cloth(p, q))
    (size,) = sizes_of(plan, None)
    try:
        (made,) = work_out_garment(plan, (size,), cloths)
    except LogbookError:
        assume(False)
        raise
    taken = 0
    for place in range(len(plan.joins)):
        alone = replace(plan, joins=(plan.joins[place],))
        own = size
        for _ in range(3):
            (made,) = work_out_garment(alone, (own,), cloths)
            join: Joined = made.joins[0]
            if join.verdict is not JoinVerdict.TROUBLE:
                break
            remedy = remedy_for(alone, own, cloths, join)
            assert remedy is not None, f"{join.planned.edge}: {join.a.mm} to {join.b_mm}, {join.trouble}"
            own = with_measure(own, remedy.piece, remedy.measure, remedy.mm)
            taken += 1
        assert join.verdict is not JoinVerdict.TROUBLE
    return taken


def _eased_in() -> dict[str, Any]:
    """A sleeve that is 2.4 % too short for armholes with an inset, and has no straight rows for it."""
    measures = {"width": "350 mm", "length": "400 mm", "neck width": "100 mm", "neck depth": "30 mm", "inset": "10 mm"}
    sleeve = {"start width": "180 mm", "end width": "485 mm", "length": "300 mm", "straight": "0 mm"}
    return {
        "name": "g",
        "pieces": [
            {"name": "back", "shape": "straight panel", "measures": {**measures, "armhole": "292 mm"}},
            {"name": "front", "shape": "straight panel", "measures": {**measures, "armhole": "207 mm"}},
            {"name": "sleeve", "shape": "tapered panel", "alike": 2, "measures": sleeve},
        ],
        "joins": [{"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"}],
    }


@given(sewn(), PITCH, PITCH)
@example(_eased_in(), 3.0, 3.0)
@settings(max_examples=12)
def test_what_is_sewn_can_be_mended(value: dict[str, Any], p: float, q: float) -> None:
    mended(value, p, q)


@given(from_a_yoke(), PITCH, PITCH)
@settings(max_examples=12)
def test_what_is_worked_on_can_be_mended(value: dict[str, Any], p: float, q: float) -> None:
    mended(value, p, q)


@pytest.mark.parametrize(("multiple", "plus", "p"), [(10, 2, 6.25), (10, 2, 5.85), (6, 1, 6.36), (14, 3, 5.0), (1, 0, 6.25)])
def test_shoulders_of_the_cardigan_can_be_mended_in_a_stitch_with_repeats(multiple: int, plus: int, p: float) -> None:
    """A neck gives and takes single stitches, though the widths go by whole repeats."""
    body = {"arm length": "44 cm"}
    typed = [
        {"size": name, "bust": f"{bust} cm", "armhole depth": f"{deep} cm", **body}
        for name, bust, deep in (("S", 83.5, 17.5), ("M", 94, 18.5), ("L", 104, 20))
    ]
    plan = replace(template("cardigan", "any"), sizes=plan_of({"name": "g", "sizes": typed}, whole=False).sizes)
    cloths = dict.fromkeys((piece.name for piece in plan.pieces), cloth(p, 11.1, multiple=multiple, plus=plus))
    for size in sizes_of(plan, None):
        (made,) = work_out_garment(plan, (size,), cloths)
        shoulder = made.joins[0]
        assert shoulder.planned.edge == "shoulder"
        if shoulder.verdict is JoinVerdict.TROUBLE:
            remedy = remedy_for(plan, size, cloths, shoulder)
            assert remedy is not None
            (made,) = work_out_garment(plan, (with_measure(size, remedy.piece, remedy.measure, remedy.mm),), cloths)
            assert made.joins[0].a.count == made.joins[0].b_count
