import re

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from logbook.craft.pieces.shaping import pick_up, rows_text, shape_edges, spread_row
from logbook.craft.pieces.spread import spread
from logbook.errors import RefusedError

TIMES = {"once": 1, "twice": 2}


def times(text: str) -> int:
    return TIMES.get(text) or int(text.split()[0])


def worked(text: str) -> list[str]:
    """Every single doing of a written row, in order, brackets and times worked off."""
    how_often = r"(once|twice|\d+ times)"
    text = re.sub(rf"\(([^)]*)\) {how_often}", lambda m: ", ".join([m[1]] * times(m[2])), text)
    text = re.sub(rf"(inc|dec) {how_often}", lambda m: ", ".join([m[1]] * times(m[2])), text)
    return text.split(", ")


def before_and_after(text: str) -> tuple[int, int]:
    before = after = 0
    for doing in worked(text):
        shaped = {"inc": (1, 2), "dec": (2, 1)}.get(doing)
        plain = re.fullmatch(r"sc in next (st|\d+)", doing)
        assert shaped or plain, doing
        one = shaped or ((1, 1) if plain and plain[1] == "st" else (int(plain[1]), int(plain[1])) if plain else (0, 0))
        before, after = before + one[0], after + one[1]
    return before, after


def test_rows_as_they_are_written() -> None:
    # 32 stitches, 5 increases: 27 plain in 5 parts: 5, 5, 5, 6, 6
    assert spread_row(32, 5, on_edge=True).text == "(inc, sc in next 5) 3 times, (inc, sc in next 6) twice"
    # off the edges in 6 parts: 4, 4, 4, 5, 5, 5
    assert spread_row(32, 5).text == "sc in next 4, (inc, sc in next 4) twice, (inc, sc in next 5) 3 times"
    # 20 stitches, 3 decreases: 14 plain in 4 parts: 3, 3, 4, 4
    assert spread_row(20, -3).text == "sc in next 3, dec, sc in next 3, (dec, sc in next 4) twice"
    assert spread_row(20, 0, "hdc").text == "hdc in next 20"
    assert spread_row(4, 4, on_edge=True).text == "inc 4 times"
    assert spread_row(3, 1, "tr").text == "tr in next st, inc, tr in next st"


@given(st.integers(1, 400), st.integers(-150, 400), st.booleans())
def test_the_counts_always_add_up(stitches: int, change: int, on_edge: bool) -> None:
    try:
        row = spread_row(stitches, change, on_edge=on_edge)
    except RefusedError:
        room = stitches - (change if change > 0 else -2 * change)
        assert room < (0 if on_edge else 2)
        return
    assert (row.before, row.after) == (stitches, stitches + change)
    assert before_and_after(row.text) == (stitches, stitches + change)
    if not on_edge and change:
        doings = worked(row.text)
        assert doings[0].startswith("sc")
        assert doings[-1].startswith("sc")
    parts = [run.plain for run in row.runs] + ([row.first] if not on_edge else [])
    assert not parts or max(parts) - min(parts) <= 1


def test_no_room_is_said() -> None:
    with pytest.raises(RefusedError, match="10 stitches have no room for 9 increases off the edges: spread them over more rows"):
        spread_row(10, 9)
    with pytest.raises(RefusedError, match="10 stitches have no room for 6 decreases: spread them over more rows"):
        spread_row(10, -6, on_edge=True)


def test_pairs_at_both_edges_by_hand() -> None:
    # From 20 to 30 are 5 pairs; 22 rows in gaps of 4, the last two one longer; the first after half a gap
    shaped = shape_edges(20, 30, 22)
    assert shaped.at == (2, 6, 10, 15, 20)
    assert shaped.text == ("increase at both edges in row 2, in every 4th row twice, in every 5th row twice, then 2 rows even")
    assert shape_edges(30, 20, 5).text == "decrease at both edges in every row 5 times"
    assert shape_edges(30, 28, 11).text == "decrease at both edges in row 6, then 5 rows even"
    assert shape_edges(30, 30, 10).text == "work even"


def test_rows_of_shapings_in_one_sentence() -> None:
    assert rows_text(spread(10, 87), 87) == "in row 4, in every 8th row twice, in every 9th row 7 times, then 4 rows even"
    assert rows_text(spread(5, 3), 3) == "in every row, and once more in row 1, in row 3"
    assert rows_text(spread(7, 3), 3) == "2 in every row, and one more in row 2, then 1 row even"
    assert rows_text(spread(7, 11, right_side_only=True), 11).startswith("in row 1, in row 3, in row 5 twice")


@pytest.mark.parametrize(
    ("start", "end", "rows", "says"),
    [
        (20, 27, 30, "odd difference"),
        (20, 40, 9, "10 pairs need at least 10 rows, not 9"),
        (2, 0, 9, "at least 1 stitch"),
    ],
)
def test_pairs_that_cannot_be_are_refused(start: int, end: int, rows: int, says: str) -> None:
    with pytest.raises(RefusedError, match=says):
        shape_edges(start, end, rows)


@given(st.integers(1, 200), st.integers(-60, 60), st.integers(1, 200))
def test_pairs_add_up_and_lie_evenly(start: int, pairs: int, rows: int) -> None:
    end = start + 2 * pairs
    assume(end >= 1)
    assume(abs(pairs) <= rows)
    shaped = shape_edges(start, end, rows)
    assert start + (2 if pairs > 0 else -2) * len(shaped.at) == end
    assert len(set(shaped.at)) == abs(pairs)


def test_an_edging_picks_up_in_the_ratio_of_the_gauges() -> None:
    # sc of 6 mm on 60 dc rows of 9 mm: 540/6 = 90, three stitches for two rows
    picked = pick_up(60, 9, 6)
    assert picked.stitches == 90
    assert picked.text == "(2 sts in next row end, 1 st in next row end) 30 times"
    assert pick_up(60, 6, 6).text == "1 st in each of next 60 row ends"
    assert pick_up(60, 5, 6).text == "(1 st in next row end) 40 times, (1 st in next row end, pass over next row end) 10 times"
    with pytest.raises(RefusedError, match="at least one row end"):
        pick_up(0, 9, 6)


@given(st.integers(1, 300), st.floats(1, 30), st.floats(1, 30))
def test_picked_up_stitches_add_up(ends: int, end_mm: float, stitch_mm: float) -> None:
    picked = pick_up(ends, end_mm, stitch_mm)
    stitches = row_ends = 0
    for doing in worked(picked.text):
        places = re.search(r"next (?:(\d+) row ends|row end)", doing)
        assert places, doing
        number = int(places[1] or 1)
        row_ends += number
        stitches += 0 if doing.startswith("pass over") else number * int(doing.split()[0])
    assert (stitches, row_ends) == (picked.stitches, ends)
    assert abs(picked.stitches * stitch_mm - ends * end_mm) <= max(stitch_mm / 2, 0) + 1e-6 or picked.stitches == 1
