"""Random written rows of many kinds, proven by the program and laid by hand.

``python -m tests.support.random_rows --patterns 500``

Rows with repeats as in ``laying_by_hand``; wide ones; a plain row 1 under rows with a repeat of their own; shaped rows; rounds
with corners; rows that differ from size to size. Of each kind some fit by construction and as many have one number, stitch or
step spoilt.
Prints every difference between the proof and the laying by hand, and ends with 1 if there is one.
"""

import argparse
import random
import sys
from collections.abc import Callable
from dataclasses import dataclass, replace

from logbook.craft.rows.proof import prove
from logbook.craft.rows.report import Proof
from logbook.craft.words.terms import Terms
from tests.support.laying_by_hand import (
    DoesNotFitError,
    Hand,
    Step,
    Steps,
    Thing,
    fits,
    laid_on_chain,
    random_pattern,
    random_rows_on,
    spoilt,
)

PLAIN_ROW = Steps(
    "", False, (Step("many", 1, "sc", "ch"),), (Step("each", 1, "sc", "ch"),), 1, (Step("each", 1, "sc", "ch"),), True, 2
)

PLAIN_ABOVE = Steps(
    "ch 1", False, (Step("many", 1, "sc", "st"),), (Step("each", 1, "sc", "st"),), 1, (Step("each", 1, "sc", "st"),), True
)


def counted(row: list[Thing]) -> tuple[int, int]:
    """Stitches and spaces."""
    stitches = sum(isinstance(thing, str) for thing in row)
    return stitches, len(row) - stitches


# Rows that repeat, on every chain.


def proof_of(rows: list[Steps]) -> Proof:
    return prove("\n".join(row.text() for row in rows), Terms.US, chains_count=False, suggest=False)


def difference(rows: list[Steps], proof: Proof, rng: random.Random, most: int = 70) -> str:
    """What the proof says of some chain that laying by hand does not; "" if they agree on all that are looked at."""
    if len(proof.rows) < len(rows):
        wide = [chains for chains in _some(rng, range(60, 110), most) if fits(rows, chains)]
        return "" if proof.problems and not wide else f"not all rows laid, though they fit on {wide}"
    if proof.smallest is None or proof.chain_constant is None or proof.multiple is None:
        found = [chains for chains in range(1, 80) if fits(rows, chains)]
        return "" if [proof.smallest] == found or (proof.smallest or 0) >= 80 else f"fits on {found}"
    whole = range(proof.smallest, proof.smallest + 3 * proof.multiple + 3)
    for chains in [*whole[:: proof.multiple], *_some(rng, whole, most)]:
        proven = (chains - proof.chain_constant) % proof.multiple == 0
        if fits(rows, chains) != proven:
            return f"on {chains} chains {'proven' if proven else 'not proven'}"
        if proven:
            repeats = (chains - proof.chain_constant) // proof.multiple
            for row, count in zip(laid_on_chain(rows, chains), proof.rows, strict=True):
                if (count.stitches.at(repeats), count.spaces.at(repeats)) != counted(row):
                    return f"on {chains} chains row {count.row} counts {counted(row)}"
    return ""


def _some(rng: random.Random, numbers: range, most: int) -> list[int]:
    return list(numbers) if len(numbers) <= most else rng.sample(numbers, most)


def repeating(rng: random.Random) -> list[Steps]:
    return random_pattern(rng, rng.randint(1, 4))[0]


def wide(rng: random.Random) -> list[Steps]:
    return random_pattern(rng, rng.randint(1, 3), widest=rng.choice((40, 120, 400)), most=400)[0]


def on_a_plain_row(rng: random.Random) -> list[Steps]:
    begin, again, end = (["sc"] * rng.randint(*between) for between in ((1, 3), (2, 9), (1, 3)))
    return [PLAIN_ROW, *random_rows_on(rng, begin, again, end, rng.randint(1, 3))]


