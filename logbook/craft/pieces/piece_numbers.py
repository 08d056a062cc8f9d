"""The numbers of a piece, worked out from its plan and the gauges."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from logbook.craft.gauges.hanging import Growth, growth_of, weight_to_clip
from logbook.craft.pieces.edge_stitches import chains_with_edges, edges_for
from logbook.craft.pieces.fit import Fit, around, fit_of
from logbook.craft.pieces.length import FOUNDATION_MM, RowRule, row_counts
from logbook.craft.pieces.marks import Axis, Mark, Neck, armhole_mark, neck_of, slit_mark
from logbook.craft.pieces.options import FirstStitchUnknownError, Option, Pitch, recommended
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges, turned_direction
from logbook.craft.pieces.seams import seam_called
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.pieces.time_and_money import time_needed
from logbook.craft.pieces.yarn_needed import YarnNeeded, yarn_needed
from logbook.craft.swatches.conditions import Direction
from logbook.errors import RefusedError

_CLIP_MM = 100.0
"""The width a weight is clipped over where none was tried yet."""


@dataclass(frozen=True, slots=True)
class _Cloth:
    """The panel as it will be worked."""

    plan: PiecePlan
    gauges: PieceGauges
    stitches: Option
    edges: int
    rows: Option | None

    @property
    def width(self) -> Option:
        """What runs across the body; worked sideways there are always rows."""
        return self.rows if self.plan.sideways and self.rows else self.stitches

    @property
    def length(self) -> Option | None:
        """What runs up it."""
        return self.stitches if self.plan.sideways else self.rows


def work_out(plan: PiecePlan, gauges: PieceGauges) -> PieceNumbers:
    """The numbers of ``plan``; its rows are left open where none were measured, unless it is worked sideways.

    Raises RefusedError, in one sentence, if it cannot be.
    """
    plan.require_possible()
    cloth = _cloth(plan, gauges)
    slit, armhole, neck = _marks(cloth)
    fit = _fit(cloth)
    clip, growth = _hanging(cloth)
    areas = _areas(cloth)
    worked = None if areas is None else math.fsum(stitches * rows for stitches, rows in areas)
    return PieceNumbers(
        chain=cloth.stitches.known_chain,
        stitches=cloth.stitches.count,
        repeats=cloth.stitches.repeats,
        edge_stitches=cloth.edges,
        rows=cloth.rows.count if cloth.rows else None,
        groups=int(cloth.rows.repeats) if cloth.rows else None,
        set_up=gauges.pattern.set_up_rows or 0,
        closing=gauges.pattern.closing_rows or 0,
        width=cloth.width,
        length=cloth.length,
        slit=slit,
        armhole=armhole,
        neck=neck,
        fit=fit,
        stitches_worked=worked,
        yarn=_yarn(cloth, areas, _thread(cloth, (slit, armhole), neck)),
        time=time_needed(gauges.minutes_a_stitch, worked, gauges.drift.minutes),
        clip_grams=clip,
        growth=growth,
    )


def stitches_target(plan: PiecePlan, gauges: PieceGauges) -> float:
    """What the stitches of the piece must measure: its width, or sideways its length."""
    return _length_target(plan) if plan.sideways else plan.target_width(gauges.pitch(plan.round_body))


def stitch_width(plan: PiecePlan, gauges: PieceGauges) -> Pitch:
    """How wide the stitches of the piece are, with the edgings at their ends."""
    ends_mm = plan.top_edging_mm + plan.bottom_edging_mm if plan.sideways else 2 * plan.side_edging_mm
    return Pitch.of(gauges.stitches, gauges.drift.stitches, ends_mm)


def chain_rule(plan: PiecePlan, gauges: PieceGauges) -> ChainRule:
    """How the chain of the piece comes of its repeats."""
    return replace(
        ChainRule.of(gauges.pattern),
        in_round=plan.in_round,
        round_plus=plan.round_plus,
        joined_after_row_1=plan.joined_after_row_1,
        foundation_stitches=plan.foundation_stitches,
        half_plus=gauges.pattern.half_plus if plan.half_repeats else None,
        parity=plan.stitch_parity,
        choose=plan.length_choose if plan.sideways else plan.width_choose,
    )


def takes_edges(plan: PiecePlan, gauges: PieceGauges) -> bool:
    """Whether edge stitches make sense: beside whole repeats of a flat piece."""
    return gauges.edge is not None and not plan.in_round and (gauges.pattern.multiple or 1) > 1


def _cloth(plan: PiecePlan, gauges: PieceGauges) -> _Cloth:
    if chain_rule(plan, gauges).chains_beside is None:
        raise FirstStitchUnknownError
    chain, edges = chosen_chain(stitches_target(plan, gauges), plan, gauges)
    has_rows = plan.sideways or (plan.length_mm is not None and gauges.rows is not None)
    return _Cloth(plan, gauges, chain, edges, recommended(row_options(plan, gauges)) if has_rows else None)


def _length_target(plan: PiecePlan) -> float:
    if plan.length_mm is None:
        raise RefusedError("A piece worked sideways starts from its length: give it too.")
    return plan.length_mm + plan.shoulder_seam_mm


def chosen_chain(target_mm: float, plan: PiecePlan, gauges: PieceGauges) -> tuple[Option, int]:
    """The chain to take, and the edge stitches at each side. Raises RefusedError if edge stitches can't be."""
    rule, width, edges = chain_rule(plan, gauges), stitch_width(plan, gauges), plan.edge_stitches
    if gauges.edge is None or not takes_edges(plan, gauges):
        if edges:
            raise RefusedError("Edge stitches go beside the whole repeats of a flat piece: leave them out here.")
        options, edges = starting_chains(target_mm, width, rule), 0
    else:
        if edges is None:
            edges = edges_for(target_mm, width, rule, gauges.edge, gauges.assumptions.most_edge_stitches)
        options = chains_with_edges(target_mm, width, rule, gauges.edge, edges)
    return recommended(options), edges


