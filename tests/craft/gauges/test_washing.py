import math
from dataclasses import replace

import pytest

from logbook.craft.gauges.washing import Loan, Washing, borrowed_gauge, finished_gauge, is_plain, lenders_for
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError

BASE = Assumptions()
HEATHER, MOSS = Yarn(uid="y1", name="Heather"), Yarn(uid="y2", name="Moss")
SHELL, FAN, HDC = (
    StitchPattern(uid=uid, name=uid, multiple=multiple) for uid, multiple in (("shell", 6), ("fan", 12), ("hdc", 1))
)


def swatch(tag: str, worked: str = "", washed: str = "", **fields: object) -> Swatch:
    taken = [
        TakenReading(condition, reading)
        for condition, text in ((Condition.WORKED, worked), (Condition.WASHED, washed))
        for reading in read_readings(text)
    ]
    return replace(Swatch(uid=tag, tag=tag, yarn=HEATHER, pattern=SHELL, readings=tuple(taken)), **fields)  # type: ignore[arg-type]


MINE = swatch("A1", "4 repeats = 16 cm")
LENDER = swatch("B1", "4 repeats = 16 cm", "4 repeats = 15.2 cm")


def finished(own: Swatch, others: list[Swatch]):
    return finished_gauge(own, Direction.STITCHES, others, BASE)


def test_three_loans_by_hand() -> None:
    # mean D = −0.03: p = 6.5·e^−0.03 = 6.30790.  SS = 2·0.01² = 0.0002; τ² = (4·0.015² + 0.0002)/6 = 0.00018333
    # t(6) = 2.44691: t²·τ²·(1 + 1/3) = 0.00146357.  Σ(U_a² + U_w²)/9 = (0.0008 + 0.0013 + 0.0008)/9 = 0.00032222
    # U² = 0.025² + 0.00146357 + 0.00032222 = 0.00241079, U = 4.9100 %; the borrowing's own part is √0.00178579 = 4.2259 %
    worked = Gauge(6.5, 0.025, 0.024, 0.007, 3, (0.0, 0.0, 0.0))
    loans = [Loan("B", -0.03, 0.02, 0.02), Loan("C", -0.02, 0.03, 0.02), Loan("D", -0.04, 0.02, 0.02)]
    found = borrowed_gauge(worked, loans)
    assert found.pitch_mm == pytest.approx(6.30790, abs=1e-5)
    assert found.give_or_take == pytest.approx(0.049100, abs=1e-6)
    assert found.borrowed_part == pytest.approx(0.042259, abs=1e-6)
    assert found.change == pytest.approx(math.exp(-0.03) - 1)
    assert found.lenders == ("B", "C", "D")
    assert (found.washing, found.condition, found.before_washing_mm) == (Washing.BORROWED, Condition.WASHED, 6.5)


def test_one_loan_is_less_certain_than_many() -> None:
    worked = Gauge(6.5, 0.025, 0.024, 0.007, 3, ())
    one, many = (borrowed_gauge(worked, [Loan("B", -0.03, 0.02, 0.02)] * n) for n in (1, 8))
    assert one.give_or_take is not None
    assert many.give_or_take is not None
    assert worked.give_or_take < many.give_or_take < one.give_or_take  # type: ignore[operator]


def test_measured_washing_needs_no_loan() -> None:
    found = finished(LENDER, [])
    assert (found.washing, found.lenders) == (Washing.MEASURED, ())
    assert found.pitch_mm == pytest.approx(152 / 24)
    assert found.before_washing_mm == pytest.approx(160 / 24)
    assert found.change == pytest.approx(-0.05)
    only_washed = finished(swatch("A2", "", "4 repeats = 15.2 cm"), [])
    assert (only_washed.before_washing_mm, only_washed.change) == (None, None)


def test_with_nothing_to_borrow_from_washing_is_unknown() -> None:
    found = finished(MINE, [])
    assert (found.washing, found.give_or_take, found.condition) == (Washing.UNKNOWN, None, Condition.WORKED)
    assert found.before_washing_mm == found.pitch_mm == pytest.approx(160 / 24)


@pytest.mark.parametrize(
    ("other", "why"),
    [
        (replace(LENDER, yarn=MOSS), "another yarn"),
        (replace(LENDER, yarn=None), "no yarn"),
        (replace(LENDER, pattern=HDC), "plain for lace"),
        (replace(LENDER, uid="A1"), "itself"),
        (swatch("B2", "4 repeats = 16 cm"), "not washed"),
        (swatch("B3", "", "4 repeats = 15 cm"), "not measured before"),
        (swatch("B4", "1 repeat in 4 cm", "4 repeats = 15 cm"), "too coarse"),
        (swatch("B5", "22 rows = 15 cm", "22 rows = 16 cm"), "the other direction"),
    ],
)
def test_who_cannot_lend(other: Swatch, why: str) -> None:
    assert finished(MINE, [other]).washing is Washing.UNKNOWN, why


def test_the_same_stitch_lends_first_and_the_same_way_of_washing_only() -> None:
    fan = swatch("F1", "2 repeats = 16 cm", "2 repeats = 17 cm", pattern=FAN)
    assert finished(MINE, [fan]).lenders == ("F1",)
    assert finished(MINE, [fan, LENDER]).lenders == ("B1",)
    by_hand = replace(LENDER, way_of_washing="By hand, cold")
    assert finished(replace(MINE, way_of_washing="machine, 30"), [by_hand]).washing is Washing.UNKNOWN
    assert finished(replace(MINE, way_of_washing=" by hand, COLD "), [by_hand]).lenders == ("B1",)
    assert finished(MINE, [by_hand]).lenders == ("B1",)
    assert lenders_for(replace(MINE, yarn=None), Direction.STITCHES, [LENDER], BASE, Condition.WASHED) == ()


def test_plain_is_a_repeat_of_one_stitch() -> None:
    assert is_plain(replace(MINE, pattern=None))
    assert is_plain(replace(MINE, pattern=HDC))
    assert not is_plain(MINE)


def test_nothing_to_reckon_with_says_what_to_measure() -> None:
    with pytest.raises(RefusedError, match="A1 has no reading of rows as worked or washed, laid flat: measure how far"):
        finished_gauge(MINE, Direction.ROWS, [], BASE)
    with pytest.raises(RefusedError, match="The readings of A1 are in repeats: give the multiple"):
        finished(replace(MINE, pattern=None), [])
    unseen = replace(MINE, uid="")
    with pytest.raises(RefusedError, match="This swatch’s readings are in repeats: give the multiple"):
        finished(replace(unseen, pattern=None), [])
    with pytest.raises(RefusedError, match="This swatch has no reading of rows"):
        finished_gauge(unseen, Direction.ROWS, [], BASE)
