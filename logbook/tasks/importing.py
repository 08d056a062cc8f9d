"""Taking a sheet of swatches in: read it, see what would happen, then do all of it in one step that can be undone."""

import sqlite3
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, TypeVar

from logbook.book import swatches as stored
from logbook.book.backups import state_of
from logbook.book.changes import Writing
from logbook.book.kept_records import KeptRow, put_rows
from logbook.book.logbook import Logbook
from logbook.book.tags import free_tags
from logbook.craft.swatches.fields import FIELDS, Owner
from logbook.craft.swatches.picture_names import picture_names
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.swatch_fields import swatch_of, value_of, values_of
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from logbook.sheets.reading import read_sheet
from logbook.sheets.swatch_rows import Problem, SheetSwatch, SheetSwatches, missing, swatches_of
from logbook.tasks.keeping import new_book
from logbook.tasks.kept_import import NOTHING_KEPT, KeptPlan, plan_kept, read_kept
from logbook.tasks.own_sheets import OwnSheet, Wishes, own_sheet
from logbook.tasks.pictures import along

__all__ = ["ImportPlan", "ImportResult", "Problem", "carry_out", "import_into", "import_into_new", "plan_import"]

Kept = tuple[tuple[KeptRow, ...], tuple[Problem, ...]]
_UID = next(field for field in FIELDS if field.name == "uid")


@dataclass(frozen=True, slots=True)
class Planned:
    """One row that can be taken in; ``changes`` names the fields that differ from the logbook's swatch (none if it is new)."""

    row: int
    swatch: Swatch
    is_new: bool
    changes: tuple[str, ...]


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
    problems: tuple[Problem, ...]
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


def plan_import(book: Logbook | None, path: Path, own: Wishes | None = None) -> ImportPlan:
    """Reads the sheet and compares it with the logbook (None: a new, empty one). Writes nothing.

    ``own``: the sheet is in the maker's own words, and what they say of it. Raises RefusedError if the file can't be taken at
    all; what is wrong in its rows is listed in the plan.
    """
    if book is not None and book.is_at(path):
        raise RefusedError(f"{path.name} is the logbook that is open: choose a sheet (.xlsx or .csv).")
    if own is None:
        return replace(plan_for(book, path.name, swatches_of(read_sheet(path)), kept=read_kept(path)), beside=path)
    found = own_sheet(path, own)
    return plan_for(book, path.name, found.swatches, found)


_NothingKept: Kept = ((), ())


def plan_for(
    book: Logbook | None, name: str, sheet: SheetSwatches, own: OwnSheet | None = None, kept: Kept = _NothingKept
) -> ImportPlan:
    """The same of swatches, and what is kept beside them, that were read already."""
    if book is None:
        return _with_kept(_planned(name, sheet, _Known({}, {}, {}, {}), own), None, kept)
    with book.reading() as connection:
        plan = replace(_planned(name, sheet, _Known.of(connection, sheet), own), state=state_of(connection))
        return _with_kept(plan, connection, kept)


def _with_kept(plan: ImportPlan, connection: sqlite3.Connection | None, kept: Kept) -> ImportPlan:
    if kept == _NothingKept:
        return plan
    uids = {row.swatch.uid for row in plan.sheet.good}
    if connection is not None:
        uids.update(uid for (uid,) in connection.execute("SELECT uid FROM swatch"))
    found = plan_kept(connection, *kept, uids)
    return replace(plan, kept=found, problems=(*plan.problems, *found.problems))


