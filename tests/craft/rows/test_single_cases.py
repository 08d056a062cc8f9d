"""Single phrases that are easily read wrongly: what they come to, or the row that they are named in."""

import pytest

from logbook.craft.rows.proof import prove

SC = "Row 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
DC = "Row 1: Dc in 4th ch from hook (3 skipped ch count as dc) and in each ch across, turn.\n"
GROUPS = (
    DC + "Row 2: Ch 3 (counts as dc), sk first 2 sts, 3 dc in next st, *sk 2 sts, 3 dc in next st; rep from * to last 2 sts, "
)
ARCHES = "Row 1: Sc in 2nd ch from hook, *ch 5, sk 3 ch, sc in next ch; rep from * across\n"


def counts(text: str) -> list[str]:
    proof = prove(text)
    assert [problem.says for problem in proof.problems] == []
    return [f"{row.stitches}/{row.spaces}" for row in proof.rows]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        # wide
        (SC + "Row 2: Ch 1, *sc in next 20 sts, 2 sc in next st; rep from * across.", ["21k/0", "22k/0"]),
        (SC + "Row 2: Ch 1, *sc in next 399 sts, 2 sc in next st; rep from * across.", ["400k/0", "401k/0"]),
        # two kinds of places, each with its own
        (
            "Row 1: Sc in 2nd ch from hook, *ch 2, sk 2 ch, sc in next ch; rep from * across\n"
            "Row 2: Ch 1, sc in each sc and 2 sc in each ch-2 sp across",
            ["k + 1/k", "3k + 1/0"],
        ),
        # what a turning chain stands for
        (
            "Row 1: Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across, turn\n"
            "Row 2: Ch 3, 2 dc in first ch-2 sp, dc in next dc, *2 dc in next ch-2 sp, dc in next dc; rep from * across",
            ["k/k − 1", "3k − 2/0"],
        ),
        ("Ch 4, join to form ring. Ch 3, 11 dc in ring, join in top of ch-3.", ["12/0"]),
        (
            "Rnd 1: Ch 4, join with sl st to form ring. Ch 3, 11 dc in ring, join in top of ch-3.\n"
            "Rnd 2: Ch 3, dc in same st, 2 dc in each dc around, join.",
            ["12/0", "24/0"],
        ),
        ("Rnd 1: Ch 4 (counts as dc, ch 1), [dc in ring, ch 1] 11 times, join", ["12/12"]),
        # what is skipped
        (SC + "Row 2: Ch 1, sc in first st, *skip 1sc and 1sc, (hdc, dc) in next sc; rep from * across", ["3k + 1/0", "2k + 1/0"]),
        # counts that are no work
        (SC + "Row 2: Ch 1, *sc in next st, 2 sc in next st; rep from * across. 12 sc", ["2k/0", "3k/0"]),
        (SC + "Row 2: Ch 1, sc in each st across = 20 sts", ["k − 1/0", "k − 1/0"]),
        ("UK terms\n1 dc in 2nd ch from hook, 1 dc in each ch to end\n1 ch, *1 dc in next st, dc2inc; rep from * to end.", ["2k/0", "3k/0"]),
        # a picot closed in the same stitch
        (SC + "Row 2: Ch 1, *sc in next 3 sts, ch 3, sl st in same st; rep from * across", ["3k/0", "3k/0"]),
        # loops to the turning chain
        (
            ARCHES + "Row 2: Ch 5 (counts as dc and ch 2), *sc in next ch-5 sp, ch 5; rep from * to last ch-5 sp, sc in last ch-5 sp, "
            "ch 2, dc in last sc\nRow 3: Ch 1, sc in first dc, *ch 5, sc in next ch-5 sp; rep from * to tch, ch 5, sc in 3rd ch of tch",
            ["k + 1/k", "k + 2/k + 1", "k + 1/k"],
        ),
        # the last repeat has fewer of the same
        (
            "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across\nRow 2: Ch 3 (counts as "
            "dc), 2 dc in same st, *sc in center dc of next 5-dc group, 5 dc in next sc; rep from *, end with 3 dc in last sc",
            ["6k + 1/0", "6k + 1/0"],
        ),
        (SC + "Row 2: Sl st in first 3 sts, ch 1, sc in each st to last 3 sts, turn, leaving rem sts unworked.", ["k − 1/0", "k − 7/0"]),
        (DC + "Row 2: Ch 3 (does not count as st), dc in each dc across, skip tch.", ["k − 2/0", "k − 2/0"]),
        ("Ch 11.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 8 ch, 5 sc in last ch; working on other side of foundation ch, sc in next 8 ch.", ["24/0"]),
    ],
)  # fmt: skip
def test_what_it_comes_to(text: str, found: list[str]) -> None:
    assert counts(text) == found


