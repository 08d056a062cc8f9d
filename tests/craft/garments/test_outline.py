"""Outlines of pieces: to scale, and their edges where they belong."""

from itertools import pairwise

import pytest

from logbook.craft.drawing.drawing import Line, Polygon, Text
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.garment_drawing import piece_drawing, pieces_drawing
from logbook.craft.garments.outline import outline
from logbook.craft.garments.plan_file import plan_of
from logbook.tasks.garments import work_out
from tests.support.shaped_pieces import cloth, piece

PLAIN = cloth(6.25, 5)


def test_a_panel_with_a_neck_and_insets() -> None:
    measures = {
        "width": "50 cm",
        "length": "56 cm",
        "neck width": "18 cm",
        "neck depth": "8 cm",
        "armhole": "20 cm",
        "inset": "5 cm",
    }
    back = piece("straight panel", measures, PLAIN)
    shape = outline(back)
    assert (shape.width, shape.height) == (500, 560)
    ((x1, y1), (x2, y2)), other = shape.edges["shoulder"]
    assert abs(x2 - x1) == pytest.approx(back.edges["shoulder"].mm)
    assert y1 == y2 == 560
    assert {x for x, _ in other} == {-x1, -x2}
    assert {abs(x) for x, _ in shape.edges["armhole"][0]} == {200}
    assert {y for _, y in shape.edges["side"][0]} == {0, 360}


def test_a_half_front_has_its_neck_at_the_front_edge() -> None:
    measures = {"width": "25 cm", "length": "56 cm", "neck width": "9 cm", "neck depth": "8 cm", "armhole": "20 cm"}
    front = piece("half front", measures, PLAIN)
    shape = outline(front)
    assert (shape.width, shape.height) == (250, 560)
    (shoulder,) = shape.edges["shoulder"]
    assert abs(shoulder[1][0] - shoulder[0][0]) == pytest.approx(front.edges["shoulder"].mm)
    assert max(y for _, y in shape.edges["front"][0]) == 480
    at_the_front = {y for x, y in shape.points if x == min(x for x, _ in shape.points)}
    assert max(at_the_front) == 480, "nothing is drawn beside the neck"


def test_a_joined_edge_that_ends_within_a_side_is_struck_there_and_both_widths_of_a_taper_are_told() -> None:
    measures = {"width": "50 cm", "length": "56 cm", "armhole": "20 cm"}
    taper = {"start width": "22 cm", "end width": "40 cm", "length": "45 cm"}
    in_place = {"stitches": "16 sts = 10 cm", "rows": "20 rows = 10 cm", "multiple": 1, "plus": 0, "extra chains": 1}
    plan = {
        "name": "top",
        "pieces": [
            {"name": "back", "shape": "straight panel", "swatch": in_place, "measures": measures},
            {"name": "sleeve", "shape": "tapered panel", "swatch": in_place, "measures": taper},
        ],
        "joins": [{"of": "sleeve", "edge": "end", "to": ["back"], "at": "armhole"}],
    }
    (size,) = work_out(plan_of(plan)).numbers
    back = piece_drawing(size, "back")(600, 20)
    strokes = [shape for shape in back.shapes if isinstance(shape, Line) and shape.role == "ink"]
    assert len(strokes) == 2, "one at each side, where the armhole begins; its other end is a corner"
    assert all(a[1] == b[1] for a, b in (stroke.points for stroke in strokes))
    sleeve = piece_drawing(size, "sleeve")(600, 20)
    assert {"21.9 cm", "40.6 cm"} <= {shape.text for shape in sleeve.shapes if isinstance(shape, Text)}


def panels(width: str, *names: str) -> GarmentInSize:
    """Panels of that width, 56 cm long."""
    measures = {"width": width, "length": "56 cm"}
    swatch = {"stitches": "16 sts = 10 cm", "rows": "20 rows = 10 cm", "multiple": 1, "plus": 0, "extra chains": 1}
    pieces = [{"name": name, "shape": "straight panel", "swatch": swatch, "measures": measures} for name in names]
    (size,) = work_out(plan_of({"name": "top", "pieces": pieces})).numbers
    return size


