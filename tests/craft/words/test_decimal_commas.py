"""A comma between two figures is a decimal comma or parts two numbers: told by what stands around it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from logbook.craft.words.decimal_commas import with_points
from logbook.craft.words.notation import Notation, written_in
from logbook.craft.words.numbers import show_number
from logbook.craft.words.printed_sizes import sized


@pytest.mark.parametrize(
    ("text", "sizes", "read"),
    [
        ("20,5 (21,5; 23) cm", 3, "20.5 (21.5; 23) cm"),
        ("20 (21; 22,5; 23,5) cm / 8 (8 1/4, 9, 9 1/4) in", 4, "20 (21; 22.5; 23.5) cm / 8 (8 1/4, 9, 9 1/4) in"),
        ("20 (21,5) cm", 2, "20 (21.5) cm"),
        ("1 (1,5; 2) balls, 2,5 (3; 3,5) repeats", 3, "1 (1.5; 2) balls, 2.5 (3; 3.5) repeats"),
        ("20,5; 21,5; 23 cm", 3, "20.5; 21.5; 23 cm"),
        ("49,5 cm / 19 1/2 in", 1, "49.5 cm / 19 1/2 in"),
        ("about 20,5 x 30,25 cm", 1, "about 20.5 x 30.25 cm"),
        ("a 4,5 mm hook, 8,5 in. wide", 1, "a 4.5 mm hook, 8.5 in. wide"),
    ],
)
def test_decimal_commas(text: str, sizes: int, read: str) -> None:
    assert with_points(text, sizes) == read


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("62[68,80,86] sts", 4),
        ("62 (68,80) sts", 3),
        ("62,68,80 sts", 3),
        ("62,68,80 cm", 3),
        ("62,68 sts", 2),
        ("1,200 m", 1),
        ("Row 3,4: sc in next 5,6 in each", 1),
        ("it is 20,5", 1),
    ],
)
def test_commas_that_part(text: str, sizes: int) -> None:
    assert with_points(text, sizes) == text


@given(st.lists(st.integers(1, 400), min_size=2, max_size=9))
def test_a_printed_list_of_sizes_reads_with_either_mark(halves: list[int]) -> None:
    texts = {}
    for mark in (".", ","):
        with written_in(Notation(mark)):
            texts[mark] = f"{sized(show_number(half / 2, 1) for half in halves)} cm"
    assert with_points(texts[","], len(halves)).replace(";", ",") == texts["."]
    assert with_points(texts["."], len(halves)) == texts["."]
