from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.readings import Counted, Reading, read_readings
from logbook.craft.words.lengths import Units
from logbook.errors import UnreadableError

STITCHES, REPEATS, ROWS, ROW_REPEATS = Counted.STITCHES, Counted.REPEATS, Counted.ROWS, Counted.ROW_REPEATS


def one(text: str, direction: Direction | None = None, units: Units = Units.CM) -> Reading:
    (reading,) = read_readings(text, direction, units)
    return reading


@pytest.mark.parametrize(
    ("text", "number", "counted", "mm", "is_count"),
    [
        ("4 repeats = 15.1 cm", 4, REPEATS, 151, False),
        ("4 reps=15.1cm", 4, REPEATS, 151, False),
        ("4 pattern repeats: 15,1 cm", 4, REPEATS, 151, False),
        ("4 repeats measure 15.1 cm", 4, REPEATS, 151, False),
        ("4 repeats reach 151 mm", 4, REPEATS, 151, False),
        ("2.75 repeats in 10 cm", 2.75, REPEATS, 100, True),
        ("2,75 repeats in 10 cm", 2.75, REPEATS, 100, True),
        ("2¾ repeats = 10 cm", 2.75, REPEATS, 100, True),  # nobody lays the tape to three quarters of a repeat
        ("18 sc in 4\"", 18, STITCHES, 101.6, True),
        ("18 sc in 4”", 18, STITCHES, 101.6, True),
        ("18 1/2 sts in 4 in", 18.5, STITCHES, 101.6, True),
        ("18 sts to 4 in", 18, STITCHES, 101.6, True),
        ("18 stitches over 4 inches", 18, STITCHES, 101.6, True),
        ("3.5 sts per inch", 3.5, STITCHES, 25.4, True),
        ("4 sts/in", 4, STITCHES, 25.4, True),
        ("14 hdc = 10.2 cm", 14, STITCHES, 102, False),
        ("14 htr = 10.2 cm", 14, STITCHES, 102, False),
        ("22 rows = 15 cm", 22, ROWS, 150, False),
        ("22 rows/15cm", 22, ROWS, 150, True),
        ("9 rnds in 10 cm", 9, ROWS, 100, True),
        ("9 rounds = 10 cm", 9, ROWS, 100, False),
        ("3 row repeats = 12 cm", 3, ROW_REPEATS, 120, False),
        ("3 row-reps = 12 cm", 3, ROW_REPEATS, 120, False),
        ("  4   REPEATS =  15.1   CM  ", 4, REPEATS, 151, False),
        ("20 st. = 12 cm", 20, STITCHES, 120, False),
    ],
)  # fmt: skip
def test_readings_as_a_maker_says_them(text: str, number: float, counted: Counted, mm: float, is_count: bool) -> None:
    reading = one(text)
    assert (reading.number, reading.counted, reading.is_count) == (number, counted, is_count)
    assert reading.length_mm == pytest.approx(mm)


def test_several_readings_are_parted_by_semicolons_or_lines() -> None:
    found = read_readings("4 repeats = 15.1 cm; 4 repeats = 15.4 cm\n3 repeats = 11.5 cm;")
    assert [r.length_mm for r in found] == [151, 154, 115]
    assert read_readings("") == () == read_readings(" ; \n ")


def test_a_gauge_line_is_two_counts() -> None:
    stitches, rows = read_readings("14 sts x 11 rows = 10 cm")
    assert (stitches.number, stitches.counted, stitches.is_count) == (14, STITCHES, True)
    assert (rows.number, rows.counted, rows.is_count) == (11, ROWS, True)
    assert (stitches.text, rows.text) == ("14 sts in 10 cm", "11 rows in 10 cm")
    for text in (
        "14 sts and 11 rows in 4 in",
        '14 sts × 11 rows = 4"',
        "14 sts, 11 rows over 10 cm",
        "14 sts by 11 rows to 10 cm",
    ):
        assert len(read_readings(text)) == 2


def test_a_missing_unit_of_length_is_the_chosen_one_and_is_written_down() -> None:
    assert one("4 repeats = 15.1").text == "4 repeats = 15.1 cm"
    in_inches = one("18 sts in 4", units=Units.INCHES)
    assert (in_inches.text, in_inches.length_mm, in_inches.inches) == ("18 sts in 4 in", pytest.approx(101.6), True)
    assert one("4 repeats = 15 to 1/2 cm").text == "4 repeats = 15 cm to 1/2 cm"


