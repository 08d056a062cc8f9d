"""A garment in several sizes: the piece of each, which of them come out the same, and what would part them.

A wide repeat makes neighbours equal: if a repeat is 7 cm wide, two panels step by 14 cm round. The remedies are a few plain edge
stitches at each side (the same number in all sizes if it can be), a half repeat where the pattern has one, or another hook.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from logbook.craft.pieces.edge_stitches import NEAR_MM, chains_with_edges, edges_for_all, edges_wanted
from logbook.craft.pieces.measures import OF_A_SIZE
from logbook.craft.pieces.notes import AllAlike, EdgesPart, HookParts, Note, Plain
from logbook.craft.pieces.options import FirstStitchUnknownError, recommended
from logbook.craft.pieces.piece import PieceNumbers, PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import chain_rule, chosen_chain, stitch_width, stitches_target, takes_edges, work_out
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.pieces.yarn_needed import YarnNeeded, together
from logbook.craft.sizes.body_chart import BodyChart, End, is_childs_size
from logbook.errors import RefusedError

SAME_MM = 1e-6
"""Widths nearer to each other than this are the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeNumbers:
    """One size worked out; ``same_as`` names the other sizes whose width comes out the same."""

    name: str
    body_mm: float
    piece: PieceNumbers
    same_as: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SizeRun:
    """All sizes, smallest first as the chart has them, the yarn for one of each, and which come out the same."""

    sizes: tuple[SizeNumbers, ...]
    yarn: YarnNeeded | None
    same: tuple[AllAlike, ...]

    @property
    def cautions(self) -> tuple[Note, ...]:
        """What is to be heeded with some of its sizes."""
        return (Plain.CHILDRENS_WEAR,) if any(is_childs_size(size.name) for size in self.sizes) else ()

    @property
    def all_differ(self) -> bool:
        """Whether no two sizes come out the same."""
        return not any(size.same_as for size in self.sizes)


@dataclass(frozen=True, slots=True)
class SizesRemedy:
    """What would part sizes that come out the same; ``plan`` has it applied, None where it takes another swatch."""

    note: Note
    plan: PiecePlan | None


def sizes_of_chart(
    chart: BodyChart, end: End = End.MIDDLE, measure: str = "bust", armhole_deeper_mm: float | None = None
) -> tuple[SizePlan, ...]:
    """The sizes of a chart by one figure each. ``armhole_deeper_mm``: armholes of the body's depth and that much (None: not).

    Raises RefusedError if a size lacks ``measure``.
    """
    plans = []
    for size in chart.sizes:
        body = size.measure(measure, end)
        if body is None:
            raise RefusedError(f"Size {size.name} has no {measure} measure: fill it in, or choose another measure.")
        depth = size.measure("armhole depth", end)
        if depth is None and armhole_deeper_mm is not None:
            raise RefusedError(f"Size {size.name} has no armhole depth: fill it in, or give the depth of the armholes.")
        own: dict[str, Any] = {measure.field: size.measure(measure.chart, end) for measure in OF_A_SIZE if measure.chart}
        if depth is not None and armhole_deeper_mm is not None:
            own["armhole_mm"] = depth + armhole_deeper_mm
        plans.append(SizePlan(name=size.name, body_mm=body, **own))
    return tuple(plans)


def size_run(plan: PiecePlan, sizes: Sequence[SizePlan], gauges: PieceGauges) -> SizeRun:
    """Every size of ``plan`` worked out. With edge stitches left to the program, one number for all sizes is tried first.

    Raises RefusedError, naming the size, if one cannot be worked.
    """
    if not sizes:
        raise RefusedError("A run needs at least one size.")
    common = _one_number_of_edges(plan, sizes, gauges)
    worked = tuple(_worked(common, size, gauges) for size in sizes)
    same = tuple(replace(size, same_as=_same_as(size, worked)) for size in worked)
    yarns = [size.piece.yarn for size in same if size.piece.yarn is not None]
    return SizeRun(
        sizes=same,
        yarn=together(yarns, gauges.yarn, gauges.assumptions.reserve) if len(yarns) == len(same) else None,
        same=tuple(_same_notes(same)),
    )


def remedies(run: SizeRun, plan: PiecePlan, sizes: Sequence[SizePlan], gauges: PieceGauges) -> tuple[SizesRemedy, ...]:
    """What would part the sizes of ``run``, worked out from the rest, that come out the same; empty if all differ."""
    if run.all_differ:
        return ()
    return (*_edges_that_part(plan, sizes, gauges), *_half_repeats(plan, sizes, gauges), *_other_hooks(run, plan, gauges))


def body_of(plan: PiecePlan, size: SizePlan) -> float:
    """How far round the body a size is, in mm. Raises RefusedError, naming the size, if neither it nor the plan says."""
    body = plan.body_mm if size.body_mm is None else size.body_mm
    if body is None:
        raise RefusedError(f"Size {size.name} has no body measure: give it.")
    return body