def shaped(rng: random.Random) -> list[Steps]:
    ways = {
        "dec": (Step("tog", 2, "sc"), 2),
        "inc": (Step("many", 2, "sc", "st"), 1),
        "even": (Step("each", 1, "sc", "st"), 1),
        "more": (Step("many", 3, "sc", "st"), 1),
    }
    rows = [PLAIN_ROW]
    for _ in range(rng.randint(1, 6)):
        first, last = (ways[rng.choice(sorted(ways))] for _ in range(2))
        again = (Step("each", 1, "sc", rng.choice(("st", "sc"))),)
        rows.append(Steps("ch 1", False, (first[0],), again, last[1], (last[0],), rng.random() < 0.8))
    return rows


def unequal(rng: random.Random) -> list[Steps]:
    """Rows that each repeat by a multiple of their own, with plain rows between: they fit together now and then, or never."""
    rows = [PLAIN_ROW]
    for _ in range(rng.randint(2, 3)):
        parts: list[list[Thing]] = [["sc"] * rng.randint(*between) for between in ((1, 3), (2, 7), (1, 3))]
        rows += random_rows_on(rng, parts[0], parts[1], parts[2], 1)
        rows.append(PLAIN_ABOVE)
    return rows


# Rounds with corners.


@dataclass(frozen=True)
class Round:
    """``begin`` stitches, then a corner of ``corner`` dc on both sides of a space; ``side`` stitches and a corner for the
    other ``sides``; then ``rest`` stitches.
    """

    begin: int
    side: int
    corner: int
    space: int
    below: int  # chains of the space worked into
    sides: int
    rest: int

    def text(self) -> str:
        corner = f"({self.corner} dc, ch {self.space}, {self.corner} dc) in next ch-{self.below} sp"
        side = f"dc in next {self.side} sts, "
        rest = f", dc in next {self.rest} sts" if self.rest else ""
        alike = self.begin == self.side
        first = "" if alike else f"dc in next {self.begin} sts, {corner}, "
        more = self.sides - 1 if alike else self.sides - 2
        return f"Ch 1, {first}*{side}{corner}; rep from * {more} more times{rest}, join with sl st in first dc."

    def laid(self, below: list[Thing]) -> list[Thing]:
        hand = Hand(list(below))
        for number in range(self.sides):
            hand.step(Step("each", self.side if number else self.begin, "dc", "st"))
            hand.space(self.below)
            hand.make("dc", self.corner)
            hand.chain(self.space)
            hand.make("dc", self.corner)
        if self.rest:
            hand.step(Step("each", self.rest, "dc", "st"))
        if any(isinstance(thing, str) for thing in hand.below):
            raise DoesNotFitError
        return hand.made


def corners(rng: random.Random) -> tuple[str, list[Round], list[Thing]]:
    """(the text of round 1, the others, what round 1 makes)"""
    sides, side, space = rng.randint(3, 8), rng.randint(1, 4), rng.randint(1, 3)
    first = f"[{side} dc in ring, ch {space}] {sides} times, join with sl st in first dc."
    made: list[Thing] = [thing for _ in range(sides) for thing in [*["dc"] * side, space]]
    rounds = []
    begin, between, rest = side, side, 0
    for _ in range(rng.randint(1, 4)):
        corner, new = rng.randint(1, 3), rng.randint(1, 3)
        rounds.append(Round(begin, between, corner, new, space, sides, rest))
        begin, between, rest, space = begin + corner, between + 2 * corner, rest + corner, new
    return first, rounds, made


def spoilt_round(rng: random.Random, rounds: list[Round]) -> list[Round]:
    which = rng.randrange(len(rounds))
    name = rng.choice(("begin", "side", "sides", "rest", "below"))
    changed = replace(rounds[which], **{name: max(1, getattr(rounds[which], name) + rng.choice((-1, 1)))})
    return [*rounds[:which], changed, *rounds[which + 1 :]]


def corners_differ(first: str, rounds: list[Round], made: list[Thing]) -> str:
    text = "\n".join(f"Rnd {number}: {words}" for number, words in enumerate([first, *(each.text() for each in rounds)], 1))
    proof = prove(text, Terms.US, suggest=False)
    counts = [counted(made)]
    for each in rounds:
        try:
            made = each.laid(made)
        except DoesNotFitError:
            return (
                ""
                if proof.problems and proof.problems[0].row == len(counts) + 1
                else f"round {len(counts) + 1} does not fit:\n{text}"
            )
        counts.append(counted(made))
    found = [(row.stitches.constant, row.spaces.constant) for row in proof.rows]
    return "" if not proof.problems and found == counts else f"{counts}, not {found} {proof.problems}:\n{text}"


