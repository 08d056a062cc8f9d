"""The size run of the piece in hand: all sizes in one table, what comes out the same, its lines; follows every key."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.craft.sizes.published_run import PublishedRun
from logbook.craft.sizes.run_numbers import SizeFigures, figures_of
from logbook.craft.sizes.size_run import plan_for
from logbook.craft.words.counting import counted
from logbook.craft.words.dates import date_words
from logbook.errors import RefusedError
from logbook.pages.pieces.piece_card import PieceCard, PieceMaker
from logbook.pages.pieces.plan_texts import AS_NEEDED, NO_EDGES, TICKED, ReadPlan
from logbook.pages.pieces.size_texts import ReadSizes
from logbook.pages.session import Session
from logbook.tasks.note_words import said
from logbook.tasks.run_words import Change, changes_today, shown
from logbook.tasks.set_runs import published
from logbook.tasks.size_runs import RunAnswer, lines_of, run_with

NO_SIZES = "No sizes yet: take them from a body chart, or add one."


@dataclass(frozen=True, slots=True)
class RunCard:
    """What the card shows. Without an ``answer`` it says in ``missing`` what is wanting, and there are no ``rows``.

    ``rows`` are the cells of each size; ``same`` says which come out the same, ``remedies`` what would part them, with
    the plan that does so; ``yarn`` is that of all sizes. ``set_run`` is the run as it was published, with ``set_words`` on it and
    what ``changes`` today; ``lines`` are those of the pattern: of a set run as published. ``notes`` stand under the sizes they
    are said of, "" for all.
    """

    missing: str = ""
    rows: Sequence[tuple[str, ...]] = ()
    cautions: Sequence[str] = ()
    same: Sequence[str] = ()
    remedies: Sequence[tuple[str, PiecePlan | None]] = ()
    notes: Sequence[tuple[str, Sequence[str]]] = ()
    yarn: str = ""
    set_run: PublishedRun | None = None
    set_words: Sequence[str] = ()
    changes: Sequence[Change] = ()
    lines: str = ""
    answer: RunAnswer | None = None
    errors: Mapping[tuple[int, str], str] = field(default_factory=dict)

    @property
    def sizes(self) -> tuple[SizeFigures, ...]:
        """The numbers to hand on: as published, else of today; empty while there are none."""
        if self.set_run is not None:
            return self.set_run.sizes
        return tuple(figures_of(size) for size in self.answer.run.sizes) if self.answer else ()


class RunMaker:
    """Makes the card with what ``maker`` keeps of the logbook."""

    def __init__(self, session: Session, maker: PieceMaker) -> None:
        self._session, self._maker = session, maker

    def card(self, read: ReadPlan, sizes: ReadSizes, swatch: str, edge_swatch: str, saved: PlannedPiece | None) -> RunCard:
        """The card for the plan and the sizes as typed; ``saved`` may have a run that was set."""
        set_run, words = self._set(saved)
        nothing = RunCard(set_run=set_run, set_words=words, lines=set_run.lines if set_run else "", errors=sizes.errors)
        if not sizes.plans:
            return replace(nothing, missing=NO_SIZES)
        if sizes.errors:
            (place, _), sentence = next(iter(sizes.errors.items()))
            return replace(nothing, missing=f"Size {sizes.plans[place].name or place + 1}: {sentence}")
        if read.plan is None:
            return replace(nothing, missing=next(iter(read.errors.values()), read.missing))
        try:
            basis, gauges = self._maker.reckoned(swatch, edge_swatch, read.condition, other_hands=True)
            answer = run_with(gauges, basis, read.plan, sizes.plans)
        except RefusedError as error:
            return replace(nothing, missing=str(error))
        return self._shown(answer, nothing)

    def plan_of_size(self, read: ReadPlan, sizes: ReadSizes, name: str) -> ReadPlan:
        """The plan of the size of that name, else of the first; without sizes the plan itself."""
        if read.plan is None or not sizes.plans:
            return read
        place = next((place for place, plan in enumerate(sizes.plans) if plan.name == name), 0)
        size = sizes.plans[place]
        wrong = next((said for (at, key), said in sizes.errors.items() if at == place and key != "size"), "")
        if wrong:
            return replace(read, plan=None, missing=f"Size {size.name or place + 1}: {wrong}")
        try:
            return replace(read, plan=plan_for(read.plan, size))
        except RefusedError as error:
            return replace(read, plan=None, missing=str(error))

    def _shown(self, answer: RunAnswer, nothing: RunCard) -> RunCard:
        units, run = self._session.units, answer.run
        words, changes = list(nothing.set_words), tuple[Change, ...]()
        if nothing.set_run is not None:
            changes = changes_today(nothing.set_run, answer, units)
            words.append("Today these would be different:" if changes else "Today it would be the same.")
        return replace(
            nothing,
            rows=[tuple(shown(figures_of(size), name, units) for name in _CELLS) for size in run.sizes],
            cautions=said(run.cautions, units),
            same=said(run.same, units),
            remedies=[(said((remedy.note,), units)[0], remedy.plan) for remedy in answer.remedies],
            notes=answer.grouped_sentences(units),
            changes=changes,
            yarn=_yarn(answer),
            set_words=words,
            lines=nothing.lines or lines_of(answer, self._session.terms),
            answer=answer,
        )

    def _set(self, saved: PlannedPiece | None) -> tuple[PublishedRun | None, Sequence[str]]:
        try:
            run = published(saved) if saved else None
        except RefusedError as error:
            return None, (str(error),)
        if run is None:
            return None, ()
        return run, (f"Published on {date_words(run.date)} from swatch {run.tag}: the lines below are as they were then.",)


def told_once(piece: PieceCard, run: RunCard, size: str) -> tuple[PieceCard, RunCard]:
    """The card of the size in hand and that of all sizes, without what the other says: warnings stand with the size, notes under
    the sizes. A warning that holds for more sizes, but not for all, names them.
    """
    of = {sentence: sizes for sizes, sentences in run.notes for sentence in sentences}
    warnings = [warning if of.get(warning, "") in ("", size) else f"{of[warning]}: {warning}" for warning in piece.warnings]
    notes = [(sizes, [one for one in sentences if one not in piece.warnings]) for sizes, sentences in run.notes]
    return (
        replace(piece, warnings=warnings, notes=[note for note in piece.notes if note not in of]),
        replace(
            run,
            cautions=[caution for caution in run.cautions if caution not in piece.warnings],
            notes=[(sizes, sentences) for sizes, sentences in notes if sentences],
        ),
    )


def texts_with(remedy: PiecePlan, texts: Mapping[str, str]) -> dict[str, str]:
    """The texts of the form with a remedy applied."""
    each = remedy.edge_stitches
    edges = AS_NEEDED if each is None else str(each or NO_EDGES)
    return {**texts, "edge stitches": edges, "half repeats": TICKED if remedy.half_repeats else ""}


_CELLS = (
    "size", "body", "chain", "repeats", "edge stitches", "rows", "width", "length", "all round", "ease", "armhole at",
    "neck units", "yarn", "balls", "hours", "same as",
)  # fmt: skip


def _yarn(answer: RunAnswer) -> str:
    yarn = answer.run.yarn
    if yarn is None:
        return ""
    balls = "" if yarn.balls is None else f", {counted(yarn.balls, 'ball')} with the reserve"
    return f"Yarn for one of each size: {yarn.grams:.0f} g, give or take {yarn.give_or_take_grams:.0f} g{balls}."
