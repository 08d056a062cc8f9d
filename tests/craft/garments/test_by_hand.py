"""Six garments worked out with pencil and paper, one of each family of shapes. S(d, R): d shapings spread over R rows."""

from typing import Any

import pytest

from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.joins import JoinVerdict
from tests.support.shaped_pieces import cloth, garment


def levels(size: GarmentInSize, name: str) -> list[tuple[int, int]]:
    return [(level.row, level.stitches) for level in size.piece(name).levels]


def stepped(first: int, rows: tuple[int, ...], by: int) -> list[tuple[int, int]]:
    return [(row, first + by * number) for number, row in enumerate(rows, 1)]


def test_a_top_of_two_panels_with_round_necks() -> None:
    def panel(name: str, deep: str) -> dict[str, Any]:
        measures = {"width": "52 cm", "length": "54 cm", "armhole": "20 cm", "neck width": "20 cm", "neck depth": deep}
        return {"name": name, "shape": "straight panel", "neck": "round", "seam": "5 mm", "measures": measures}

    edges = ("shoulder", "side")
    joins = [{"of": "front", "edge": edge, "to": ["back"], "at": edge} for edge in edges]
    (size,) = garment(
        {"name": "g", "pieces": [panel("back", "3 cm"), panel("front", "9 cm")], "joins": joins}, cloth(7, 13, extra=2)
    )
    back, front = size.pieces
    # width 520 + 2 seams of 5 = 530: 530/7 = 75.7 → 76, chain 78. length 540 + 5 = 545: 545/13 = 41.9 → 42
    # neck 200/7 = 28.6, even as 76 → 28
    # back: (30 + 5)/13 = 2.7 → 3 rows: row 40 leaves max(14, 28 − 2·2) = 24, then 2 rows of one
    # front: (90 + 5)/13 = 7.3 → 7 rows: row 36 leaves max(14, 28 − 2·6) = 16, then 6 rows of one
    assert [(piece.chain, piece.rows) for piece in size.pieces] == [(78, 42), (78, 42)]
    assert levels(size, "back") == [(0, 76), (40, 52), (41, 50), (42, 48)]
    assert levels(size, "front") == [(0, 76), (36, 60), (37, 58), (38, 56), (39, 54), (40, 52), (41, 50), (42, 48)]
    # 24·7 + 2·√(14² + 26²) = 168 + 2·29.5296; 16·7 + 2·√(42² + 78²) = 112 + 2·88.5889
    assert back.edges["neck"].mm == pytest.approx(227.0593, abs=1e-3)
    assert front.edges["neck"].mm == pytest.approx(289.1779, abs=1e-3)
    # armhole (200 + 5)/13 = 15.8 → 16 rows, so the sides are 26; shoulders (76 − 28)/2 = 24
    assert [piece.edges[edge].count for piece in size.pieces for edge in edges] == [24, 26, 24, 26]
    assert {join.verdict for join in size.joins} == {JoinVerdict.FITS}
    # back 39·76 + 52 + 50 + 48 = 3114; front 35·76 + 60 + 58 + 56 + 54 + 52 + 50 + 48 = 3038; 10 g are 400: 6152/40 = 153.8
    assert (back.stitches_worked, front.stitches_worked) == (3114, 3038)
    assert size.yarn[0].needed.grams == pytest.approx(153.8)