def carry_out(
    book: Logbook, plan: ImportPlan, *, good_rows_only: bool = False, progress: Callable[[int, int], None] | None = None
) -> ImportResult:
    """Writes the plan in one action, after a backup. ``progress`` gets (done, total) and may raise to cancel all of it.

    Raises RefusedError if the plan has problems, unless the good rows alone are wanted, and if the logbook was changed since in
    a way that makes another plan of it.
    """
    if plan.problems and not good_rows_only:
        raise RefusedError(
            f"{plan.name} has {len(plan.problems)} problems, so nothing was imported: correct them and import again."
        )
    rows = (*plan.added, *plan.changed)
    if rows or plan.kept.written:
        if not book.read_only:
            book.back_up_first()
        with book.writing(f"import {plan.name}") as writing:
            if state_of(writing.connection) != plan.state:
                again = _planned(plan.name, plan.sheet, _Known.of(writing.connection, plan.sheet), plan.own)
                problems = (*again.problems, *plan.kept.problems)
                if replace(again, kept=plan.kept, problems=problems, beside=plan.beside, state=plan.state) != plan:
                    raise RefusedError(f"The logbook was changed while {plan.name} was looked at: import it again.")
            _write(writing, rows, progress)
            put_rows(writing, plan.kept.written)
        _take_pictures(plan, book.path)
    return ImportResult(len(plan.added), len(plan.changed), plan.kept.sentence())


def _take_pictures(plan: ImportPlan, path: Path) -> None:
    """Those beside the sheet that its records name; one that is missing is said where it would be shown."""
    if plan.beside is not None:
        texts = [one.swatch.pictures for one in (*plan.added, *plan.changed)]
        texts += [str(row.values.get("pictures") or "") for row in plan.kept.written]
        along((name for text in texts for name in picture_names(text)), plan.beside, path)


def import_into(
    book: Logbook, sheet: Path, *, good_rows_only: bool = False, own: Wishes | None = None
) -> tuple[ImportPlan, ImportResult | None]:
    """Plans and carries out in one go; the result is None if there are problems and the good rows alone are not wanted."""
    plan = plan_import(book, sheet, own)
    if plan.problems and not good_rows_only:
        return plan, None
    return plan, carry_out(book, plan, good_rows_only=good_rows_only)


