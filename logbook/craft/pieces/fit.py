"""From a body measure to a panel, and back: how the piece that comes of it really fits.

n panels go round (2; in the round 1), each joined edge taking a seam allowance a::

    T = (B + E)/n + 2a            the panel wanted for a body B and an ease E
    F = n·(W − 2a)                what panels of width W really make, and F − B the real ease, all round

If F is less than B the cloth stretches in wear by x = B/F − 1. The swatch gave L = pulled/washed − 1 in the direction that runs
round the body, so x/L of its give is used: up to 50 % is comfortable, up to 80 % close, above that too tight, and above 100 % it
does not go on. Meanwhile the other direction moves from washed toward its reading in the same pulled state by the same share.
"""

import math
from dataclasses import dataclass
from enum import StrEnum

from logbook.craft.words.lengths import Ease
from logbook.errors import RefusedError

ADULT_HEAD_MM = 560.0


def panel_width(body_mm: float, ease: Ease, panels: int, seam_mm: float) -> float:
    """The finished width in mm of one of ``panels`` equal panels; in the round (1 panel) no edge is joined and ``seam_mm`` is 0.

    Raises RefusedError if nothing is left of the garment.
    """
    around = body_mm + ease.of(body_mm)
    if panels < 1:
        raise RefusedError("A garment has at least 1 panel round the body.")
    if not around > 0:
        raise RefusedError("That ease is more than the body measures: nothing would be left of the garment.")
    return around / panels + 2 * seam_mm


def around(width_mm: float, panels: int, seam_mm: float) -> float:
    """F: how far ``panels`` panels of ``width_mm`` really go round once they are joined, in mm."""
    return panels * (width_mm - 2 * seam_mm)


class FitVerdict(StrEnum):
    """How a garment smaller than the body sits, by the share of the cloth's give it uses."""

    COMFORTABLE = "comfortable"
    CLOSE = "close"
    TOO_TIGHT = "too tight"
    DOES_NOT_GO_ON = "does not go on"


_BORDERS = ((0.5, FitVerdict.COMFORTABLE), (0.8, FitVerdict.CLOSE), (1.0, FitVerdict.TOO_TIGHT))


@dataclass(frozen=True, slots=True, kw_only=True)
class Give:
    """What the swatch gave when pulled round the body: L, and how the other direction changed meanwhile, both relative.

    ``half_width``: L's own, absolute; None: not known. ``other_change`` is None if that was not read.
    """

    share: float
    half_width: float | None
    other_change: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How it really fits: girth and ease in mm all round; the rest is None where the garment is not smaller than the body.

    ``stretch_needed`` is x, ``give`` L and ``share`` x/L; ``could_be`` are the other verdicts that lie within the give or take.
    ``length_change`` is how much longer (negative: shorter) it is in wear, relative.
    """

    around_mm: float
    ease_mm: float
    stretch_needed: float | None = None
    give: float | None = None
    share: float | None = None
    verdict: FitVerdict | None = None
    could_be: tuple[FitVerdict, ...] = ()
    length_change: float | None = None


def fit_of(around_mm: float, body_mm: float, around_give_or_take: float | None, give: Give | None) -> Fit:
    """The fit of a garment ``around_mm`` round on a body; ``around_give_or_take`` is relative, drift included."""
    ease_mm = around_mm - body_mm
    if ease_mm >= 0:
        return Fit(around_mm=around_mm, ease_mm=ease_mm)
    needed = body_mm / around_mm - 1
    if give is None:
        return Fit(around_mm=around_mm, ease_mm=ease_mm, stretch_needed=needed)
    share = needed / give.share if give.share > 0 else math.inf
    verdict = _verdict(share)
    return Fit(
        around_mm=around_mm,
        ease_mm=ease_mm,
        stretch_needed=needed,
        give=give.share,
        share=share,
        verdict=verdict,
        could_be=tuple(v for v in _within(needed, around_give_or_take, give) if v is not verdict),
        length_change=None if give.other_change is None or share > 1 else share * give.other_change,
    )


def _verdict(share: float) -> FitVerdict:
    return next((verdict for border, verdict in _BORDERS if share <= border + 1e-9), FitVerdict.DOES_NOT_GO_ON)


def _within(needed: float, around_give_or_take: float | None, give: Give) -> tuple[FitVerdict, ...]:
    """The verdicts from the loosest to the tightest that the give or take of x and L allows."""
    if around_give_or_take is None or give.half_width is None or give.share <= 0:
        return ()
    share = needed / give.share
    half = share * math.hypot((1 + needed) * around_give_or_take / needed, give.half_width / give.share)
    order = list(FitVerdict)
    return tuple(order[order.index(_verdict(share - half)) : order.index(_verdict(share + half)) + 1])


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyOpening:
    """An opening of ``round_mm`` that a part of the body must go through: ``name`` of the opening, then of the part."""

    name: str
    part: str
    round_mm: float
    needs_mm: float

    @property
    def too_small(self) -> bool:
        """Whether it must be stretched."""
        return self.round_mm < self.needs_mm - 1e-6

    @property
    def stretch(self) -> float:
        """How far, relative."""
        return self.needs_mm / self.round_mm - 1 if self.round_mm > 0 else math.inf
