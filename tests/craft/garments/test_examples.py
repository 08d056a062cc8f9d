"""Pieces worked out by hand from the formulas, p 6.25 mm and q 5 mm unless said."""

import pytest

from logbook.craft.garments.crowns import flat_round
from tests.support.shaped_pieces import cloth, piece

PLAIN = cloth(6.25, 5)
YOKE = {
    "neck round": "48 cm", "yoke depth": "24 cm", "body round": "100 cm", "upper arm round": "36 cm", "underarm": "6 cm",
}  # fmt: skip


def test_a_taper() -> None:
    sleeve = piece("tapered panel", {"start width": "22 cm", "end width": "34 cm", "length": "45 cm"}, PLAIN)
    # 220/6.25 = 35.2 → 35; 340/6.25 = 54.4, odd → 55; 450/5 = 90 rows; 10 shapings an edge
    assert (sleeve.chain, sleeve.rows, sleeve.counts[-1]) == (36, 90, 55)
    assert sleeve.shapings[0].at == (5, 14, 23, 32, 41, 50, 59, 68, 77, 86)
    assert [(level.row, level.stitches) for level in sleeve.levels] == [
        (0, 35), (5, 37), (14, 39), (23, 41), (32, 43), (41, 45), (50, 47), (59, 49), (68, 51), (77, 53), (86, 55), (90, 55),
    ]  # fmt: skip
    assert sleeve.levels[-1].width_mm == pytest.approx(55 * 6.25)
    assert 0 < sleeve.off_line_mm <= 6.25 * (0.5 + 100 / 360)


def test_a_taper_with_its_end_worked_even() -> None:
    measures = {"start width": "22 cm", "end width": "34 cm", "length": "45 cm", "straight": "3 cm"}
    sleeve = piece("tapered panel", measures, PLAIN)
    assert sleeve.shapings[0].rows == 84
    assert max(sleeve.shapings[0].at) <= 84


def test_a_taper_inwards() -> None:
    skirt = piece("tapered panel", {"start width": "34 cm", "end width": "22 cm", "length": "45 cm"}, PLAIN)
    # 54.4 → 54, even; 35.2 → 36
    assert (skirt.foundation, skirt.counts[-1]) == (54, 36)


def test_a_round_neck() -> None:
    dc = cloth(7, 13, extra=2)
    back = piece("straight panel", {"width": "56 cm", "length": "60 cm", "neck width": "18 cm", "neck depth": "8 cm"}, dc)
    # S 80, R 46; N 26, D 6, C 16, then 5 a side
    assert [(level.row, level.stitches) for level in back.levels] == [
        (0, 80), (41, 64), (42, 62), (43, 60), (44, 58), (45, 56), (46, 54),
    ]  # fmt: skip
    # 16·7 + 2(√(35² + 65²) + 0)
    assert back.edges["neck"].mm == pytest.approx(112 + 2 * (35**2 + 65**2) ** 0.5)
    assert back.edges["shoulder"].count == 27


@pytest.mark.parametrize(
    ("neck", "levels"),
    [
        ("square", [(0, 80), (41, 54), (46, 54)]),
        ("v", [(0, 80), (41, 74), (42, 70), (43, 64), (44, 60), (45, 58), (46, 54)]),
    ],
)
def test_other_necks(neck: str, levels: list[tuple[int, int]]) -> None:
    measures = {"width": "56 cm", "length": "60 cm", "neck width": "18 cm", "neck depth": "8 cm"}
    back = piece("straight panel", measures, cloth(7, 13, extra=2), neck=neck)
    assert [(level.row, level.stitches) for level in back.levels][-1] == levels[-1]
    if neck == "square":
        assert [(level.row, level.stitches) for level in back.levels] == levels
    else:  # 13 a side over 6 rows: 2 in every row and one more in row 3
        assert back.shapings[0].at == tuple(40 + row for row in (1, 1, 2, 2, 3, 3, 3, 4, 4, 5, 5, 6, 6))


def test_a_crown() -> None:
    assert flat_round(6.25, 5) == pytest.approx(5.03, abs=0.005)
    assert flat_round(6.25, 10) == pytest.approx(10.05, abs=0.005)
    hat = piece("crown and tube", {"round": "54 cm", "height": "20 cm"}, PLAIN, **{"each round": 6})
    assert (hat.parts["crown_rounds"], hat.counts[13], hat.rows, hat.chain) == (14, 84, 40, None)
    assert hat.levels[-1].width_mm == pytest.approx(525)
    exact = piece("crown and tube", {"round": "54 cm", "height": "20 cm"}, PLAIN, **{"each round": 6, "exact": True})
    assert exact.counts[13:15] == (84, 86)


def test_a_raglan() -> None:
    yoke = piece("raglan yoke", YOKE, PLAIN)
    assert yoke.chain == 77
    assert {name: yoke.parts[name] for name in ("back", "front", "sleeve", "underarm")} == {
        "back": 27, "front": 28, "sleeve": 9, "underarm": 10,
    }  # fmt: skip
    assert yoke.rows == 48
    assert (yoke.parts["body_increases"], yoke.parts["sleeve_increases"]) == (20, 19)
    assert (yoke.parts["body"], yoke.parts["arm"]) == (159, 57)
    assert yoke.counts[-1] == 77 + 4 * 20 + 4 * 19
    assert not yoke.troubles


def test_a_round_yoke() -> None:
    yoke = piece("round yoke", YOKE, PLAIN)
    assert [(level.row, level.stitches) for level in yoke.levels] == [
        (0, 77), (3, 100), (10, 122), (17, 145), (24, 168), (31, 191), (38, 213), (45, 236), (48, 236),
    ]  # fmt: skip
    assert (yoke.parts["back"], yoke.parts["sleeve"]) == (70, 48)


def test_a_shawl() -> None:
    shawl = piece("triangle", {"wingspan": "150 cm"}, PLAIN, **{"first stitches": 3, "more a row": 2})
    assert (shawl.rows, shawl.counts[-1], shawl.stitches_worked) == (120, 241, 14_640)
    assert shawl.levels[-1].width_mm == pytest.approx(1506, abs=0.5)
    assert shawl.rows * 5 == 600
