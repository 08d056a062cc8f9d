"""Taking a sheet of swatches in: read it, see what would happen, then do all of it in one step that can be undone."""

import sqlite3
from dataclasses import dataclass, replace
from pathlib import Path

from logbook.book import swatches as stored
from logbook.book.backups import state_of
from logbook.book.changes import Writing
from logbook.book.kept_records import KeptRow, put_rows
from logbook.book.logbook import Logbook
from logbook.craft.swatches.picture_names import picture_names
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from logbook.sheets.progress import Progress, counted
from logbook.sheets.reading import read_log
from logbook.sheets.swatch_rows import SheetProblem, SheetSwatches, swatches_of
from logbook.tasks.import_rows import KnownRecords, Planned, Planner
from logbook.tasks.keeping import new_book
from logbook.tasks.kept_import import NOTHING_KEPT, KeptPlan, kept_rows_of, plan_kept
from logbook.tasks.own_sheets import OwnSheet, SheetChoices, own_sheet
from logbook.tasks.pictures import along

__all__ = ["ImportPlan", "ImportResult", "SheetProblem", "carry_out", "import_into", "import_into_new", "plan_import"]

Kept = tuple[tuple[KeptRow, ...], tuple[SheetProblem, ...]]


@dataclass(frozen=True, slots=True)
class ImportPlan:
    """What an import would do, and the ``sheet`` it was planned from. Rows that change nothing are in neither list.

    ``own``: the maker's own sheet that it came from, None for a sheet of the log. ``kept``: what comes beside swatches.
    ``beside``: the file whose pictures lie beside it.
    ``state``: that of the logbook it was compared with.
    """

    name: str
    added: tuple[Planned, ...]
    changed: tuple[Planned, ...]
    problems: tuple[SheetProblem, ...]
    sheet: SheetSwatches
    own: OwnSheet | None = None
    kept: KeptPlan = NOTHING_KEPT
    beside: Path | None = None
    state: tuple[int, bytes] | None = None


@dataclass(frozen=True, slots=True)
class ImportResult:
    """How many swatches were added and changed; ``others`` says what came beside them."""

    added: int
    changed: int
    others: str = ""


def plan_import(
    book: Logbook | None, path: Path, own: SheetChoices | None = None, progress: Progress | None = None
) -> ImportPlan:
    """Reads the sheet and compares it with the logbook (None: a new, empty one). Writes nothing.

    ``own``: the sheet is in the maker's own words, and what they say of it. ``progress`` gets (done, total), 0 while that is
    unknown, and may raise to cancel. Raises RefusedError if the file can't be taken at
    all; what is wrong in its rows is listed in the plan.
    """
    if book is not None and book.is_at(path):
        raise RefusedError(f"{path.name} is the logbook that is open: choose a sheet (.xlsx or .csv).")
    if own is None:
        sheet, others = read_log(path, progress)
        found, kept = swatches_of(sheet, progress), kept_rows_of(others)
        return replace(plan_for(book, path.name, found, kept=kept, progress=progress), beside=path)
    own_found = own_sheet(path, own)
    return plan_for(book, path.name, own_found.swatches, own_found, progress=progress)


_NothingKept: Kept = ((), ())


def plan_for(
    book: Logbook | None,
    name: str,
    sheet: SheetSwatches,
    own: OwnSheet | None = None,
    kept: Kept = _NothingKept,
    progress: Progress | None = None,
) -> ImportPlan:
    """The same of swatches, and what is kept beside them, that were read already."""
    if book is None:
        return _with_kept(_planned(name, sheet, KnownRecords({}, {}, {}, {}), own, progress), None, kept)
    with book.reading() as connection:
        plan = _planned(name, sheet, KnownRecords.of(connection, sheet), own, progress)
        plan = replace(plan, state=state_of(connection))
        return _with_kept(plan, connection, kept)


def _with_kept(plan: ImportPlan, connection: sqlite3.Connection | None, kept: Kept) -> ImportPlan:
    if kept == _NothingKept:
        return plan
    uids = {row.swatch.uid for row in plan.sheet.good}
    if connection is not None:
        uids.update(uid for (uid,) in connection.execute("SELECT uid FROM swatch"))
    found = plan_kept(connection, *kept, uids)
    return replace(plan, kept=found, problems=(*plan.problems, *found.problems))


