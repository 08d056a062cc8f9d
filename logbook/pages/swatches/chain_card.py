"""The starting chain of the swatch in hand for a width, said as a maker would; follows every key."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from logbook.craft.pieces.options import FirstStitchUnknownError, Option
from logbook.craft.swatches.conditions import Condition, Direction
from logbook.craft.swatches.fields import Owner
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.words.counting import counted
from logbook.craft.words.lengths import Units, show_difference, show_length
from logbook.craft.words.numbers import in_mark, show_number
from logbook.errors import RefusedError
from logbook.pages.pieces.plan_texts import FINISH
from logbook.pages.session import Session
from logbook.pages.swatches.chain_text import CHAIN
from logbook.pages.swatches.chain_texts import ChainTexts, read_chain, width_from_body
from logbook.pages.swatches.first_stitches import QUESTION, FirstStitchChoice, first_stitches, usual_forms
from logbook.pages.swatches.form_texts import PLAIN, Typed, readings_key
from logbook.tasks.browsing import assumptions_of, swatches_of_same_yarn
from logbook.tasks.chain import ChainAnswer, chain_of
from logbook.tasks.chain_words import LONG, apart_words, begin_words, repeats_words, sureness_words
from logbook.tasks.drift import drift_in
from logbook.tasks.note_words import said

NOT_YET = "—"


@dataclass(frozen=True, slots=True)
class OptionShown:
    """One option: its cells (chain, width, difference, repeats, base stitches, swatch ±, whole piece ±, before washing), the
    number large, and the sentence under it. ``brief`` says what the drawing and the notes do not say."""

    cells: tuple[str, ...]
    headline: str
    sentence: str
    option: Option
    brief: str


@dataclass(frozen=True, slots=True)
class RowsShown:
    """One option for the rows of a piece worked sideways: rows, width, difference, swatch ±, whole piece ±."""

    cells: tuple[str, ...]
    recommended: bool


@dataclass(frozen=True, slots=True)
class ChainCard:
    """What the card shows. Without an ``answer`` it says in ``missing`` what is wanting, and there are no options.

    ``errors`` has a sentence for a text at fault, ``body_width`` what a body measure comes to; ``begins``: there is no chain
    before one of these stitches is chosen. ``forms``: the two usual ways to begin its rows, one of them chosen.
    """

    missing: str = ""
    errors: Mapping[str, str] = field(default_factory=dict)
    body_width: str = ""
    answer: ChainAnswer | None = None
    options: tuple[OptionShown, ...] = ()
    rows: tuple[RowsShown, ...] = ()
    notes: tuple[str, ...] = ()
    begins: tuple[FirstStitchChoice, ...] = ()
    forms: tuple[FirstStitchChoice, ...] = ()

    @property
    def recommended(self) -> int | None:
        """The place of the option to take among ``options``."""
        return next((place for place, one in enumerate(self.options) if one.option.recommended), None)


class ChainMaker:
    """Makes the card; keeps what the logbook lends and assumes until ``refresh``."""

    def __init__(self, session: Session) -> None:
        self._session = session
        self._lenders: dict[str, Sequence[Swatch]] = {}
        self.refresh()

    def refresh(self) -> None:
        """The logbook has changed: takes from it again."""
        self._lenders.clear()
        self.assumed = assumptions_of(self._session.book)
        self.drift = drift_in(self._session.book)

    def card(self, typed: Typed, texts: ChainTexts) -> ChainCard:
        """The card for the swatch as typed and the plan as typed, both of this moment."""
        units = self._session.units
        read = read_chain(texts, units)
        if read.plan is None:
            return ChainCard(read.missing or next(iter(read.errors.values())), read.errors)
        body_width = _body_width(width_from_body(read.plan), units)
        at_fault = _at_fault(typed, FINISH[texts.finish])
        if at_fault:
            pattern = typed.swatch.pattern
            asked = CHAIN in typed.errors and pattern is not None and pattern.multiple is not None and pattern.extra() is None
            begins = first_stitches(pattern, self._session.terms) if asked else ()
            return ChainCard(at_fault, body_width=body_width, begins=begins)
        if not typed.swatch.readings:
            example = f"4 repeats = {in_mark('15.1')} cm"
            return ChainCard(f"The swatch has no readings yet. Add one, for example “{example}”.", body_width=body_width)
        others = self.lenders(typed.swatch) if _needs_washing(typed.swatch, read.condition) else ()
        try:
            drift = self.drift.of(typed.swatch.worked_by)
            answer = chain_of(typed.swatch, others, self.assumed, drift, read.plan, read.condition, read.chain, read.theirs)
        except FirstStitchUnknownError:
            begins = first_stitches(typed.swatch.pattern, self._session.terms)
            return ChainCard(f"For the width of a chain: {QUESTION}", body_width=body_width, begins=begins)
        except RefusedError as error:
            return ChainCard(str(error), body_width=body_width)
        first = answer.notes[: 1 if read.theirs or not answer.allowed else 0]
        before = "".join(f"{sentence} " for sentence in said(first, units))
        return ChainCard(
            body_width=body_width,
            answer=answer,
            options=tuple(_option(option, answer, units, before) for option in answer.options),
            rows=tuple(_rows(option, units) for option in answer.rows),
            notes=said(answer.notes[len(first) :], units),
            forms=usual_forms(typed.swatch.pattern, self._session.terms),
            begins=() if answer.recommended.chain is not None else first_stitches(typed.swatch.pattern, self._session.terms),
        )

    def lenders(self, swatch: Swatch) -> Sequence[Swatch]:
        """The logged swatches of its yarn."""
        if swatch.yarn is None or not swatch.yarn.uid:
            return ()
        if swatch.yarn.uid not in self._lenders:
            self._lenders[swatch.yarn.uid] = swatches_of_same_yarn(self._session.book, swatch)
        return self._lenders[swatch.yarn.uid]


def _needs_washing(swatch: Swatch, finish: Condition) -> bool:
    """Whether some direction was measured as worked alone: only then are others, of whom there may be many, asked for."""
    return any(
        swatch.readings_of(Condition.WORKED, direction) and not swatch.readings_of(finish, direction) for direction in Direction
    )


def _body_width(mm: float | None, units: Units) -> str:
    if mm is None:
        return ""
    return f"That makes the finished width {show_length(mm, units)}. Clear the body measure to type a width."


def _at_fault(typed: Typed, finish: Condition) -> str:
    """The sentence of a text in the form that the chain depends on and that can't be read; "" if all can."""
    keys = [name for name, one in PLAIN.items() if one.owner is Owner.PATTERN]
    keys += [CHAIN, readings_key(Condition.WORKED), readings_key(finish)]
    return next((f"In the form: {typed.errors[key]}" for key in keys if key in typed.errors), "")