def test_among_rows_plain_repeats_are_row_repeats() -> None:
    assert one("3 repeats = 12 cm", Direction.ROWS).counted is ROW_REPEATS


@pytest.mark.parametrize(
    ("text", "direction", "says"),
    [
        ("22 rows = 15 cm", Direction.STITCHES, "counts rows, but stitches belong here"),
        ("14 sts = 10 cm", Direction.ROWS, "counts stitches, but rows belong here"),
        ("14 sts x 11 rows = 10 cm", Direction.STITCHES, "write the stitches and the rows apart"),
        ("14 sts x 11 sts = 10 cm", None, "write the stitches and the rows apart"),
        ("0 sts = 10 cm", None, "number and length must be above 0"),
        ("4 repeats = 0 cm", None, "number and length must be above 0"),
        ("-4 repeats = 10 cm", None, "number and length must be above 0"),
        ("4 repeats", None, "write it like “4 repeats = 15.1 cm”"),
        ("4 repeats = ", None, "write it like"),
        ("4 = 15.1 cm", None, "write it like"),
        ("4 repeats in cm", None, "write it like"),
        ("15 cm = 4 repeats", None, "write it like"),
        ("4 purls = 15 cm", None, "write it like"),
        ("4 repeats = 15.1 cm to 0 mm", None, "must be more than 0"),
        ("14 sts x 11 rows", None, "write it like"),
    ],
)
def test_what_is_no_reading_is_refused_with_an_example(text: str, direction: Direction | None, says: str) -> None:
    with pytest.raises(UnreadableError, match=says):
        read_readings(text, direction)


@pytest.mark.parametrize(
    ("text", "finest"),
    [
        ("4 repeats = 15.1 cm", 1),
        ("4 repeats = 6 in", 25.4 / 16),
        ("4 repeats = 15 cm to 1/2 cm", 5),
        ("4 repeats = 15 cm (to the cm)", 10),
        ("4 repeats = 6 in to 1/8 in", 25.4 / 8),
        ("2.75 repeats in 10 cm", 0.25),
        ("3 repeats in 10 cm", 0.25),
        ("18.5 sts in 10 cm", 0.25),
        ("18.2 sts in 10 cm", 0.1),
        ("18.13 sts in 10 cm", 0.01),
        ("18 1/3 sts in 10 cm", 1 / 3),
        ("18 1/8 sts in 10 cm", 1 / 8),
        ("18⅜ sts in 10 cm", 1 / 8),
        ("18 1/2 sts in 10 cm", 0.25),
    ],
)
def test_how_finely_a_reading_was_read(text: str, finest: float) -> None:
    assert Assumptions().finest(one(text)) == pytest.approx(finest)


def test_a_quarter_is_read_to_a_quarter_though_the_maker_usually_counts_to_a_half() -> None:
    halves = Assumptions(count_step=0.5)
    assert halves.finest(one("2.5 repeats in 10 cm")) == 0.5
    assert halves.finest(one("2.75 repeats in 10 cm")) == 0.25
    assert halves.finest(one("18.1 sts in 10 cm")) == 0.1


counts = st.integers(1, 4000).map(lambda quarters: quarters / 4)
units = st.sampled_from(["cm", "mm", "in", '"'])


@given(
    counts,
    st.sampled_from(["sts", "repeats", "rows", "row repeats"]),
    st.sampled_from(["=", " in ", ": "]),
    st.integers(1, 999),
    units,
)
def test_the_text_of_a_reading_reads_as_the_same_reading(number: float, what: str, between: str, length: int, unit: str) -> None:
    reading = one(f"{number:g} {what}{between}{length / 10} {unit}")
    assert one(reading.text) == reading
    assert reading.unit_mm == pytest.approx(reading.length_mm / number)


@given(st.integers(1, 200), st.integers(1, 160))
def test_inches_and_cm_agree(number: int, quarters: int) -> None:
    inches, cm = one(f"{number} sts = {quarters / 4} in"), one(f"{number} sts = {quarters / 4 * 2.54:.4f} cm")
    assert inches.length_mm == pytest.approx(cm.length_mm, abs=1e-3)


@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(UnreadableError):
        assert all(reading.number > 0 and reading.length_mm > 0 for reading in read_readings(text))
