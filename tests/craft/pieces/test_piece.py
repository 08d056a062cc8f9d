"""Three garments worked through by hand, numbers in full, and what holds for every piece.

Three like spans of x mm: s² = 4·0.0004/6, t(6)·s/√3 = 2.446912·1.632993 %/1.732051 = 2.306969 %; the tape's part 1/(√6·x):
140 mm → 0.291606 %, U 2.325326 %; 180 mm → 0.226805 %, U 2.318091 %; 160 mm → 0.255155 %, U 2.321036 %;
120 mm → 0.340207 %, U 2.331920 %. Drift 2.776445·2 % = 5.552890 %.
"""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.pieces.fit import FitVerdict
from logbook.craft.pieces.options import Choose, Parity
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_notes import remarks_on, warnings_on
from logbook.craft.pieces.piece_numbers import work_out
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Ease, Units
from logbook.errors import RefusedError
from logbook.tasks.note_words import said
from tests.support.cloth import EDGE_SWATCH, HDC_SWATCH, LACE_PANEL, LACE_SWATCH, RIB_SWATCH, RIBBED, VEST, gauges_of_swatch


def marks(numbers: PieceNumbers) -> dict[str, tuple[Direction, int, float]]:
    return {name: (mark.direction, mark.at, round(mark.true_mm, 3)) for name, mark in numbers.marks.items()}


def notes(plan: PiecePlan, *swatches: Swatch) -> tuple[str, ...]:
    gauges = gauges_of_swatch(*swatches)
    numbers = work_out(plan, gauges)
    return said((*warnings_on(plan, gauges, numbers), *remarks_on(gauges, numbers)))


def test_a_plain_vest() -> None:
    """Stitch 7 mm, row 9 mm; mattress stitch takes 0.75·7 = 5.25 mm from each edge.

    T = (940 + 80)/2 + 10.5 = 520.5 mm; 520.5/7 = 74.36: 74 stitches, 518 mm; chain 74 + 2 = 76.
    F = 2·(518 − 10.5) = 1015, ease 75. 560/9 = 62.2: 62 rows, 558 mm, even: the last is a wrong-side row.
    Armhole 200/9 = 22.2: 22 rows, row 40, 198 mm. Neck 240/7 = 34.3 of an even 74: 34 stitches, 238 mm, shoulders 20.
    Width: 518·2.325326 % = 12.045, 518·5.552890 % = 28.764, together 31.184 mm. Before washing 74·7.2 = 532.8, 62·8.9 = 551.8.
    Yarn: 12 g/(24·20) = 0.025 g; 2·74·62 = 9176 → 229.4 g. Side seams 558 − 198 = 360: 2·(2.5·360 + 300) = 2400; shoulders
    (518 − 238)/2 = 140: 2·(2.5·140 + 300) = 1300; 3.7 m at 2.4 m/g: 1.5417 g. 230.94 g, 554.26 m; with 10 %: 254.04 g, 6 balls.
    Half-width √((0.5/12)² + 0.0555289²) = 6.94235 % of 229.4 = 15.926 g.
    Neck round 2·23.8 = 47.6 cm, less than a head of 56 cm. Armhole round 39.6 cm, more than an upper arm of 28 cm.
    """
    found = work_out(VEST, gauges_of_swatch(HDC_SWATCH))
    assert (found.chain, found.stitches, found.repeats, found.edge_stitches, found.rows) == (76, 74, 74, 0, 62)
    assert found.last_row_is_right_side is False
    assert found.width.wanted_mm == pytest.approx(520.5)
    assert found.width.mm == pytest.approx(518)
    assert found.width.gauge_give_or_take_mm == pytest.approx(12.045, abs=0.001)
    assert found.width.give_or_take_mm == pytest.approx(31.184, abs=0.001)
    assert found.width.before_washing_mm == pytest.approx(532.8)
    assert found.length is not None
    assert (found.length.mm, found.length.before_washing_mm) == (pytest.approx(558), pytest.approx(551.8))
    assert marks(found) == {
        "armhole": (Direction.ROWS, 40, 198),
        "neck begins": (Direction.STITCHES, 20, 238),
        "neck ends": (Direction.STITCHES, 54, 238),
    }
    assert found.neck
    assert (found.neck.shoulder, found.neck.units) == (20, 34)
    assert found.fit is not None
    assert (found.fit.around_mm, found.fit.ease_mm, found.fit.verdict) == (pytest.approx(1015), pytest.approx(75), None)
    assert found.yarn is not None
    assert found.yarn.grams == pytest.approx(230.94, abs=0.01)
    assert found.yarn.metres == pytest.approx(554.26, abs=0.02)
    assert found.yarn.balls == 6
    assert found.yarn.give_or_take_grams == pytest.approx(15.926, abs=0.001)
    assert notes(VEST, HDC_SWATCH)[:2] == (
        "The neck is 47.6 cm round, but an adult’s head usually measures 56.0 cm: make it larger, or leave an opening.",
        "It measures 101.5 cm all round, 7.5 cm more than the body.",
    )
    # ρ = 0.025/63 g/mm²; load ρ·558/2 = 0.11071 g/mm over 100 mm is 11.07 g, less half of 12 g: 5.07 g
    assert found.clip_grams == pytest.approx(5.071, abs=0.001)
    assert notes(VEST, HDC_SWATCH)[2] == (
        "To see how much longer it hangs: Clip 5 g to the swatch, hang it up overnight and measure it hanging."
    )


