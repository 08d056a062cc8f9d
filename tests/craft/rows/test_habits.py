"""Habits of the trade in ``habits.txt``, each with its counts: ``@ 12 24/8``, then the text; stitches and spaces of each row."""

import re
from pathlib import Path

import pytest

from logbook.craft.rows.proof import prove

HABITS = [
    tuple(block.strip().split("\n", 1))
    for block in re.split(r"(?m)^@ ", (Path(__file__).parent / "habits.txt").read_text("utf-8"))[1:]
]


@pytest.mark.parametrize(("counts", "text"), HABITS, ids=[text[:40].replace("\n", " ") for _, text in HABITS])
def test_it_is_read_with_these_counts(counts: str, text: str) -> None:
    proof = prove(text, suggest=False)
    assert [problem.says for problem in proof.problems] == []
    found = " ".join(f"{row.stitches}/{row.spaces}" for row in proof.rows)
    assert re.sub(r" (?=[−+])|(?<=[−+]) |/0", "", found).replace("−", "-") == counts


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "Ch 42.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 41 sts\nRow 2: Ch 1, sc in first 15 sts, turn, leaving "
            "remaining 26 sts unworked. 15 sts\nRow 3: Skip next 11 unworked sts of Row 1, join yarn in next st, ch 1, sc in same st, "
            "sc in next 16 sts. 17 sts",
            "Row 3 runs out",
        ),
        (
            "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 2, join in top of ch-3.\nRnd 2: Ch 3 (counts as "
            "dc), dc in next dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 2 dc; rep from * around, join in top of ch-3.",
            "Rnd 2",
        ),
    ],
)
def test_what_does_not_come_out_is_named(text: str, says: str) -> None:
    assert any(problem.says.startswith(says) for problem in prove(text, suggest=False).problems)
