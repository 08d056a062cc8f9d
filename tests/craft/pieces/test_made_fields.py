from dataclasses import fields
from typing import Any

import pytest

from logbook.craft.pieces.made_fields import MADE_FIELDS, kept_readings, read_hours, show_hours, shown_text, typed_value
from logbook.craft.pieces.made_piece import MadePiece
from logbook.craft.words.lengths import Units
from logbook.errors import UnreadableError


def test_every_field_of_a_made_piece_is_in_the_table_but_what_it_comes_from() -> None:
    assert {field.attribute for field in MADE_FIELDS} == {f.name for f in fields(MadePiece)} - {"uid", "piece", "swatch"}


@pytest.mark.parametrize(
    ("text", "minutes"),
    [("12.5", 750), ("12:30", 750), ("12 h 30 min", 750), ("12h30", 750), ("12 1/2 hours", 750), ("90 min", 90), ("0,5", 30)],
)
def test_hours_are_read_as_people_write_them(text: str, minutes: float) -> None:
    assert read_hours(text) == minutes
    assert read_hours(show_hours(minutes)) == minutes


@pytest.mark.parametrize("text", ["0", "-3", "soon", "12:75", "1e9"])
def test_what_is_no_time_is_named(text: str) -> None:
    with pytest.raises(UnreadableError, match="is not a time"):
        read_hours(text)


def test_odd_minutes_read_back() -> None:
    assert read_hours(show_hours(90.25)) == 90.25


def test_its_own_readings_are_kept_as_a_cell_of_the_log() -> None:
    assert kept_readings("4 repeats = 15.1 cm\n22 rows = 15 cm") == "4 repeats = 15.1 cm; 22 rows = 15 cm"
    made = MadePiece(washed_readings="20 sts = 14 cm", worked_readings="")
    ((condition, number),) = [(one.condition.value, one.reading.number) for one in made.own_readings()]
    assert (condition, number) == ("washed", 20)


VALUES: dict[str, Any] = {
    "name": "Vest", "size": "M", "date": "2026-05-01", "worked_by": "Tove", "yarn_used": "Heather", "lot_used": "0417",
    "chain": 76, "rows": 62, "hook_mm": 4.5, "grams_used": 251.5, "minutes": 750.0,
    "predicted_grams": 250.0, "predicted_minutes": 700.0,
    "worked_readings": "20 sts = 14 cm", "washed_readings": "20 sts = 14 cm; 22 rows = 15 cm", "changed": "neck", "fits": "well",
    "wear": "2026-09-01: 47.5 x 58 cm, 3 washes", "notes": "a\nb", "pictures": f"{'0' * 64}.png",
}  # fmt: skip


def test_what_a_form_shows_reads_back_as_the_same() -> None:
    made = MadePiece(**VALUES)
    for field in MADE_FIELDS:
        value = getattr(made, field.attribute)
        if not field.in_cm:
            assert typed_value(field, shown_text(field, value), Units.INCHES) == value, field.name


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [("grams used", "lots", "weight in grams"), ("pictures", "cat.jpg", "not a picture"), ("gauge washed", "snug", "snug")],
)
def test_what_can_not_be_read_is_named(name: str, text: str, says: str) -> None:
    field = next(field for field in MADE_FIELDS if field.name == name)
    with pytest.raises(UnreadableError, match=says):
        typed_value(field, text, Units.CM)