def test_a_wide_lace_with_edge_stitches() -> None:
    """Repeat 80 mm, stitch 5 mm, row 10 mm; edge stitch (of swatch H2) 6 mm, t 2, its rows 9 mm.

    46 cm plain: 97 stitches, 485 mm, 25 off; half the give or take 485·√(2.321036² + 5.552890²) % = 29.19/2 = 14.6 is less.
    With f = 4 edges: 81·5 + 8·6 = 453 mm, 7 off, the least by more than 5 mm (f = 0…3: 25, 37, 31, 19). 81 + 8 = 89, chain 91.
    Width: √((405·2.321036 %)² + (48·2.331920 %)²) = √(9.4002² + 1.1193²) = 9.4666; with 453·5.552890 % = 25.1546: 26.877 mm.
    58 cm with edgings of 3 cm below and 2 cm above leave 530 mm; rows 2 + 4·j: 50 make 550, 54 make 590 mm: 54, 13 groups.
    Armhole (200 − 20)/10 = 18 rows, row 36, 200 mm. Slit (120 − 30)/10 = 9 rows, row 9, 120 mm.
    Neck 206/5 = 41.2 of 89: 41 stitches, 205 mm, shoulders 24.
    Edge rows 9 on 10 mm: ln 0.9 = −10.5 %, beyond √(2.318² + 2.332²) %.
    """
    gauges = gauges_of_swatch(LACE_SWATCH, EDGE_SWATCH)
    found = work_out(LACE_PANEL, gauges)
    assert (found.chain, found.stitches, found.repeats, found.edge_stitches) == (91, 89, 5, 4)
    assert (found.rows, found.groups, found.set_up, found.closing) == (54, 13, 1, 1)
    assert found.width.mm == pytest.approx(453)
    assert found.width.gauge_give_or_take_mm == pytest.approx(9.4666, abs=0.001)
    assert found.width.give_or_take_mm == pytest.approx(26.877, abs=0.002)
    assert found.length is not None
    assert found.length.mm == pytest.approx(590)
    assert marks(found) == {
        "slit": (Direction.ROWS, 9, 120),
        "armhole": (Direction.ROWS, 36, 200),
        "neck begins": (Direction.STITCHES, 24, 205),
        "neck ends": (Direction.STITCHES, 65, 205),
    }
    assert found.fit is None
    assert (
        notes(LACE_PANEL, LACE_SWATCH, EDGE_SWATCH)[0]
        == "4 plain stitches at each side, as wide as on swatch H2; the chain starts as for them."
    )
    assert notes(LACE_PANEL, LACE_SWATCH, EDGE_SWATCH)[1].startswith(
        "The edge stitches' rows are 10 % shorter than the pattern's: the edges will draw in"
    )
    # Snapped: rows 1 + 4·j: 36 → 37, 17 rows and the edging, 190 mm; 9 stays.
    # Shoulders 4 + 16 = 20 leave 49 stitches, 245 mm; 36 leave 17, 85 mm
    snapped = work_out(replace(LACE_PANEL, snap=True), gauges)
    assert marks(snapped)["armhole"] == (Direction.ROWS, 37, 190)
    assert marks(snapped)["slit"] == (Direction.ROWS, 9, 120)
    assert snapped.neck
    assert (snapped.neck.shoulder, snapped.neck.units) == (20, 49)