def plan_for(plan: PiecePlan, size: SizePlan) -> PiecePlan:
    """The run's plan for one size, its width coming from its body measure. Raises RefusedError as ``body_of``."""
    return replace(size.plan(plan), width_mm=None, body_mm=body_of(plan, size))


def _worked(plan: PiecePlan, size: SizePlan, gauges: PieceGauges) -> SizeNumbers:
    body, own = body_of(plan, size), plan_for(plan, size)
    try:
        return SizeNumbers(name=size.name, body_mm=body, piece=work_out(own, gauges))
    except FirstStitchUnknownError:
        raise  # so it is with every size
    except RefusedError as refused:
        raise RefusedError(f"Size {size.name}: {refused}") from refused


def _one_number_of_edges(plan: PiecePlan, sizes: Sequence[SizePlan], gauges: PieceGauges) -> PiecePlan:
    """The plan with one number of edge stitches for all sizes, if with it all come near enough; else each size takes its own."""
    if plan.edge_stitches is not None or gauges.edge is None or not takes_edges(plan, gauges):
        return plan
    targets = [stitches_target(plan_for(plan, size), gauges) for size in sizes]
    rule, width = chain_rule(plan, gauges), stitch_width(plan, gauges)
    each = edges_for_all(targets, width, rule, gauges.edge, gauges.assumptions.most_edge_stitches)
    for target in targets:
        options = chains_with_edges(target, width, rule, gauges.edge, each)
        if edges_wanted(recommended(options)):
            return plan
    return replace(plan, edge_stitches=each)


def _same_as(size: SizeNumbers, others: Sequence[SizeNumbers]) -> tuple[str, ...]:
    return tuple(o.name for o in others if o is not size and abs(o.piece.width.mm - size.piece.width.mm) < SAME_MM)


def _same_notes(sizes: Sequence[SizeNumbers]) -> list[AllAlike]:
    names = [size.name for size in sizes]
    groups = [sorted((size.name, *size.same_as), key=names.index) for size in sizes if size.same_as]
    return [AllAlike(tuple(group)) for place, group in enumerate(groups) if group not in groups[:place]]


def _edges_that_part(plan: PiecePlan, sizes: Sequence[SizePlan], gauges: PieceGauges) -> list[SizesRemedy]:
    """One number of edge stitches for all sizes that parts them: the least that comes within 5 mm of the best; else as needed."""
    if plan.sideways or not takes_edges(plan, gauges):
        return []
    parting: dict[int, float] = {}
    for each in range(1, gauges.assumptions.most_edge_stitches + 1):
        miss = _miss_if_parted(replace(plan, edge_stitches=each), sizes, gauges)
        if miss is not None:
            parting[each] = miss
    if not parting:
        needed = replace(plan, edge_stitches=None)
        if _miss_if_parted(_one_number_of_edges(needed, sizes, gauges), sizes, gauges) is None:
            return []
        return [SizesRemedy(EdgesPart(None), needed)]
    each = next(each for each, miss in parting.items() if miss <= min(parting.values()) + NEAR_MM)
    return [SizesRemedy(EdgesPart(each), replace(plan, edge_stitches=each))]


def _half_repeats(plan: PiecePlan, sizes: Sequence[SizePlan], gauges: PieceGauges) -> list[SizesRemedy]:
    if plan.sideways or plan.in_round or plan.half_repeats or gauges.pattern.half_plus is None:
        return []
    halved = replace(plan, half_repeats=True)
    if _miss_if_parted(halved, sizes, gauges) is None:
        return []
    return [SizesRemedy(Plain.HALF_REPEATS_PART, halved)]


def _miss_if_parted(plan: PiecePlan, sizes: Sequence[SizePlan], gauges: PieceGauges) -> float | None:
    """The widest miss of all sizes in mm, of a plan that is not worked sideways; None as soon as two come out the same."""
    widths: list[float] = []
    miss = 0.0
    for size in sizes:
        own = plan_for(plan, size)
        chain, _ = chosen_chain(stitches_target(own, gauges), own, gauges)
        if any(abs(chain.mm - width) < SAME_MM for width in widths):
            return None
        widths.append(chain.mm)
        miss = max(miss, abs(chain.difference_mm))
    return miss


def _other_hooks(run: SizeRun, plan: PiecePlan, gauges: PieceGauges) -> list[SizesRemedy]:
    """The size furthest from its width among the same ones, and the pitch with which its numbers would meet it.

    Not one that is to be as wide as another: those are one size until one of them gets a body of its own.
    """
    asked = [size.piece.width.wanted_mm for size in run.sizes]
    alone = [size for size in run.sizes if size.same_as and asked.count(size.piece.width.wanted_mm) == 1]
    if not alone:
        return []
    furthest = max(alone, key=lambda size: abs(size.piece.width.difference_mm))
    width = furthest.piece.width
    if width.mm <= 0 or abs(width.difference_mm) < 1.0:
        return []
    pitch = gauges.pitch(plan.round_body)
    wanted = pitch * width.wanted_mm / width.mm
    return [SizesRemedy(HookParts(furthest.name, plan.round_body, wanted, pitch), None)]
