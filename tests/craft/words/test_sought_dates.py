"""Dates among the words that are looked for, as they stand in a date that is kept."""

import pytest

from logbook.craft.words.sought_dates import sought_dates


@pytest.mark.parametrize(
    ("text", "ways"),
    [
        ("21 sep 2024", {("2024-09-21",)}), ("sept. 21st, 2024", {("2024-09-21",)}), ("21.9.2024", {("2024-09-21",)}),
        ("sep 2024", {("2024-09-",)}), ("2024 september", {("2024-09-",)}), ("9/2024", {("2024-09-",)}),
        ("21-sep", {("-09-21",)}), ("sep 21st", {("-09-21",)}), ("sep 20", {("-09-20",), ("20", "-09-")}),
        ("sep 202", {("202", "-09-")}),
    ],
)  # fmt: skip
def test_a_whole_date_a_month_of_a_year_or_a_day_of_a_month(text: str, ways: set[tuple[str, ...]]) -> None:
    ((start, end, found),) = sought_dates(f"shell {text} ivory", False)
    assert (start, end, set(found)) == (6, 6 + len(text), ways)


@pytest.mark.parametrize("text", ["", "sep", "2024", "13/2024", "maybe 2024", "32 sep", "a21 sep", "4,5 mm"])
def test_what_is_no_date_is_left_to_be_found_as_words(text: str) -> None:
    assert list(sought_dates(text, False)) == []


def test_figures_go_by_where_one_lives() -> None:
    assert [next(sought_dates("5/6/2024", first))[2] for first in (True, False)] == [(("2024-05-06",),), (("2024-06-05",),)]


def test_a_word_before_that_only_begins_like_a_month_hides_no_date() -> None:
    assert list(sought_dates("marchh 21 sep", False)) == [(7, 13, (("-09-21",),))]