def test_a_title_that_is_wider_than_the_sheet_is_broken() -> None:
    name = "the back of the second one"
    size = panels("50 cm", name)
    wide, narrow = (piece_drawing(size, name)(width, 20) for width in (900, 420))
    titles = [[(s.text, s.y) for s in one.shapes if isinstance(s, Text) and s.style == "bold"] for one in (wide, narrow)]
    assert titles[0][0][0] == f"{name}: 50.0 cm wide, 112 rows"
    assert [text for text, _ in titles[1][:2]] == [f"{name}:", "50.0 cm wide, 112 rows"]
    assert titles[1][1][1] - titles[1][0][1] == pytest.approx(20), "a line lower"


def test_a_name_that_is_longer_than_a_line_of_the_title_is_cut() -> None:
    name = "the back of the second cardigan with the far too many buttonholes"
    drawing = piece_drawing(panels("50 cm", name), name)(420, 20)
    said, measures = [shape for shape in drawing.shapes if isinstance(shape, Text) and shape.style == "bold"][:2]
    assert said.text.endswith("…:")
    assert name.startswith(said.text.removesuffix("…:"))
    assert 300 < 0.55 * 20 * len(said.text) <= 420
    assert measures.text == "50.0 cm wide, 112 rows"


def test_the_large_piece_has_half_of_a_narrow_sheet_and_all_of_it_lies_on_it() -> None:
    drawing = piece_drawing(panels("50 cm", "back"), "back")(300, 17)
    panel = next(shape for shape in drawing.shapes if isinstance(shape, Polygon))
    across = [x for x, _ in panel.points]
    assert max(across) - min(across) >= 150
    for text in (shape for shape in drawing.shapes if isinstance(shape, Text)):
        wide = 17 * (1 if text.turned else 0.46 * len(text.text))
        left = text.x - {"w": 0.0, "e": wide, "center": wide / 2}[text.anchor]
        assert 0 <= left <= 300 - wide, text


def test_long_names_beneath_small_pieces_do_not_touch() -> None:
    names = ["the back of the second cardigan", "back", "the left front of the second cardigan", "pocket of the left front"]
    drawing = pieces_drawing(panels("20 cm", *names))(500, 20)
    said = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    assert [text.text for text in said][1] == "back"
    assert all(text.text.endswith("…") for text in said if text.text not in names)
    ends = [(text.y, text.x - 9 * len(text.text) / 2, text.x + 9 * len(text.text) / 2) for text in said]
    assert all(one[2] <= other[1] for one, other in pairwise(ends) if one[0] == other[0])


def test_what_is_worked_round_from_the_top_lies_flat_with_its_neck_up() -> None:
    measures = {
        "neck round": "48 cm",
        "yoke depth": "24 cm",
        "body round": "100 cm",
        "upper arm round": "36 cm",
        "underarm": "6 cm",
    }
    yoke = piece("raglan yoke", measures, PLAIN)
    shape = outline(yoke)
    assert shape.height == 240
    assert shape.width == pytest.approx(yoke.counts[-1] * 6.25 / 2)
    assert {y for _, y in shape.edges["start"][0]} == {240}
    (body,) = shape.edges["end"]
    sleeves = shape.edges["armhole"]
    assert sum(abs(b[0] - a[0]) for a, b in (body, *sleeves)) == pytest.approx(shape.width)
    assert len(sleeves) == 2
    assert all(abs(b[0] - a[0]) == pytest.approx((57 - 10) * 6.25 / 2) for a, b in sleeves)


def test_a_panel_worked_sideways_lies_as_it_is_worn() -> None:
    side = piece("straight panel", {"width": "50 cm", "length": "60 cm"}, PLAIN, worked="sideways")
    shape = outline(side)
    assert (shape.width, shape.height) == (500, 600)