def test_a_cardigan_with_set_in_sleeves() -> None:
    body = {"length": "60 cm", "armhole": "20 cm", "inset": "4 cm"}
    back = {"width": "50 cm", **body, "neck width": "18 cm", "neck depth": "3 cm"}
    front = {"width": "25 cm", **body, "neck width": "9 cm", "neck depth": "22 cm"}
    sleeve = {"start width": "24 cm", "end width": "2 × armhole of back", "length": "45 cm", "straight": "4 cm"}
    along = [["front", ["front", "neck"]], ["back", "neck"], ["front", ["neck", "front"]]]
    pieces = [
        {"name": "back", "shape": "straight panel", "neck": "round", "measures": back},
        {"name": "front", "shape": "half front", "neck": "v", "measures": front},
        {"name": "sleeve", "shape": "tapered panel", "alike": 2, "measures": sleeve},
        {"name": "band", "shape": "edging", "along": along, "measures": {"depth": "3 cm"}},
    ]
    joins = [
        {"of": "front", "edge": "shoulder", "to": ["back"], "at": "shoulder"},
        {"of": "sleeve", "edge": "end", "to": ["back", "front"], "at": "armhole"},
    ]
    hdc = cloth(6.25, 9)
    of = {"back": hdc, "front": hdc, "sleeve": hdc, "band": cloth(5, 5)}
    (size,) = garment({"name": "g", "pieces": pieces, "joins": joins}, of)
    # 600/9 = 66.7 → 67 rows; armhole 200/9 = 22.2 → 22, so from row 46; inset 40/6.25 = 6.4 → 6
    # back 500/6.25 = 80; neck 180/6.25 = 28.8, even → 28
    # 30/9 = 3.3 → 3 rows: row 65 leaves max(14, 28 − 4) = 24, then 2 rows of one
    assert levels(size, "back") == [(0, 80), (46, 68), (65, 44), (66, 42), (67, 40)]
    # front 250/6.25 = 40; neck 90/6.25 = 14.4 → 14 over 220/9 = 24.4 → 24 rows, from row 44
    # S(14, 24): g 1, e 10: 1, three gaps of 1, ten of 2. The inset falls in the third of them: 38 → 37 − 6 = 31
    neck = (1, 2, 3, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24)
    wanted = [(0, 40), *((43 + row, 40 - number - (6 if row >= 3 else 0)) for number, row in enumerate(neck, 1))]
    assert wanted[3] == (46, 31)
    assert levels(size, "front") == wanted
    assert wanted[-1] == (67, 20)
    assert [size.piece(name).edges["shoulder"].count for name in ("back", "front")] == [20, 20]
    # sleeve 240/6.25 = 38.4 → 38; 400/6.25 = 64, even; 450/9 = 50 rows, 40/9 = 4.4 → 4 even; S(13, 46): g 3, e 7
    rows = (2, 5, 8, 11, 14, 17, 21, 25, 29, 33, 37, 41, 45)
    assert levels(size, "sleeve") == [(0, 38), *stepped(38, rows, 2), (50, 64)]
    # 64·6.25 = 400 to 2·22·9 = 396; the 4 straight rows are 36, the inset 6·6.25 = 37.5; 64 : 44 = 1.4545 is nearest 3 : 2
    shoulder, armhole = size.joins
    assert (armhole.a.mm, armhole.b_mm, armhole.verdict, armhole.rate) == (400, 396, JoinVerdict.FITS, (3, 2))
    assert shoulder.verdict is JoinVerdict.FITS
    # the fronts' edge 43·9 = 387; their neck √(87.5² + 216²) = 233.0499; the back's 24·6.25 + 2·√(12.5² + 18²) = 193.8292
    # 2·387 + 2·233.0499 + 193.8292 = 1433.929: 286.8 → 287 of 5 mm. 30/5 = 6 rows
    band = size.piece("band")
    assert (band.foundation, band.rows) == (287, 6)
    # of 287: 387/1433.929 → 77.458 → 77 to 43 rows: 9 to 5; 46.644 → 47 to 24 rows: 2 to 1, one fewer; 38.795 → 39 to 24 + 6
    assert [(of.stitches, of.rate, of.over) for of in band.picked[:3]] == [(77, (9, 5), 0), (47, (2, 1), -1), (39, (9, 7), 1)]


