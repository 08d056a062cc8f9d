"""How many to chain: from a gauge said by hand or a logged swatch, and what is wanted, to the options."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.swatches import swatch_of_tag, swatches, swatches_of_yarn
from logbook.craft.gauges.drift import Drift, drift_of
from logbook.craft.gauges.washing import FinishedGauge, finished_gauge
from logbook.craft.pieces.fit import panel_width
from logbook.craft.pieces.length import RowRule, row_counts
from logbook.craft.pieces.options import Choose, Option, Parity, Pitch, recommended
from logbook.craft.pieces.starting_chain import ChainRule, starting_chains
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.words.lengths import NO_EASE, Ease
from logbook.errors import RefusedError
from logbook.tasks.chain_notes import notes_on
from logbook.tasks.drift import learnt_drift


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainWish:
    """What is wanted. Lengths in mm.

    The finished width is ``width_mm``, or comes from ``body_mm``, ``ease``, ``panels`` and ``seam_mm`` (per joined edge).
    ``edging_mm`` is added at each side. ``sideways_length_mm``: the piece is worked sideways and is this long; then the chain
    comes from the length and the rows from the width, and ``parity`` and ``choose`` speak of the rows.
    """

    width_mm: float | None = None
    body_mm: float | None = None
    ease: Ease = NO_EASE
    panels: int = 2
    seam_mm: float = 0.0
    edging_mm: float = 0.0
    in_round: bool = False
    round_plus: int = 0
    joined_after_row_1: bool = False
    foundation_stitches: bool = False
    half_repeats: bool = False
    parity: Parity = Parity.ANY
    choose: Choose = Choose.NEAREST
    sideways_length_mm: float | None = None
    condition: Condition = Condition.WASHED

    def target_mm(self) -> float:
        """The finished width of the piece. Raises RefusedError if neither a width nor a body measure is given."""
        if self.width_mm is not None:
            return self.width_mm
        if self.body_mm is None:
            raise RefusedError("Say the finished width, or the body measure and the ease.")
        if self.in_round:
            return panel_width(self.body_mm, self.ease, 1, 0.0)
        return panel_width(self.body_mm, self.ease, self.panels, self.seam_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainAnswer:
    """The options for a wish; ``rows`` are those for the width of a piece worked sideways, else empty.

    ``target_mm`` is what the chain's options aim at: the width, or sideways the length. ``finished`` is the stitches' gauge.
    """

    pattern: StitchPattern
    finished: FinishedGauge
    drift: Drift
    target_mm: float
    options: tuple[Option, ...]
    rows: tuple[Option, ...]
    notes: tuple[str, ...]

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
    gauge: Iterable[Reading], pattern: StitchPattern, wish: ChainWish, rows_gauge: Iterable[Reading] = ()
) -> ChainAnswer:
    """The answer for readings said by hand; they are taken as those of the finished fabric."""
    readings = tuple(TakenReading(wish.condition, reading) for reading in (*gauge, *rows_gauge))
    return chain_of(Swatch(pattern=pattern, readings=readings), (), Assumptions(), drift_of(Assumptions()), wish)


def chain_for_tag(book: Logbook, tag: str, wish: ChainWish) -> ChainAnswer:
    """The answer for the swatch with that tag."""
    with book.reading() as connection:
        swatch = swatch_of_tag(connection, tag)
        lenders = swatches(connection, swatches_of_yarn(connection, swatch.yarn.uid)) if swatch.yarn else []
        assumed, drift = kept_assumptions(connection), learnt_drift(connection)
    return chain_of(swatch, lenders, assumed, drift, wish)


def chain_of(swatch: Swatch, others: Iterable[Swatch], assumed: Assumptions, drift: Drift, wish: ChainWish) -> ChainAnswer:
    """The answer for a swatch; ``others`` may lend it their washing. Raises RefusedError, in one sentence, if there is none."""
    lenders = tuple(others)
    pattern = swatch.pattern or StitchPattern()
    finished = finished_gauge(swatch, Direction.STITCHES, lenders, assumed, wish.condition)
    rows: tuple[Option, ...] = ()
    row_gauge: FinishedGauge | None = None
    target = wish.target_mm()
    rule = _chain_rule(pattern, wish)
    if wish.sideways_length_mm is not None:
        row_gauge = finished_gauge(swatch, Direction.ROWS, lenders, assumed, wish.condition)
        height = Pitch.of(row_gauge, drift, 2 * wish.edging_mm)
        rows = row_counts(target, height, replace(RowRule.of(pattern), parity=wish.parity, choose=wish.choose))
        target = wish.sideways_length_mm
        rule = replace(rule, parity=Parity.ANY, choose=Choose.NEAREST)
    options = starting_chains(target, Pitch.of(finished, drift, 0.0 if rows else 2 * wish.edging_mm), rule)
    return ChainAnswer(
        pattern=pattern,
        finished=finished,
        drift=drift,
        target_mm=target,
        options=options,
        rows=rows,
        notes=tuple(notes_on(swatch, pattern, finished, row_gauge, drift, rule, target, options)),
    )


def _chain_rule(pattern: StitchPattern, wish: ChainWish) -> ChainRule:
    return replace(
        ChainRule.of(pattern),
        in_round=wish.in_round,
        round_plus=wish.round_plus,
        joined_after_row_1=wish.joined_after_row_1,
        foundation_stitches=wish.foundation_stitches,
        half_plus=pattern.half_plus if wish.half_repeats else None,
        parity=wish.parity,
        choose=wish.choose,
    )
