"""Tapered panels: sleeves, A-lines. S0 stitches to S1 by pairs at both edges, spread over the rows that are not worked even.

In a stitch with repeats new stitches are plain edge stitches, and m of them at an edge become a repeat; of a repeat that is
broken off, the rest are plain. ``whole repeats``: S1 ≡ S0 (mod 2m).
"""

import math

from logbook.craft.garments.making import Making, nearest_with_parity
from logbook.craft.garments.shaped_piece import ShapedPiece, Shaping, counts_from
from logbook.craft.garments.shapes import ROUND
from logbook.craft.pieces.length import RowRule, row_counts
from logbook.craft.pieces.options import Pitch, recommended
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_numbers import chain_rule
from logbook.craft.pieces.spread import off_line, spread
from logbook.craft.swatches.conditions import Direction
from logbook.craft.words.numbers import half_up
from logbook.errors import RefusedError


def tapered_panel(making: Making) -> ShapedPiece:
    """A tapered panel. Raises RefusedError if it can't be."""
    planned, in_round = making.planned, making.planned.worked == ROUND
    across = making.across_mm
    chain = making.chain(making.need("start width") + across, chain_rule(PiecePlan(in_round=in_round), making.gauges))
    rows = whole_rows(making, making.need("length") + making.seams("start", "end"))
    even = half_up((making.get("straight") or 0.0) / making.q)
    if even >= rows and even:
        raise RefusedError("Its straight part is as long as the whole piece: make it shorter, or leave it out.")
    start = making.first_stitches(chain.count)
    end = _end_stitches(making, start, making.need("end width") + across)
    by = 1 if end > start else -1
    shaped = rows - even
    at = spread(abs(end - start) // 2, shaped, right_side_only=bool(planned.choice("right side rows")))
    counts = counts_from(start, rows, [(row, 2 * by) for row in at])
    by_count = {count: _width(making, start, count) for count in {start, *counts}}
    widths = tuple(by_count[count] for count in (start, *counts))
    side = making.along_rows(rows, "length", math.hypot(rows * making.q, abs(widths[-1] - widths[0]) / 2))
    return making.piece(
        start,
        counts,
        widths=widths,
        chain=None if making.on else chain.known_chain,
        edges={
            "start": making.along_stitches(start, "start width", widths[0]),
            "end": making.along_stitches(end, "end width", widths[-1]),
            **({} if in_round else {"side": side, "left side": side, "right side": side}),
        },
        shapings=(Shaping(place="edges", at=at, by=by, edges=2, first=1, rows=shaped),) if at else (),
        off_line_mm=off_line(at, shaped) * _edge_pitch(making) if at else 0.0,
        parts={"even": even} if even else {},
    )


def whole_rows(making: Making, length_mm: float) -> int:
    """The rows nearest to a length, in whole groups where the pattern has groups; at least one."""
    rule = RowRule.of(making.gauges.pattern)
    if (rule.set_up, rule.in_repeat, rule.closing) == (0, 1, 0):
        return max(half_up(length_mm / making.q), 1)
    height = Pitch.of(making.gauges.finished(Direction.ROWS), making.gauges.drift.rows, 0.0)
    return recommended(row_counts(length_mm, height, rule)).count


def _end_stitches(making: Making, start: int, width_mm: float) -> int:
    """S1 of S0's parity, nearest to the width; with whole repeats only, whole ones more or fewer at each edge."""
    multiple = making.gauges.pattern.multiple or 1
    if multiple == 1:
        end = nearest_with_parity(width_mm / making.p, start)
    else:
        step = 2 * multiple if making.planned.choice("whole repeats") else 2
        near = start + step * half_up((width_mm - _width(making, start, start)) / (step * making.p))
        around = [near + step * k for k in range(-multiple, multiple + 1) if near + step * k >= 1]
        end = min(around, key=lambda count: (round(abs(_width(making, start, count) - width_mm), 6), -count), default=0)
    if end < 1:
        raise RefusedError("Its end is less than a stitch wide: make the end width larger.")
    return end


def _edge_pitch(making: Making) -> float:
    edge = making.gauges.edge
    return making.p if edge is None or (making.gauges.pattern.multiple or 1) == 1 else edge.stitch_mm


def _width(making: Making, start: int, stitches: int) -> float:
    """The width of a row: whole repeats by the pattern's pitch, what is less at each edge by the edge stitch's."""
    multiple, edge = making.gauges.pattern.multiple or 1, _edge_pitch(making)
    each = (stitches - start) // 2
    plain = each % multiple
    return (stitches - 2 * plain) * making.p + 2 * plain * edge
