"""Taking a sheet of swatches in: read it, see what would happen, then do all of it in one step that can be undone."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, TypeVar

from logbook.book import swatches as stored
from logbook.book.changes import Writing
from logbook.book.logbook import Logbook
from logbook.craft.fields import FIELDS, Owner
from logbook.craft.stitch_pattern import StitchPattern
from logbook.craft.swatch import Swatch
from logbook.craft.swatch_fields import swatch_of, value_of
from logbook.craft.yarn import Yarn
from logbook.errors import RefusedError
from logbook.sheets.reading import read_sheet
from logbook.sheets.swatch_rows import Problem, SheetSwatch, swatches_of
from logbook.tasks.keeping import new_book

__all__ = ["ImportPlan", "ImportResult", "Problem", "carry_out", "import_into", "import_into_new", "plan_import"]

_BY_NAME = {field.name: field for field in FIELDS}
_Named = TypeVar("_Named", Yarn, StitchPattern)


@dataclass(frozen=True, slots=True)
class Planned:
    """One row that can be taken in; ``changes`` names the fields that differ from the logbook's swatch (none if it is new)."""

    row: int
    swatch: Swatch
    is_new: bool
    changes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ImportPlan:
    """What an import would do. Rows that change nothing are in neither list."""

    name: str
    added: tuple[Planned, ...]
    changed: tuple[Planned, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class ImportResult:
    """How many swatches were added and changed."""

    added: int
    changed: int


def plan_import(book: Logbook | None, path: Path) -> ImportPlan:
    """Reads the sheet and compares it with the logbook (None: a new, empty one). Writes nothing.

    Raises RefusedError if the file can't be taken at all; what is wrong in its rows is listed in the plan.
    """
    if book is not None and book.is_at(path):
        raise RefusedError(f"{path.name} is the logbook that is open: choose a sheet (.xlsx or .csv).")
    sheet = swatches_of(read_sheet(path))
    known = _Known.of(book)
    planner = _Planner(known, sheet.columns, path.name)
    planned = [one for one in (planner.plan(row) for row in sheet.good) if one is not None]
    problems = sorted((*sheet.problems, *planner.problems), key=lambda problem: problem.row)
    return ImportPlan(
        path.name,
        tuple(one for one in planned if one.is_new),
        tuple(one for one in planned if not one.is_new and one.changes),
        tuple(problems),
    )


def carry_out(
    book: Logbook, plan: ImportPlan, *, good_rows_only: bool = False, progress: Callable[[int, int], None] | None = None
) -> ImportResult:
    """Writes the plan in one action, after a backup. ``progress`` gets (done, total) and may raise to cancel all of it.

    Raises RefusedError if the plan has problems, unless the good rows alone are wanted.
    """
    if plan.problems and not good_rows_only:
        raise RefusedError(f"{plan.name} has {len(plan.problems)} problems, so nothing was taken in: mend them and import again.")
    rows = (*plan.added, *plan.changed)
    book.back_up_once(again=True)
    with book.writing(f"import {plan.name}") as writing:
        named = _NamedRecords(writing)
        for done, one in enumerate(rows):
            if progress is not None:
                progress(done, len(rows))
            stored.put_swatch(writing, named.given_uids(one.swatch))
    return ImportResult(len(plan.added), len(plan.changed))


def import_into(book: Logbook, sheet: Path, *, good_rows_only: bool = False) -> tuple[ImportPlan, ImportResult | None]:
    """Plans and carries out in one go; the result is None if there are problems and the good rows alone are not wanted."""
    plan = plan_import(book, sheet)
    if plan.problems and not good_rows_only:
        return plan, None
    return plan, carry_out(book, plan, good_rows_only=good_rows_only)


def import_into_new(path: Path, sheet: Path, *, good_rows_only: bool = False) -> tuple[ImportPlan, ImportResult | None]:
    """The same into a new logbook at ``path``, made only if something is taken in. Raises RefusedError if it is there."""
    plan = plan_import(None, sheet)
    if plan.problems and not good_rows_only:
        return plan, None
    with new_book(path) as book:
        try:
            return plan, carry_out(book, plan, good_rows_only=good_rows_only)
        except BaseException:
            book.close()
            path.unlink(missing_ok=True)
            raise


@dataclass(frozen=True, slots=True)
class _Known:
    """What the logbook holds already."""

    swatches: Mapping[str, Swatch]
    tags: Mapping[str, str]
    yarns: Mapping[str, Yarn]
    patterns: Mapping[str, StitchPattern]

    @staticmethod
    def of(book: Logbook | None) -> "_Known":
        if book is None:
            return _Known({}, {}, {}, {})
        with book.reading() as connection:
            swatches = {swatch.uid: swatch for swatch in stored.swatches(connection)}
            yarns = {yarn.name: yarn for yarn in stored.yarns(connection).values()}
            patterns = {pattern.name: pattern for pattern in stored.stitch_patterns(connection).values()}
        return _Known(swatches, {swatch.tag: uid for uid, swatch in swatches.items()}, yarns, patterns)


class _Planner:
    """Compares the rows of one sheet with what is known; what stands in the way is added to ``problems``."""

    def __init__(self, known: _Known, columns: frozenset[str], sheet_name: str) -> None:
        self._known = known
        self._columns = columns
        self._sheet = sheet_name
        self._offered = set(known.tags)
        self.problems: list[Problem] = []

    def plan(self, row: SheetSwatch) -> Planned | None:
        """The row as it would be written; None if something stands in its way."""
        before = self._known.swatches.get(row.swatch.uid)
        swatch = row.swatch if before is None else self._over(before, row.swatch)
        problems = list(self._problems(row, swatch))
        if problems:
            self.problems.extend(problems)
            return None
        if not swatch.tag:
            swatch = replace(swatch, tag=stored.free_tag(self._offered))
        self._offered.add(swatch.tag)
        changes = () if before is None else tuple(f.name for f in FIELDS if value_of(before, f) != value_of(swatch, f))
        return Planned(row.row, swatch, before is None, changes)

    def _over(self, before: Swatch, row: Swatch) -> Swatch:
        """A known swatch with the sheet's columns laid over it; a column that is not there says nothing."""
        values: dict[Any, Any] = {
            field: value_of(row if field.name in self._columns else before, field) for field in FIELDS if field.name != "uid"
        }
        return swatch_of({_BY_NAME["uid"]: before.uid, **values})

    def _problems(self, row: SheetSwatch, swatch: Swatch) -> Iterator[Problem]:
        owner = self._known.tags.get(swatch.tag)
        if swatch.tag and owner is not None and owner != swatch.uid:
            yield self._problem(row, "tag", "a tag that no other swatch has", f"another swatch has the tag “{swatch.tag}”")
        for known, kind in ((swatch.yarn and self._known.yarns.get(swatch.yarn.name), Owner.YARN),
                            (swatch.pattern and self._known.patterns.get(swatch.pattern.name), Owner.PATTERN)):  # fmt: skip
            if known:
                yield from self._denials(row, swatch, known, kind)

    def _denials(self, row: SheetSwatch, swatch: Swatch, known: Yarn | StitchPattern, owner: Owner) -> Iterator[Problem]:
        """What the sheet says of a yarn or pattern against what the logbook says of it; an empty cell says nothing."""
        for field in FIELDS:
            if field.owner is owner:
                kept, said = getattr(known, field.attribute), value_of(swatch, field)
                if field.empty not in (kept, said) and kept != said:
                    shown = f"“{field.shown(kept)}”"
                    says = f"the logbook has {shown} for the {owner.value} “{known.name}”"
                    yield self._problem(row, field.name, f"{shown}, as the logbook has it", says)

    def _problem(self, row: SheetSwatch, column: str, expected: str, says: str) -> Problem:
        return Problem(self._sheet, row.row, column, expected, f"Row {row.row}, {column}: {says}; make both agree.")


class _NamedRecords:
    """The yarns and patterns an import speaks of, each written once: blanks of the logbook filled, nothing overwritten."""

    def __init__(self, writing: Writing) -> None:
        self._writing = writing
        self._yarns = {yarn.name: yarn for yarn in stored.yarns(writing.connection).values()}
        self._patterns = {pattern.name: pattern for pattern in stored.stitch_patterns(writing.connection).values()}
        self._written: set[tuple[str, str]] = set()

    def given_uids(self, swatch: Swatch) -> Swatch:
        """``swatch`` with its yarn and pattern as the logbook keeps them."""
        yarn = swatch.yarn and self._kept(self._yarns, swatch.yarn, "yarn", stored.put_yarn)
        pattern = swatch.pattern and self._kept(self._patterns, swatch.pattern, "pattern", stored.put_stitch_pattern)
        return replace(swatch, yarn=yarn, pattern=pattern)

    def _kept(self, known: dict[str, _Named], said: _Named, kind: str, put: Callable[[Writing, _Named], str]) -> _Named:
        if (kind, said.name) not in self._written:
            merged = _filled(known[said.name], said) if said.name in known else replace(said, uid="")
            known[said.name] = replace(merged, uid=put(self._writing, merged))
            self._written.add((kind, said.name))
        return known[said.name]


def _filled(kept: _Named, said: _Named) -> _Named:
    blanks = {name: getattr(said, name) for name in kept.__dataclass_fields__ if getattr(kept, name) in (None, "")}
    return replace(kept, **blanks)
