"""How many to chain: from a gauge said by hand or a logged swatch, and what is wanted, to the options."""

from collections.abc import Iterable
from dataclasses import dataclass

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.swatches import swatch_of_tag, swatches, swatches_of_yarn
from logbook.craft.gauges.drift import Drift, drift_of
from logbook.craft.gauges.washing import FinishedGauge, finished_gauge
from logbook.craft.pieces.chain_notes import notes_on_chain
from logbook.craft.pieces.notes import Note
from logbook.craft.pieces.options import Option, recommended
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import chain_rule, row_options, stitch_width, stitches_target
from logbook.craft.pieces.starting_chain import starting_chains
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.tasks.drift import learnt_drift


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainAnswer:
    """The options for a plan; ``rows`` are those for the width of a piece worked sideways, else empty.

    ``target_mm`` is what the chain's options aim at: the width, or sideways the length. ``finished`` is the stitches' gauge.
    """

    pattern: StitchPattern
    finished: FinishedGauge
    drift: Drift
    target_mm: float
    options: tuple[Option, ...]
    rows: tuple[Option, ...]
    notes: tuple[Note, ...]

    @property
    def stitch_mm(self) -> float:
        """Width of one stitch."""
        return self.finished.pitch_mm

    @property
    def repeat_mm(self) -> float:
        """Width of one repeat."""
        return self.finished.pitch_mm * (self.pattern.multiple or 1)

    @property
    def recommended(self) -> Option:
        """The one option to take."""
        return recommended(self.options)


def chain_by_hand(
    gauge: Iterable[Reading], pattern: StitchPattern, plan: PiecePlan, rows_gauge: Iterable[Reading] = ()
) -> ChainAnswer:
    """The answer for readings said by hand; they are taken as those of the finished fabric."""
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in (*gauge, *rows_gauge))
    return chain_of(Swatch(pattern=pattern, readings=readings), (), Assumptions(), drift_of(Assumptions()), plan)


def chain_for_tag(book: Logbook, tag: str, plan: PiecePlan, condition: Condition = Condition.WASHED) -> ChainAnswer:
    """The answer for the swatch with that tag."""
    with book.reading() as connection:
        swatch = swatch_of_tag(connection, tag)
        lenders = swatches(connection, swatches_of_yarn(connection, swatch.yarn.uid)) if swatch.yarn else []
        assumed, drift = kept_assumptions(connection), learnt_drift(connection)
    return chain_of(swatch, lenders, assumed, drift, plan, condition)


def chain_of(
    swatch: Swatch,
    others: Iterable[Swatch],
    assumed: Assumptions,
    drift: Drift,
    plan: PiecePlan,
    condition: Condition = Condition.WASHED,
) -> ChainAnswer:
    """The answer for a swatch; ``others`` may lend it their washing. Raises RefusedError, in one sentence, if there is none."""
    lenders = tuple(others)
    finished = finished_gauge(swatch, Direction.STITCHES, lenders, assumed, condition)
    row_gauge = finished_gauge(swatch, Direction.ROWS, lenders, assumed, condition) if plan.sideways else None
    pattern = swatch.pattern or StitchPattern()
    gauges = PieceGauges(pattern=pattern, stitches=finished, rows=row_gauge, drift=drift, assumptions=assumed)
    rows = row_options(plan, gauges) if plan.sideways else ()
    rule, target = chain_rule(plan, gauges), stitches_target(plan, gauges)
    options = starting_chains(target, stitch_width(plan, gauges), rule)
    return ChainAnswer(
        pattern=pattern,
        finished=finished,
        drift=drift,
        target_mm=target,
        options=options,
        rows=rows,
        notes=tuple(notes_on_chain(swatch, pattern, finished, row_gauge, drift, rule, target, options)),
    )
