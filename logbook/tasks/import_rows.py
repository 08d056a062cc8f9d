"""The rows of a sheet of swatches compared with what the logbook knows: what is new, what differs, what stands in the way."""

import sqlite3
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from logbook.book import swatches as stored
from logbook.book.tags import free_tags
from logbook.craft.swatches.fields import FIELDS, Owner
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.swatch_fields import swatch_of, value_of, values_of
from logbook.craft.swatches.yarn import Yarn
from logbook.errors import RefusedError
from logbook.sheets.swatch_rows import SheetProblem, SheetSwatch, SheetSwatches, missing

_UID = next(field for field in FIELDS if field.name == "uid")


@dataclass(frozen=True, slots=True)
class Planned:
    """One row that can be taken in; ``changes`` names the fields that differ from the logbook's swatch (none if it is new)."""

    row: int
    swatch: Swatch
    is_new: bool
    changes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class KnownRecords:
    """What the logbook holds already: the swatches that the sheet names, by uid; uids by tag, yarns and patterns by name."""

    swatches: Mapping[str, Swatch]
    tags: Mapping[str, str]
    yarns: Mapping[str, Yarn]
    patterns: Mapping[str, StitchPattern]

    @staticmethod
    def of(connection: sqlite3.Connection, sheet: SheetSwatches) -> "KnownRecords":
        named = [row.swatch.uid for row in sheet.good if row.swatch.uid]
        swatches = {swatch.uid: swatch for swatch in stored.swatches(connection, named)}
        tags = dict(connection.execute("SELECT tag, uid FROM swatch").fetchall())
        yarns = {yarn.name: yarn for yarn in stored.yarns(connection).values()}
        patterns = {pattern.name: pattern for pattern in stored.stitch_patterns(connection).values()}
        return KnownRecords(swatches, tags, yarns, patterns)


class Planner:
    """Compares the rows of one sheet with what is known; what stands in the way is added to ``problems``."""

    def __init__(self, known: KnownRecords, sheet: SheetSwatches, sheet_name: str) -> None:
        self._known = known
        self._columns = sheet.columns
        self._sheet = sheet_name
        self._free_tags = free_tags({*known.tags, *(row.swatch.tag for row in sheet.good)})
        self.problems: list[SheetProblem] = []

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

    def _problems(self, row: SheetSwatch, said: Swatch, swatch: Swatch) -> Iterator[SheetProblem]:
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

    def _denials(self, row: SheetSwatch, said: Swatch, kept: Yarn | StitchPattern, owner: Owner) -> Iterator[SheetProblem]:
        """What the sheet says of a yarn or pattern against what the logbook says of it; an empty cell says nothing."""
        for field in FIELDS:
            if field.owner is owner:
                known, cell = getattr(kept, field.attribute), value_of(said, field)
                if cell not in (known, field.empty):
                    shown = f"“{field.in_form(known)}”"
                    says = f"The logbook has {shown} for the {owner.value} “{kept.name}”: make both agree."
                    yield self._problem(row, field.name, f"{shown}, as the logbook has it", says)

    def _problem(self, row: SheetSwatch, column: str, expected: str, says: str) -> SheetProblem:
        return SheetProblem(self._sheet, row.row, column, expected, says)


def _differing(before: Swatch, after: Swatch) -> Iterator[str]:
    """The names of the fields in which the two differ."""
    for field, old, new in zip(FIELDS, values_of(before), values_of(after), strict=True):
        if old != new:
            yield field.name


_Named = TypeVar("_Named", Yarn, StitchPattern)


def _filled(kept: _Named, said: _Named) -> _Named:
    blanks = {name: getattr(said, name) for name in kept.__dataclass_fields__ if getattr(kept, name) in (None, "")}
    return replace(kept, **blanks)
