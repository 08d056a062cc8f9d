import pytest

from logbook.craft.pieces.wear import Worn, read_worn, worn_text
from logbook.craft.words.lengths import Units
from logbook.errors import UnreadableError


@pytest.mark.parametrize(
    ("text", "units", "worn"),
    [
        ("2026-09-01: 47.5 x 58 cm, 3 washes, cuffs loose", Units.CM, Worn("2026-09-01", 475, 580, 3, "cuffs loose")),
        ("2026-09-01 47,5 × 58; after 1 wash", Units.CM, Worn("2026-09-01", 475, 580, 1)),
        ("2026-09-01, 18 x 22 1/2, softer, pills", Units.INCHES, Worn("2026-09-01", 457.2, 571.5, None, "softer, pills")),
        ("2026-09-01: 58.5 long", Units.CM, Worn("2026-09-01", None, 585)),
        ("2026-09-01 - 47 cm wide, 12 washes", Units.INCHES, Worn("2026-09-01", 470, None, 12)),
        ("2026-09-01: worn thin at the elbows", Units.CM, Worn("2026-09-01", words="worn thin at the elbows")),
    ],
)
def test_a_line_is_read_as_it_is_written_and_reads_back(text: str, units: Units, worn: Worn) -> None:
    (found,) = read_worn(text, units)
    assert (found.date, found.washes, found.words) == (worn.date, worn.washes, worn.words)
    assert (found.width_mm, found.length_mm) == pytest.approx((worn.width_mm, worn.length_mm))
    assert read_worn(worn_text((found,)), Units.INCHES) == (found,)


def test_days_come_in_their_order() -> None:
    found = read_worn("2026-09-01: 3 washes\n\n2026-05-01: 1 wash\n")
    assert [one.date for one in found] == ["2026-05-01", "2026-09-01"]


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("47 x 58", "does not begin with its date"),
        ("2026-09-31: 47 x 58", "is not a date"),
        ("2026-09-01:", "says nothing beside its date"),
        ("2026-09-01: 0 x 58", "more than 0"),
        ("\n".join(["2026-09-01: 3 washes"] * 201), "201 lines"),
    ],
)
def test_what_is_wrong_is_named(text: str, says: str) -> None:
    with pytest.raises(UnreadableError, match=says):
        read_worn(text)
