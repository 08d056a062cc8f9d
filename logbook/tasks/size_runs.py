"""A garment in several sizes, from a swatch: worked out, written down, handed on as a workbook."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from logbook.book.logbook import Logbook
from logbook.craft.pieces.fit import fit_sentences
from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.sizes.pattern_lines import Written, pattern_text
from logbook.craft.sizes.size_run import Remedy, SizeNumbers, SizeRun, plan_for, remedies, size_run
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units
from logbook.craft.words.terms import Terms
from logbook.errors import RefusedError
from logbook.sheets.atomic import write_text, write_zip
from logbook.sheets.run_workbook import write_run_workbook
from logbook.tasks.pieces import Basis, PieceAnswer, answer_for, gauges_on


@dataclass(frozen=True, slots=True, kw_only=True)
class RunAnswer:
    """A run worked out: what was wanted, the gauges it was reckoned with, its sizes, and what would part those that are the same.

    ``notes`` are all sentences to be said of the run, each once.
    """

    basis: Basis
    plan: PiecePlan
    sizes: tuple[SizePlan, ...]
    gauges: PieceGauges
    run: SizeRun
    remedies: tuple[Remedy, ...]
    notes: tuple[str, ...]
    units: Units

    def piece(self, size: SizeNumbers) -> PieceAnswer:
        """One size as a piece by itself."""
        wanted = next(one for one in self.sizes if one.name == size.name)
        own = replace(plan_for(self.plan, wanted), edge_stitches=size.piece.edge_stitches)
        return answer_for(self.basis.swatch, own, self.gauges, size.piece, self.units)

    def written(self, terms: Terms) -> Written:
        """What the lines of the pattern are made of."""
        return Written(plan=self.plan, sizes=self.run.sizes, swatch=self.basis.swatch, gauges=self.gauges, terms=terms)


def work_out_run(
    basis: Basis, plan: PiecePlan, sizes: Sequence[SizePlan], condition: Condition = Condition.WASHED, units: Units = Units.CM
) -> RunAnswer:
    """Every size of ``plan``. Raises RefusedError, in one sentence, naming the size, if one can't be."""
    return run_with(gauges_on(basis, condition), basis, plan, sizes, units)


def run_with(gauges: PieceGauges, basis: Basis, plan: PiecePlan, sizes: Sequence[SizePlan], units: Units) -> RunAnswer:
    """Every size of ``plan``, from gauges that are worked out already. Raises RefusedError as ``work_out_run``."""
    names = [size.name for size in sizes]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise RefusedError(f"The size “{twice}” comes twice: give each size its own name.")
    run = size_run(plan, sizes, gauges, units)
    found = remedies(run, plan, sizes, gauges)
    first = answer_for(basis.swatch, plan, gauges, run.sizes[0].piece.with_notes(()), units)
    notes = (*run.notes, *(remedy.sentence for remedy in found), *_size_notes(run, units), *first.notes)
    return RunAnswer(
        basis=basis,
        plan=plan,
        sizes=tuple(sizes),
        gauges=gauges,
        run=run,
        remedies=found,
        notes=tuple(dict.fromkeys(notes)),
        units=units,
    )


def _size_notes(run: SizeRun, units: Units) -> list[str]:
    """What is to be said of each size, with the sizes it is said of; of all, without. Plain ease stands in the table."""
    said: dict[str, list[str]] = {}
    for size in run.sizes:
        fit = size.piece.fit
        plain = fit_sentences(fit, units) if fit and fit.stretch_needed is None else ()
        for note in size.piece.notes:
            if note not in plain:
                said.setdefault(note, []).append(size.name)
    every = len(run.sizes)
    return [note if len(names) == every else f"{', '.join(names)}: {note}" for note, names in said.items()]


def lines_of(answer: RunAnswer, terms: Terms) -> str:
    """The lines of the pattern."""
    return pattern_text(answer.written(terms))


def save_lines(lines: str, target: Path, book: Logbook | None = None) -> None:
    """Writes the lines to the text file ``target``. Raises RefusedError, in one sentence."""
    write_text(target, lines, never_over(book))


def save_run_workbook(answer: RunAnswer, terms: Terms, target: Path, book: Logbook | None = None) -> None:
    """Writes the run to the workbook ``target``. Raises RefusedError, in one sentence."""
    today = date.today().isoformat()
    write_zip(target, lambda file: write_run_workbook(file, answer.written(terms), answer.run, today), never_over(book))


def never_over(book: Logbook | None) -> tuple[Path, ...]:
    """The files that nothing may be written over: the logbook that is open."""
    return (book.path,) if book else ()
