"""Written rows with the count of each row in every size."""

import pytest

from logbook.craft.rows.in_sizes import rows_in_sizes
from logbook.craft.words.terms import Terms
from tests.support.sample_sheets import written_rows

SHELLS = written_rows()["shell stitch"]
PLAIN = "Row 1: sc in 2nd ch from hook and in each ch across"


def test_each_row_has_its_count_and_the_other_lines_stand() -> None:
    shown = rows_in_sizes(SHELLS, None, (67, 67, 79, 85))
    assert [line.removesuffix(" (67 (67, 79, 85) sts)") for line in shown] == SHELLS.splitlines()
    assert sum(line.endswith(" (67 (67, 79, 85) sts)") for line in shown) == 3


def test_spaces_are_counted_apart() -> None:
    shown = rows_in_sizes(written_rows()["mesh"], None, (61, 81))
    assert shown[0].endswith("turn. (31 (41) sts, 30 (40) sps)")


def test_a_count_of_all_sizes_stands_once() -> None:
    assert rows_in_sizes(PLAIN, None, (1,)) == (f"{PLAIN} (1 st)",)
    assert rows_in_sizes(PLAIN, None, (60, 60)) == (f"{PLAIN} (60 sts)",)


@pytest.mark.parametrize("printed", ["(60 sc)", "(60 (72, 84) sc)", "[60 sts]."])
def test_what_was_printed_gives_way(printed: str) -> None:
    assert rows_in_sizes(f"{PLAIN} {printed}", None, (40, 50)) == (f"{PLAIN} (40 (50) sts)",)


@pytest.mark.parametrize("between", ["\n", " / "])
def test_a_row_without_a_name_gets_it(between: str) -> None:
    text = between.join(
        ("tr in 5th ch from hook, tr in each ch to end", "3 ch (counts as tr), sk first tr, tr in each tr to end")
    )
    shown = between.join(rows_in_sizes(text, Terms.UK, (20,)))
    assert shown.startswith("Row 1: tr in 5th ch")
    assert f"{between}Row 2: 3 ch" in shown


def test_rows_that_stand_for_others_are_named_where_their_counts_differ() -> None:
    shown = rows_in_sizes(f"{PLAIN}\nRow 2: ch 1, inc in each st across\nRow 3: as row 2", None, (10, 12))
    assert shown[1:] == ("Row 2: ch 1, inc in each st across (Row 2: 20 (24) sts; Row 3: 40 (48) sts)", "Row 3: as row 2")


@pytest.mark.parametrize(
    ("text", "stitches"),
    [
        ("", 67),
        (SHELLS, 68),
        (SHELLS, 1),
        (SHELLS.replace("5 dc in next sc", "4 dc in next sc", 1), 67),
        ("Rnd 1: 6 sc in ring", 6),
    ],
)
def test_rows_that_do_not_fit_are_left_out(text: str, stitches: int) -> None:
    assert rows_in_sizes(text, None, (67, stitches)) == ()
