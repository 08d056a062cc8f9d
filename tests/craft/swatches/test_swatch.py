from dataclasses import replace

import pytest

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading, gauge_in, gauges_of, require_loggable
from logbook.craft.swatches.yarn import Yarn, class_words
from logbook.errors import RefusedError

BASE = Assumptions()


def taken(condition: Condition, text: str) -> tuple[TakenReading, ...]:
    return tuple(TakenReading(condition, reading) for reading in read_readings(text))


SWATCH = Swatch(
    tag="A1",
    yarn=Yarn(name="Heather"),
    hook_mm=4.5,
    pattern=StitchPattern(multiple=6, rows_in_repeat=2),
    readings=(
        *taken(Condition.WORKED, "4 repeats = 16 cm"),
        *taken(Condition.WASHED, "4 repeats = 15.2 cm; 22 rows = 15 cm; 3 repeats = 11.5 cm; 5 row repeats = 7 cm"),
    ),
)


def test_readings_stay_in_the_order_they_were_taken() -> None:
    found = SWATCH.readings_of(Condition.WASHED, Direction.STITCHES)
    assert [reading.text for reading in found] == ["4 repeats = 15.2 cm", "3 repeats = 11.5 cm"]
    assert SWATCH.readings_of(Condition.HUNG, Direction.ROWS) == ()


def test_gauges_of_each_condition_and_direction() -> None:
    found = gauges_of(SWATCH, BASE)
    assert set(found) == {
        (Condition.WORKED, Direction.STITCHES),
        (Condition.WASHED, Direction.STITCHES),
        (Condition.WASHED, Direction.ROWS),
    }
    assert found[Condition.WASHED, Direction.STITCHES].pitch_mm == pytest.approx((152 + 115) / 42)
    assert found[Condition.WASHED, Direction.ROWS].pitch_mm == pytest.approx((150 + 70) / 32)
    assert gauge_in(SWATCH, Condition.WASHED, Direction.ROWS, BASE) == found[Condition.WASHED, Direction.ROWS]
    assert gauge_in(SWATCH, Condition.PINNED, Direction.ROWS, BASE) is None


def test_readings_in_repeats_of_unknown_length_are_left_out() -> None:
    bare = replace(SWATCH, pattern=None)
    assert gauges_of(bare, BASE) == {}
    only_rows = replace(bare, readings=taken(Condition.WASHED, "22 rows = 15 cm"))
    assert list(gauges_of(only_rows, BASE)) == [(Condition.WASHED, Direction.ROWS)]
    with pytest.raises(RefusedError, match="give the multiple"):
        gauge_in(bare, Condition.WASHED, Direction.STITCHES, BASE)


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"hook_mm": None}, "A swatch needs the hook: add it and save again."),
        ({"readings": ()}, "A swatch needs one reading: add it and save again."),
        (
            {"yarn": None, "pattern": None, "hook_mm": None, "readings": ()},
            "A swatch needs a yarn or a stitch pattern, the hook and one reading: add them and save again.",
        ),
    ],
)
def test_what_a_swatch_cannot_do_without(changes: dict[str, None], says: str) -> None:
    with pytest.raises(RefusedError) as refused:
        require_loggable(replace(SWATCH, **changes))
    assert str(refused.value) == says


def test_yarn_or_stitch_is_enough() -> None:
    require_loggable(SWATCH)
    require_loggable(replace(SWATCH, yarn=None))
    require_loggable(replace(SWATCH, pattern=None))


def test_yarn_facts() -> None:
    assert Yarn(ball_grams=50, ball_metres=125).metres_per_gram == 2.5
    assert Yarn(ball_grams=50).metres_per_gram is None
    assert class_words(3) == "3 light (DK, 8 ply)"
    with pytest.raises(RefusedError, match="8 is not a yarn class: the classes run from 0"):
        class_words(8)