def import_into_new(
    path: Path, sheet: Path, *, good_rows_only: bool = False, own: Wishes | None = None
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


@dataclass(frozen=True, slots=True)
class _Known:
    """What the logbook holds already: the swatches that the sheet names, by uid; uids by tag, yarns and patterns by name."""

    swatches: Mapping[str, Swatch]
    tags: Mapping[str, str]
    yarns: Mapping[str, Yarn]
    patterns: Mapping[str, StitchPattern]

    @staticmethod
    def of(connection: sqlite3.Connection, sheet: SheetSwatches) -> "_Known":
        named = [row.swatch.uid for row in sheet.good if row.swatch.uid]
        swatches = {swatch.uid: swatch for swatch in stored.swatches(connection, named)}
        tags = dict(connection.execute("SELECT tag, uid FROM swatch").fetchall())
        yarns = {yarn.name: yarn for yarn in stored.yarns(connection).values()}
        patterns = {pattern.name: pattern for pattern in stored.stitch_patterns(connection).values()}
        return _Known(swatches, tags, yarns, patterns)


def _planned(name: str, sheet: SheetSwatches, known: _Known, own: OwnSheet | None = None) -> ImportPlan:
    planner = _Planner(known, sheet, name)
    planned = [one for one in (planner.plan(row) for row in sheet.good) if one is not None]
    return ImportPlan(
        name,
        tuple(one for one in planned if one.is_new),
        tuple(one for one in planned if not one.is_new and one.changes),
        tuple(sorted((*sheet.problems, *planner.problems), key=lambda problem: problem.row)),
        sheet,
        own,
    )


class _Planner:
    """Compares the rows of one sheet with what is known; what stands in the way is added to ``problems``."""

    def __init__(self, known: _Known, sheet: SheetSwatches, sheet_name: str) -> None:
        self._known = known
        self._columns = sheet.columns
        self._sheet = sheet_name
        self._free_tags = free_tags({*known.tags, *(row.swatch.tag for row in sheet.good)})
        self.problems: list[Problem] = []

    def plan(self, row: SheetSwatch) -> Planned | None:
        """The row as it would be written; None if something stands in its way."""
        before = self._known.swatches.get(row.swatch.uid)
        said = row.swatch if before is None else self._over(before, row.swatch)
        swatch = self._with_known_details(said)
        problems = list(self._problems(row, said, swatch))
        if problems:
            self.problems.extend(problems)
            return None
        if not swatch.tag:
            swatch = replace(swatch, tag=before.tag if before else next(self._free_tags))
        changes = () if before is None else tuple(_differing(before, swatch))
        return Planned(row.row, swatch, before is None, changes)

    def _over(self, before: Swatch, row: Swatch) -> Swatch:
        """A known swatch with the sheet's columns laid over it; a column that is not there says nothing.

        Nor does it say anything of the yarn or pattern beside its name, which may be another one now.
        """
        values: dict[Any, Any] = {_UID: before.uid}
        for field in FIELDS[1:]:
            stays = field.owner in (Owner.SWATCH, Owner.READINGS) or field.attribute == "name"
            values[field] = value_of(before if stays and field.name not in self._columns else row, field)
        return swatch_of(values)

    def _with_known_details(self, swatch: Swatch) -> Swatch:
        """What the logbook knows of the swatch's yarn and pattern stays; only its blanks are filled."""
        yarn, pattern = swatch.yarn, swatch.pattern
        if yarn is not None and yarn.name in self._known.yarns:
            yarn = _filled(self._known.yarns[yarn.name], yarn)
        if pattern is not None and pattern.name in self._known.patterns:
            pattern = _filled(self._known.patterns[pattern.name], pattern)
        return replace(swatch, yarn=yarn, pattern=pattern)

    def _problems(self, row: SheetSwatch, said: Swatch, swatch: Swatch) -> Iterator[Problem]:
        for column, expected in missing(dict(zip(FIELDS, values_of(swatch), strict=True))):
            yield self._problem(row, column, expected, f"The row needs {expected}.")
        owner = self._known.tags.get(swatch.tag)
        if owner is not None and owner != swatch.uid:
            says = f"Another swatch has the tag “{swatch.tag}”: choose another, or give that swatch's uid to change it."
            yield self._problem(row, "tag", "a tag that no other swatch has", says)
        for kept, kind in ((swatch.yarn, Owner.YARN), (swatch.pattern, Owner.PATTERN)):
            if kept is not None:
                yield from self._denials(row, said, kept, kind)
        if swatch.pattern is not None:
            try:
                swatch.pattern.extra()
            except RefusedError as error:
                yield self._problem(row, "extra chains", "chains that agree with what the logbook says of them", str(error))

    def _denials(self, row: SheetSwatch, said: Swatch, kept: Yarn | StitchPattern, owner: Owner) -> Iterator[Problem]:
        """What the sheet says of a yarn or pattern against what the logbook says of it; an empty cell says nothing."""
        for field in FIELDS:
            if field.owner is owner:
                known, cell = getattr(kept, field.attribute), value_of(said, field)
                if cell not in (known, field.empty):
                    shown = f"“{field.in_form(known)}”"
                    says = f"The logbook has {shown} for the {owner.value} “{kept.name}”: make both agree."
                    yield self._problem(row, field.name, f"{shown}, as the logbook has it", says)

    def _problem(self, row: SheetSwatch, column: str, expected: str, says: str) -> Problem:
        return Problem(self._sheet, row.row, column, expected, says)


def _differing(before: Swatch, after: Swatch) -> Iterator[str]:
    """The names of the fields in which the two differ."""
    for field, old, new in zip(FIELDS, values_of(before), values_of(after), strict=True):
        if old != new:
            yield field.name


_Named = TypeVar("_Named", Yarn, StitchPattern)


def _filled(kept: _Named, said: _Named) -> _Named:
    blanks = {name: getattr(said, name) for name in kept.__dataclass_fields__ if getattr(kept, name) in (None, "")}
    return replace(kept, **blanks)


def _write(writing: Writing, rows: tuple[Planned, ...], progress: Callable[[int, int], None] | None = None) -> None:
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
        stored.put_swatch(writing, replace(one.swatch, yarn=yarn and yarns[yarn], pattern=pattern and patterns[pattern]))
