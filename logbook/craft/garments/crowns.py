"""What begins at a point: a hat's crown with its tube, and a triangle from the tip; in plain stitches.

A flat round adds 2π·q/p stitches. Crown with c a round: n = round((round/p)/c) rounds, n·c stitches; *exact*: one more round
brings them to round(round/p). All rounds are round(height/q), the tube is the rest.

Triangle, S1 stitches first and a more in each row: R = 1 + round((wingspan/p − S1)/a).
"""

import math

from logbook.craft.garments.making import Making
from logbook.craft.garments.shaped_piece import PieceTrouble, ShapedPiece, Shaping, counts_from
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_numbers import chain_rule
from logbook.craft.words.numbers import half_up
from logbook.errors import RefusedError

USUAL_A_ROUND = (6, 8, 12)
"""What the trade adds a round in single, half double and double crochet."""


def flat_round(p: float, q: float) -> float:
    """How many stitches a round must add to lie flat."""
    return 2 * math.pi * q / p


def usual_each_round(p: float, q: float) -> int:
    """The trade's figure nearest to a flat round where it is within 20 % of it, else the whole number nearest to that."""
    flat = flat_round(p, q)
    near = min(USUAL_A_ROUND, key=lambda c: abs(c - flat))
    return near if abs(near / flat - 1) <= 0.2 else max(half_up(flat), 3)


def crown_and_tube(making: Making) -> ShapedPiece:
    """A hat from the middle of its crown. Raises RefusedError if it can't be."""
    each = int(making.planned.choices.get("each round", usual_each_round(making.p, making.q)))
    wanted = making.need("round") / making.p
    rounds, all_rounds = half_up(wanted / each), half_up(making.need("height") / making.q)
    if rounds < 1:
        raise RefusedError("It is smaller than the first round of its crown: make it larger round, or add fewer sts a round.")
    last = half_up(wanted) - rounds * each if making.planned.choice("exact") else 0
    if all_rounds < rounds + (last != 0):
        raise RefusedError(
            f"The crown alone takes {rounds + (last != 0)} rounds, but the height is {all_rounds}: make it taller, "
            "or add more sts a round."
        )
    changes = [(row, each) for row in range(1, rounds + 1)] + ([(rounds + 1, last)] if last else [])
    counts = counts_from(0, all_rounds, changes)
    shapings = [Shaping(place="crown", at=tuple(range(2, rounds + 1)), by=each, edges=1, first=1, rows=rounds)]
    if last:
        shapings.append(Shaping(place="exact", at=(rounds + 1,), by=last, edges=1, first=rounds + 1, rows=1))
    share = each / flat_round(making.p, making.q) - 1
    shape = "ruffles" if share > 0.2 else "cup" if share < -0.15 else ""
    return making.piece(
        0,
        counts,
        chain=None,
        edges={"end": making.along_stitches(counts[-1], "round")},
        shapings=tuple(shapings),
        parts={"each_round": each, "crown_rounds": rounds, "tube_rounds": all_rounds - rounds - (last != 0)},
        troubles=(PieceTrouble(shape, {"each": each, "flat": flat_round(making.p, making.q)}),) if shape else (),
    )


def triangle(making: Making) -> ShapedPiece:
    """A triangle from its tip, rows along the wingspan. Raises RefusedError if it can't be."""
    first, more = int(making.planned.choice("first stitches")), int(making.planned.choice("more a row"))
    rows = 1 + half_up((making.need("wingspan") / making.p - first) / more)
    if rows < 1:
        raise RefusedError("It is narrower than its first row: make the wingspan larger, or begin with fewer stitches.")
    counts = counts_from(first, rows, [(row, more) for row in range(2, rows + 1)])
    rule = chain_rule(PiecePlan(), making.gauges)
    side = making.along_rows(rows, "wingspan", math.hypot(rows * making.q, counts[-1] * making.p / 2))
    return making.piece(
        first,
        counts,
        chain=rule.known_chain_of(first),
        edges={
            "start": making.along_stitches(first, "wingspan"),
            "end": making.along_stitches(counts[-1], "wingspan"),
            "side": side, "left side": side, "right side": side,
        },
        shapings=(Shaping(place="triangle", at=tuple(range(2, rows + 1)), by=more, edges=1, first=1, rows=rows),),
    )  # fmt: skip
