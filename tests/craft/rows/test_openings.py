"""What the chains at a row's beginning count as: said, never for ch 1, shown by the next stitch, else both ways are tried."""

import pytest

from logbook.craft.rows.proof import prove
from logbook.craft.rows.reader import read
from logbook.craft.words.terms import Terms

PLAIN = "sc in 2nd ch from hook and in each ch across\n"


def options(row: str, first: str = PLAIN) -> list[tuple[str, int]]:
    opening = read(first + row, Terms.US).rows[-1].opening
    assert opening is not None
    return [(option.stitch, option.chains) for option in opening.options]


@pytest.mark.parametrize(
    ("row", "counts"),
    [
        ("ch 3 (counts as dc), dc in first st", [("dc", 0)]),
        ("ch 3 (does not count as a st), dc in next st", [("", 0)]),
        ("ch 5 (counts as dc and ch 2), dc in same st", [("dc", 2)]),
        ("ch 4 (counts as 1 dc, ch 1), dc in next st", [("dc", 1)]),
        ("ch 1, sc in next st", [("", 0)]),
        ("ch 3, dc in first st", [("", 0), ("dc", 0)]),
        ("ch 3, 2 dc in first st", [("", 0)]),
        ("ch 3, 2 dc in first ch-2 sp", [("dc", 0), ("", 0)]),
        ("ch 3, dc in same st", [("", 0), ("dc", 0)]),
        ("ch 3, dc in next st", [("dc", 0)]),
        ("ch 3, sk first st, dc in each st across", [("dc", 0)]),
        ("ch 4, dc in next st", [("dc", 1)]),
        ("ch 2, hdc in next st", [("hdc", 0)]),
        ("ch 2, dc in next st", [("", 0), ("dc", 0)]),
        ("ch 4, tr in next st", [("tr", 0)]),
        ("ch 3, dc in each st across", [("dc", 0), ("", 0)]),
        ("ch 2, hdc in each st across", [("", 0), ("hdc", 0)]),
        ("ch 5, sc in next ch-3 sp", [("dc", 2), ("", 0)]),
    ],
)
def test_turning_chains(row: str, counts: list[tuple[str, int]]) -> None:
    assert options(row) == counts


@pytest.mark.parametrize(
    ("row", "counts"),
    [
        ("sc in 2nd ch from hook", [("", 0, 0)]),
        ("hdc in 2nd ch from hook", [("", 0, 0)]),
        ("hdc in 3rd ch from hook", [("", 0, 0), ("hdc", 0, 0)]),
        ("dc in 3rd ch from hook", [("", 0, 0)]),
        ("dc in 4th ch from hook", [("dc", 0, 0)]),
        ("tr in 5th ch from hook", [("tr", 0, 0)]),
        ("dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end", [("dc", 1, 1)]),
        ("dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * to end", [("dc", 2, 2)]),
        ("dc in 7th ch from hook, *ch 2, sk 1 ch, dc in next ch; rep from * to end", [("dc", 2, 1)]),
        ("dc in 4th ch from hook (3 skipped chs do not count)", [("", 0, 0)]),
        ("dc in 5th ch from hook (4 skipped ch count as dc and 1 skipped ch)", [("dc", 0, 1)]),
    ],
)
def test_chains_skipped_at_the_hook(row: str, counts: list[tuple[str, int, int]]) -> None:
    opening = read(row, Terms.US).rows[0].opening
    assert opening is not None
    assert [(option.stitch, option.chains, option.over) for option in opening.options] == counts


@pytest.mark.parametrize(
    "said",
    [
        "ch 3 (counts as dc here and throughout), dc in each st across\nch 3, dc in each st across",
        "ch 3, dc in each st across\nch 3, dc in each st across\nBeg ch-3 counts as dc throughout.",
    ],
)
def test_said_once_for_all_rows(said: str) -> None:
    assert options(said) == [("dc", 0)]


