"""Outlines of pieces: to scale, and their edges where they belong."""

import pytest

from logbook.craft.garments.outline import outline
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


def test_a_panel_worked_sideways_lies_as_it_is_worn() -> None:
    side = piece("straight panel", {"width": "50 cm", "length": "60 cm"}, PLAIN, worked="sideways")
    shape = outline(side)
    assert (shape.width, shape.height) == (500, 600)
