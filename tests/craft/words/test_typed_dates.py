"""Dates as people write them."""

import pytest

from logbook.craft.words.typed_dates import iso_date

MAY_31 = "2026-05-31"


@pytest.mark.parametrize(
    "text",
    ["2026-05-31", "2026-5-31", "2026/05/31", "2026.5.31", "31.5.2026", "31. 5. 2026", "31.05.26", "31/5/2026", "5/31/2026",
     "31-05-2026", "5/31/26", "31 May 2026", "31st May 2026", "31. May 2026", "31-May-2026", "May 31, 2026",
     "May 31 2026", " 31 may 2026 "],
)  # fmt: skip
@pytest.mark.parametrize("month_first", [True, False, None])
def test_what_can_be_one_day_only(text: str, month_first: bool | None) -> None:
    assert iso_date(text, month_first) == MAY_31


def test_what_could_be_two_is_decided_by_where_one_lives_or_left() -> None:
    assert [iso_date("5/6/2026", first) for first in (True, False, None)] == ["2026-05-06", "2026-06-05", "5/6/2026"]
    assert [iso_date("5.6.2026", first) for first in (True, None)] == ["2026-06-05", "2026-06-05"]
    assert iso_date("5/5/2026", None) == "2026-05-05"


@pytest.mark.parametrize(
    "text", ["", "May", "31.4.2026", "32/5/2026", "31 Foo 2026", "2026-13-01", "29 Feb 2025", "5/6", "31/5.2026"]
)
def test_what_is_no_date_stays(text: str) -> None:
    assert iso_date(text, True) == text
