import pytest

from logbook.craft.gauges.condition_changes import condition_changes
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading

BASE = Assumptions()
TAKEN = {
    Condition.WORKED: "4 repeats = 16 cm; 20 rows = 20 cm",
    Condition.WASHED: "4 repeats = 15.2 cm; 20 rows = 20 cm",
    Condition.SIDEWAYS: "4 repeats = 19 cm; 20 rows = 18 cm",
    Condition.HUNG: "20 rows = 21 cm; 1 repeat in 4 cm",
}
SWATCH = Swatch(
    tag="A1",
    pattern=StitchPattern(multiple=6),
    readings=tuple(TakenReading(condition, reading) for condition, text in TAKEN.items() for reading in read_readings(text)),
)


def test_changes_since_it_was_worked() -> None:
    found = {(c.condition, c.direction): c for c in condition_changes(SWATCH, BASE)}
    assert set(found) == {(c, d) for c in TAKEN for d in Direction if c is not Condition.WORKED}
    # 152/160 − 1 = −5 %; U's are √(5.5529² + (√3/(√6·160))²) = 5.5705 % and, over 152 mm, 5.5724 %: 0.95·√(…) = 7.4852 %
    washed = found[Condition.WASHED, Direction.STITCHES]
    assert washed.change == pytest.approx(-0.05)
    assert washed.give_or_take == pytest.approx(0.074852, abs=0.00001)
    coarse = found[Condition.HUNG, Direction.STITCHES]
    assert coarse.give_or_take is None


def test_changes_since_washing_show_the_give() -> None:
    found = {(c.condition, c.direction): c for c in condition_changes(SWATCH, BASE, Condition.WASHED)}
    assert found[Condition.SIDEWAYS, Direction.STITCHES].change == pytest.approx(0.25)
    assert condition_changes(SWATCH, BASE, Condition.PINNED) == ()
