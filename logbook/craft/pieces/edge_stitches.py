"""Plain edge stitches at both sides, where a repeat is too wide to come near a width.

    W = (m·k + b)·p + 2f·p_f + 2e        the chain grows by 2f, and its extra chains are the edge stitch's

f plain stitches of pitch p_f at each side. They are offered only if without them |W − T| is more than half the give or take; then
it is the least f whose |W − T| is within 5 mm of the least.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from logbook.craft.gauges.drift import combined
from logbook.craft.pieces.options import Option, Pitch, recommended
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.swatches.gauge import Gauge

NEAR_MM = 5.0
_ROWS_DIFFER = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeStitch:
    """The plain stitch of the edges: its pitch in mm with its relative half-width, and t, the extra chains it starts from.

    ``tag`` is the swatch it comes from; "" where its gauge was said by hand or it is taken to be as wide as the pattern's own.
    ``row`` is its row gauge, None if not known.
    """

    stitch_mm: float
    give_or_take: float | None
    extra_chains: int
    before_washing_mm: float | None = None
    tag: str = ""
    by_hand: bool = False
    row: Gauge | None = None

    def times(self, wide: float, high: float) -> "EdgeStitch":
        """The same in a piece whose stitches and rows are so many times as large as the swatch's."""
        before, row = self.before_washing_mm, self.row
        return replace(
            self,
            stitch_mm=self.stitch_mm * wide,
            before_washing_mm=None if before is None else before * wide,
            row=row and replace(row, pitch_mm=row.pitch_mm * high),
        )


def chains_with_edges(target_mm: float, width: Pitch, rule: ChainRule, edge: EdgeStitch, each: int) -> tuple[Option, ...]:
    """The options with ``each`` edge stitches at each side. ``count`` and ``chain`` count them in, ``repeats`` does not.

    Raises RefusedError as ``starting_chains``.
    """
    if each == 0:
        return starting_chains(target_mm, width, rule)
    edges_mm = 2 * each * edge.stitch_mm
    wider = replace(width, ends_mm=width.ends_mm + edges_mm)
    found = starting_chains(target_mm, wider, replace(rule, extra_chains=edge.extra_chains))
    return tuple(_with_edges(option, width, edge, each) for option in found)


def _with_edges(option: Option, width: Pitch, edge: EdgeStitch, each: int) -> Option:
    edges_mm = 2 * each * edge.stitch_mm
    before = option.before_washing_mm
    if before is not None and edge.before_washing_mm is not None:
        before += 2 * each * edge.before_washing_mm - edges_mm
    edge_sure = None if edge.give_or_take is None else edge.give_or_take * edges_mm
    gauge_mm = combined(option.gauge_give_or_take_mm, edge_sure)
    return replace(
        option,
        count=option.count + 2 * each,
        chain=option.known_chain + 2 * each,
        gauge_give_or_take_mm=gauge_mm,
        give_or_take_mm=combined(gauge_mm, width.drift_give_or_take * option.mm),
        before_washing_mm=before,
    )


def edges_wanted(option: Option) -> bool:
    """Whether a width without edge stitches is too far off: by more than half its give or take, or 5 mm where that is unknown."""
    limit = NEAR_MM if option.give_or_take_mm is None else option.give_or_take_mm / 2
    return abs(option.difference_mm) > limit


def edges_for(target_mm: float, width: Pitch, rule: ChainRule, edge: EdgeStitch, most: int) -> int:
    """The number of edge stitches at each side for one width, 0 to ``most``."""
    return edges_for_all((target_mm,), width, rule, edge, most)


def edges_for_all(targets_mm: Sequence[float], width: Pitch, rule: ChainRule, edge: EdgeStitch, most: int) -> int:
    """One number of edge stitches for all widths, 0 to ``most``: the widest miss counts."""
    found = [[recommended(chains_with_edges(t, width, rule, edge, each)) for t in targets_mm] for each in range(most + 1)]
    if not any(edges_wanted(option) for option in found[0]):
        return 0
    misses = [max(abs(option.difference_mm) for option in options) for options in found]
    return next(each for each, miss in enumerate(misses) if miss <= min(misses) + NEAR_MM)


def rows_taller(edge: EdgeStitch, row_mm: float, row_give_or_take: float | None) -> float | None:
    """By what share the edge's rows are taller than the pattern's; None if they may be the same, or are not known."""
    if edge.row is None:
        return None
    off = math.log(edge.row.pitch_mm / row_mm)
    return math.expm1(off) if abs(off) > (combined(edge.row.give_or_take, row_give_or_take) or _ROWS_DIFFER) else None
