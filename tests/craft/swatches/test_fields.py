from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.fields import FIELDS, LogField, Owner, clean_text, exact, read_date
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import UnreadableError

BY_NAME = {field.name: field for field in FIELDS}
EXAMPLES: dict[str, tuple[str, Any]] = {
    "date": ("2026-05-31", "2026-05-31"),
    "yarn class": ("3", 3),
    "ball grams": ("50", 50.0),
    "ball metres": ("112,5", 112.5),
    "strands": ("2", 2),
    "hook mm": ("4.5", 4.5),
    "foundation hook mm": ("5", 5.0),
    "multiple": ("6", 6),
    "plus": ("0", 0),
    "terms": ("uk", "UK"),
    "worked": ("Flat", "flat"),
    "hung clip cm": ("12.5", 125.0),
    "notes": ("two\r\nlines", "two\nlines"),
}


def test_the_columns_are_the_promised_ones_in_their_order() -> None:
    assert ", ".join(BY_NAME) == (
        "uid, tag, date, yarn, fibre, yarn class, ball grams, ball metres, colour, dye lot, strands, hook mm, hook note, "
        "foundation hook mm, stitch pattern, multiple, plus, extra chains, first stitch in chain, skipped chains cover, "
        "set-up rows, rows in repeat, closing rows, terms, worked, worked by, way of washing, swatch grams, swatch stitches, "
        "swatch rows, notes, stitches as worked, rows as worked, stitches washed, rows washed, stitches pinned, rows pinned, "
        "stitches pulled sideways, rows pulled sideways, stitches pulled lengthwise, rows pulled lengthwise, stitches hung, "
        "rows hung, hung grams, hung clip cm, half-repeat plus, written rows, minutes, ball price, currency, pictures"
    )


def test_every_field_names_a_real_attribute_of_its_record() -> None:
    records = {Owner.SWATCH: Swatch(), Owner.YARN: Yarn(), Owner.PATTERN: StitchPattern(), Owner.READINGS: Swatch()}
    for field in FIELDS:
        assert getattr(records[field.owner], field.attribute) == field.empty


@pytest.mark.parametrize("name", EXAMPLES)
def test_fields_read_and_show_again(name: str) -> None:
    field, (text, value) = BY_NAME[name], EXAMPLES[name]
    assert field.value(f" {text} ") == value
    assert field.value(field.shown(value)) == value


@pytest.mark.parametrize("field", FIELDS, ids=lambda field: field.name)
def test_an_empty_field_is_empty_and_shows_so(field: LogField) -> None:
    assert field.value("  ") == field.empty
    assert field.shown(field.empty) == ""


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("yarn class", "8"),
        ("yarn class", "2.5"),
        ("ball grams", "0"),
        ("strands", "0"),
        ("hook mm", "big"),
        ("multiple", "0"),
        ("plus", "-1"),
        ("terms", "French"),
        ("worked", "sideways"),
        ("date", "31.5.2026"),
        ("hung clip cm", "-3"),
        ("stitches washed", "lots = 10 cm"),
        ("stitches washed", "22 rows = 15 cm"),
        ("tag", "a\x00b"),
        ("notes", "x" * 32_768),
    ],
)
def test_what_does_not_belong_is_refused_in_a_sentence(name: str, text: str) -> None:
    with pytest.raises(UnreadableError, match=r"[:,] .*\.$"):
        BY_NAME[name].value(text)


def test_readings_fields_know_their_condition_and_direction() -> None:
    field = BY_NAME["rows pulled sideways"]
    assert (field.condition, field.direction) == (Condition.SIDEWAYS, Direction.ROWS)
    readings = field.value("22 rows = 15 cm; 3 repeats = 9")
    assert field.shown(readings) == "22 rows = 15 cm; 3 repeats = 9 cm"
    assert field.value(field.shown(readings)) == readings


@given(st.decimals("0.001", 999, places=3))
def test_a_number_shows_as_it_was_typed(number: Any) -> None:
    typed = exact(float(number))
    for name in ("ball grams", "hung clip cm"):
        assert BY_NAME[name].shown(BY_NAME[name].value(typed)) == typed


@given(st.text(max_size=50))
def test_texts_are_kept_or_refused_by_the_character(text: str) -> None:
    try:
        cleaned = clean_text(text)
    except UnreadableError:
        assert any(ord(c) < 32 or ord(c) in (0x7F, 0xFFFE, 0xFFFF) for c in text)
    else:
        assert "\r" not in cleaned
        assert clean_text(cleaned) == cleaned
        cleaned.encode()


@pytest.mark.parametrize("bad", ["\x00", "\x1b", "\ud800", "\ufffe", "\uffff", "\x7f"])
def test_characters_that_cannot_be_kept_are_named(bad: str) -> None:
    with pytest.raises(UnreadableError, match=f"U\\+{ord(bad):04X}, which can't be kept: delete it"):
        clean_text(f"wool{bad}")


def test_dates_of_the_calendar() -> None:
    for good in ("2024-02-29", "2000-02-29", "1999-12-31"):
        assert read_date(good) == good
    for bad in (
        "2023-02-29",
        "1900-02-29",
        "2026-13-01",
        "2026-04-31",
        "2026-1-1",
        "0000-01-01",
        "２０２６-05-31",
        "2026-05-31 ",
    ):
        with pytest.raises(UnreadableError, match="is not a date: type year, month and day, like 2026-05-31"):
            read_date(bad)


METRES = [("190", 190), ("190 m", 190), ("208 yd", 190.195), ("208yds", 190.195), ("100 yards", 91.44)]


@pytest.mark.parametrize(("text", "metres"), METRES)
def test_a_ball_is_said_in_metres_or_yards(text: str, metres: float) -> None:
    assert BY_NAME["ball metres"].value(text) == metres
