"""Counts that the text prints at its rows' ends are checked, in every size."""

import pytest

from logbook.craft.rows.proof import prove

ROWS = (
    "Ch {0}.\nRow 1: sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * to end. {1}\n"
    "Row 2: Ch 1, sc in first sc, *ch 1, sc in next sc; rep from * to end. {2}"
)


@pytest.mark.parametrize(
    ("chain", "row_1", "row_2"),
    [
        ("10", "(5 sc, 4 ch-1 sps)", "(5 sts)"),
        ("10 (12, 16)", "(5 (6, 8) sc)", "(5 (6, 8) sc, 4 (5, 7) ch-1 sps)"),
        ("10", "— 5 sc", "5 sts."),
        ("10", "(5)", "[5 sc]"),
    ],
)
def test_right_counts(chain: str, row_1: str, row_2: str) -> None:
    proof = prove(ROWS.format(chain, row_1, row_2))
    assert proof.problems == ()
    assert proof.proven


@pytest.mark.parametrize(
    ("chain", "row_1", "row_2", "row", "says"),
    [
        ("11", "", "", 1, "On 11 chains, as the text says: Row 1 ends with 1 stitch over."),
        ("10", "(6 sc)", "", 1, "Row 1 says “6 sc”, but where the starting chain fits it holds 5."),
        ("10", "", "(5 sc, 5 ch-1 sps)", 2, "Row 2 says “5 ch-1 sps”, but where the starting chain fits it holds 4."),
        ("10 (12, 16)", "(5 (6, 9) sc)", "", 1, "Row 1 says “5 (6, 9) sc”, but where the starting chain fits it holds 5, 6, 8."),
        ("10", "(2 dc)", "", 1, "Row 1 says “2 dc”, but holds 0."),
    ],
)
def test_wrong_counts(chain: str, row_1: str, row_2: str, row: int, says: str) -> None:
    text = ROWS.format(chain, row_1, row_2)
    problems = prove(text).problems
    assert [(problem.row, problem.says) for problem in problems] == [(row, says)]
    assert says.startswith("On ") or text[problems[0].span.start : problems[0].span.end] in says


def test_shells_and_whole_groups_are_counted() -> None:
    rows = (
        "Shell = 5 dc in same st\nRow 1: sc in 2nd ch from hook, *sk 2 ch, shell in next ch, sk 2 ch, sc in next ch; rep from * "
    )
    rows += "to end ({0})"
    assert prove(rows.format("6 shells, 7 sc")).proven
    assert not prove(rows.format("6 shells, 8 sc")).proven