@pytest.mark.parametrize(
    ("text", "row", "kind"),
    [
        # stitches left over at a round's end
        (
            "Rnd 1: Ch 3, 11 dc in ring, join in top of ch-3.\nRnd 2: Ch 3, dc in next st, (2 dc, ch 2, 2 dc) in next st, *dc in next 2 "
            "sts, (2 dc, ch 2, 2 dc) in next st; rep from * around, join in top of ch-3.\nRnd 3: Ch 3, *dc in each st to ch-2 sp, "
            "(2 dc, ch 2, 2 dc) in ch-2 sp; rep from * around, join in top of ch-3.",
            3,
            "does not fit",
        ),
        (SC + "Row 2: Ch 1, sc in next 2.5 ch", 2, "not understood"),
        (SC + "Row 2: Ch 1, (sc in next st, dc in next st) 5 more times.", 2, "not understood"),
        (GROUPS + "sk 1 st, dc in last st\nRow 3: Ch 3 (counts as dc), 3 dc in each sp between groups, dc in tch.", 3, "not understood"),
        ("Row 1: Ch 3, 11 dc in ring", 1, "asked"),
        ("Ch a multiple of 10 plus 4\n" + SC + "Row 2: Ch 1, sc in first st, *ch 3, sk 3 sts, sc in next st; rep from * across", 1, "claim"),
        ("Ch an odd number.\nRow 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across", 1, "claim"),
        ("Ch 37 (multiple of 6 + 2)\n" + SC + "Row 2: Ch 1, *sc in next 3 sts, dc in next 3 sts; rep from * across", 1, "claim"),
        (SC + "".join(f"Row {n}: Ch 1, sc in each st across, turn.\n" for n in range(2, 420)) + "Row 420: Ch 1, sc in each dc across.", 420,
         "does not fit"),
        ("Row 1: [[[[[sc in next ch] 900 times] 900 times] 900 times] 900 times] 900 times", 1, "not understood"),
        ("Row 1: " + "(" * 3000 + "sc in next ch", 1, "not understood"),
        (DC + "Row 2: Ch 3 (counts as dc), *ch 1, sk 1 st, dc in next st; rep from * across\nRow 3: Ch 1, sc in each dc and in each ch-2 "
         "sp across", 3, "does not fit"),
    ],
)  # fmt: skip
def test_what_it_is_named_for(text: str, row: int, kind: str) -> None:
    problems = prove(text, suggest=False).problems
    assert [(problem.row, problem.kind) for problem in problems] == [(row, kind)]


def test_a_gap_between_two_groups_is_none_beside_a_lone_stitch() -> None:
    text = (
        GROUPS
        + "sk 1 st, dc in last st\nRow 3: Ch 3 (counts as dc), *3 dc in sp between next two 3-dc groups; rep from * across, dc in tch."
    )
    assert counts(text) == ["3k − 1/0", "3k − 1/0", "3k − 4/0"]


def test_the_chain_that_the_text_says_names_the_row_that_fails_on_it() -> None:
    text = "Ch 26\n" + SC + "Row 2: Ch 1, sc in first st, *dc in next st, sc in next 3 sts; rep from * 4 more times, turn."
    assert [(problem.row, problem.says) for problem in prove(text).problems] == [
        (2, "On 26 chains, as the text says: Row 2 ends with 4 stitches over.")
    ]


@pytest.mark.parametrize(
    "text",
    [
        SC + "Row 2: Ch 1, " + "dc in next 3 sts, sc in next 2 sts, " * 8000,
        "x" * 290_000 + "\n" + SC + "\n" * 20_000 + "Row 2: Ch 1, sc in each dc across.",
        SC + "".join(f"Note {number}: mind the tension.\n" for number in range(9000)),
        SC + "Rep Row 1 99 more times.\n" * 100,
    ],
)
def test_what_is_longer_than_any_pattern_is_said_and_not_dropped(text: str) -> None:
    assert any("looked at" in problem.says for problem in prove(text, suggest=False).problems)


def test_rows_that_grow_without_end_are_not_decided() -> None:
    text = SC + "".join(f"Row {number}: Ch 1, 2 sc in each st across, turn.\n" for number in range(2, 30))
    (problem,) = prove(text, suggest=False).problems
    assert (problem.kind, "is not decided" in problem.says) == ("not understood", True)


INCREASES = "Row {}: Ch 1, *sc in next {} sts, 2 sc in next st; rep from * across, turn.\n"


def test_rows_above_one_that_fits_only_at_a_wide_multiple_are_counted() -> None:
    text = SC + INCREASES.format(2, 12) + INCREASES.format(3, 16) + "Row 4: Ch 1, sc in each st across.\n"
    proof = prove(text, suggest=False)
    assert [str(row.stitches) for row in proof.rows] == ["221k", "238k", "252k", "252k"]
    assert [problem.row for problem in proof.problems] == [3]


def test_rows_above_a_multiple_that_is_too_wide_to_lay_on_are_named() -> None:
    text = SC + "".join(INCREASES.format(row, sts) for row, sts in ((2, 6), (3, 10), (4, 12), (5, 16), (6, 18)))
    proof = prove(text, suggest=False)
    assert ([row.row for row in proof.rows], proof.multiple) == ([1, 2, 3, 4], 1001)
    assert [(problem.row, "is not decided" in problem.says) for problem in proof.problems] == [(3, False), (4, False), (5, True)]


def test_long_rows_are_laid() -> None:
    phrases = ", ".join(f"{'dc' if number % 2 else 'sc'} in next {number % 5 + 1} sts" for number in range(600))
    for row in (phrases, f"*{phrases}; rep from * across"):
        proof = prove(f"{SC}Row 2: Ch 1, {row}")
        assert (proof.problems, proof.smallest) == ((), 1801)