def carry_out(book: Logbook, plan: ImportPlan, *, good_rows_only: bool = False, progress: Progress | None = None) -> ImportResult:
    """Writes the plan in one action, after a backup. ``progress`` gets (done, total) and may raise to cancel all of it.

    Raises RefusedError if the plan has problems, unless the good rows alone are wanted, and if the logbook was changed since in
    a way that makes another plan of it.
    """
    if plan.problems and not good_rows_only:
        raise RefusedError(
            f"{plan.name} has problems ({len(plan.problems)}), so nothing was imported: correct the sheet and import again."
        )
    rows = (*plan.added, *plan.changed)
    if rows or plan.kept.written:
        if not book.read_only:
            book.back_up_first()
        with book.writing(f"import {plan.name}") as writing:
            if state_of(writing.connection) != plan.state and _planned_again(writing.connection, plan) != plan:
                raise RefusedError(f"The logbook was changed while {plan.name} was looked at: import it again.")
            _write(writing, rows, progress)
            put_rows(writing, plan.kept.written)
        _take_pictures(plan, book.path)
    return ImportResult(len(plan.added), len(plan.changed), plan.kept.sentence())


def _planned_again(connection: sqlite3.Connection, plan: ImportPlan) -> ImportPlan:
    """What is planned now of the sheet that ``plan`` was made of."""
    again = _planned(plan.name, plan.sheet, KnownRecords.of(connection, plan.sheet), plan.own)
    again = replace(again, beside=plan.beside, state=plan.state)
    return _with_kept(again, connection, (plan.kept.rows, plan.kept.unread))


def _take_pictures(plan: ImportPlan, path: Path) -> None:
    """Those beside the sheet that its records name; one that is missing is said where it would be shown."""
    if plan.beside is not None:
        texts = [one.swatch.pictures for one in (*plan.added, *plan.changed)]
        texts += [str(row.values.get("pictures") or "") for row in plan.kept.written]
        along((name for text in texts for name in picture_names(text)), plan.beside, path)


def import_into(
    book: Logbook, sheet: Path, *, good_rows_only: bool = False, own: SheetChoices | None = None
) -> tuple[ImportPlan, ImportResult | None]:
    """Plans and carries out in one go; the result is None if there are problems and the good rows alone are not wanted."""
    plan = plan_import(book, sheet, own)
    if plan.problems and not good_rows_only:
        return plan, None
    return plan, carry_out(book, plan, good_rows_only=good_rows_only)


def import_into_new(
    path: Path, sheet: Path, *, good_rows_only: bool = False, own: SheetChoices | None = None
) -> tuple[ImportPlan, ImportResult | None]:
    """The same into a new logbook at ``path``, made only if something can be taken in. Raises RefusedError if it is there."""
    plan = plan_import(None, sheet, own)
    if plan.problems and not good_rows_only:
        return plan, None

    def fill(writing: Writing) -> None:
        writing.label = f"import {plan.name}"
        _write(writing, plan.added)
        put_rows(writing, plan.kept.written)

    new_book(path, fill=fill).close()
    _take_pictures(plan, path)
    return plan, ImportResult(len(plan.added), 0, plan.kept.sentence())


def _planned(
    name: str, sheet: SheetSwatches, known: KnownRecords, own: OwnSheet | None = None, progress: Progress | None = None
) -> ImportPlan:
    planner = Planner(known, sheet, name)
    rows = counted(sheet.good, len(sheet.good), progress)
    planned = [one for one in (planner.plan(row) for row in rows) if one is not None]
    return ImportPlan(
        name,
        tuple(one for one in planned if one.is_new),
        tuple(one for one in planned if not one.is_new and one.changes),
        tuple(sorted((*sheet.problems, *planner.problems), key=lambda problem: problem.row)),
        sheet,
        own,
    )


def _write(writing: Writing, rows: tuple[Planned, ...], progress: Progress | None = None) -> None:
    """Writes the rows, and before each the yarn and pattern it names, those once."""
    yarns: dict[Yarn, Yarn] = {}
    patterns: dict[StitchPattern, StitchPattern] = {}
    for done, one in enumerate(rows):
        if progress is not None:
            progress(done, len(rows))
        yarn, pattern = one.swatch.yarn, one.swatch.pattern
        if yarn is not None and yarn not in yarns:
            yarns[yarn] = replace(yarn, uid=stored.put_yarn(writing, yarn))
        if pattern is not None and pattern not in patterns:
            patterns[pattern] = replace(pattern, uid=stored.put_stitch_pattern(writing, pattern))
        put = stored.put_new_swatch if one.is_new else stored.put_swatch
        put(writing, replace(one.swatch, yarn=yarn and yarns[yarn], pattern=pattern and patterns[pattern]))
