from contextlib import suppress
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.readings import Counted, Reading, as_read_today, read_readings
from logbook.craft.words.lengths import Units
from logbook.errors import UnreadableError
from tests.support.written_gauges import EACH

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
        ("9 rounds = 10 cm", 9, ROWS, 100, True),
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


@pytest.mark.parametrize(("plain", "written"), EACH)
def test_ways_of_writing_one_gauge_read_alike(plain: str, written: str) -> None:
    found = sorted(read_readings(written), key=lambda one: one.counted.direction, reverse=True)
    assert [replace(one, text="") for one in found] == [replace(one, text="") for one in read_readings(plain)]
    for one_of_them in found:  # the text that is kept says the same
        assert one(one_of_them.text) == one_of_them


def test_a_whole_count_over_just_10_cm_is_a_count_and_a_bare_10_is_a_length() -> None:
    assert one("16 sts = 10 cm").is_count
    assert one("16 sts/10").text == "16 sts/10 cm"
    assert one("16 sts/4", units=Units.INCHES).length_mm == pytest.approx(101.6)
    assert [found.number for found in read_readings("16 sts/20")] == [16, 20]


@pytest.mark.parametrize(
    ("text", "number", "length"),
    [
        ("16 sts/10.5 cm", 16, 105), ("16 sts/10,5 cm", 16, 105), ("16sts/10.5cm", 16, 105), ("16 sts / 10.0 cm", 16, 100),
        ('17 sts/4 1/2"', 17, 114.3), ("17 sts/4½ in", 17, 114.3), ("4 repeats/15.1 cm", 4, 151), ("4 reps/15.1", 4, 151),
        ("13r/10.5cm", 13, 105), ("22 rows/11.3", 22, 113),
    ],
)  # fmt: skip
def test_a_length_after_a_slash_is_read_whole(text: str, number: float, length: float) -> None:
    found = one(text)
    assert (found.number, found.length_mm) == (number, pytest.approx(length))


def test_two_counts_before_a_slash_keep_their_length() -> None:
    assert [found.length_mm for found in read_readings("16 x 20/10.5 cm")] == [105, 105]


@pytest.mark.parametrize("text", ["16 sts/10.5", "16 sts, 10.5 cm", "16 sts and 10.5 cm", "16 sts*10.5cm"])
def test_what_may_be_a_length_or_rows_is_asked(text: str) -> None:
    with pytest.raises(UnreadableError, match=r"10\.5"):
        read_readings(text)


@pytest.mark.parametrize(
    "text",
    ["16 sts x 10 cm", "4 shells = 17.2 cm", "16 sts = 10 cm / 4 in / 6 in", "16 sts = 10 x 12 cm", "16 sts = 10 cm 3 mm hook"],
)
def test_what_could_be_two_things_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError):
        read_readings(text)


def test_repeats_and_rows_in_short() -> None:
    assert one("22 rows 11.3") == replace(one("22 rows = 11.3 cm"), text="22 rows 11.3 cm")
    assert one("22r=11.3") == replace(one("22 rows = 11.3 cm"), text="22r=11.3 cm")
    assert one("4 reps 17.2") == replace(one("4 repeats = 17.2 cm"), text="4 reps 17.2 cm")
    assert one("15.1 cm = 4 repeats") == replace(one("4 repeats = 15.1 cm"), text="15.1 cm = 4 repeats")
    assert one('16 sts over 4"') == replace(one("16 sts = 4 in"), text='16 sts over 4"')
    repeats, rows = read_readings("Gauge: 2.6 repeats (15.7 sts) and 9 rows = 10 cm / 4 in in shells, 4.5 mm hook, washed")
    assert (repeats.number, repeats.counted, rows.number, rows.counted) == (2.6, REPEATS, 9, ROWS)


def test_both_counted_without_a_length_are_over_4_in_where_lengths_are_in_inches() -> None:
    assert [found.text for found in read_readings("16 x 20", units=Units.INCHES)] == ["16 sts in 4 in", "20 rows in 4 in"]


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
        ("4 repeats", None, "read “4 repeats”, but not over what length. Add it, like “4 repeats = 10 cm”"),
        ("4 repeats = ", None, "read “4 repeats”, but not over what length"),
        ("4 = 15.1 cm", None, "read “4”, but not “= 15.1 cm”. Say what was counted"),
        ("4 repeats in cm", None, "read “4 repeats”, but not “in cm”. Write the length there"),
        ("16 sts = wide", None, "read “16 sts”, but not “= wide”"),
        ("16 sts = 10 cm blah", None, "read “16 sts = 10 cm”, but not “blah”. Leave that out"),
        ("16 sts x 10 cm", None, "read “16 sts”, but not “x 10 cm”"),
        ("16 sts = 10 cm / 6 in", None, "two different lengths"),
        ("wide", None, "Couldn't read “wide”: try “16 sts = 10 cm”"),
        ("a" * 5000, None, "Couldn't read"),
        ("4 purls = 15 cm", None, "read “4”, but not “purls = 15 cm”. Say what was counted"),
        ("4 repeats = 15.1 cm to 0 mm", None, "must be more than 0"),
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
        ("3 repeats in 10 cm", 1),
        ("16 sts = 10 cm", 1),
        ("15 sts = 10.0 cm", 1),
        ("18.5 sts in 10 cm", 0.5),
        ("18.2 sts in 10 cm", 0.1),
        ("18.13 sts in 10 cm", 0.01),
        ("18 1/3 sts in 10 cm", 1 / 3),
        ("18 1/8 sts in 10 cm", 1 / 8),
        ("18⅜ sts in 10 cm", 1 / 8),
        ("18 1/2 sts in 10 cm", 0.5),
    ],
)
def test_how_finely_a_reading_was_read(text: str, finest: float) -> None:
    assert Assumptions().finest([one(text)]) == pytest.approx((finest,))


def test_a_quarter_is_read_to_a_quarter_though_the_maker_usually_counts_to_a_half() -> None:
    halves = Assumptions(count_step=0.5)
    assert halves.finest([one("2.5 repeats in 10 cm")]) == (0.5,)
    assert halves.finest([one("3 repeats in 10 cm")]) == (0.5,)
    assert halves.finest([one("2.75 repeats in 10 cm")]) == (0.25,)
    assert halves.finest([one("18.1 sts in 10 cm")]) == (0.1,)


def test_people_count_to_the_coarsest_of_a_whole_a_half_and_a_quarter_that_all_their_counts_show() -> None:
    def steps(text: str) -> tuple[float, ...]:
        return Assumptions().finest(read_readings(text))

    assert steps("16 sts = 10 cm; 17 sts in 4 in") == (1, 1)
    assert steps("16 sts = 10 cm; 16.5 sts in 10 cm") == (0.5, 0.5)
    assert steps("16 sts = 10 cm; 16.5 sts in 10 cm; 16.25 sts in 10 cm") == (0.25, 0.25, 0.25)
    assert steps("16 sts = 10 cm; 16.2 sts in 10 cm") == (0.25, 0.1)
    assert steps("16 sts = 10 cm; 20 sts = 12.5 cm") == (1, 1.0)  # the second is a span, read on the tape to 1 mm


def test_a_count_kept_as_a_span_before_is_read_as_one_today() -> None:
    kept = replace(one("16 sts = 10 cm"), is_count=False)
    assert as_read_today(kept) == one("16 sts = 10 cm")
    for text in ("16 sts = 10.0 cm", "4 repeats = 10 cm", "16 sts = 10 cm to 1 mm", "16 sts = 100 mm"):
        assert as_read_today(one(text)) == one(text)
        assert not one(text).is_count


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
