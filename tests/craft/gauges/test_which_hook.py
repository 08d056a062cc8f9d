"""Worked by hand, the matrices written out. Four trials: hook, stitch, give or take U; u = U/2, w = 1/(u² + 0.0004):

4.0 mm  6.0 mm  2.5 %   w 1797.7528        5.0 mm  6.9 mm  3.0 %   w 1600.0000
4.5 mm  6.5 mm  2.5 %   w 1797.7528        6.0 mm  8.0 mm  7.2 %   w  589.6226   (a single count)

XᵀWX = | 5785.12826   8827.73656 |    XᵀWy = | 10902.69831 |    det = 5785.12826·13559.29752 − 8827.73656² = 513342.52
       | 8827.73656  13559.29752 |           | 16697.43903 |
slope = (5785.12826·16697.43903 − 8827.73656·10902.69831)/det = 0.683127;  at ln hook 0: 0.842200
residuals 0.0025446, 0.0021266, −0.0101287, 0.0132427;  χ² = Σw·r² = 0.287318
c² = (4 + 0.287318)/(4 + 4 − 2) = 0.714553;  t(4 + 2) = 2.446912
at 5.5 mm: pitch = e^(0.842200 + 0.683127·1.704748) = 7.43917 mm;  x0ᵀ(XᵀWX)⁻¹x0 = 0.00053319
           U = 2.446912·√(0.714553·(0.00053319 + 0.0004)) = 6.3186 %
at 8 mm:   pitch 9.60921 mm, variance 0.00362548, U = 13.1233 %: not known
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.gauges.which_hook import HookTrial, hook_for, hook_line, hook_notes, hook_trials
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.readings import read_readings
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.hooks import HOOKS
from logbook.errors import RefusedError

FOUR = (
    HookTrial("A", 4.0, 6.0, 0.025),
    HookTrial("B", 4.5, 6.5, 0.025),
    HookTrial("C", 5.0, 6.9, 0.030),
    HookTrial("D", 6.0, 8.0, 0.072),
)


def test_four_hooks_by_hand() -> None:
    line = hook_line(FOUR)
    assert line.slope == pytest.approx(0.683127, abs=1e-6)
    assert line.scatter == pytest.approx(0.714553, abs=1e-6)
    at = line.at(5.5)
    assert at.pitch_mm == pytest.approx(7.43917, abs=1e-5)
    assert at.give_or_take == pytest.approx(0.063186, abs=1e-6)
    assert at.known
    assert not at.tried
    far = line.at(8)
    assert (far.pitch_mm, far.give_or_take) == (pytest.approx(9.60921, abs=1e-5), pytest.approx(0.131233, abs=1e-6))
    assert not far.known
    assert line.at(4.0).tried


def test_the_table_holds_the_trade_s_hooks_and_those_tried() -> None:
    table = hook_line((*FOUR, HookTrial("E", 4.25, 6.2, 0.03))).table()
    assert [gauge.hook_mm for gauge in table] == sorted([hook.mm for hook in HOOKS] + [4.25])
    assert [gauge.hook_mm for gauge in table if gauge.tried] == [4.0, 4.25, 4.5, 5.0, 6.0]


def test_the_hook_for_a_wanted_gauge_is_one_that_is_known() -> None:
    line = hook_line(FOUR)
    found = hook_for(line, 7.4)
    assert found is not None
    assert found.hook_mm == 5.5
    thick = hook_for(line, 30.0)
    assert thick is not None
    assert thick.known
    vague = hook_line((HookTrial("A", 4.0, 6.0, 0.3), HookTrial("B", 4.5, 6.5, 0.3)))
    assert hook_for(vague, 6.0) is None


def test_too_few_hooks_say_which_to_try() -> None:
    with pytest.raises(RefusedError, match=r"Only the 4\.5 mm hook was tried .* work a swatch with (4|5) mm"):
        hook_line([FOUR[1], FOUR[1]])
    with pytest.raises(RefusedError, match="log one first"):
        hook_line([])


def test_notes_say_what_the_line_cannot() -> None:
    two = hook_line(FOUR[:2])
    assert two.scatter == pytest.approx(1)  # (4 + 0)/(4 + 2 − 2): a line through two points always fits
    assert hook_notes(two)[0] == "Only two hooks were tried, so the figures for others are rough: try a third."
    assert not any("two hooks" in note for note in hook_notes(hook_line(FOUR)))
    falling = hook_line((HookTrial("A", 4.0, 6.5, 0.02), HookTrial("B", 4.5, 6.0, 0.02)))
    assert any("thicker hook gave a smaller stitch" in note for note in hook_notes(falling))
    scattered = hook_line((HookTrial("A", 4.0, 6.0, 0.02), HookTrial("B", 4.5, 8.5, 0.02), HookTrial("C", 5.0, 6.4, 0.02)))
    assert any("do not agree well" in note for note in hook_notes(scattered))


def swatch(tag: str, hook: float | None, text: str, **fields: object) -> Swatch:
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in read_readings(text))
    common = {"yarn": Yarn(uid="y"), "pattern": StitchPattern(uid="p", multiple=6)}
    return Swatch(uid=tag, tag=tag, hook_mm=hook, readings=readings, **(common | fields))  # type: ignore[arg-type]


def test_who_takes_part() -> None:
    mine = swatch("A", 4.5, "4 repeats = 15.1 cm", worked_by="Ann")
    others = [
        mine,
        swatch("B", 4.0, "4 repeats = 14.4 cm", worked_by="ann "),
        swatch("C", 5.0, "4 repeats = 16 cm", worked_by="Bea"),
        swatch("D", 5.0, "4 repeats = 16 cm", worked_by="Ann", strands=2),
        swatch("E", 5.0, "4 repeats = 16 cm", worked_by="Ann", yarn=Yarn(uid="z")),
        swatch("F", 5.0, "4 repeats = 16 cm", worked_by="Ann", pattern=StitchPattern(uid="q", multiple=6)),
        swatch("G", 5.0, "4 repeats = 16 cm", worked_by="Ann", worked="round"),
        swatch("H", None, "4 repeats = 16 cm", worked_by="Ann"),
        swatch("I", 5.0, "1 repeat in 4 cm", worked_by="Ann"),
        swatch("J", 5.0, "22 rows = 15 cm", worked_by="Ann"),
        swatch("K", 5.0, "4 repeats = 16 cm", worked_by="Ann", strands=1, worked="flat"),
    ]
    found = hook_trials(mine, others, Condition.WASHED, Assumptions())
    assert [trial.tag for trial in found] == ["B", "A", "K"]
    assert hook_trials(mine, others, Condition.WORKED, Assumptions()) == ()


@given(st.lists(st.tuples(st.sampled_from([3.0, 4.0, 5.0, 6.0]), st.floats(0.01, 0.1)), min_size=2, max_size=8))
def test_a_true_line_is_found_whatever_the_weights(tried: list[tuple[float, float]]) -> None:
    trials = [HookTrial("", hook, 2 * hook**0.7, u) for hook, u in tried]
    if len({trial.hook_mm for trial in trials}) < 2:
        return
    line = hook_line(trials)
    for hook in (2.0, 4.5, 9.0):
        assert line.at(hook).pitch_mm == pytest.approx(2 * hook**0.7)
    middle = math.exp(line.middle_hook)
    assert line.at(middle).give_or_take < line.at(middle * 1.5).give_or_take < line.at(middle * 2).give_or_take
