"""Formulas of measures, as a maker types them."""

import pytest

from logbook.craft.garments.formulas import measure_of
from logbook.craft.words.lengths import Ease, Units
from logbook.errors import LogbookError

BODY: dict[str, float | Ease] = {
    "bust": 940.0,
    "upper arm": 280.0,
    "upper arm round": 300.0,
    "ease": Ease(mm=50.0),
    "shrinkage": Ease(share=-0.06),
    "armhole of back": 200.0,
    "cross-back": 400.0,
}


def of(text: str, units: Units = Units.CM) -> float:
    return measure_of(text, BODY, BODY.__getitem__, units)


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("46", 460),
        ("46,5", 465),
        ("46 cm", 460),
        ("18 1/4 in", 463.55),
        ('18¼"', 463.55),
        ("(bust + ease) / 2", 495),
        ("upper arm + 6 cm", 340),
        ("Upper  Arm + 60 mm", 340),
        ("upper arm round", 300),
        ("60 % of bust", 564),
        ("60% of (bust + 6 cm)", 600),
        ("bust + 5 %", 987),
        ("bust − 10 %", 846),
        ("bust + shrinkage", 883.6),
        ("2 × upper arm", 560),
        ("upper arm x 2", 560),
        ("2*upper arm - 1 cm", 550),
        ("bust / 2 + ease / 2", 495),
        ("1/2 × bust", 470),
        ("armhole of back", 200),
        ("armhole of back + 2 cm", 220),
        ("cross-back - 2 cm", 380),
        ("2 × 3 × 1 cm", 60),
        ("((bust))", 940),
    ],
)
def test_what_a_formula_comes_to(text: str, mm: float) -> None:
    assert of(text) == pytest.approx(mm)


def test_a_bare_number_goes_by_the_units_typed_in() -> None:
    assert of("10", Units.INCHES) == pytest.approx(254)


@pytest.mark.parametrize(
    "text",
    [
        "", "wide", "bust +", "bust + 5", "46 + 3", "3 × 4", "bust × waist", "bust × upper arm", "5 %", "10 / bust", "(bust",
        "bust)", "bust / 0", "bust upper arm", "5 % of 3", "50 % × bust", "bust-2 cm-x", "(" * 200 + "bust" + ")" * 200,
        "bust × 1000000", "x" * 1000,
    ],
)  # fmt: skip
def test_what_is_no_formula_is_said_in_a_sentence(text: str) -> None:
    with pytest.raises(LogbookError) as refused:
        of(text)
    assert str(refused.value).endswith(".")
    assert "\n" not in str(refused.value)
