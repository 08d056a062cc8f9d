"""Drift: how far a whole garment strays from what its swatch said, whatever the swatch's own give or take.

Before any experience s_d = 2 % with ν_d = 4 degrees of freedom: an assumption, and said to be one. From M made pieces of one
hand with d = ln(measured/predicted by the swatch alone), stitches and rows apart, the hand's own lean μ and its spread are
learned together (normal, inverse gamma, the lean's prior worth K = 3 pieces)::

    μ = Σd/(M + K)     s² = (4·s_d²·K/(K + 1) + Σd² − (Σd)²/(M + K))/(4 + M)     U = t(97.5 %, 4 + M)·s·√(1 + 1/(M + K))

From two pieces on the lean is counted in: a size told is the swatch's times exp(μ). Where it is not, U covers it:
s² = (4·s_d² + Σd²)/(4 + M), U = t(97.5 %, 4 + M)·s. Without pieces both are the same.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from logbook.craft.swatches.assumptions import PRIOR_DEGREES, Assumptions
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.student import t_975

LEAN_PIECES = 3
"""How many pieces the assumption that a hand does not lean is worth."""
LEAN_FROM = 2
"""From so many made pieces on a lean is counted in."""

Pair = tuple[float, float]
"""A size predicted by the swatch alone and the size measured, in any one unit; both above nought."""


@dataclass(frozen=True, slots=True)
class Drift:
    """A whole piece's own part of the give or take, relative; ``pieces`` is how many made pieces it was learnt from.

    ``lean``: how much larger, as a logarithm, what is made comes out than its swatch; nought until it is learnt. Then
    ``over_lean`` is the give or take where it is not ``counted`` in. ``hand`` is whose it is ("": the logbook's own).
    """

    give_or_take: float
    pieces: int
    lean: float = 0.0
    direction: Direction = Direction.STITCHES
    hand: str = ""
    over_lean: float | None = None
    counted: bool = True

    @property
    def factor(self) -> float:
        """What a size by the swatch alone is multiplied by."""
        return math.exp(self.lean) if self.counted else 1.0

    def for_other_hands(self) -> "Drift":
        """The same where the lean is not counted in: what others work from need not come out as it did under this hand."""
        if self.over_lean is None:
            return self
        return replace(self, give_or_take=self.over_lean, counted=False)


@dataclass(frozen=True, slots=True)
class Drifts:
    """The drift of one hand along its stitches and up its rows."""

    stitches: Drift
    rows: Drift

    def of(self, direction: Direction) -> Drift:
        """That in a direction."""
        return self.stitches if direction is Direction.STITCHES else self.rows

    def for_other_hands(self) -> "Drifts":
        """As ``Drift`` says it."""
        return Drifts(self.stitches.for_other_hands(), self.rows.for_other_hands())


class Made(NamedTuple):
    """What one made piece teaches of its maker's hand; None: not measured in that direction."""

    hand: str
    stitches: Pair | None = None
    rows: Pair | None = None


@dataclass(frozen=True, slots=True)
class HandsDrift:
    """What is known of every hand that made something. A hand is called as in ``worked by``, capitals or not."""

    assumptions: Assumptions = field(default_factory=Assumptions)
    hands: Mapping[str, Drifts] = field(default_factory=dict)

    def of(self, hand: str) -> Drifts:
        """The drift of a hand; as assumed where it has made nothing that was measured."""
        return self.hands.get(_called(hand)) or drifts_of(self.assumptions, hand=hand)


def drift_of(
    assumptions: Assumptions, made: Sequence[Pair] = (), direction: Direction = Direction.STITCHES, hand: str = ""
) -> Drift:
    """The drift of one hand in one direction, from what it made."""
    logs = [math.log(measured / predicted) for predicted, measured in made]
    count, total, squares = len(logs), math.fsum(logs), math.fsum(d * d for d in logs)
    degrees, prior = PRIOR_DEGREES + count, PRIOR_DEGREES * assumptions.drift**2
    over_lean = t_975(degrees) * math.sqrt((prior + squares) / degrees)
    if count < LEAN_FROM or not assumptions.count_lean:
        return Drift(over_lean, count, 0.0, direction, hand)
    worth = count + LEAN_PIECES
    scatter = prior * LEAN_PIECES / (LEAN_PIECES + 1) + squares - total**2 / worth
    reach = t_975(degrees) * math.sqrt(scatter / degrees) * math.sqrt(1 + 1 / worth)
    return Drift(reach, count, total / worth, direction, hand, over_lean)


def drifts_of(assumptions: Assumptions, stitches: Sequence[Pair] = (), rows: Sequence[Pair] = (), hand: str = "") -> Drifts:
    """The drift of one hand in both directions."""
    return Drifts(drift_of(assumptions, stitches, Direction.STITCHES, hand), drift_of(assumptions, rows, Direction.ROWS, hand))


def hands_drift(assumptions: Assumptions, made: Iterable[Made]) -> HandsDrift:
    """What the made pieces teach of each hand by itself."""
    by_hand: dict[str, list[Made]] = {}
    for one in made:
        by_hand.setdefault(_called(one.hand), []).append(one)
    return HandsDrift(
        assumptions,
        {
            called: drifts_of(
                assumptions,
                [one.stitches for one in pieces if one.stitches],
                [one.rows for one in pieces if one.rows],
                pieces[0].hand.strip(),
            )
            for called, pieces in by_hand.items()
        },
    )


def _called(hand: str) -> str:
    return " ".join(hand.split()).casefold()


def combined(*parts: float | None) -> float | None:
    """The one rule that combines half-widths: root of the sum of squares. None (not known) if any part is None."""
    known = [part for part in parts if part is not None]
    return math.hypot(*known) if len(known) == len(parts) else None
