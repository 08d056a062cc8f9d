import math

import pytest

from logbook.craft.drawing.drawing import Line, Marker, Polygon, Text
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.lengths import Units
from logbook.pages.gauges.hook_card import HookCard, hook_card
from logbook.pages.gauges.hook_drawing import hook_drawing
from tests.support.gauge_swatches import THREE, shells

BASE = Assumptions()


def spans(cm: float) -> str:
    return "; ".join([f"4 repeats = {cm} cm"] * 3)


FOUR = [
    shells("A", 4.0, washed=spans(14.0)),
    shells("B", 4.5, washed=spans(15.3)),
    shells("C", 5.0, washed=spans(16.4)),
    shells("D", 6.0, washed="2.75 repeats in 13 cm"),
]


def card(swatches: list[Swatch], wanted: str = "", condition: Condition = Condition.WASHED, units: Units = Units.CM) -> HookCard:
    return hook_card(swatches[0], swatches, condition, BASE, wanted, units)


def test_the_table_says_what_was_tried_what_is_guessed_and_what_is_not_known() -> None:
    rows = {cells[0]: cells[1:] for cells in card(FOUR).cells}
    assert rows["4.5 mm"][:2] == ("US 7, UK 7", "tried")
    assert rows["5.5 mm"][1] == ""
    assert rows["5.5 mm"][2].endswith("repeats in 10 cm")
    assert "±" in rows["5.5 mm"][3]
    assert rows["15 mm"][2:] == ("not known", "try 15 mm")


def test_the_hook_for_a_wanted_gauge() -> None:
    # 100/38.25 = 2.61 repeats in 10 cm is what the 4.5 mm hook gave
    found = card(FOUR, "2.61 repeats in 10 cm")
    assert found.answer.startswith("Try 4.5 mm (US 7, UK 7): it should give 2.6")
    assert "not tried" not in found.answer
    assert "may give it too" not in found.answer
    assert found.cells[found.place][0] == "4.5 mm"
    assert found.wanted_mm == pytest.approx(100 / 2.61 / 6)


def test_a_gauge_between_two_hooks_names_both() -> None:
    answer = card(FOUR, "2.52 repeats in 10 cm").answer
    assert answer.startswith("Try ")
    assert answer.endswith("may give it too.")
    assert "4.5 mm" in answer
    assert "5 mm" in answer


def test_an_untried_hook_is_a_guess_and_said_to_be() -> None:
    found = card(FOUR, "4 repeats = 17.8 cm")
    assert found.answer.startswith("Try 5.5 mm (US I-9, UK 5)")
    assert "Nobody has tried it with this yarn and stitch yet: work a swatch before you trust it." in found.answer


def test_a_gauge_out_of_reach_is_not_promised() -> None:
    found = card(FOUR, "1 repeat = 9 cm")
    assert found.answer.startswith("No hook tried gives that gauge. The nearest, ")
    assert found.answer.endswith("try a thicker one.")


def test_stitches_and_inches_read_too() -> None:
    found = card(FOUR, "16 sts in 4 in", units=Units.INCHES)
    assert found.wanted_mm == pytest.approx(6.35)
    assert "in 4 in" in found.answer


@pytest.mark.parametrize(
    ("wanted", "says"),
    [
        ("foo", "read “foo”"),
        ("9 rows in 10 cm", "stitches belong here"),
        ("2 repeats = 8 cm; 3 repeats = 12 cm", "one gauge"),
    ],
)
def test_a_wanted_gauge_that_is_none_gets_a_sentence(wanted: str, says: str) -> None:
    found = card(FOUR, wanted)
    assert says in found.error
    assert found.answer == ""
    assert found.cells


def test_a_hook_alone_on_its_yarn_says_what_it_gave_and_which_to_try() -> None:
    found = card([shells("A", 4.5, washed=THREE)], "2.6 repeats in 10 cm")
    assert found.line is None
    assert found.cells == ()
    assert found.answer == ""
    assert "Only the 4.5 mm hook was tried with this yarn and stitch" in found.missing
    assert "work a swatch with" in found.missing
    assert found.missing.endswith("With 4.5 mm it gives 2.62 repeats in 10 cm, give or take 2.5 %.")


def test_two_hooks_leave_no_check_on_the_line() -> None:
    assert any("Only two hooks were tried" in note for note in card(FOUR[:2]).notes)


def test_a_swatch_counted_too_coarsely_takes_no_part_and_is_named() -> None:
    coarse = shells("X", 5.5, washed="1 repeat in 10 cm")
    found = hook_card(coarse, [coarse, *FOUR], Condition.WASHED, BASE, "", Units.CM)
    assert "X" not in [trial.tag for trial in found.trials]
    assert any(note.startswith("X was counted too coarsely to be used here") for note in found.notes)


def test_nothing_measured_says_so() -> None:
    found = card(FOUR, condition=Condition.PINNED)
    assert "has a hook and a gauge in this state: log one first" in found.missing
    assert hook_drawing(found) is None


@pytest.mark.parametrize("wanted", ["", "2.5 repeats in 10 cm", "1 repeat = 9 cm"])
@pytest.mark.parametrize("width", [300.0, 900.0])
def test_the_chart_holds_points_bars_line_and_wish(wanted: str, width: float) -> None:
    draw = hook_drawing(card(FOUR, wanted))
    assert draw is not None
    drawing = draw(width, 20.0)
    markers = [shape for shape in drawing.shapes if isinstance(shape, Marker)]
    assert len(markers) == 4
    assert [one.x for one in markers] == sorted(one.x for one in markers)
    assert [one.y for one in markers] == sorted((one.y for one in markers), reverse=True)
    assert any(isinstance(shape, Polygon) and shape.fill == "band" for shape in drawing.shapes)
    assert any(isinstance(shape, Line) and shape.dashed and shape.role == "series1" for shape in drawing.shapes)
    texts = [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
    assert {"hook, mm", "cm a repeat"} <= set(texts)
    assert ("asked" in texts) is bool(wanted)
    points = [point for shape in drawing.shapes if isinstance(shape, Line) for point in shape.points]
    assert all(-1 <= x <= width + 1 and -1 <= y <= drawing.height + 1 and math.isfinite(x + y) for x, y in points)


def test_one_hook_is_drawn_without_a_line() -> None:
    draw = hook_drawing(card([shells("A", 4.5, washed=THREE), shells("B", 4.5, washed=spans(15.0))]))
    assert draw is not None
    shapes = draw(500.0, 20.0).shapes
    first, second = (shape for shape in shapes if isinstance(shape, Marker))
    assert second.x - first.x == pytest.approx(12.0)  # side by side, so that both are seen
    assert not any(isinstance(shape, Polygon) for shape in shapes)
