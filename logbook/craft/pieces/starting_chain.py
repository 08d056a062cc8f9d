"""How many to chain for a width.

    W(S) = S·p + 2e        S = m·k + b       C = S + t

T the finished width wanted, p the stitch pitch, e the edging on each side, m the multiple, b the plus, t the extra chains, k
whole repeats. The options are the whole k on both sides of the exact one and one more each way (k ≥ 1); recommended is the
smallest |W − T|, on a tie the narrower, unless "at least" or "at most" is asked. In the round the flat plus is not used, and
C = S unless row 1 is worked flat and then joined; foundation stitches make chain and row one at once, so C = S as well.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from logbook.craft.gauges.drift import Drift, combined
from logbook.craft.gauges.washing import FinishedGauge
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.errors import RefusedError


class Choose(StrEnum):
    """Which option is recommended."""

    NEAREST = "nearest"
    AT_LEAST = "at least"
    AT_MOST = "at most"


class Parity(StrEnum):
    """A stitch or row count that must be odd or even."""

    ANY = ""
    ODD = "odd"
    EVEN = "even"

    def fits(self, count: int) -> bool:
        """Whether ``count`` is as asked."""
        return self is Parity.ANY or (count % 2 == 1) is (self is Parity.ODD)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainRule:
    """How a stitch count and a chain come of k repeats, and what the maker asks of them.

    ``half_plus``: S = m·k + half_plus + (m/2 rounded down) is allowed too, ending on half a repeat.
    """

    multiple: int = 1
    plus: int = 0
    extra_chains: int = 0
    in_round: bool = False
    round_plus: int = 0
    joined_after_row_1: bool = False
    foundation_stitches: bool = False
    half_plus: int | None = None
    parity: Parity = Parity.ANY
    choose: Choose = Choose.NEAREST

    @staticmethod
    def of(pattern: StitchPattern) -> "ChainRule":
        """What the pattern says of whole repeats worked flat. Raises RefusedError if it contradicts itself."""
        return ChainRule(multiple=pattern.multiple or 1, plus=pattern.plus or 0, extra_chains=pattern.extra() or 0)

    @property
    def stitches_beside(self) -> int:
        """b: the base stitches beside whole repeats."""
        return self.round_plus if self.in_round else self.plus

    @property
    def chains_beside(self) -> int:
        """t: the chains beside base stitches."""
        if self.foundation_stitches or (self.in_round and not self.joined_after_row_1):
            return 0
        return self.extra_chains


@dataclass(frozen=True, slots=True, kw_only=True)
class StitchWidth:
    """How wide one stitch is (mm), with the relative half-widths of the swatch's gauge (None: unknown) and of a piece's drift.

    ``before_washing_mm`` is the as-worked pitch, None if it was not measured; ``ends_mm`` is width that belongs to no stitch
    of the pattern: edgings, and edge stitches of their own pitch.
    """

    stitch_mm: float
    gauge_give_or_take: float | None
    drift_give_or_take: float
    before_washing_mm: float | None = None
    ends_mm: float = 0.0

    @staticmethod
    def of(gauge: FinishedGauge, drift: Drift, ends_mm: float) -> "StitchWidth":
        """That of the finished fabric."""
        return StitchWidth(
            stitch_mm=gauge.pitch_mm,
            gauge_give_or_take=gauge.give_or_take,
            drift_give_or_take=drift.give_or_take,
            before_washing_mm=gauge.before_washing_mm,
            ends_mm=ends_mm,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainOption:
    """One starting chain and the width it makes. Lengths in mm; ``repeats`` has a half where the pattern ends on one.

    ``gauge_give_or_take_mm`` is the swatch's alone, ``give_or_take_mm`` that of a whole piece (with drift); None: unknown.
    """

    repeats: float
    stitches: int
    chain: int
    width_mm: float
    difference_mm: float
    gauge_give_or_take_mm: float | None
    give_or_take_mm: float | None
    before_washing_mm: float | None
    recommended: bool = False


def starting_chains(target_mm: float, width: StitchWidth, rule: ChainRule) -> tuple[ChainOption, ...]:
    """The options for a finished width of ``target_mm``, narrowest first, just one of them recommended.

    Raises RefusedError for a target that is not above nought, or a rule that cannot be.
    """
    _require_sound(target_mm, rule)
    exact = (target_mm - width.ends_mm) / width.stitch_mm
    counts = sorted(set(_counts_around(exact, rule)))
    widths = [stitches * width.stitch_mm + width.ends_mm for _, stitches in counts]
    best = recommended_of(widths, target_mm, rule.choose)
    return tuple(
        _option(repeats, stitches, target_mm, width, rule, recommended=place == best)
        for place, (repeats, stitches) in enumerate(counts)
    )


def recommended_of(sizes: Sequence[float], target: float, choose: Choose) -> int:
    """The place in ``sizes`` (in rising order) of the one to recommend; where none is as asked, the nearest to it."""
    tolerance = 1e-6
    if choose is Choose.AT_LEAST:
        return next((i for i, size in enumerate(sizes) if size >= target - tolerance), len(sizes) - 1)
    if choose is Choose.AT_MOST:
        return max((i for i, size in enumerate(sizes) if size <= target + tolerance), default=0)
    return min(range(len(sizes)), key=lambda i: (round(abs(sizes[i] - target), 6), sizes[i]))


def whole_around(exact: float, least: int) -> list[int]:
    """The whole numbers on both sides of ``exact`` and one more each way, none below ``least`` (else it and the next)."""
    near = round(exact)
    if abs(exact - near) < 1e-9:
        exact = near
    found = range(math.floor(exact) - 1, math.ceil(exact) + 2)
    return [k for k in found if k >= least] or [least, least + 1]


def _counts_around(exact_stitches: float, rule: ChainRule) -> list[tuple[float, int]]:
    """(repeats, stitches) of the options around the exact stitch count."""
    multiple, beside = rule.multiple, rule.stitches_beside
    if rule.parity is not Parity.ANY:  # plain stitches: every second count
        offset = 0 if rule.parity.fits(beside) else 1
        pairs = whole_around((exact_stitches - beside - offset) / 2, least=1 - offset)
        return [(2 * pair + offset, 2 * pair + offset + beside) for pair in pairs]
    counts: list[tuple[float, int]] = [
        (k, multiple * k + beside) for k in whole_around((exact_stitches - beside) / multiple, least=1)
    ]
    if rule.half_plus is not None and not rule.in_round:
        half = multiple // 2 + rule.half_plus
        counts += [(k + 0.5, multiple * k + half) for k in whole_around((exact_stitches - half) / multiple, least=1)]
    return counts


def _option(
    repeats: float, stitches: int, target_mm: float, width: StitchWidth, rule: ChainRule, *, recommended: bool
) -> ChainOption:
    fabric_mm = stitches * width.stitch_mm
    whole_mm = fabric_mm + width.ends_mm
    gauge_mm = None if width.gauge_give_or_take is None else width.gauge_give_or_take * fabric_mm
    before = None if width.before_washing_mm is None else stitches * width.before_washing_mm + width.ends_mm
    return ChainOption(
        repeats=repeats,
        stitches=stitches,
        chain=stitches + rule.chains_beside,
        width_mm=whole_mm,
        difference_mm=whole_mm - target_mm,
        gauge_give_or_take_mm=gauge_mm,
        give_or_take_mm=combined(gauge_mm, width.drift_give_or_take * whole_mm),
        before_washing_mm=before,
        recommended=recommended,
    )


def _require_sound(target_mm: float, rule: ChainRule) -> None:
    if not target_mm > 0:
        raise RefusedError("The finished width must be more than 0: check the body measure, the ease and the seam.")
    if rule.multiple < 1 or rule.stitches_beside < 0 or rule.chains_beside < 0:
        raise RefusedError("The multiple must be at least 1; the plus and the extra chains at least 0.")
    if rule.parity is not Parity.ANY and rule.multiple != 1:
        raise RefusedError(f"An {rule.parity} count goes with plain stitches only, not with a multiple of {rule.multiple}.")
    if rule.half_plus is not None and rule.multiple % 2:
        raise RefusedError(f"A multiple of {rule.multiple} has no half repeat: leave out the plus for a half repeat.")
