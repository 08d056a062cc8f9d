"""How many to chain: from a gauge said by hand or a logged swatch, and what is wanted, to the options."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import NamedTuple

from logbook.book.assumptions import assumptions as kept_assumptions
from logbook.book.logbook import Logbook
from logbook.book.swatch_lists import swatches_of_yarn
from logbook.book.swatches import swatch_of_tag, swatches
from logbook.craft.gauges.drift import Drift, Drifts, drifts_of
from logbook.craft.gauges.washing import FinishedGauge, Washing, finished_gauge
from logbook.craft.pieces.chain_notes import notes_on_chain
from logbook.craft.pieces.notes import NotAllowed, Note, TheirWidth
from logbook.craft.pieces.options import Option, recommended
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_numbers import chain_rule, row_options, stitch_width, stitches_target
from logbook.craft.pieces.starting_chain import ChainRule, chains_around, starting_chains
from logbook.craft.swatches.assumptions import Assumptions
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern, with_first_stitch
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.words.typed_counts import Of, TypedCount
from logbook.errors import RefusedError
from logbook.tasks.drift import learnt_drift


@dataclass(frozen=True, slots=True, kw_only=True)
class ChainAnswer:
    """The options for a plan; ``rows`` are those for the width of a piece worked sideways, else empty.

    ``target_mm`` is what the chain's options aim at: the width, or sideways the length. ``finished`` is the swatch's
    gauge of the stitches, without the lean of the hand that ``drift`` counts in.
    ``chain``: the options are this many chains and the nearest others; then the target is the width they make.
    ``rows_washing``: how the change in washing of the rows is known.
    """

    pattern: StitchPattern
    finished: FinishedGauge
    drift: Drift
    target_mm: float
    options: tuple[Option, ...]
    rows: tuple[Option, ...]
    notes: tuple[Note, ...]
    chain: int | None = None
    rows_washing: Washing = Washing.MEASURED
    foundation_stitches: bool = False

    @property
    def allowed(self) -> bool:
        """Whether the pattern allows the ``chain`` that was asked about; so where none was."""
        return self.chain is None or any(option.chain == self.chain for option in self.options)

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


class Theirs(NamedTuple):
    """The gauge of another pattern, its readings as one, and how many its piece has."""

    gauge: Reading
    many: TypedCount

    def width(self, rule: ChainRule) -> TheirWidth:
        """What so many make; of chains, those are no stitches that ``rule`` has beside them.

        A bare number is of what the gauge counts. Raises FirstStitchUnknownError, or RefusedError for a chain without a stitch.
        """
        gauge, (number, of) = self.gauge, self.many
        if of is Of.NOT_SAID:
            return TheirWidth(number, gauge.counted.one, gauge, gauge.length_mm / gauge.number * number)
        stitches = replace(rule, foundation_stitches=False).stitches_of(number) if of is Of.CHAINS else number
        each = gauge.length_mm / gauge.number / (rule.multiple if gauge.counted.whole_repeats else 1)
        return TheirWidth(stitches, "stitch", gauge, each * stitches, number if of is Of.CHAINS else None)


def their_gauge(readings: Iterable[Reading]) -> Reading:
    """Readings of another pattern's gauge as one. Raises RefusedError if they count different things."""
    gauge = tuple(readings)
    if len({reading.counted for reading in gauge}) != 1:
        raise RefusedError("Their gauge counts both stitches and repeats: give only one of them.")
    number, length = (math.fsum(getattr(reading, name) for reading in gauge) for name in ("number", "length_mm"))
    return replace(gauge[0], number=number, length_mm=length, text="; ".join(reading.text for reading in gauge))


def chain_by_hand(
    gauge: Iterable[Reading],
    pattern: StitchPattern,
    plan: PiecePlan,
    rows_gauge: Iterable[Reading] = (),
    chain: TypedCount | None = None,
    theirs: Theirs | None = None,
) -> ChainAnswer:
    """The answer for readings said by hand; they are taken as those of the finished fabric."""
    readings = tuple(TakenReading(Condition.WASHED, reading) for reading in (*gauge, *rows_gauge))
    return chain_of(
        Swatch(pattern=pattern, readings=readings), (), Assumptions(), drifts_of(Assumptions()), plan, chain=chain, theirs=theirs
    )


def chain_for_tag(
    book: Logbook,
    tag: str,
    plan: PiecePlan,
    condition: Condition = Condition.WASHED,
    begins: StitchPattern | None = None,
    chain: TypedCount | None = None,
    theirs: Theirs | None = None,
) -> ChainAnswer:
    """The answer for the swatch with that tag; ``begins`` says the first stitch where its stitch pattern does not."""
    with book.reading() as connection:
        swatch = swatch_of_tag(connection, tag)
        lenders = swatches(connection, swatches_of_yarn(connection, swatch.yarn.uid)) if swatch.yarn else []
        assumed, drift = kept_assumptions(connection), learnt_drift(connection).of(swatch.worked_by)
    if begins is not None:
        swatch = replace(swatch, pattern=with_first_stitch(swatch.pattern or StitchPattern(), begins))
    return chain_of(swatch, lenders, assumed, drift, plan, condition, chain, theirs)


def chain_of(
    swatch: Swatch,
    others: Iterable[Swatch],
    assumed: Assumptions,
    drift: Drifts,
    plan: PiecePlan,
    condition: Condition = Condition.WASHED,
    chain: TypedCount | None = None,
    theirs: Theirs | None = None,
) -> ChainAnswer:
    """The answer for a swatch; ``others`` may lend it their washing.

    ``chain``: what so many make, and ``theirs``: as wide as theirs, are asked instead of a wanted width.
    Raises RefusedError, in one sentence, if there is none.
    """
    lenders = tuple(others)
    finished = finished_gauge(swatch, Direction.STITCHES, lenders, assumed, condition)
    row_gauge = finished_gauge(swatch, Direction.ROWS, lenders, assumed, condition) if plan.sideways else None
    pattern = swatch.pattern or StitchPattern()
    gauges = PieceGauges(pattern=pattern, stitches=finished, rows=row_gauge, drift=drift, assumptions=assumed).leaning()
    rule, width = chain_rule(plan, gauges), stitch_width(plan, gauges)
    their = theirs.width(rule) if theirs else None
    plan = replace(plan, width_mm=their.mm) if their else plan
    rows = row_options(plan, gauges) if plan.sideways else ()
    stitches = chain.number if chain is not None and chain.of is Of.STITCHES else None
    asked = rule.known_chain_of(stitches) if stitches is not None else chain.number if chain is not None else None
    options = starting_chains(stitches_target(plan, gauges), width, rule) if asked is None else chains_around(asked, width, rule)
    allowed = asked is None or any(option.chain == asked for option in options)
    first = () if allowed else (NotAllowed(asked or 0, rule, tuple(option.known_chain for option in options), stitches),)
    target = options[0].wanted_mm
    return ChainAnswer(
        pattern=pattern,
        finished=finished,
        drift=drift.stitches,
        target_mm=target,
        options=options,
        rows=rows,
        notes=(*((their,) if their else ()), *first, *notes_on_chain(swatch, finished, row_gauge, drift, rule, target, options)),
        chain=asked,
        rows_washing=row_gauge.washing if row_gauge else finished.washing,
        foundation_stitches=plan.foundation_stitches,
    )
