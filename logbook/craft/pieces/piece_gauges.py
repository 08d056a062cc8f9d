"""Everything that swatches say of a piece: gauges as finished, pulled and hung, edge stitches, and the weight of a stitch."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from logbook.craft.gauges.drift import Drifts, combined
from logbook.craft.gauges.hanging import HangingTrial
from logbook.craft.gauges.washing import FinishedGauge, finished_gauge, is_plain
from logbook.craft.pieces.edge_stitches import EdgeStitch
from logbook.craft.pieces.fit import Give
from logbook.craft.pieces.yarn_needed import StitchWeight, stitch_weight
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.gauge import Gauge
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, gauges_of
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceGauges:
    """What a piece is reckoned with. ``rows`` and what follows is None, or empty, where nothing was measured.

    ``stitches``, ``rows`` and ``edge`` are those of a whole piece: the swatch's with the lean of the hand counted in, if it is
    (``leaning``); ``weight`` and ``minutes_a_stitch`` are the swatch's. ``condition`` is the state that finished sizes speak of,
    ``gauges`` all gauges by condition and direction. ``swatch_grams``, ``hung_grams`` and ``hung_clip_mm`` are those of the
    swatch that hung.
    """

    pattern: StitchPattern
    stitches: FinishedGauge
    rows: FinishedGauge | None
    drift: Drifts
    assumptions: Assumptions
    condition: Condition = Condition.WASHED
    gauges: Mapping[tuple[Condition, Direction], Gauge] = field(default_factory=dict)
    edge: EdgeStitch | None = None
    weight: StitchWeight | None = None
    swatch_grams: float | None = None
    hung_grams: float | None = None
    hung_clip_mm: float | None = None
    yarn: Yarn = field(default_factory=Yarn)
    minutes_a_stitch: float | None = None

    def leaning(self) -> "PieceGauges":
        """The same of the swatch's gauges, with the lean of the hand counted in."""
        return replace(
            self,
            stitches=self.stitches.times(self.drift.stitches.factor),
            rows=self.rows and self.rows.times(self.drift.rows.factor),
            edge=self.edge and self.edge.times(self.drift.stitches.factor, self.drift.rows.factor),
        )

    def finished(self, direction: Direction) -> FinishedGauge:
        """The gauge of finished sizes in a direction. Raises RefusedError if the rows are asked for and were not measured."""
        if direction is Direction.STITCHES:
            return self.stitches
        if self.rows is None:
            raise RefusedError("The rows of this swatch were not measured: measure how far some whole rows reach.")
        return self.rows

    def pitch(self, direction: Direction) -> float:
        """The finished pitch in a direction, in mm. Raises RefusedError as ``finished``."""
        return self.finished(direction).pitch_mm

    def give(self, round_body: Direction) -> Give | None:
        """What the cloth gives when pulled in the direction that runs round the body; None if that was not measured.

        Pulled sideways is along the stitches, pulled lengthwise along the rows.
        """
        pulled = Condition.SIDEWAYS if round_body is Direction.STITCHES else Condition.LENGTHWISE
        change = self._change(pulled, round_body)
        if change is None:
            return None
        other = self._change(pulled, turned_direction(round_body))
        return Give(share=change[0], half_width=change[1], other_change=other[0] if other else None)

    def _change(self, pulled: Condition, direction: Direction) -> tuple[float, float | None] | None:
        after, before = self.gauges.get((pulled, direction)), self.gauges.get((self.condition, direction))
        if after is None or before is None:
            return None
        ratio, sure = after.pitch_mm / before.pitch_mm, combined(after.give_or_take, before.give_or_take)
        return ratio - 1, None if sure is None else ratio * sure

    def trial(self, up: Direction) -> HangingTrial | None:
        """The swatch's trial of hanging in the direction that runs up the body; None if it was not made."""
        hung, flat = self.gauges.get((Condition.HUNG, up)), self.gauges.get((self.condition, up))
        if hung is None or flat is None or self.swatch_grams is None or self.hung_clip_mm is None:
            return None
        return HangingTrial(
            swatch_grams=self.swatch_grams, hung_grams=self.hung_grams or 0.0, clip_mm=self.hung_clip_mm, hung=hung, washed=flat
        )


