"""What readings mean, as they are typed."""

import pytest

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units
from logbook.pages.swatches.form_texts import EMPTY, read_texts, readings_key
from logbook.pages.swatches.meanings import together

WASHED = readings_key(Condition.WASHED)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("4 repeats = 15.1 cm", "2.65"),
        ("22 rows = 15 cm", "14.7"),
        ("3 row repeats = 4 in", "2.95"),
        ("14 sts x 11 rows = 10 cm", "14.0×11.0"),
        ("19.5 rows x 14 sts = 10 cm", "14.0×19.5"),
        ("", ""),
        ("4 rep", ""),
    ],
)
def test_a_line_says_how_many_lie_in_10_cm(text: str, said: str) -> None:
    assert read_texts({**EMPTY, WASHED: text}, "", Units.CM).lines[WASHED][0].over == said


def test_repeats_of_a_known_multiple_are_counted_in_stitches_as_their_gauge_is() -> None:
    texts = {
        **EMPTY,
        "stitch pattern": "Shells",
        "multiple": "6",
        "rows in repeat": "4",
        WASHED: "4 repeats = 15.1 cm\n3 row repeats = 4 in",
    }
    assert [line.over for line in read_texts(texts, "", Units.CM).lines[WASHED]] == ["15.9", "11.8"]
    assert [line.over for line in read_texts(texts, "", Units.INCHES).lines[WASHED]] == ["16.1", "12.0"]


def whole(readings: str, **texts: str) -> str:
    typed = read_texts({**EMPTY, WASHED: readings, **texts}, "", Units.CM)
    return together(typed.swatch, Condition.WASHED, Assumptions())


def test_together_they_give_a_gauge() -> None:
    shells = {"stitch pattern": "Shells", "multiple": "6"}
    assert (
        whole("4 repeats = 15.1 cm\n4 repeats = 15.4 cm\n3 repeats = 11.5 cm\n22 rows = 15 cm", **shells)
        == "15.7 sts × 14.7 rows to 10 cm\ngive or take 2.5 %, 5.6 %"
    )
    assert whole("22 rows = 15 cm") == "14.7 rows to 10 cm\ngive or take 5.6 %"
    assert whole("") == ""


def test_repeats_of_an_unsaid_length_say_what_to_say() -> None:
    assert "give the multiple" in whole("4 repeats = 15.1 cm")


def test_a_coarse_count_says_so() -> None:
    assert "too coarse" in whole("1 st in 10 cm")