def test_a_sideways_rib_with_negative_ease() -> None:
    """Chain up the body: stitch 6 mm; rows round it: 7 mm. Pulled lengthwise: row 9.45 (L = 35 %), stitch 5.7 (−5 %).

    T = (880 − 60)/2 = 410 mm; 410/7 = 58.6: 59 rows are nearest but odd; even: 58 rows, 406 mm. F = 812, ease −68.
    x = 880/812 − 1 = 8.3744 %, x/L = 23.927 %: comfortable; length 23.927 %·(−5 %) = −1.1963 %.
    Length 520/6 = 86.7: 87 stitches, 522 mm, chain 88. Armhole 180/6 = 30: after stitch 57. Neck 260/7 = 37.1 of an even 58: 38
    rows, 266 mm, shoulders 10. Neck round 53.2 cm: a head of 56 needs 5.3 %. Hem 81.2 cm: a hip of 96 needs 18 %.
    Hangs along its stitches: ε = 12.3/12 − 1 = 2.5 % at (9.5 + 6)/100 = 0.155 g/mm; ρ = 0.025/42, load ρ·522/2 = 0.155357;
    growth 2.5 %·(0.155357/0.155)·522 = 13.080 mm. Side seams 522 − 180 = 342.
    """
    gauges = gauges_of_swatch(RIB_SWATCH)
    found = work_out(RIBBED, gauges)
    assert (found.chain, found.stitches, found.rows) == (88, 87, 58)
    assert found.width.mm == pytest.approx(406)
    assert found.length is not None
    assert found.length.mm == pytest.approx(522)
    assert marks(found) == {
        "armhole": (Direction.STITCHES, 57, 180),
        "neck begins": (Direction.ROWS, 10, 266),
        "neck ends": (Direction.ROWS, 48, 266),
    }
    fit = found.fit
    assert fit is not None
    assert (fit.around_mm, fit.ease_mm) == (pytest.approx(812), pytest.approx(-68))
    assert fit.stretch_needed == pytest.approx(0.083744, abs=1e-6)
    assert fit.give == pytest.approx(0.35)
    assert fit.share == pytest.approx(0.23927, abs=1e-5)
    assert (fit.verdict, fit.could_be) == (FitVerdict.COMFORTABLE, ())
    assert fit.length_change == pytest.approx(-0.011963, abs=1e-6)
    assert found.growth is not None
    assert found.growth.mm == pytest.approx(13.080, abs=0.001)
    assert found.growth.near
    assert found.clip_grams is None
    assert notes(RIBBED, RIB_SWATCH)[:2] == (
        "The neck is 53.2 cm round, but an adult’s head usually measures 56.0 cm: it only goes on stretched by 5.3 %.",
        "The hem is 81.2 cm round, but the hip measures 96.0 cm: it only goes on stretched by 18 %.",
    )
    assert found.yarn is not None
    assert found.yarn.grams == pytest.approx(
        2 * 87 * 58 * 0.025 + (2 * (3 * 342 + 300) + 2 * (3 * 70 + 300)) / 1000 / 2.4, abs=0.001
    )


def test_an_odd_rib_is_warned_of() -> None:
    odd = work_out(replace(RIBBED, row_parity=Parity.ANY), gauges_of_swatch(RIB_SWATCH))
    assert odd.rows == 59
    assert any(
        "A rib worked sideways needs an even number of rows" in note and "59 is odd" in note
        for note in notes(replace(RIBBED, row_parity=Parity.ANY), RIB_SWATCH)
    )