def turned_direction(direction: Direction) -> Direction:
    """The other direction of the cloth."""
    return Direction.ROWS if direction is Direction.STITCHES else Direction.STITCHES


def gauges_for(
    swatch: Swatch,
    others: Iterable[Swatch],
    drift: Drifts,
    assumptions: Assumptions,
    condition: Condition = Condition.WASHED,
    edge: Swatch | None = None,
) -> PieceGauges:
    """What ``swatch`` and the ``others`` (who lend washing and edge stitches) say; ``edge`` is the swatch chosen for the edges.

    The lean of the hand is not counted in yet. Raises RefusedError as ``finished_gauge``, and if the chosen swatch was not
    measured in the state of finished sizes.
    """
    lenders = tuple(others)
    stitches = finished_gauge(swatch, Direction.STITCHES, lenders, assumptions, condition)
    has_rows = any(swatch.readings_of(state, Direction.ROWS) for state in (Condition.WORKED, condition))
    return PieceGauges(
        pattern=swatch.pattern or StitchPattern(),
        stitches=stitches,
        rows=finished_gauge(swatch, Direction.ROWS, lenders, assumptions, condition) if has_rows else None,
        drift=drift,
        assumptions=assumptions,
        condition=condition,
        gauges=gauges_of(swatch, assumptions),
        edge=chosen_edge(edge, assumptions, condition) if edge else edge_for(swatch, stitches, lenders, assumptions, condition),
        weight=stitch_weight(swatch.swatch_grams, swatch.swatch_stitches, swatch.swatch_rows),
        swatch_grams=swatch.swatch_grams,
        hung_grams=swatch.hung_grams,
        hung_clip_mm=swatch.hung_clip_mm,
        yarn=swatch.yarn or Yarn(),
        minutes_a_stitch=swatch.minutes_a_stitch,
    )


def edge_for(
    swatch: Swatch, own: FinishedGauge, others: Iterable[Swatch], assumptions: Assumptions, condition: Condition
) -> EdgeStitch:
    """The plain stitch for edges: that of a plain swatch of the same yarn and hook, else as wide as the pattern's own stitch."""
    for other in others:
        same = other.yarn and swatch.yarn and other.yarn.uid == swatch.yarn.uid and other.hook_mm == swatch.hook_mm
        if same and is_plain(other) and other.uid != swatch.uid:
            edge = _edge_of(other, assumptions, condition)
            if edge is not None and other.pattern is not None and other.pattern.extra() is not None:
                return edge
    return EdgeStitch(
        stitch_mm=own.pitch_mm,
        give_or_take=own.give_or_take,
        extra_chains=(swatch.pattern.extra() if swatch.pattern else None) or 0,
        before_washing_mm=own.before_washing_mm,
    )


def chosen_edge(swatch: Swatch, assumptions: Assumptions, condition: Condition) -> EdgeStitch:
    """The stitch of the swatch chosen for the edges. Raises RefusedError if its stitches were not measured in that state."""
    edge = _edge_of(swatch, assumptions, condition)
    if edge is None:
        raise RefusedError(
            f"The stitches of swatch {swatch.tag} were not measured {condition.words}: measure them, or choose another swatch "
            "for the edges."
        )
    if swatch.pattern is None or swatch.pattern.extra() is None:
        raise RefusedError(
            f"The stitch of swatch {swatch.tag} has no turning chain: type its extra chains there, or choose another "
            "swatch for the edges."
        )
    return edge


def _edge_of(swatch: Swatch, assumptions: Assumptions, condition: Condition) -> EdgeStitch | None:
    gauges = gauges_of(swatch, assumptions)
    stitch, worked = gauges.get((condition, Direction.STITCHES)), gauges.get((Condition.WORKED, Direction.STITCHES))
    if stitch is None or swatch.pattern is None:
        return None
    return EdgeStitch(
        stitch_mm=stitch.pitch_mm,
        give_or_take=stitch.give_or_take,
        extra_chains=swatch.pattern.extra() or 0,
        before_washing_mm=worked.pitch_mm if worked else None,
        tag=swatch.tag,
        row=gauges.get((condition, Direction.ROWS)),
    )