def test_chains_at_a_rows_end_before_the_turn_belong_to_the_next_row() -> None:
    rows = read("sc in 2nd ch from hook and in each ch across, ch 3 (counts as dc), turn\ndc in each st across", Terms.US).rows
    assert len(rows[0].body) == 2
    opening = rows[1].opening
    assert opening is not None
    assert (opening.chains, [option.stitch for option in opening.options]) == (3, ["dc"])


def test_chains_after_a_join_belong_to_the_next_round() -> None:
    rows = read(
        "Rnd 1: sc in 2nd ch from hook and in each ch across, join, ch 3 (counts as dc)\nRnd 2: dc in each st around", Terms.US
    ).rows
    assert rows[1].opening is not None
    assert not read("Rnd 1: *sc in next ch, ch 3; rep from * around, join", Terms.US).rows[0].opening


def test_a_chain_that_seems_not_to_count_counts_if_only_so_the_next_round_fits() -> None:
    proof = prove(
        "Rnd 1: ch 3 (counts as dc), 11 dc in ring, join\nRnd 2: ch 3, dc in same st as join, 2 dc in each dc around, join\n"
        "Rnd 3: ch 3 (counts as dc), 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * around, join"
    )
    assert proof.problems == ()
    assert [str(row.stitches) for row in proof.rows] == ["12", "24", "36"]


def test_what_a_round_is_joined_to_shows_what_its_chains_count_as() -> None:
    said = "Rnd 1: Ch 3, {}11 dc in ring, join with sl st in {}.\nRnd 2: Ch 1, sc in each dc around, join."
    assert [str(row.stitches) for row in prove(said.format("", "top of ch-3")).rows] == ["12", "12"]
    assert [str(row.stitches) for row in prove(said.format("", "3rd ch of beg ch-3")).rows] == ["12", "12"]
    asked = prove(said.format("", "the ring"))
    assert [(problem.kind, problem.choices) for problem in asked.problems] == [
        ("asked", ("(counts as dc)", "(does not count)")),
    ]


def test_what_an_earlier_row_says_holds_for_later_ones_with_as_many_chains() -> None:
    text = (
        "Rnd 1: Ch 2 (does not count as st), 12 dc in magic ring, join.\nRnd 2: Ch 2, 2 dc in each st around, join.\n"
        "Rnd 3: Ch 2, *dc in next st, 2 dc in next st; rep from * around, join."
    )
    proof = prove(text)
    assert proof.problems == ()
    assert [str(row.stitches) for row in proof.rows] == ["12", "24", "36"]


def test_if_both_ways_fit_with_other_numbers_the_maker_is_asked() -> None:
    rows = "hdc in 3rd ch from hook and in each ch across\nch 2, hdc in each st across"
    problems = prove(rows).problems
    assert [problem.row for problem in problems] == [1]
    assert rows[problems[0].span.start : problems[0].span.end] == "hdc in 3rd ch from hook"
    assert problems[0].suggestion == "Write “(does not count)” or “(counts as hdc)” behind it."


def test_if_both_ways_fit_with_the_same_numbers_nobody_is_asked() -> None:
    assert prove("dc in 4th ch from hook and in each ch across\nch 3, dc in each st across").proven


def test_if_only_one_way_fits_it_is_taken_and_said() -> None:
    rows = "ch 3, 2 dc in each st across to last st, 2 dc in last st\nch 1, sc in each dc across, sc in top of tch"
    proof = prove(PLAIN + rows)
    assert proof.proven
    assert "Row 2: its ch 3 is read as “counts as dc”: only so do the rows fit." in proof.statements


def test_a_printed_count_decides_too() -> None:
    proof = prove("Ch 22\nhdc in 3rd ch from hook and in each ch across (21 hdc)\nch 2, hdc in each st across (21 hdc)")
    assert proof.proven
    assert proof.skip_cover == 1


def test_the_last_space_of_a_round_is_not_the_next_rounds() -> None:
    text = "Rnd 1: sc in 2nd ch from hook and in each ch across, join, ch 1\n"
    text += "Rnd 2: *sc in next sc, ch 3; rep from * to last sc, sc in last sc, ch 3, join"
    rows = read(text, Terms.US).rows
    assert str(rows[1].body[-1]).startswith("Chain(count=3")