def test_a_rib_too_tight_and_one_that_does_not_go_on() -> None:
    # Ease −20 cm: 340/7 = 48.6: 48 rows, F = 672, x = 30.952 %, x/L = 88.435 %: too tight.
    # Half-widths: x 1.30952·√(2.325326² + 5.552890²) % = 7.8835 %, of 30.952: 25.47 %;
    # L 1.35·√(2.325326² + 2.31679²) % = 4.4313 %, of 35: 12.66 %; 88.435·√(25.47² + 12.66²) % = 25.15: 63.3 to 113.6 %
    tight = work_out(replace(RIBBED, ease=Ease(mm=-200)), gauges_of_swatch(RIB_SWATCH)).fit
    assert tight is not None
    assert tight.share == pytest.approx(0.88435, abs=1e-5)
    assert tight.verdict is FitVerdict.TOO_TIGHT
    assert tight.could_be == (FitVerdict.CLOSE, FitVerdict.DOES_NOT_GO_ON)
    # Ease −30 cm: 290/7 = 41.4: 42 rows, F = 588, x = 49.66 %: 142 % of the give
    never = work_out(replace(RIBBED, ease=Ease(mm=-300)), gauges_of_swatch(RIB_SWATCH))
    assert never.fit is not None
    assert never.fit.verdict is FitVerdict.DOES_NOT_GO_ON
    assert any(
        "142 % of what the swatch stretched: does not go on" in note
        for note in notes(replace(RIBBED, ease=Ease(mm=-300)), RIB_SWATCH)
    )


def test_in_the_round_one_width_is_the_whole_girth() -> None:
    # 940 + 80 = 1020/7 = 145.7: 146 stitches joined to a ring, 1022 mm, no seam
    found = work_out(replace(VEST, in_round=True, neck_mm=None, armhole_mm=None), gauges_of_swatch(HDC_SWATCH))
    assert (found.chain, found.stitches) == (146, 146)
    assert found.fit is not None
    assert found.fit.around_mm == pytest.approx(1022)
    assert found.yarn is not None
    assert found.yarn.grams == pytest.approx(146 * 62 * 0.025)


def test_a_width_alone_is_enough() -> None:
    bare = replace(HDC_SWATCH, readings=tuple(taken for taken in HDC_SWATCH.readings if taken.direction is Direction.STITCHES))
    found = work_out(PiecePlan(width_mm=460), gauges_of_swatch(bare))
    assert (found.stitches, found.rows, found.length, found.yarn) == (66, None, None, None)
    assert found.last_row_is_right_side is None


def test_without_a_gauge_of_rows_the_chain_is_given_and_the_rows_are_left_open() -> None:
    bare = replace(HDC_SWATCH, readings=tuple(taken for taken in HDC_SWATCH.readings if taken.direction is Direction.STITCHES))
    whole, gauges = work_out(VEST, gauges_of_swatch(HDC_SWATCH)), gauges_of_swatch(bare)
    found = work_out(VEST, gauges)
    assert (found.chain, found.stitches, found.neck) == (whole.chain, whole.stitches, whole.neck)
    assert (found.rows, found.length, found.armhole, found.slit, found.yarn) == (None, None, None, None, None)
    assert "the rows are left open" in said(tuple(warnings_on(VEST, gauges, found)), Units.CM)[0]
    with pytest.raises(RefusedError, match="The rows of this swatch were not measured"):
        work_out(replace(VEST, sideways=True), gauges)


