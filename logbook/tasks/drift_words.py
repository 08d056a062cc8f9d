"""What made pieces teach of how far a piece strays from its swatch, as sentences."""

import math
from collections.abc import Iterator

from logbook.craft.gauges.drift import Drift, combined
from logbook.craft.gauges.washing import FinishedGauge, Washing
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.counting import counted
from logbook.craft.words.numbers import show_percent

COUNTED_IN = "this is counted in"
IN_SINGLE_PIECES = "this is counted into single pieces, not into several sizes or garments, as others will make those"
"""Where no one piece is spoken of."""


def whole_piece_words(drift: Drift, counted_in: str = COUNTED_IN) -> str:
    """How far a whole piece strays from its swatch in one direction; ``counted_in`` says what is done about a lean that is."""
    up_to, learned = show_percent(drift.give_or_take), f"learned from {counted(drift.pieces, 'piece')}"
    if not drift.pieces:
        return f"A finished garment usually differs from its swatch by up to {up_to} (assumed, until you log finished pieces)."
    stitches = drift.direction is Direction.STITCHES
    lean = show_percent(abs(math.expm1(drift.lean)))
    if lean == "0 %":
        what = "A finished garment usually differs" if stitches else "The rows of a finished garment usually differ"
        return f"{what} from its swatch by up to {up_to} ({learned})."
    whose = f"{drift.hand}’s" if drift.hand else "Your"
    comes = counted_in if drift.counted else "this is left out here, as others will make it"
    than = drift.direction.than(math.exp(drift.lean))
    return (
        f"{whose} {drift.direction.value} come out {lean} {than} in a piece than on its swatch, "
        f"{learned}: {comes}, and a piece may still differ by up to {up_to}."
    )


def together_words(drift: Drift, gauge: FinishedGauge) -> Iterator[str]:
    """What that comes to with the swatch's give or take, where it is known."""
    swatch = gauge.give_or_take
    both = combined(drift.give_or_take, swatch)
    if swatch is not None and both is not None:
        own = f"own {show_percent(swatch)}"
        if gauge.washing is Washing.BORROWED:
            own = f"{show_percent(swatch)}, borrowed washing included,"
        yield (
            f"With the swatch’s {own} that comes to about ± {show_percent(both)} for the "
            f"{drift.direction.value}: the two seldom add up in full."
        )


def yarn_used_words(drift: Drift, counted_in: str = COUNTED_IN) -> str:
    """How much more or less yarn than its swatch says a piece takes."""
    return _used(drift, "yarn", "piece", counted_in)


def time_taken_words(drift: Drift, counted_in: str = COUNTED_IN) -> str:
    """How much longer or shorter than its swatch says a piece takes."""
    return _used(drift, "time", "timed piece", counted_in)


def _used(drift: Drift, what: str, of: str, counted_in: str) -> str:
    whose = f"{drift.hand}’s pieces" if drift.hand else "Your pieces"
    known, up_to = f"learned from {counted(drift.pieces, of)}", show_percent(drift.give_or_take)
    change = show_percent(abs(math.expm1(drift.lean)))
    if change == "0 %":
        return f"The {what} of a piece of this yarn and stitch may differ by up to {up_to} from what the swatch says ({known})."
    comes = counted_in if drift.counted else "this is left out here, as others will make it"
    more = "more" if drift.lean > 0 else "less"
    return (
        f"{whose} of this yarn and stitch take {change} {more} {what} than the swatch says, {known}: {comes}, and one may still "
        f"differ by up to {up_to}."
    )