def row_options(plan: PiecePlan, gauges: PieceGauges) -> tuple[Option, ...]:
    """The rows to choose from for the length, or sideways for the width. Raises RefusedError if there can be none."""
    if plan.sideways:
        target, ends_mm = plan.target_width(gauges.pitch(Direction.ROWS)), 2 * plan.side_edging_mm
    else:
        target, ends_mm = _length_target(plan), plan.top_edging_mm + plan.bottom_edging_mm
    chain_mm = FOUNDATION_MM if plan.foundation_chain else 0.0
    rule = replace(
        RowRule.of(gauges.pattern),
        parity=plan.row_parity,
        choose=plan.width_choose if plan.sideways else plan.length_choose,
        any_row=plan.any_row,
        row_shares=plan.row_shares,
    )
    return row_counts(target, Pitch.of(gauges.finished(Direction.ROWS), gauges.drift.rows, ends_mm + chain_mm), rule)


def _axis(cloth: _Cloth, direction: Direction) -> Axis:
    """The axis along ``direction``; edgings and the shoulder's seam lie on the one up the body."""
    plan, gauges = cloth.plan, cloth.gauges
    up = direction is not plan.round_body
    start, end, seam = (plan.bottom_edging_mm, plan.top_edging_mm, plan.shoulder_seam_mm) if up else (0.0, 0.0, 0.0)
    pitch = gauges.pitch(direction)
    if direction is Direction.STITCHES:
        wider = cloth.edges * (gauges.edge.stitch_mm - pitch) if gauges.edge else 0.0
        return Axis(
            direction=direction,
            count=cloth.stitches.count,
            pitch_mm=pitch,
            step=gauges.pattern.multiple or 1,
            first=cloth.edges,
            start_mm=start + wider,
            end_mm=end + wider,
            seam_mm=seam,
        )
    return Axis(
        direction=direction,
        count=cloth.rows.count if cloth.rows else 0,
        pitch_mm=pitch,
        step=gauges.pattern.rows_in_repeat or 1,
        first=gauges.pattern.set_up_rows or 0,
        start_mm=start + (FOUNDATION_MM if plan.foundation_chain and up else 0.0),
        end_mm=end,
        seam_mm=seam,
    )


