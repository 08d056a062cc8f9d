"""One row told in many ways, in ``wordings.txt``: ``@ what it is: counts``, the text with ``{}`` for it, then a way a line."""

import re
from pathlib import Path

import pytest

from logbook.craft.rows.proof import prove

BLOCKS = [
    block.rstrip().split("\n") for block in re.split(r"(?m)^@ ", (Path(__file__).parent / "wordings.txt").read_text("utf-8"))[1:]
]


@pytest.mark.parametrize("block", BLOCKS, ids=[block[0].split(":")[0] for block in BLOCKS])
def test_all_ways_of_telling_a_row_give_the_same(block: list[str]) -> None:
    counts = block[0].rpartition(": ")[2]
    frame = "\n".join(line for line in block[1:] if not line.startswith("- "))
    ways = [line[2:] for line in block[1:] if line.startswith("- ")]
    assert ways
    told = {way: _counts(frame.replace("{}", way)) for way in ways}
    assert {way: found for way, found in told.items() if found != counts} == {}


def _counts(text: str) -> str:
    proof = prove(text, suggest=False)
    said = "; ".join(problem.says for problem in proof.problems)
    found = " ".join(f"{row.stitches}/{row.spaces}" for row in proof.rows)
    return said or re.sub(r" (?=[−+])|(?<=[−+]) |/0", "", found).replace("−", "-")
