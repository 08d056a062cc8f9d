"""Single rows in the habits of the trade, in ``sentences.txt``: ``F 20 | the row | 18/2`` on a row below of that kind and size."""

from pathlib import Path

import pytest

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof

SENTENCES = [
    tuple(part.strip() for part in line.split(" | "))
    for line in (Path(__file__).parent / "sentences.txt").read_text("utf-8").splitlines()
]
_RING = "Rnd 1: Make a magic ring, {n} sc in ring. ({n} sc)\nRnd 2: "
_SC = "Row 1: {sc} in 2nd ch from hook and in each ch across. ({n} {sc})\nRow 2: "
FRAMES = {
    "C": "Ch {n}.\nRow 1: ",  # the row is worked into n chains
    "F": "Ch {n1}.\n" + _SC.replace("{sc}", "sc"),  # n single crochet
    "f": "UK terms.\nCh {n1}.\n" + _SC.replace("{sc}", "dc"),
    "D": "Ch {n2}.\nRow 1: Dc in 4th ch from hook (3 skipped chs count as dc) and in each ch across. ({n} dc)\nRow 2: ",
    "M": (  # a mesh of n spaces
        "Ch {mesh}.\nRow 1: Dc in 6th ch from hook (skipped chs count as dc, ch 1 and 1 skipped ch), *ch 1, sk next ch, dc in "
        "next ch; rep from * across.\nRow 2: "
    ),
    "V": (  # n V-stitches
        "Ch {vees}.\nRow 1: (Dc, ch 1, dc) in 5th ch from hook (4 skipped chs count as dc and 1 skipped ch), *sk 2 ch, (dc, ch 1, "
        "dc) in next ch; rep from * to last 2 ch, sk next ch, dc in last ch.\nRow 2: "
    ),
    "R": "Rnd 1: Ch 2, {n} sc in 2nd ch from hook, sl st in first sc to join. ({n} sc)\nRnd 2: ",
    "S": _RING,
    "G": (  # a granny square's first round
        "Rnd 1: Ch 4, join to form a ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st "
        "in top of ch-3. (12 dc, 4 ch-2 sps)\nRnd 2: "
    ),
}


@pytest.mark.parametrize(("below", "row", "count"), SENTENCES, ids=[row[:60] for _, row, _ in SENTENCES])
def test_a_row_comes_to_its_count(below: str, row: str, count: str) -> None:
    kind, n = below.split()
    chains = {"C": int(n), "F": int(n) + 1, "f": int(n) + 1, "D": int(n) + 2, "M": 2 * int(n) + 4, "V": 3 * int(n) + 4}
    sizes = {"n": n, "n1": int(n) + 1, "n2": int(n) + 2, "mesh": 2 * int(n) + 4, "vees": 3 * int(n) + 4}
    proof = prove(FRAMES[kind].format(**sizes) + row, suggest=False)
    assert [problem.says for problem in proof.problems] == []
    assert _on(proof, chains.get(kind, 0)) == (count if "/" in count else count + "/0")


def _on(proof: Proof, chain: int) -> str:
    """What the last row holds on so many chains."""
    repeats = 0
    if chain and proof.multiple:
        repeats, over = divmod(chain - (proof.chain_constant or 0), proof.multiple)
        assert not over
    elif chain:
        assert proof.smallest == chain
    return f"{proof.rows[-1].stitches.at(repeats)}/{proof.rows[-1].spaces.at(repeats)}"