def test_edgings_and_the_foundation_count() -> None:
    # 46 cm with 2 cm at each side: 420/7 = 60. 50 cm with the chain's 4 mm: 496/9 = 55.1: 55 rows, 499 mm;
    # slit (100 − 4)/9 = 10.7: row 11, 103 mm
    plan = PiecePlan(width_mm=460, side_edging_mm=20, length_mm=500, foundation_chain=True, slit_mm=100)
    found = work_out(plan, gauges_of_swatch(HDC_SWATCH))
    assert (found.stitches, found.rows) == (60, 55)
    assert found.length is not None
    assert found.length.mm == pytest.approx(499)
    assert marks(found)["slit"] == (Direction.ROWS, 11, 103)
    # Yarn of the edgings: 40/7 stitches of 55 rows each, on two panels
    assert found.yarn is not None
    assert found.yarn.grams == pytest.approx(2 * 55 * (60 + 40 / 7) * 0.025)


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"sideways": True, "in_round": True}, "not worked sideways: choose one"),
        ({"sideways": True, "length_mm": None, "armhole_mm": None}, "starts from its length"),
        ({"length_mm": None}, "An armhole or slit needs the length"),
        ({"edge_stitches": 2}, "Edge stitches go beside the whole repeats"),
        ({"edge_stitches": -1}, "must be 0 or more"),
        ({"body_mm": None}, "Give the finished width, or the body measure"),
        ({"armhole_mm": 300.0, "slit_mm": 300.0}, "The slit reaches up to the armhole"),
        ({"seam": "glue"}, "is not a seam known here"),
    ],
)
def test_wishes_that_cannot_be_are_refused(changes: dict[str, object], says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        work_out(replace(VEST, **changes), gauges_of_swatch(HDC_SWATCH))


plans = st.builds(
    PiecePlan,
    width_mm=st.floats(150, 900),
    length_mm=st.floats(150, 900),
    sideways=st.booleans(),
    side_edging_mm=st.floats(0, 30),
    top_edging_mm=st.floats(0, 30),
    bottom_edging_mm=st.floats(0, 30),
    edge_stitches=st.sampled_from([0, 2, None]),
    row_parity=st.sampled_from([Parity.ANY, Parity.EVEN]),
    width_choose=st.sampled_from(Choose),
    length_choose=st.sampled_from(Choose),
)
LACE_GAUGES = gauges_of_swatch(LACE_SWATCH, EDGE_SWATCH)


def turned(plan: PiecePlan) -> PiecePlan:
    """The same cloth held the other way: width and length change places, and with them edgings and how it is worked.

    Marks, body and neck belong to the way it is worn, and are left out. Top and bottom edging become equal.
    """
    ends = (plan.top_edging_mm + plan.bottom_edging_mm) / 2
    return replace(
        plan,
        width_mm=plan.length_mm,
        length_mm=plan.width_mm,
        body_mm=None,
        sideways=not plan.sideways,
        shoulder_seam_mm=0.0,
        side_edging_mm=ends,
        top_edging_mm=plan.side_edging_mm,
        bottom_edging_mm=plan.side_edging_mm,
        width_choose=plan.length_choose,
        length_choose=plan.width_choose,
        armhole_mm=None,
        neck_mm=None,
        slit_mm=None,
    )


@given(plans)
def test_a_piece_turned_sideways_is_the_same_cloth(plan: PiecePlan) -> None:
    one, other = work_out(plan, LACE_GAUGES), work_out(turned(plan), LACE_GAUGES)
    back = work_out(turned(turned(plan)), LACE_GAUGES)
    for same in (other, back):
        assert (same.chain, same.stitches, same.edge_stitches, same.rows) == (
            one.chain,
            one.stitches,
            one.edge_stitches,
            one.rows,
        )
    assert one.length is not None
    assert other.width.mm == pytest.approx(one.length.mm)
    assert back.width.mm == pytest.approx(one.width.mm)


@given(plans, st.floats(0.2, 0.45), st.floats(0.3, 0.6), st.floats(0.1, 0.3), st.booleans())
def test_marks_and_shoulders_add_up(plan: PiecePlan, armhole: float, neck: float, slit: float, snap: bool) -> None:
    assert plan.length_mm is not None
    assert plan.width_mm is not None
    wanted = replace(
        plan, armhole_mm=armhole * plan.length_mm, neck_mm=neck * plan.width_mm, slit_mm=slit * plan.length_mm, snap=snap
    )
    try:
        found = work_out(wanted, LACE_GAUGES)
    except RefusedError:
        return
    up, across = (found.stitches, found.rows) if plan.sideways else (found.rows, found.stitches)
    assert up is not None
    assert across is not None
    assert found.neck is not None
    assert 2 * found.neck.shoulder + found.neck.units == across
    at = {name: mark.at for name, mark in found.marks.items()}
    assert 0 < at["slit"] < at["armhole"] < up
    assert (at["neck begins"], at["neck ends"]) == (found.neck.shoulder, found.neck.shoulder + found.neck.units)
