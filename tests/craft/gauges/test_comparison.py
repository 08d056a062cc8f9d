from dataclasses import replace

import pytest

from logbook.craft.gauges.comparison import WIDENED, compared_fields, gauge_differences
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError

BASE = Assumptions()


def swatch(tag: str, washed: str, hook: float = 4.5) -> Swatch:
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings(washed))
    return Swatch(uid=tag, tag=tag, hook_mm=hook, yarn=Yarn(name="Heather"), pattern=StitchPattern(multiple=6), readings=readings)


A = swatch("A", "4 repeats = 15.1 cm; 4 repeats = 15.4 cm; 3 repeats = 11.5 cm")
B = swatch("B", "2.75 repeats in 10 cm", hook=5.0)


def test_two_gauges_by_hand() -> None:
    # 38.1818/36.3636 = 1.05 exactly, ln 1.05 = 4.879 %; √(2.493² + 7.176²) = 7.597 %: may be the same
    (found,) = gauge_differences([A, B], BASE)
    assert (found.condition, found.direction, found.tags) == (Condition.WASHED, Direction.STITCHES, ("A", "B"))
    assert found.ratio == pytest.approx(1.05)
    assert found.give_or_take == pytest.approx(0.07597, abs=0.00001)
    assert found.differ is False
    # against 4 repeats = 16.7 cm (41.75 mm, U = √(5.553² + 0.423²) = 5.569 %, the tape's part being √3/(√6·167) = 0.423 %):
    # ln(41.75/38.1818) = 8.935 %, √(2.493² + 5.569²) = 6.101 %
    wide = swatch("C", "4 repeats = 16.7 cm")
    (found,) = gauge_differences([wide, A], BASE)
    assert found.give_or_take == pytest.approx(0.06101, abs=0.00002)
    assert found.differ is True


def test_of_six_at_once_each_give_or_take_is_wider() -> None:
    six = gauge_differences([replace(A, tag=str(n)) for n in range(6)], BASE)
    assert len(six) == 15
    assert six[0].give_or_take == pytest.approx(1.60 * 2**0.5 * 0.02493, abs=0.0001)
    assert all(pair.differ is False for pair in six)
    assert list(WIDENED.values()) == sorted(WIDENED.values())


def test_only_like_is_compared_with_like() -> None:
    rows = swatch("R", "22 rows = 15 cm")
    assert gauge_differences([A, rows], BASE) == ()
    worked = replace(A, readings=tuple(replace(taken, condition=Condition.WORKED) for taken in A.readings))
    assert gauge_differences([A, worked], BASE) == ()
    both = swatch("D", "4 repeats = 15 cm; 22 rows = 15 cm")
    assert [found.direction for found in gauge_differences([both, both], BASE)] == [Direction.STITCHES, Direction.ROWS]


def test_a_count_too_coarse_leaves_it_open() -> None:
    (found,) = gauge_differences([A, swatch("E", "1 repeat in 4 cm")], BASE)
    assert found.give_or_take is None
    assert found.differ is None


def test_two_to_six_swatches() -> None:
    for number in (0, 1, 7):
        with pytest.raises(RefusedError, match=f"Two to six swatches can be compared, not {number}"):
            gauge_differences([A] * number, BASE)


def test_fields_side_by_side() -> None:
    fields = {field.name: field for field in compared_fields([replace(A, pictures="a.png"), replace(B, yarn=None)])}
    assert not {"uid", "pictures"} & fields.keys()
    assert "fibre" not in fields  # nobody filled it in
    assert (fields["hook mm"].values, fields["hook mm"].differs) == (("4.5", "5"), True)
    assert (fields["yarn"].values, fields["yarn"].differs) == (("Heather", ""), False)  # nothing is logged there
    assert not fields["multiple"].differs
    assert fields["stitches washed"].values[1] == "2.75 repeats in 10 cm"
