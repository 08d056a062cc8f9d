from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.words.numbers import read_number, read_positive, read_whole, show_change, show_number, show_percent
from logbook.errors import UnreadableError


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12.5", "25/2"),
        ("12,5", "25/2"),
        (" 12 ", "12"),
        ("12.", "12"),
        (".5", "1/2"),
        (",5", "1/2"),
        ("18 1/4", "73/4"),
        ("18-1/4", "73/4"),
        ("18¼", "73/4"),
        ("18 ¼", "73/4"),
        ("¾", "3/4"),
        ("3/8", "3/8"),
        ("−5", "-5"),
        ("-5", "-5"),
        ("- 5", "-5"),
        ("+5", "5"),
        ("−2 1/2", "-5/2"),
        ("007", "7"),
    ],
)
def test_numbers_read_as_people_type_them(text: str, value: str) -> None:
    assert read_number(text) == Fraction(value)


@pytest.mark.parametrize(
    "text", ["", " ", "twelve", "1,234.5", "1.2.3", "--5", "5-", "1/2/3", "12 5", "1e3", "nan", "inf", "½½", "9" * 31]
)
def test_what_is_no_number_is_refused_by_name(text: str) -> None:
    with pytest.raises(UnreadableError, match="is not a width: type a number"):
        read_number(text, "a width")


def test_dividing_by_nought_gets_a_sentence() -> None:
    with pytest.raises(UnreadableError, match="“1/0” divides by zero: type a number"):
        read_number("1/0")


def test_a_long_text_is_shortened_in_the_message() -> None:
    with pytest.raises(UnreadableError) as caught:
        read_number("x" * 500)
    assert len(str(caught.value)) < 120


@given(st.integers(0, 999), st.integers(0, 7))
def test_whole_and_eighths_read_however_they_are_joined(whole: int, eighths: int) -> None:
    expected = whole + Fraction(eighths, 8)
    assert read_number(f"{whole} {eighths}/8") == read_number(f"{whole}-{eighths}/8") == expected
    assert read_number(f"−{whole} {eighths}/8") == -expected


@given(st.integers(-99_999_999, 99_999_999), st.integers(0, 4))
def test_comma_and_point_are_the_same_and_exact(digits: int, decimals: int) -> None:
    shown = f"{digits / 10**decimals:.{decimals}f}"
    assert read_number(shown) == read_number(shown.replace(".", ",")) == Fraction(digits, 10**decimals)


@given(st.floats(-1e6, 1e6), st.integers(0, 4))
def test_what_is_shown_reads_back_to_its_shown_decimals(value: float, decimals: int) -> None:
    shown = show_number(value, decimals)
    assert abs(float(read_number(shown)) - value) <= 0.5 * 10.0**-decimals + 1e-9
    assert show_number(float(read_number(shown)), decimals) == shown


def test_numbers_are_shown_without_trailing_noughts() -> None:
    assert [show_number(v) for v in (2.5, 4.0, 10.0, 0.0, -0.001, -2.25)] == ["2.5", "4", "10", "0", "0", "−2.25"]


def test_shares_are_shown_in_percent() -> None:
    assert [show_percent(v) for v in (0.0249, 0.05, 0.0995, 0.134, -0.031, 0.0)] == [
        "2.5 %",
        "5 %",
        "10 %",
        "13 %",
        "−3.1 %",
        "0 %",
    ]


def test_changes_are_shown_with_their_sign() -> None:
    assert [show_change(v) for v in (0.0249, -0.134, 0.0, 0.0004, -0.0004)] == ["+2.5 %", "−13 %", "0 %", "0 %", "0 %"]


def test_whole_numbers_keep_to_their_range() -> None:
    assert read_whole(" 7 ", "a yarn class", 0, 7) == 7
    for text in ("8", "-1", "3.5", "", "x"):
        with pytest.raises(UnreadableError, match="is not a yarn class: type a whole number from 0 to 7"):
            read_whole(text, "a yarn class", 0, 7)


def test_positive_numbers_are_above_nought() -> None:
    assert read_positive("0,5", "a weight in grams") == 0.5
    for text in ("0", "-1", "1000001"):
        with pytest.raises(UnreadableError, match="is not a weight in grams: type a number above 0 and at most 1000000"):
            read_positive(text, "a weight in grams")
