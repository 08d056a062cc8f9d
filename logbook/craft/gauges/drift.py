"""Drift: how far a whole garment strays from what its swatch said, whatever the swatch's own give or take.

Before any experience s_d = 2 % with ν_d = 4 degrees of freedom: an assumption, and said to be one. From M made pieces of one
hand with d = ln(measured/predicted by the swatch alone), stitches and rows apart, the hand's own lean μ and its spread are
learned together (normal, inverse gamma, the lean's prior worth K = 3 pieces)::

    μ = Σd/(M + K)     s² = (4·s_d²·K/(K + 1) + Σd² − (Σd)²/(M + K))/(4 + M)     U = t(97.5 %, 4 + M)·s·√(1 + 1/(M + K))

From two pieces on the lean is counted in: a size told is the swatch's times exp(μ). Where it is not, U covers it:
s² = (4·s_d² + Σd²)/(4 + M), U = t(97.5 %, 4 + M)·s. Without pieces both are the same.

What a hand uses of one yarn in one stitch, in grams and in minutes a stitch, is learned alike from d = ln(used/planned by the
swatch alone), with K = 1 from the first piece on: a swatch is weighed to ±0.5 g of some 20 g with its ends, so that one whole
piece tells as much as it. A pace differs more: s_d = 15 %; the other swatches of that yarn, stitch and hand tell of it too.
"""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from logbook.craft.swatches.assumptions import PRIOR_DEGREES, Assumptions
from logbook.craft.swatches.conditions import Direction
from logbook.craft.swatches.student import t_975
from logbook.craft.swatches.swatch import Swatch

LEAN_PIECES = 3
"""How many pieces the assumption that a hand does not lean is worth."""
LEAN_FROM = 2
"""From so many made pieces on a lean is counted in."""

USE_PIECES, USE_FROM = 1, 1
"""The same of what a hand uses."""
PACE_VARIES = 0.15
"""By how much (standard deviation, relative) a piece takes longer or shorter than its swatch says, before it is measured."""

Pair = tuple[float, float]
"""A size predicted by the swatch alone and the size measured, in any one unit; both above nought. Yarn and time likewise."""


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
    """The drift of one hand along its stitches and up its rows, and of the grams and minutes it uses of one yarn and stitch."""

    stitches: Drift
    rows: Drift
    grams: Drift
    minutes: Drift

    def of(self, direction: Direction) -> Drift:
        """That in a direction."""
        return self.stitches if direction is Direction.STITCHES else self.rows

    def for_other_hands(self) -> "Drifts":
        """As ``Drift`` says it."""
        return Drifts(*(drift.for_other_hands() for drift in (self.stitches, self.rows, self.grams, self.minutes)))


class Taught(NamedTuple):
    """What one made piece teaches of its maker's hand; None: not measured in that direction, or not known.

    ``yarn`` and ``stitch`` are the uids of what ``grams`` and ``minutes`` were used for ("": not known).
    """

    hand: str
    stitches: Pair | None = None
    rows: Pair | None = None
    yarn: str = ""
    stitch: str = ""
    grams: Pair | None = None
    minutes: Pair | None = None


_Cloth = tuple[str, str, str]
"""A hand as it is called, and the uids of a yarn and a stitch pattern."""


@dataclass(frozen=True, slots=True)
class HandsDrift:
    """What is known of every hand that made something. A hand is called as in ``worked by``, capitals or not."""

    assumptions: Assumptions = field(default_factory=Assumptions)
    hands: Mapping[str, Drifts] = field(default_factory=dict)
    used: Mapping[_Cloth, Sequence[Taught]] = field(default_factory=dict)

    def of(self, hand: str) -> Drifts:
        """The drift of a hand; as assumed where it has made nothing that was measured."""
        return self.hands.get(_called(hand)) or drifts_of(self.assumptions, hand=hand)

    def of_swatch(self, own: Swatch, others: Iterable[Swatch] = ()) -> Drifts:
        """The drift of the hand that worked a swatch, with what it uses of that yarn and stitch; ``others`` are of the yarn."""
        drifts, hand = self.of(own.worked_by), own.worked_by.strip()
        if own.yarn is None or own.pattern is None or not own.yarn.uid or not own.pattern.uid:
            return drifts
        made = self.used.get((_called(hand), own.yarn.uid, own.pattern.uid), ())
        minutes = [_log(one.minutes) for one in made if one.minutes] + list(_paces(own, others))
        return replace(
            drifts,
            grams=used_of(self.assumptions, [_log(one.grams) for one in made if one.grams], hand),
            minutes=used_of(replace(self.assumptions, drift=PACE_VARIES), minutes, hand),
        )