# Rows that differ from size to size.


def sizes_differ(rng: random.Random, is_spoilt: bool) -> str:
    kinds = [rng.choice(("sc", "dc", "hdc")) for _ in range(rng.randint(2, 5))]
    sizes = rng.randint(3, 6)
    numbers = [[rng.randint(2, 60) for _ in kinds] for _ in range(sizes)]
    totals = [sum(size) for size in numbers]
    again = [total - 1 for total in totals]
    if is_spoilt:
        again[rng.randrange(sizes)] += rng.choice((-1, 1))
    rows = [
        "Ch " + _in_sizes([total + 1 for total in totals]) + ".",
        "Row 1: Sc in 2nd ch from hook and in each ch across, turn.",
        "Row 2: Ch 1, "
        + ", ".join(f"{kind} in next {_in_sizes([size[at] for size in numbers])} sts" for at, kind in enumerate(kinds)),
        f"Row 3: Ch 1, 2 sc in next st, sc in next {_in_sizes(again)} sts.",
    ]
    text = "\n".join(rows)
    proof = prove(text, Terms.US, suggest=False)
    if len(proof.sizes) != sizes:
        return f"{len(proof.sizes)} sizes, not {sizes}:\n{text}"
    for size, (total, rest) in enumerate(zip(totals, again, strict=True)):
        right = rest == total - 1
        own = proof.sizes[size]
        if right != (not own.problems) or (right and [row.stitches.constant for row in own.rows] != [total, total, total + 1]):
            return f"size {size + 1}: {own.problems} {own.rows}\n{text}"
    return ""


def _in_sizes(numbers: list[int]) -> str:
    return f"{numbers[0]} ({', '.join(map(str, numbers[1:]))})"


# All kinds.

REPEATING: dict[str, Callable[[random.Random], list[Steps]]] = {
    "repeating": repeating,
    "wide": wide,
    "on a plain row": on_a_plain_row,
    "shaped": shaped,
    "unequal multiples": unequal,
}
KINDS = (*REPEATING, "corners", "sizes")


def tried(kind: str, seed: int, is_spoilt: bool) -> str:
    """The difference that one random pattern of a kind shows; "" if none."""
    rng = random.Random(f"{kind} {seed} {is_spoilt}")
    if kind == "sizes":
        return sizes_differ(rng, is_spoilt)
    if kind == "corners":
        first, rounds, made = corners(rng)
        return corners_differ(first, spoilt_round(rng, rounds) if is_spoilt else rounds, made)
    rows = REPEATING[kind](rng)
    if is_spoilt:
        rows = spoilt(rng, rows)
    proof = proof_of(rows)
    found = difference(rows, proof, rng, 70 if kind != "wide" else 12)
    if (
        not is_spoilt
        and kind != "unequal multiples"
        and proof.problems
        and not any("only at every" in problem.says for problem in proof.problems)
    ):
        found = found or f"has problems: {[problem.says for problem in proof.problems]}"
    return f"{found}\n" + "\n".join(row.text() for row in rows) if found else ""


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--patterns", type=int, default=500, help="so many that fit, and as many spoilt, over all kinds")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--kind", choices=KINDS, action="append", help="only these kinds")
    told = parser.parse_args()
    kinds = told.kind or KINDS
    each = -(-told.patterns // len(kinds))
    differences = 0
    for kind in kinds:
        for is_spoilt in (False, True):
            found = [(seed, tried(kind, seed, is_spoilt)) for seed in range(told.seed, told.seed + each)]
            wrong = [(seed, says) for seed, says in found if says]
            differences += len(wrong)
            print(f"{kind}{', spoilt' if is_spoilt else ''}: {len(found)} patterns, {len(wrong)} differences", flush=True)
            for seed, says in wrong[:3]:
                print(f"  seed {seed}: {says}")
    return 1 if differences else 0


if __name__ == "__main__":
    sys.exit(main())