def test_a_raglan_with_body_and_sleeves() -> None:
    yoke = {"neck round": "52 cm", "yoke depth": "22 cm", "body round": "96 cm", "upper arm round": "35 cm", "underarm": "5 cm"}
    sleeve = {"start width": "35 cm", "end width": "21 cm", "length": "44 cm"}
    pieces = [
        {"name": "yoke", "shape": "raglan yoke", "line stitches": 2, "measures": yoke},
        {"name": "body", "shape": "straight panel", "worked": "round", "measures": {"width": "96 cm", "length": "36 cm"}},
        {"name": "sleeve", "shape": "tapered panel", "worked": "round", "alike": 2, "measures": sleeve},
    ]
    joins = [
        {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
        {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
    ]
    (size,) = garment({"name": "g", "pieces": pieces, "joins": joins}, cloth(6.25, 5))
    parts = size.piece("yoke").parts
    # 520/6.25 = 83.2 → 83; free 83 − 8 = 75; sleeve 75/8 = 9.4 → 9; of 57 the back 28, the front 29; u 50/6.25 = 8; 220/5 = 44
    assert [parts[name] for name in ("back", "front", "sleeve", "underarm")] == [28, 29, 9, 8]
    # body 153.6 − (28 + 29 + 16 + 8 = 81) = 72.6, /4 = 18.15 → 18; arm 56 − (9 + 8) = 39, /2 = 19.5 → 20
    assert [parts[name] for name in ("body_increases", "sleeve_increases", "body", "arm")] == [18, 20, 153, 57]
    # S(18, 44): g 2, e 8; S(20, 44): g 2, e 4
    in_body = (*range(1, 20, 2), *range(22, 44, 3))
    in_sleeves = (*range(1, 32, 2), *range(34, 44, 3))
    assert [shaping.at for shaping in size.piece("yoke").shapings] == [in_body, in_sleeves]
    # after round 21 ten in the body and eleven in the sleeves: 83 + 4·21 = 167; after 44: 83 + 72 + 80 = 235 = 153 + 2·57 − 4·8
    assert (size.piece("yoke").counts[20], size.piece("yoke").counts[43]) == (167, 235)
    assert levels(size, "body") == [(0, 153), (72, 153)]
    # the sleeve goes on from 57 to 210/6.25 = 33.6, odd → 33; S(12, 88): g 7, e 4
    rows = (4, 11, 18, 25, 32, 39, 46, 53, 61, 69, 77, 85)
    assert levels(size, "sleeve") == [(0, 57), *stepped(57, rows, -2), (88, 33)]


def test_a_jumper_with_a_circular_yoke() -> None:
    yoke = {"neck round": "50 cm", "yoke depth": "21 cm", "body round": "94 cm", "upper arm round": "32 cm", "underarm": "6 cm"}
    sleeve = {"start width": "32 cm", "end width": "20 cm", "length": "40 cm"}
    pieces = [
        {"name": "yoke", "shape": "round yoke", "measures": yoke},
        {"name": "body", "shape": "straight panel", "worked": "round", "measures": {"width": "94 cm", "length": "30 cm"}},
        {"name": "sleeve", "shape": "tapered panel", "worked": "round", "alike": 2, "measures": sleeve},
    ]
    joins = [
        {"of": "body", "edge": "start", "to": ["yoke"], "at": "end"},
        {"of": "sleeve", "edge": "start", "to": ["yoke"], "at": "armhole"},
    ]
    (size,) = garment({"name": "g", "pieces": pieces, "joins": joins}, cloth(5, 6))
    # N 100, Y 35, u 12; S_b 2·round(94) = 188, half 94 − 12 = 82; arm 64, sleeve 52; A = 164 + 104 − 100 = 168
    # G = min(35, max(3, ⌈504/100⌉)) = 6, in rounds 35(2g − 1)/12 = 2.9, 8.75, 14.6, 20.4, 26.25, 32.1; 28 more in each
    assert levels(size, "yoke") == [(0, 100), *stepped(100, (3, 9, 15, 20, 26, 32), 28), (35, 268)]
    # 300/6 = 50 rounds of 82 + 12 + 82 + 12
    assert levels(size, "body") == [(0, 188), (50, 188)]
    # 64 to 40 in 400/6 = 66.7 → 67 rounds; S(12, 67): g 5, e 7
    rows = (3, 8, 13, 18, 23, 29, 35, 41, 47, 53, 59, 65)
    assert levels(size, "sleeve") == [(0, 64), *stepped(64, rows, -2), (67, 40)]


def test_a_hat() -> None:
    measures = {"round": "52 cm", "height": "21 cm"}
    (size,) = garment(
        {"name": "g", "pieces": [{"name": "hat", "shape": "crown and tube", "exact": True, "measures": measures}]}, cloth(6, 5.5)
    )
    # a flat round adds 2π·5.5/6 = 5.76: 6 a round. 520/6/6 = 14.4 → 14 rounds, 84; 520/6 = 86.7 → 87. 210/5.5 = 38.2 → 38 rounds
    hat = size.piece("hat")
    assert levels(size, "hat") == [(0, 0), *((row, 6 * row) for row in range(1, 15)), (15, 87), (38, 87)]
    assert dict(hat.parts) == {"each_round": 6, "crown_rounds": 14, "tube_rounds": 23}
    assert (hat.chain, hat.widths[-1]) == (None, 522)
    # 6·(1 + … + 14) + 24·87 = 630 + 2088
    assert hat.stitches_worked == 2718
    assert not hat.troubles


def test_a_shawl_with_an_edging_of_its_own() -> None:
    pieces = [
        {"name": "shawl", "shape": "triangle", "first stitches": 3, "more a row": 2, "measures": {"wingspan": "140 cm"}},
        {"name": "lace", "shape": "edging", "along": [["shawl", ["left side", "right side"]]], "measures": {"depth": "4 cm"}},
    ]
    (size,) = garment({"name": "g", "pieces": pieces}, {"shawl": cloth(7, 6.5), "lace": cloth(5, 8, multiple=6, plus=1)})
    shawl, lace = size.pieces
    # 1400/7 = 200; 1 + round((200 − 3)/2 = 98.5) = 100 rows, the last of 3 + 2·99 = 201; 100·(3 + 201)/2 in all
    assert (shawl.chain, shawl.rows, shawl.counts[-1], shawl.stitches_worked) == (4, 100, 201, 10_200)
    assert (shawl.widths[-1], shawl.rows * shawl.row_mm) == (1407, 650)
    # a side √(650² + 703.5²) = 957.8164; both are 383.1 of 5 mm: 64 repeats of 6 and 1 are 385, 63 are 379
    assert shawl.edges["side"].mm == pytest.approx(957.8164, abs=1e-3)
    assert (lace.foundation, lace.rows) == (385, 5)
    # 385 on two sides are 193 and 192 to 100 rows: 2 to 1, seven and eight fewer
    assert [(of.stitches, of.rate, of.over) for of in lace.picked] == [(193, (2, 1), -7), (192, (2, 1), -8)]
