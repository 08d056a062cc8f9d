import pytest

from logbook.craft.gauges.nearest_gauge import WantedGauge
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.words.lengths import Units
from logbook.errors import UnreadableError
from logbook.pages.gauges.nearest import MOST, NearestGauge, read_wanted
from logbook.tasks.find import FoundSwatch
from logbook.tasks.nearest import LookedThrough
from tests.support.gauge_swatches import COTTON, shells

BASE = Assumptions()
NEAR = shells("near", washed="4 repeats = 15.4 cm; 9 rows = 10 cm")
FAR = shells("far", washed="4 repeats = 18 cm; 9 rows = 10 cm", worked="4 repeats = 15.4 cm")
MINE = shells("mine", washed="4 repeats = 15.5 cm; 9 rows = 10 cm")


def looking(in_hand: Swatch, *swatches: Swatch, units: Units = Units.CM) -> NearestGauge:
    found = [FoundSwatch(one, gauges_of(one, BASE)) for one in swatches]
    return NearestGauge(LookedThrough(found, swatches, BASE), in_hand, BASE, units)


def test_what_is_typed_comes_nearest_first_with_its_gauges() -> None:
    answer = looking(MINE, FAR, NEAR).answer("2.6 repeats and 9 rows in 10 cm", Condition.WASHED)
    assert [line.uid for line in answer.lines] == ["near", "far"]
    # 38.5·2.6/100 = 1.001, so 0.1 %/√2
    assert answer.lines[0].cells == ("0.1 %", "near", COTTON.name, "Shells", "4.5 mm", "2.60 repeats", "9.00 rows")
    assert answer.says == "2 swatches washed, laid flat; nearest to the gauge you typed first."


def test_left_empty_it_looks_for_the_like_of_the_one_in_hand_but_not_itself() -> None:
    answer = looking(MINE, FAR, MINE, NEAR).answer(" ", Condition.WASHED)
    assert [line.uid for line in answer.lines] == ["near", "far"]
    assert "nearest to mine first" in answer.says


def test_another_state() -> None:
    answer = looking(MINE, FAR, NEAR).answer("2.6 repeats in 10 cm", Condition.WORKED)
    assert [line.uid for line in answer.lines] == ["far"]


def test_a_swatch_in_hand_that_was_not_measured_says_so() -> None:
    answer = looking(shells("new"), NEAR).answer("", Condition.WASHED)
    assert answer.lines == ()
    assert answer.says == (
        "new was not measured washed, laid flat, so nothing can be found like it. Type what you are looking for."
    )


def test_none_measured_so() -> None:
    answer = looking(MINE, NEAR).answer("2.6 repeats in 10 cm", Condition.HUNG)
    assert answer.says == "Looked through 1 swatch: none that was measured hung comes within 25 % of it."


def test_only_the_nearest_of_very_many_are_listed() -> None:
    many = [shells(f"S-{n:03d}", washed=f"4 repeats = {15 + n / 50:.2f} cm") for n in range(MOST + 50)]
    answer = looking(MINE, *many).answer("4 repeats = 15 cm", Condition.WASHED)
    assert len(answer.lines) == MOST
    assert answer.says == "150 swatches washed, laid flat, the 100 nearest; nearest to the gauge you typed first."


def test_what_was_not_washed_yet_is_in_it_and_marked() -> None:
    # Washed makes FAR wider by 18/15.4: of 13.2 cm as worked 4 repeats become 15.43 cm.
    new = shells("new", worked="4 repeats = 13.2 cm")
    answer = looking(MINE, FAR, NEAR, new).answer("4 repeats = 15.43 cm", Condition.WASHED)
    assert [line.cells[1] for line in answer.lines] == ["new *", "near", "far"]
    assert "* not washed yet: its washing is taken from other swatches of the yarn." in answer.says
    (alone,) = looking(MINE, new).answer("4 repeats = 13 cm", Condition.WASHED).lines
    assert alone.cells[1] == "new **"
    assert looking(MINE, new, FAR).answer("4 repeats = 13.2 cm", Condition.WORKED).lines[0].cells[1] == "new"


def test_inches() -> None:
    answer = looking(MINE, NEAR, units=Units.INCHES).answer("9 rows in 4 in", Condition.WASHED)
    assert answer.lines[0].cells[-2:] == ("2.64 repeats", "9.14 rows")


def test_what_can_be_asked() -> None:
    assert read_wanted("2.5 repeats in 10 cm; 22 rows = 15 cm", Units.CM) == WantedGauge(repeat_mm=40, row_mm=150 / 22)
    assert read_wanted("16 sts in 10", Units.CM) == WantedGauge(stitch_mm=6.25)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("foo", "read “foo”"),
        ("3 row repeats in 10 cm", "Ask for repeats or stitches and for rows, each once"),
        ("9 rows in 10 cm; 8 rows in 10 cm", "each once"),
        (";", "Type the gauge you are looking for"),
    ],
)
def test_what_can_not(text: str, says: str) -> None:
    with pytest.raises(UnreadableError, match=says):
        read_wanted(text, Units.CM)
    assert says in looking(MINE, NEAR).answer(text, Condition.WASHED).error
