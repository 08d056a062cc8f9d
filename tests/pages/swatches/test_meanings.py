"""What readings mean, as they are typed."""

import pytest

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units
from logbook.pages.swatches.form_texts import EMPTY, read_texts, readings_key
from logbook.pages.swatches.meanings import meaning, together

WASHED = readings_key(Condition.WASHED)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("4 repeats = 15.1 cm", "one repeat 37.8 mm"),
        ("22 rows = 15 cm", "one row 6.8 mm"),
        ("3 row repeats = 4 in", "one row repeat 33.9 mm"),
        ("14 sts x 11 rows = 10 cm", "one stitch 7.1 mm, one row 9.1 mm"),
        ("", ""),
        ("4 rep", ""),
    ],
)
def test_a_line_says_what_one_unit_measures(text: str, said: str) -> None:
    assert meaning(read_texts({**EMPTY, WASHED: text}, "", Units.CM).lines[WASHED][0]) == said


def whole(readings: str, **texts: str) -> str:
    typed = read_texts({**EMPTY, WASHED: readings, **texts}, "", Units.CM)
    return together(typed.swatch, Condition.WASHED, Assumptions())


def test_together_they_give_a_gauge() -> None:
    shells = {"stitch pattern": "Shells", "multiple": "6"}
    assert (
        whole("4 repeats = 15.1 cm\n4 repeats = 15.4 cm\n3 repeats = 11.5 cm\n22 rows = 15 cm", **shells)
        == "One repeat 38.2 mm, one stitch 6.4 mm, give or take 2.5 %; one row 6.8 mm, give or take 5.6 %."
    )
    assert whole("22 rows = 15 cm") == "One row 6.8 mm, give or take 5.6 %."
    assert whole("") == ""


def test_repeats_of_an_unsaid_length_say_what_to_say() -> None:
    assert "give the multiple" in whole("4 repeats = 15.1 cm")


def test_a_coarse_count_says_so() -> None:
    assert "too coarse" in whole("1 st in 10 cm")
