"""A garment in several sizes, from a swatch: worked out, written down, handed on as a workbook."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from logbook.book.logbook import Logbook
from logbook.craft.pieces.fit import Fit
from logbook.craft.pieces.notes import Note, Plain
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.piece_notes import gauge_remarks, remarks_on, warnings_on
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.body_chart import is_childs_size
from logbook.craft.sizes.pattern_lines import WrittenSizes, pattern_text
from logbook.craft.sizes.published_run import PublishedRun
from logbook.craft.sizes.size_run import SizeNumbers, SizeRun, SizesRemedy, plan_for, remedies, size_run
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units
from logbook.craft.words.notation import PLAIN, written_in
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.sheets.atomic import write_text, write_zip
from logbook.sheets.run_workbook import write_run_workbook
from logbook.tasks.note_words import grouped_by_sizes, in_all_sizes, said
from logbook.tasks.pieces import Basis, PieceAnswer, answer_for, gauges_on
from logbook.tasks.written_rows import charts_for


@dataclass(frozen=True, slots=True, kw_only=True)
class RunAnswer:
    """A run worked out: what was wanted, the gauges it was reckoned with, its sizes, and what would part those that are alike."""

    basis: Basis
    plan: PiecePlan
    sizes: tuple[SizePlan, ...]
    gauges: PieceGauges
    run: SizeRun
    remedies: tuple[SizesRemedy, ...]

    @property
    def notes(self) -> tuple[Note, ...]:
        """What is to be said of the run as a whole, but for its gauges."""
        return (*self.run.cautions, *self.run.same, *(remedy.note for remedy in self.remedies))

    def piece(self, size: SizeNumbers) -> PieceAnswer:
        """One size as a piece by itself."""
        return answer_for(self.basis.swatch, self._plan_of(size), self.gauges, size.piece)

    def size_sentences(self, units: Units) -> tuple[str, ...]:
        """What is to be said of each size, with the sizes it is said of, then of the gauges. Plain ease stands in the table."""
        return (*in_all_sizes(self._own_sentences(units)), *said(self._of_gauges(), units))

    def grouped_sentences(self, units: Units) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """The same in groups, each under the sizes it is said of ("" for all)."""
        gauges = said(self._of_gauges(), units)
        groups = grouped_by_sizes(self._own_sentences(units))
        if groups and not groups[0][0]:
            return (("", (*groups[0][1], *gauges)), *groups[1:])
        return ((("", tuple(gauges)),) if gauges else ()) + groups

    def _own_sentences(self, units: Units) -> list[tuple[str, Sequence[str]]]:
        own: list[tuple[str, Sequence[str]]] = []
        for size in self.run.sizes:
            notes = (*warnings_on(self._plan_of(size), self.gauges, size.piece), *remarks_on(self.gauges, size.piece))
            own.append((size.name, said((n for n in notes if not (isinstance(n, Fit) and n.stretch_needed is None)), units)))
        return own

    def _of_gauges(self) -> tuple[Note, ...]:
        caution = (Plain.CHILDRENS_WEAR,) if is_childs_size(self.plan.name) and not self.run.cautions else ()
        rows = self.run.sizes[0].piece.rows is not None
        return (*caution, *gauge_remarks(self.basis.swatch, self.plan, self.gauges, rows=rows))

    def sentences(self, units: Units) -> tuple[str, ...]:
        """All that is to be said, each once."""
        return (*said(self.notes, units), *self.size_sentences(units))

    def _plan_of(self, size: SizeNumbers) -> PiecePlan:
        wanted = next(one for one in self.sizes if one.name == size.name)
        return replace(plan_for(self.plan, wanted), edge_stitches=size.piece.edge_stitches)

    def written(self, terms: Terms) -> WrittenSizes:
        """What the lines of the pattern are made of."""
        return WrittenSizes(plan=self.plan, sizes=self.run.sizes, swatch=self.basis.swatch, gauges=self.gauges, terms=terms)


def work_out_run(basis: Basis, plan: PiecePlan, sizes: Sequence[SizePlan], condition: Condition = Condition.WASHED) -> RunAnswer:
    """Every size of ``plan``. Raises RefusedError, in one sentence, naming the size, if one can't be."""
    return run_with(gauges_on(basis, condition, other_hands=True), basis, plan, sizes)


def run_with(gauges: PieceGauges, basis: Basis, plan: PiecePlan, sizes: Sequence[SizePlan]) -> RunAnswer:
    """Every size of ``plan``, from gauges that are worked out already. Raises RefusedError as ``work_out_run``."""
    names = [size.name for size in sizes]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise RefusedError(f"The size “{twice}” comes twice: give each size its own name.")
    run = size_run(plan, sizes, gauges)
    return RunAnswer(
        basis=basis, plan=plan, sizes=tuple(sizes), gauges=gauges, run=run, remedies=remedies(run, plan, sizes, gauges)
    )


def lines_of(answer: RunAnswer, terms: Terms) -> str:
    """The lines of the pattern."""
    return pattern_text(answer.written(terms))


def save_lines(lines: str, target: Path, book: Logbook | None = None) -> None:
    """Writes the lines to the text file ``target``. Raises RefusedError, in one sentence."""
    write_text(target, lines, never_over(book))


@written_in(PLAIN)
def save_run_workbook(
    answer: RunAnswer, terms: Terms, target: Path, book: Logbook | None = None, published: PublishedRun | None = None
) -> None:
    """Writes the run to the workbook ``target``, with what was ``published`` beside it. Raises RefusedError, in one sentence."""
    today = date.today().isoformat()
    write_zip(
        target,
        lambda file: write_run_workbook(
            file,
            answer.written(terms),
            answer.sizes,
            answer.run,
            said((*answer.run.cautions, *answer.run.same)),
            today,
            published,
            charts_for(answer.plan, answer.gauges.pattern),
        ),
        never_over(book),
    )


def never_over(book: Logbook | None) -> tuple[Path, ...]:
    """The files that nothing may be written over: the logbook that is open."""
    return (book.path,) if book else ()
