"""What follows from the piece in hand, said as a maker would; follows every key."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.drawing.drawing import Draw
from logbook.craft.pieces.notes import Plain
from logbook.craft.pieces.panel_drawing import joined_beneath, panel_alone
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.sizes.body_chart import speaks_of_a_child
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units, show_length
from logbook.errors import RefusedError
from logbook.pages.pieces.plan_texts import ReadPlan
from logbook.pages.session import Session
from logbook.tasks.note_words import said
from logbook.tasks.piece_words import counts, headline, sizes_in_short
from logbook.tasks.pieces import Basis, PieceAnswer, basis_of, gauges_on, piece_with

NOT_YET = "—"


@dataclass(frozen=True, slots=True)
class PieceCard:
    """What the card shows. Without an ``answer`` it says in ``missing`` what is wanting.

    ``body_width`` is what a body measure comes to; ``sizes`` has a line of cells (what it is, comes out, asked, before
    washing, swatch ±, whole piece ±) for width, length and marks; ``notes`` are without the warnings.
    """

    headline: str = NOT_YET
    missing: str = ""
    body_width: str = ""
    sentences: Sequence[str] = ()
    sizes: Sequence[tuple[str, ...]] = ()
    warnings: Sequence[str] = ()
    notes: Sequence[str] = ()
    draw: Draw | None = None
    draw_joined: Draw | None = None
    answer: PieceAnswer | None = None


class PieceMaker:
    """Makes the card; keeps what the logbook says of a swatch until another is chosen or ``refresh``."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._known: tuple[tuple[str, str, Condition], Basis, PieceGauges, PieceGauges] | None = None

    def refresh(self) -> None:
        """The logbook has changed: takes from it again."""
        self._known = None

    def card(self, read: ReadPlan, swatch: str, edge_swatch: str, size: str = "", notes: str = "") -> PieceCard:
        """The card for the plan as typed and the uids of its swatches; ``size``: the name of the size it is of."""
        if read.errors:
            return PieceCard(missing=f"In the form: {next(iter(read.errors.values()))}")
        if read.plan is None:
            return PieceCard(missing=read.missing)
        units = self._session.units
        try:
            basis, gauges = self.reckoned(swatch, edge_swatch, read.condition, other_hands=bool(size))
            body_width = self._body_width(read.plan, gauges, size)
            answer = piece_with(gauges, basis.swatch, read.plan)
        except RefusedError as error:
            return PieceCard(missing=str(error))
        childs = speaks_of_a_child(notes) and Plain.CHILDRENS_WEAR not in answer.warnings
        warnings = (Plain.CHILDRENS_WEAR, *answer.warnings) if childs else answer.warnings
        return PieceCard(
            headline=f"{size}: {headline(answer)}" if size else headline(answer),
            body_width=body_width,
            sentences=(sizes_in_short(answer, units), *counts(answer, units)),
            sizes=tuple(_sizes(answer, units)),
            warnings=said(warnings, units),
            notes=said(answer.remarks, units),
            draw=panel_alone(answer.plan, answer.gauges, answer.numbers, units),
            draw_joined=joined_beneath(answer.plan, answer.numbers, units),
            answer=answer,
        )

    def reckoned(self, swatch: str, edge_swatch: str, condition: Condition, *, other_hands: bool) -> tuple[Basis, PieceGauges]:
        """What the logbook says of these swatches; a run of sizes is for ``other_hands``.

        Raises RefusedError, in one sentence, if it is not enough.
        """
        key = (swatch, edge_swatch, condition)
        if self._known is None or self._known[0] != key:
            basis = basis_of(self._session.book, swatch, edge_swatch)
            self._known = (key, basis, gauges_on(basis, condition), gauges_on(basis, condition, other_hands=True))
        _, basis, own, others = self._known
        return basis, others if other_hands else own

    def _body_width(self, plan: PiecePlan, gauges: PieceGauges, size: str) -> str:
        if plan.body_mm is None:
            return ""
        width = show_length(plan.target_width(gauges.pitch(plan.round_body)), self._session.units)
        said = f"{'The whole' if plan.in_round else 'A panel'} is to be {width} wide."
        return f"Size {size}: {said[0].lower()}{said[1:]}" if size else said


def _sizes(answer: PieceAnswer, units: Units) -> Iterator[tuple[str, ...]]:
    numbers = answer.numbers
    for what, size in (("width", numbers.width), ("length", numbers.length)):
        if size is not None:
            lengths = (size.mm, size.wanted_mm, size.before_washing_mm, size.gauge_give_or_take_mm, size.give_or_take_mm)
            yield (what, *("not known" if mm is None else show_length(mm, units) for mm in lengths))
    neck = numbers.neck and numbers.neck.begins
    for what, mark in (("slit", numbers.slit), ("armhole", numbers.armhole), ("neck", neck)):
        if mark:
            yield (what, show_length(mark.true_mm, units), show_length(mark.wanted_mm, units), "", "", "")
    if numbers.fit is not None:
        yield ("all round", show_length(numbers.fit.around_mm, units), "", "", "", "")
