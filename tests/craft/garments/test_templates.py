"""What a garment is begun from: every template comes out in every size, and its joins fit or can be mended."""

from dataclasses import replace

import pytest

from logbook.craft.garments.garment import work_out_garment
from logbook.craft.garments.joins import JoinVerdict
from logbook.craft.garments.plan import GarmentPlan
from logbook.craft.garments.remedies import remedy_for, with_measure
from logbook.craft.garments.templates import EMPTY, TEMPLATES, new_piece, template
from logbook.craft.garments.usual_joins import usual_joins
from logbook.tasks.garments import GarmentAnswer, work_out

GAUGES = ("16 sts = 10 cm", "20 rows = 10 cm"), ("14 sts = 10 cm", "9 rows = 10 cm"), ("22 sts = 10 cm", "26 rows = 10 cm")
FILLED = [name for name in TEMPLATES if name != EMPTY]


def in_stitch(plan: GarmentPlan, stitches: str, rows: str) -> GarmentAnswer:
    swatch = {"stitches": stitches, "rows": rows, "multiple": 1, "plus": 0, "extra chains": 1}
    return work_out(replace(plan, name="a", pieces=tuple(replace(piece, swatch=swatch) for piece in plan.pieces)))


@pytest.mark.parametrize("name", FILLED)
@pytest.mark.parametrize("gauge", GAUGES, ids=lambda gauge: gauge[0])
def test_a_template_comes_out_in_every_size(name: str, gauge: tuple[str, str]) -> None:
    answer = in_stitch(template(name), *gauge)
    for size in answer.numbers:
        assert all(piece.rows > 1 for piece in size.pieces)
        for join in size.joins:
            if join.verdict is JoinVerdict.TROUBLE:
                remedy = remedy_for(answer.plan, size.size, answer.cloths, join)
                assert remedy is not None, f"{size.name}: {join.planned}"
                mended = with_measure(size.size, remedy.piece, remedy.measure, remedy.mm)
                again = work_out_garment(answer.plan, [mended], answer.cloths)[0]
                assert next(one for one in again.joins if one.planned == join.planned).verdict is JoinVerdict.FITS


def test_the_shape_of_each() -> None:
    pieces = {name: [(piece.name, piece.alike) for piece in template(name).pieces] for name in TEMPLATES}
    assert pieces["two-panel top"] == [("back", 1), ("front", 1)]
    assert pieces["cardigan"] == [("back", 1), ("front", 2), ("sleeve", 2), ("band", 1)]
    assert pieces["top-down raglan"] == [("yoke", 1), ("body", 1), ("sleeve", 2)]
    assert pieces[EMPTY] == []


def test_usual_joins_of_a_cardigan() -> None:
    joins = [(join.of, join.edge, join.to, join.at) for join in usual_joins(template("cardigan"))]
    assert joins == [
        ("front", "shoulder", ("back",), "shoulder"),
        ("front", "side", ("back",), "side"),
        ("sleeve", "end", ("back", "front"), "armhole"),
    ]


def test_new_pieces_have_free_names() -> None:
    plan = template("cardigan")
    assert new_piece("tapered panel", plan) == "sleeve 2"
    assert new_piece("crown and tube", plan) == "crown"
