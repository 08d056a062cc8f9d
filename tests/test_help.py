"""What the help says of written rows, tried."""

import re
from importlib import resources

import pytest

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof

TEXT = resources.files("logbook.help").joinpath("rows.md").read_text("utf-8")
EXAMPLE = "\n".join(re.findall(r"^- `((?:Row \d|Rep).*)`$", TEXT, re.MULTILINE))


def figures(proof: Proof) -> tuple[object, ...]:
    return proof.multiple, proof.chain_constant, proof.smallest, proof.leads_back_to


def test_the_example_comes_to_what_the_page_says() -> None:
    proof = prove(EXAMPLE)
    assert proof.proven
    assert figures(proof) == (6, 2, 8, 2)
    assert "a multiple of 6 plus 2 chains, from 8 on" in TEXT
    assert {str(row.stitches) for row in proof.rows} == {"6k + 1"}
    assert proof.rows[0].stitches.at(12) == 73


def test_its_altered_twin_is_named_as_the_page_says() -> None:
    problem = prove(EXAMPLE.replace("5 dc in next sc", "4 dc in next sc", 1)).problems[0]
    assert (problem.row, "“sk 2 dc” lands on a sc" in problem.says, "5 dc" in problem.suggestion) == (3, True, True)


@pytest.mark.parametrize(
    ("rows", "cover"),
    [
        ("dc in 4th ch from hook, dc in each ch to end", 1),
        ("tr in 5th ch from hook, tr in each ch to end", 1),
        ("dc in 6th ch from hook, *ch 1, sk 1 ch, dc in next ch; rep from * to end", 2),
        ("dc in 3rd ch from hook, dc in each ch to end", 0),
        ("sc in 2nd ch from hook, sc in each ch to end", 0),
    ],
)
def test_what_skipped_chains_stand_for(rows: str, cover: int) -> None:
    assert prove(rows).skip_cover == cover


PLAIN = "Row 1: sc in 2nd ch from hook, sc in each ch across, turn.\nRow 2: "
IN_TCH = ", turn.\nRow 3: ch 3 (counts as dc), sk first dc, dc in each dc to tch, dc in top of tch"


@pytest.mark.parametrize(
    ("row", "count", "counts"),
    [
        ("ch 1, sc in same st, sc in each st across", "k − 1", False),
        ("ch 3, dc in same st, dc in each st across", "k − 1", True),  # the tch that is worked into shows it
        ("ch 3, dc in next st, dc in each st across", "k − 1", True),
        ("ch 3, sk first st, dc in each st across", "k − 1", True),
        ("ch 3 (counts as dc), dc in first st, dc in each st across", "k", True),
        ("ch 3 (does not count), dc in first st, dc in each st across", "k − 1", False),
    ],
)
def test_what_a_turning_chain_counts_as(row: str, count: str, counts: bool) -> None:
    assert str(prove(PLAIN + row).rows[-1].stitches) == count
    assert prove(PLAIN + row + IN_TCH).proven == counts