def _option(option: Option, answer: ChainAnswer, units: Units, before: str = "") -> OptionShown:
    """``before`` is said first."""
    row = next((one for one in answer.rows if one.recommended), None)
    shown = "not known" if option.chain is None else str(option.chain)
    cells = (
        f"→ {shown}" if option.recommended else shown,
        show_length(option.mm, units),
        show_difference(option.difference_mm, units),
        show_number(option.repeats),
        str(option.count),
        _or_not_known(option.gauge_give_or_take_mm, units),
        _or_not_known(option.give_or_take_mm, units),
        _or_not_known(option.before_washing_mm, units),
    )
    headline = begin_words(option.chain, foundation_stitches=answer.foundation_stitches)
    sentence = _sentence(option, answer, row, units)
    if option.chain is not None and option.chain == answer.chain:
        what = "foundation stitches" if answer.foundation_stitches else "chains"
        headline = f"{option.chain} {what} make {show_length(option.mm, units)}"
    if option.chain is None:
        headline = f"{option.count} stitches"
        sentence = f"plus the turning chain: {QUESTION} {sentence}"
    brief = _brief(option, answer, units) if option.chain is not None and row is None else sentence
    headline = headline if row is None else f"{headline}, {counted(row.count, 'row')}"
    return OptionShown(cells, headline, f"{before}{sentence}", option, f"{before}{brief}")


def _brief(option: Option, answer: ChainAnswer, units: Units) -> str:
    """``46.5 cm: 12 repeats, 73 stitches, 0.5 cm wider than asked.``; how sure that is, where no drawing can show it."""
    counts = f"{repeats_words(option.repeats, answer.pattern.multiple or 1)}{option.count} stitches"
    said = f"{show_length(option.mm, units)}: {counts}"
    if answer.chain is None:
        said += f", {apart_words(option.difference_mm, units)}"
    if option.gauge_give_or_take_mm is None or option.give_or_take_mm is None:
        said += f"; {sureness_words(option.gauge_give_or_take_mm, option.give_or_take_mm, units, answer.finished.washing)}"
    return f"{said}."


def _sentence(option: Option, answer: ChainAnswer, row: Option | None, units: Units) -> str:
    """``46.5 cm — 12 repeats, 73 base stitches, 0.5 cm wider than asked; the swatch says give or take …``"""
    counts = f"{repeats_words(option.repeats, answer.pattern.multiple or 1)}{option.count} base stitches"
    size = show_length(option.mm, units)
    sure = sureness_words(option.gauge_give_or_take_mm, option.give_or_take_mm, units, answer.finished.washing)
    if row is None:
        apart = f", {apart_words(option.difference_mm, units)}" if answer.chain is None else ""
        said = f"{size} — {counts}{apart}; {sure}."
    else:
        width_sure = sureness_words(row.gauge_give_or_take_mm, row.give_or_take_mm, units, answer.rows_washing)
        said = (
            f"{size} long — {counts}, {apart_words(option.difference_mm, units, LONG)}; {sure}. "
            f"{row.count} rows make {show_length(row.mm, units)} of width, {apart_words(row.difference_mm, units)}; "
            f"{width_sure}."
        )
    if option.before_washing_mm is not None:
        said += f" Before washing it measures {show_length(option.before_washing_mm, units)}."
    return said


def _rows(option: Option, units: Units) -> RowsShown:
    cells = (
        f"→ {option.count}" if option.recommended else str(option.count),
        show_length(option.mm, units),
        show_difference(option.difference_mm, units),
        _or_not_known(option.gauge_give_or_take_mm, units),
        _or_not_known(option.give_or_take_mm, units),
    )
    return RowsShown(cells, option.recommended)


def _or_not_known(mm: float | None, units: Units) -> str:
    return "not known" if mm is None else show_length(mm, units)
