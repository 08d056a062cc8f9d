"""Yokes from the neck: four raglan lines, or rounds of increases; worked round, in plain stitches.

Raglan, ℓ stitches in each of four lines, N = round(neck/p) at the neck, Y = round(depth/q) rounds, u = round(underarm/p):

    free = N − 4ℓ; each sleeve round(free/8), the back half of the rest rounded down, the front what is left
    i_b = round((body/p − (back + front + 2u + 4ℓ))/4), i_s = round((arm/p − (sleeve + u))/2), each spread over Y
    body = back + front + 2u + 4ℓ + 4·i_b          arm = sleeve + u + 2·i_s

Round yoke, S_b = 2·round(body/2p), sleeve = round(arm/p) − u, half = S_b/2 − u, A = 2·half + 2·sleeve − N:

    G = min(Y, max(3, ⌈3A/N⌉)) rounds of increases, the g-th in round(Y(2g − 1)/2G), to N + round(A·g/G)
"""

import math
from dataclasses import dataclass

from logbook.craft.garments.making import Making
from logbook.craft.garments.shaped_piece import PieceTrouble, ShapedPiece, Shaping, counts_from
from logbook.craft.pieces.spread import spread
from logbook.craft.words.numbers import half_up
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True)
class _Yoke:
    """The counts that both yokes go by."""

    neck: int
    rounds: int
    under: int
    body: float
    arm: float


def _yoke(making: Making) -> _Yoke:
    neck, rounds = half_up(making.need("neck round") / making.p), half_up(making.need("yoke depth") / making.q)
    if neck < 1 or rounds < 1:
        raise RefusedError("Its neck must be at least a stitch round, and its yoke a round deep: make them larger.")
    under = half_up(making.need("underarm") / making.p)
    return _Yoke(neck, rounds, under, making.need("body round") / making.p, making.need("upper arm round") / making.p)


def raglan_yoke(making: Making) -> ShapedPiece:
    """A raglan yoke. Raises RefusedError if it can't be."""
    yoke, line = _yoke(making), int(making.planned.choice("line stitches"))
    free = yoke.neck - 4 * line
    sleeve = half_up(free / 8)
    back = (free - 2 * sleeve) // 2
    front = free - 2 * sleeve - back
    if min(sleeve, back, front) < 1:
        raise RefusedError("Its neck has too few stitches for four lines, two sleeves, back and front: make it larger.")
    round_body = back + front + 2 * yoke.under + 4 * line
    in_body, in_sleeve = half_up((yoke.body - round_body) / 4), half_up((yoke.arm - (sleeve + yoke.under)) / 2)
    if in_body < 0 or in_sleeve < 0:
        raise RefusedError("The neck is too wide for the body or the arms: make the neck smaller, or those larger.")
    body_at, sleeve_at = spread(in_body, yoke.rounds), spread(in_sleeve, yoke.rounds)
    counts = counts_from(yoke.neck, yoke.rounds, [(row, 4) for row in (*body_at, *sleeve_at)])
    body, arm = round_body + 4 * in_body, sleeve + yoke.under + 2 * in_sleeve
    return making.piece(
        yoke.neck,
        counts,
        chain=yoke.neck,
        edges={
            "start": making.along_stitches(yoke.neck, "neck round"),
            "neck": making.along_stitches(yoke.neck, "neck round"),
            "end": making.along_stitches(body, "body round"),
            "armhole": making.along_stitches(arm, "upper arm round"),
        },
        shapings=(
            Shaping(place="body", at=body_at, by=1, edges=4, first=1, rows=yoke.rounds),
            Shaping(place="sleeves", at=sleeve_at, by=1, edges=4, first=1, rows=yoke.rounds),
        ),
        parts={
            "back": back, "front": front, "sleeve": sleeve, "underarm": yoke.under, "lines": line,
            "body_increases": in_body, "sleeve_increases": in_sleeve, "body": body, "arm": arm,
        },
        troubles=tuple(
            _too_steep(where, times, yoke)
            for where, times in (("body", in_body), ("sleeves", in_sleeve))
            if times > 2 * yoke.rounds
        ),
    )  # fmt: skip


def _too_steep(where: str, increases: int, yoke: _Yoke) -> PieceTrouble:
    """More than two increases at one place in a round: so many rounds deeper help, or so many stitches more under the arm."""
    over = increases - 2 * yoke.rounds
    deeper = math.ceil(increases / 2) - yoke.rounds
    return PieceTrouble("too steep", {"where": where, "rounds": deeper, "stitches": 2 * over})


def round_yoke(making: Making) -> ShapedPiece:
    """A yoke with rounds of increases. Raises RefusedError if it can't be."""
    yoke = _yoke(making)
    round_body = 2 * half_up(yoke.body / 2)
    sleeve, half = half_up(yoke.arm) - yoke.under, round_body // 2 - yoke.under
    more = 2 * half + 2 * sleeve - yoke.neck
    if min(sleeve, half) < 1:
        raise RefusedError("The underarm takes all of the sleeve or the body: make the underarm smaller.")
    if more < 0:
        raise RefusedError("The neck is too wide for the body or the arms: make the neck smaller, or those larger.")
    rounds = min(yoke.rounds, max(3, math.ceil(3 * more / yoke.neck))) if more else 0
    at = tuple(half_up(yoke.rounds * (2 * g - 1) / (2 * rounds)) for g in range(1, rounds + 1))
    counts_to = [yoke.neck + half_up(more * g / rounds) for g in range(1, rounds + 1)]
    gains = [now - before for before, now in zip([yoke.neck, *counts_to], counts_to, strict=False)]
    body, arm = round_body, sleeve + yoke.under
    return making.piece(
        yoke.neck,
        counts_from(yoke.neck, yoke.rounds, list(zip(at, gains, strict=True))),
        chain=yoke.neck,
        edges={
            "start": making.along_stitches(yoke.neck, "neck round"),
            "neck": making.along_stitches(yoke.neck, "neck round"),
            "end": making.along_stitches(body, "body round"),
            "armhole": making.along_stitches(arm, "upper arm round"),
        },
        parts={"back": half, "front": half, "sleeve": sleeve, "underarm": yoke.under, "body": body, "arm": arm},
        troubles=tuple(
            PieceTrouble("too many in a round", {"round": row, "stitches": gain, "of": before})
            for row, gain, before in zip(at, gains, [yoke.neck, *counts_to], strict=False)
            if gain > before
        ),
    )