def drift_of(
    assumptions: Assumptions, made: Sequence[Pair] = (), direction: Direction = Direction.STITCHES, hand: str = ""
) -> Drift:
    """The drift of one hand in one direction, from what it made."""
    return replace(_learnt(assumptions, [_log(pair) for pair in made], LEAN_PIECES, LEAN_FROM), direction=direction, hand=hand)


def used_of(assumptions: Assumptions, logs: Sequence[float] = (), hand: str = "") -> Drift:
    """The drift of what one hand uses of a yarn and stitch, from ln(used/planned) of each piece."""
    return replace(_learnt(assumptions, logs, USE_PIECES, USE_FROM), hand=hand)


def _learnt(assumptions: Assumptions, logs: Sequence[float], prior_pieces: int, counted_from: int) -> Drift:
    count, total, squares = len(logs), math.fsum(logs), math.fsum(d * d for d in logs)
    degrees, prior = PRIOR_DEGREES + count, PRIOR_DEGREES * assumptions.drift**2
    over_lean = t_975(degrees) * math.sqrt((prior + squares) / degrees)
    if count < counted_from or not assumptions.count_lean:
        return Drift(over_lean, count)
    worth = count + prior_pieces
    scatter = prior * prior_pieces / (prior_pieces + 1) + squares - total**2 / worth
    reach = t_975(degrees) * math.sqrt(scatter / degrees) * math.sqrt(1 + 1 / worth)
    return Drift(reach, count, total / worth, over_lean=over_lean)


def drifts_of(assumptions: Assumptions, stitches: Sequence[Pair] = (), rows: Sequence[Pair] = (), hand: str = "") -> Drifts:
    """The drift of one hand in both directions; nothing is known of what it uses."""
    return Drifts(
        drift_of(assumptions, stitches, Direction.STITCHES, hand),
        drift_of(assumptions, rows, Direction.ROWS, hand),
        used_of(assumptions, hand=hand),
        used_of(replace(assumptions, drift=PACE_VARIES), hand=hand),
    )


def hands_drift(assumptions: Assumptions, made: Iterable[Taught]) -> HandsDrift:
    """What the made pieces teach of each hand by itself."""
    by_hand: dict[str, list[Taught]] = {}
    used: dict[_Cloth, list[Taught]] = {}
    for one in made:
        by_hand.setdefault(_called(one.hand), []).append(one)
        if one.yarn and one.stitch:
            used.setdefault((_called(one.hand), one.yarn, one.stitch), []).append(one)
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
        used,
    )


def _log(pair: Pair) -> float:
    return math.log(pair[1] / pair[0])


def _paces(own: Swatch, others: Iterable[Swatch]) -> Iterator[float]:
    """How much longer other swatches of that hand, stitch and hook took a stitch than this one, as logarithms."""
    pace = own.minutes_a_stitch
    for other in others if pace else ():
        alike = other.pattern and own.pattern and other.pattern.uid == own.pattern.uid and other.hook_mm == own.hook_mm
        theirs = other.minutes_a_stitch
        if alike and theirs and pace and other.uid != own.uid and _called(other.worked_by) == _called(own.worked_by):
            yield math.log(theirs / pace)


def _called(hand: str) -> str:
    return " ".join(hand.split()).casefold()


def combined(*parts: float | None) -> float | None:
    """The one rule that combines half-widths: root of the sum of squares. None (not known) if any part is None."""
    known = [part for part in parts if part is not None]
    return math.hypot(*known) if len(known) == len(parts) else None
