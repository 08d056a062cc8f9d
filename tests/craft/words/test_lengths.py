import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.words.lengths import Units, read_ease, read_length, read_size, show_difference, show_length
from logbook.errors import UnreadableError


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("46", 460),
        ("46 cm", 460),
        ("46cm", 460),
        ("46,5", 465),
        ("46.5CM", 465),
        ("460 mm", 460),
        ("0.46 m", 460),
        ("18 in", 457.2),
        ("18 ins", 457.2),
        ("18in.", 457.2),
        ('18"', 457.2),
        ("18”", 457.2),
        ("18''", 457.2),
        ("18 1/4 in", 463.55),
        ('18 1/4"', 463.55),
        ('18¼"', 463.55),
        ("18.25 inches", 463.55),
        ("1 inch", 25.4),
        ("-5 cm", -50),
        ("−5cm", -50),
        ("+5", 50),
    ],
)
def test_lengths_read_as_people_type_them(text: str, mm: float) -> None:
    assert read_length(text) == pytest.approx(mm, abs=1e-9)


def test_a_bare_number_is_in_the_chosen_units() -> None:
    assert read_length("18 1/4", Units.INCHES) == pytest.approx(463.55)
    assert read_length("46 cm", Units.INCHES) == 460


@pytest.mark.parametrize("text", ["", "cm", "46 cm wide", "46 ft", "46 c m", "1 2 cm", "46..5", "4 6"])
def test_what_is_no_length_is_refused_by_name(text: str) -> None:
    with pytest.raises(UnreadableError, match=r"is not a width: type it like 46, or 46.5 cm, or 18 1/4 in"):
        read_length(text, what="a width")


def test_the_ends_of_the_range() -> None:
    assert read_length("100 m") == 100_000
    with pytest.raises(UnreadableError, match="“101 m” is too long for a width: the most is 100 m"):
        read_length("101 m", what="a width")
    for text in ("0", "-1 cm"):
        with pytest.raises(UnreadableError, match="is not a width: it must be more than 0"):
            read_size(text)


def test_shown_lengths() -> None:
    assert show_length(464.6) == "46.5 cm"
    assert show_length(463.55, Units.INCHES) == "18 1/4 in"
    assert show_length(457.2, Units.INCHES) == "18 in"
    assert show_length(9.525, Units.INCHES) == "3/8 in"
    assert show_length(0.2, Units.INCHES) == "0 in"
    assert show_length(-33.8) == "−3.4 cm"
    assert show_length(-0.2) == "0.0 cm"
    assert show_difference(4.6) == "+0.5 cm"
    assert show_difference(-33.8) == "−3.4 cm"
    assert show_difference(-0.3) == "0.0 cm"
    assert show_difference(6.35, Units.INCHES) == "+1/4 in"
    assert show_difference(-6.35, Units.INCHES) == "−1/4 in"


lengths = st.floats(-50_000, 50_000)


@given(lengths, st.sampled_from(Units))
def test_reading_what_is_shown_gives_the_same_at_the_shown_precision(mm: float, units: Units) -> None:
    shown = show_length(mm, units)
    back = read_length(shown, units)
    assert abs(back - mm) <= (0.5 if units is Units.CM else 25.4 / 16) + 1e-6
    assert show_length(back, units) == shown


@given(st.integers(1, 3000), st.integers(0, 7))
def test_inches_and_cm_agree(whole: int, eighths: int) -> None:
    inches = read_length(f"{whole} {eighths}/8 in")
    assert read_length(f"{inches / 10!r} cm") == pytest.approx(inches, rel=1e-12)
    assert inches == pytest.approx((whole + eighths / 8) * 25.4, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "on_a_metre"),
    [("5 cm", 50), ("-5 cm", -50), ("−5cm", -50), ("-6 %", -60), ("−6%", -60), ("6,5 %", 65), ('−2"', -50.8), ("0", 0)],
)
def test_ease_is_a_length_or_a_share_of_the_body(text: str, on_a_metre: float) -> None:
    assert read_ease(text).of(1000) == pytest.approx(on_a_metre)


@pytest.mark.parametrize("text", ["", "%", "-95 %", "500 %", "snug"])
def test_what_is_no_ease_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError, match="is not an ease"):
        read_ease(text)
