"""The drawing of a panel: to scale, on its sheet, and saying what the numbers say."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from logbook.craft.drawing.drawing import Drawing, Line, Marker, Rect, Text
from logbook.craft.pieces.panel_drawing import panel_drawing
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import work_out
from logbook.craft.words.lengths import Units
from tests.support.cloth import EDGE_SWATCH, HDC_SWATCH, LACE_PANEL, LACE_SWATCH, RIB_SWATCH, RIBBED, VEST, gauges_of_swatch

HDC, LACE, RIB = gauges_of_swatch(HDC_SWATCH), gauges_of_swatch(LACE_SWATCH, EDGE_SWATCH), gauges_of_swatch(RIB_SWATCH)
GARMENTS = {"vest": (VEST, HDC), "lace": (LACE_PANEL, LACE), "rib": (RIBBED, RIB), "strip": (PiecePlan(width_mm=460), HDC)}


def drawn(plan: PiecePlan, gauges: PieceGauges, width: float = 700.0, line: float = 18.0, units: Units = Units.CM) -> Drawing:
    return panel_drawing(plan, gauges, work_out(plan, gauges), units)(width, line)


def texts(drawing: Drawing) -> list[str]:
    return [shape.text for shape in drawing.shapes if isinstance(shape, Text)]


def test_it_says_every_measure() -> None:
    said = texts(drawn(VEST, HDC))
    wanted = [
        "51.8 cm",
        "55.8 cm",
        "neck 23.8 cm",
        "19.8 cm",
        "row 40",
        "20",
        "34 sts",
        "chain 76",
        "62 rows",
        "each tick: 5 stitches",
    ]
    assert set(wanted) <= set(said)
    assert {"101.5 cm all round", "neck 47.6 cm round", "armhole 39.6 cm round"} <= set(said)
    assert "20 3/8 in" in texts(drawn(VEST, HDC, units=Units.INCHES))


def test_without_a_count_of_rows_no_word_stands_alone_in_the_strip() -> None:
    said = texts(drawn(*GARMENTS["strip"]))
    assert any(text.startswith("chain ") for text in said)
    assert "rows" not in said
    assert "62 rows" in texts(drawn(VEST, HDC))


def test_it_is_to_scale() -> None:
    panel = next(shape for shape in drawn(VEST, HDC).shapes if isinstance(shape, Rect))
    assert panel.width / panel.height == pytest.approx(518 / 558)
    marks = [shape for shape in drawn(VEST, HDC).shapes if isinstance(shape, Marker)]
    armhole = next(mark for mark in marks if mark.kind == "circle")
    assert (armhole.y - panel.y) / panel.height == pytest.approx(198 / 558)
    neck = [mark.x for mark in marks if mark.kind == "triangle"]
    assert (neck[1] - neck[0]) / panel.width == pytest.approx(238 / 518)


def test_repeats_are_ticked_along_the_chain() -> None:
    """Five repeats of 80 mm between edge stitches of 24 mm, 453 mm in all: six ticks along the bottom."""
    shapes = drawn(LACE_PANEL, LACE).shapes
    panel = next(shape for shape in shapes if isinstance(shape, Rect))
    ticks = [s.points[0][0] for s in shapes if isinstance(s, Line) and s.role == "accent" and s.thick == 1]
    assert [(x - panel.x) / panel.width * 453 for x in ticks] == pytest.approx([24 + 80 * k for k in range(6)])


def test_sideways_the_chain_is_the_side() -> None:
    shapes = drawn(RIBBED, RIB).shapes
    panel = next(shape for shape in shapes if isinstance(shape, Rect))
    chain = next(shape for shape in shapes if isinstance(shape, Line) and shape.role == "accent" and shape.thick == 3)
    assert chain.points == ((panel.x, panel.y), (panel.x, panel.y + panel.height))
    assert "stitch 57" in texts(drawn(RIBBED, RIB))


@pytest.mark.parametrize("panels", [1, 2, 4])
def test_more_panels_are_joined_side_by_side(panels: int) -> None:
    plan = replace(VEST, panels=panels, neck_mm=None)
    sewn = [s for s in drawn(plan, HDC).shapes if isinstance(s, Line) and s.thick == 4 and s.role == "accent"]
    assert len(sewn) == {1: 0, 2: 2, 4: 5}[panels]


def test_in_the_round_nothing_is_sewn() -> None:
    plan = replace(VEST, in_round=True, armhole_mm=None, neck_mm=None)
    assert not [s for s in drawn(plan, HDC).shapes if isinstance(s, Line) and s.thick == 4]
    assert "62 rounds" in texts(drawn(plan, HDC))


@settings(max_examples=60)
@given(st.sampled_from(sorted(GARMENTS)), st.floats(150, 2000), st.floats(10, 60), st.sampled_from(Units))
def test_all_lies_on_the_sheet(name: str, width: float, line: float, units: Units) -> None:
    drawing = drawn(*GARMENTS[name], width, line, units)
    for shape in drawing.shapes:
        match shape:
            case Line(points):
                places = list(points)
            case Rect(x, y, wide, high):
                places = [(x, y), (x + wide, y + high)]
            case Marker(x, y) | Text(x, y):
                places = [(x, y)]
            case _:
                places = []
        assert all(-0.01 <= y <= drawing.height + 0.01 for _, y in places), shape
        if width > 12 * line:
            assert all(-0.01 <= x <= width + 0.01 for x, _ in places), shape


@pytest.mark.parametrize("highest", [900.0, 240.0])
def test_the_measures_of_marks_do_not_lie_over_each_other(highest: float) -> None:
    """Of a small panel they are longer than what they measure."""
    plan = replace(VEST, armhole_mm=120.0, slit_mm=60.0)
    drawing = drawn(plan, HDC, highest, 34.0)
    turned = [shape for shape in drawing.shapes if isinstance(shape, Text) and shape.turned and shape.style == "plain"]
    assert len(turned) == 2
    (upper, lower) = sorted(turned, key=lambda text: text.y)
    assert lower.y - upper.y >= 0.42 * 34 * (len(upper.text) + len(lower.text)) / 2


def test_the_legend_is_broken_where_its_place_is_narrow() -> None:
    wide, narrow = texts(drawn(VEST, HDC, 1200.0)), texts(drawn(VEST, HDC, 720.0, 24.0))
    assert "thick: seam · dashed: opening" in wide
    assert {"thick: seam", "dashed: opening"} <= set(narrow)