def _marks(cloth: _Cloth) -> tuple[Mark | None, Mark | None, Neck | None]:
    """Slit, armhole and neck; up the body there are none while its rows are left open."""
    plan, slit, armhole = cloth.plan, None, None
    if cloth.length is not None and (plan.slit_mm is not None or plan.armhole_mm is not None):
        up = _axis(cloth, turned_direction(plan.round_body))
        slit = None if plan.slit_mm is None else slit_mark(plan.slit_mm, up, snap=plan.snap)
        armhole = None if plan.armhole_mm is None else armhole_mark(plan.armhole_mm, up, snap=plan.snap)
        if slit and armhole and slit.at >= armhole.at:
            raise RefusedError("The slit reaches up to the armhole, so no side seam is left: make one of them smaller.")
    neck = None if plan.neck_mm is None else neck_of(plan.neck_mm, _axis(cloth, plan.round_body), snap=plan.snap)
    return slit, armhole, neck


def _fit(cloth: _Cloth) -> Fit | None:
    plan, gauges, width = cloth.plan, cloth.gauges, cloth.width
    if plan.body_mm is None:
        return None
    girth = around(width.mm, plan.panels_joined, plan.seam_allowance(gauges.pitch(plan.round_body)))
    if not girth > 0:
        raise RefusedError("The seams take more than the panel is wide: nothing would be left of the garment.")
    sure = None if width.give_or_take_mm is None else width.give_or_take_mm / width.mm
    return fit_of(girth, plan.body_mm, sure, gauges.give(plan.round_body))


def _hanging(cloth: _Cloth) -> tuple[float | None, Growth | None]:
    """The grams to clip on for a trial (until one was made), or what the piece grows by."""
    gauges, length = cloth.gauges, cloth.length
    if length is None or gauges.weight is None or gauges.swatch_grams is None:
        return None, None
    density = gauges.weight.grams / (gauges.pitch(Direction.STITCHES) * gauges.pitch(Direction.ROWS))
    trial = gauges.trial(turned_direction(cloth.plan.round_body))
    growth = None if trial is None else growth_of(trial, density, length.mm)
    if growth is not None and growth.near:
        return None, growth
    return weight_to_clip(density, length.mm, gauges.hung_clip_mm or _CLIP_MM, gauges.swatch_grams), growth


def _areas(cloth: _Cloth) -> tuple[tuple[float, float], ...] | None:
    """Stitches by rows of all panels with their edgings; None where there are no rows to count."""
    plan, gauges, rows = cloth.plan, cloth.gauges, cloth.rows
    if rows is None:
        return None
    stitch_ends, row_ends = 2 * plan.side_edging_mm, plan.top_edging_mm + plan.bottom_edging_mm
    if plan.sideways:
        stitch_ends, row_ends = row_ends, stitch_ends
    stitches = cloth.stitches.count
    one = (
        (stitches, rows.count),
        (stitch_ends / gauges.pitch(Direction.STITCHES), rows.count),
        (stitches, row_ends / gauges.pitch(Direction.ROWS)),
    )
    return one * plan.panels_joined


def _yarn(cloth: _Cloth, areas: Sequence[tuple[float, float]] | None, thread_mm: float) -> YarnNeeded | None:
    """For all panels with their edgings, and the seams."""
    gauges = cloth.gauges
    if gauges.weight is None or areas is None:
        return None
    return yarn_needed(gauges.weight, areas, thread_mm, gauges.yarn, gauges.drift.grams, gauges.assumptions.reserve)


def _thread(cloth: _Cloth, open_sides: Sequence[Mark | None], neck: Neck | None) -> float:
    """Yarn for the side seams, from slit to armhole, and of two panels with a neck for the shoulders."""
    plan, length = cloth.plan, cloth.length
    if not plan.seam or plan.in_round or length is None:
        return 0.0
    seam = seam_called(plan.seam)
    side = length.mm - sum(mark.true_mm for mark in open_sides if mark)
    thread = plan.panels * seam.thread_mm(max(side, 0.0))
    if neck is not None and plan.panels == 2:
        thread += 2 * seam.thread_mm((cloth.width.mm - neck.begins.true_mm) / 2)
    return thread
