"""The practice piece: chain and counts for a few repeats."""

from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.tasks.written.practice import practice_piece

SHELLS = (
    "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.\n"
    "Row 2: Ch 1, sc in first sc, *ch 2, sc in center dc of next shell, ch 2, sc in next sc; rep from * across."
)


def test_three_repeats_with_the_count_of_each_row() -> None:
    assert practice_piece(StitchPattern(rows_text=SHELLS)) == "Practice piece: ch 20. Row 1: 19 sts. Row 2: 7 sts, 6 sps."


def test_single_stitches_are_more_than_three() -> None:
    rows = "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across."
    assert practice_piece(StitchPattern(rows_text=rows)).startswith("Practice piece: ch 14. Row 1: 13 sts.")


def test_rows_that_are_not_proven_make_none() -> None:
    assert practice_piece(StitchPattern(rows_text="Row 1: dance in each ch")) == ""
    assert practice_piece(StitchPattern()) == ""


def test_of_several_stitch_patterns_each_is_named() -> None:
    assert practice_piece(StitchPattern(name="shells", rows_text=SHELLS), named=True).startswith(
        "Practice piece in shells: ch 20."
    )
