"""From the raw rows of a sheet to swatches, and to all that stands in the way of taking them in, at once.

Whether a uid or tag is known already is for the logbook to say, not for the sheet.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, TypeVar

from logbook.craft.swatches.fields import FIELDS, LogField, Owner
from logbook.craft.swatches.readings import Reading
from logbook.craft.swatches.stitch_pattern import StitchPattern
from logbook.craft.swatches.swatch import Swatch, TakenReading
from logbook.craft.swatches.swatch_fields import swatch_of
from logbook.craft.swatches.yarn import Yarn
from logbook.craft.words.numbers import grouped
from logbook.errors import RefusedError, UnreadableError
from logbook.sheets.cells import column_letters
from logbook.sheets.columns import typed_text
from logbook.sheets.limits import RawCell, RawRow, RawSheet
from logbook.sheets.progress import Progress, counted

MOST_PROBLEMS = 10_000
_HEADING = "the names of columns, such as tag, yarn and hook mm"
_BY_NAME = {field.name: field for field in FIELDS}
_NAMES = {Owner.YARN: _BY_NAME["yarn"], Owner.PATTERN: _BY_NAME["stitch pattern"]}
_READINGS = [field for field in FIELDS if field.owner is Owner.READINGS]
_UID, _TAG, _HOOK = _BY_NAME["uid"], _BY_NAME["tag"], _BY_NAME["hook mm"]

Values = dict[LogField, Any]
_UNREADABLE = object()
_ALL_DIFFERENT = ("uid", "tag", "notes")
_Record = TypeVar("_Record", Yarn, StitchPattern)


@dataclass(frozen=True, slots=True)
class SheetProblem:
    """One thing in the way: where it stands (``row`` as a spreadsheet shows it), what was expected, and a sentence for people."""

    sheet: str
    row: int
    column: str
    expected: str
    says: str


@dataclass(frozen=True, slots=True)
class SheetSwatch:
    """A swatch read from one row; its yarn and pattern are the sheet's, without uids."""

    row: int
    swatch: Swatch


@dataclass(frozen=True, slots=True)
class SheetSwatches:
    """What a sheet holds. A row with a problem is not among the ``good`` ones.

    ``columns`` are the names of those the sheet has: what a column that is not there would say of a swatch is not known, where
    an empty cell says it is empty.
    """

    good: tuple[SheetSwatch, ...]
    problems: tuple[SheetProblem, ...]
    columns: frozenset[str]


def swatches_of(sheet: RawSheet, progress: Progress | None = None) -> SheetSwatches:
    """Reads every row and names every problem, in the order of rows; ``progress`` hears of rows, and may raise to cancel.

    Raises RefusedError only if there are more than 10,000 problems: such a sheet is not the log.
    """
    if not sheet.rows or sheet.rows[0].number != 1:
        return _without_heading(sheet, "", "The first row is empty")
    names = _names(sheet.rows[0])
    if not any(name.casefold() in _BY_NAME for name in names):
        return _without_heading(sheet, names[0][:40] if names else "", "The first row names no column of the log")
    return _Reader(sheet).read(progress)


def _without_heading(sheet: RawSheet, column: str, what: str) -> SheetSwatches:
    return SheetSwatches((), (SheetProblem(sheet.name, 1, column, _HEADING, f"{what}: it must hold {_HEADING}."),), frozenset())


def _names(heading: RawRow) -> list[str]:
    return ["" if cell is None else " ".join(str(cell).split()) for cell in heading.cells]


class _Reader:
    """One pass over one sheet."""

    def __init__(self, sheet: RawSheet) -> None:
        self._sheet = sheet
        self._problems: list[SheetProblem] = []
        self._bad_rows: set[int] = set()
        self._fields = self._headings(sheet.rows[0])
        self._present = frozenset(field for field in self._fields if field is not None)
        self._read_before: dict[str, dict[str, Any]] = {field.name: {} for field in FIELDS}
        self._taken_before: dict[int, tuple[Any, tuple[TakenReading, ...]]] = {}
        self._of_owner = {owner: [field for field in self._present if field.owner is owner] for owner in _NAMES}
        self._first: dict[LogField, dict[Any, int]] = {_UID: {}, _TAG: {}}
        self._defined: dict[Owner, dict[str, dict[LogField, tuple[int, Any]]]] = {owner: {} for owner in _NAMES}
        self._records: dict[tuple[Owner, str], Any] = {}

    def read(self, progress: Progress | None) -> SheetSwatches:
        """The whole sheet. What a yarn or a pattern is, its last row may say: a swatch gets it when all rows are read."""
        rows = self._sheet.rows[1:]
        found = [self._row(row) for row in counted(rows, len(rows), progress)]
        good = [one for one in (self._whole(row) for row in found if row is not None) if one is not None]
        order = sorted(self._problems, key=lambda problem: problem.row)
        return SheetSwatches(tuple(good), tuple(order), frozenset(field.name for field in self._present))

    def _row(self, row: RawRow) -> SheetSwatch | None:
        """What the row says by itself; what is wrong with it is a problem."""
        values = self._values(row)
        for unique in (_UID, _TAG):
            self._refuse_twice(row.number, values.get(unique), unique)
        for owner, name in _NAMES.items():
            self._define(row.number, values, owner, values.get(name))
        for column, expected in missing(values, self._present if values.get(_UID) else None):
            self._problem(row.number, column, expected, f"The row needs {expected}.")
        if row.number in self._bad_rows:
            return None
        taken = tuple(one for field, value in values.items() if field.condition is not None for one in self._taken(field, value))
        return SheetSwatch(row.number, swatch_of(values, taken))

    def _taken(self, field: LogField, value: tuple[Reading, ...]) -> tuple[TakenReading, ...]:
        """The same text, which comes again and again, is held once."""
        if id(value) not in self._taken_before:
            assert field.condition is not None
            self._taken_before[id(value)] = (value, tuple(TakenReading(field.condition, reading) for reading in value))
        return self._taken_before[id(value)][1]

    def _whole(self, row: SheetSwatch) -> SheetSwatch | None:
        """The row's swatch with its yarn and pattern as all rows say them."""
        yarn, pattern = row.swatch.yarn, row.swatch.pattern
        whole = replace(
            row.swatch,
            yarn=yarn and self._record(Owner.YARN, yarn.name, Yarn),
            pattern=pattern and self._record(Owner.PATTERN, pattern.name, StitchPattern),
        )
        if whole.pattern is not None:
            try:
                whole.pattern.extra()
            except RefusedError as error:
                self._problem(row.row, "extra chains", "chains that agree with the first stitch and skipped chains", str(error))
        return None if row.row in self._bad_rows else SheetSwatch(row.row, whole)

    def _record(self, owner: Owner, name: str, kind: type[_Record]) -> _Record:
        if (owner, name) not in self._records:
            said = {field.attribute: value for field, (_, value) in self._defined[owner][name].items()}
            self._records[owner, name] = kind(**said)
        found: _Record = self._records[owner, name]
        return found

    def _headings(self, heading: RawRow) -> tuple[LogField | None, ...]:
        """The field of each column, None where it has none."""
        names = _names(heading)
        found = [_BY_NAME.get(name.casefold()) for name in names]
        for place, (name, field) in enumerate(zip(names, found, strict=True)):
            if name and field is None:
                says = f"There is no column “{name[:40]}” in the log: rename or delete it."
                self._problem(1, name[:40], "a column of the log", says)
            elif field is not None and field in found[:place]:
                says = f"The column “{field.name}” is there twice: delete one."
                self._problem(1, field.name, "each column once", says)
                found[place] = None
        return tuple(found)

    def _values(self, row: RawRow) -> Values:
        """What the row's cells say; an unreadable cell is a problem and marked so."""
        values: Values = {}
        for place, field in enumerate(self._fields):
            if field is not None:
                cell = row.cells[place] if place < len(row.cells) else None
                values[field] = self._value(row.number, field, cell)
        for place, cell in enumerate(row.cells):
            if cell not in (None, "") and (place >= len(self._fields) or not self._headed(place)):
                column = column_letters(place + 1)
                says = f"Column {column} has no heading, but a cell here is filled: name the column, or empty the cell."
                self._problem(row.number, column, "an empty cell, as there is no heading above it", says)
        return values

    def _headed(self, place: int) -> bool:
        return self._sheet.rows[0].cells[place] not in (None, "")

    def _value(self, row: int, field: LogField, cell: RawCell) -> Any:
        try:
            text = typed_text(field, cell)
            known = self._read_before[field.name]
            if text not in known:
                if field.name in _ALL_DIFFERENT:
                    return field.value(text)
                known[text] = field.value(text)
            return known[text]
        except UnreadableError as error:
            self._problem(row, field.name, field.expected, str(error))
            return _UNREADABLE

    def _refuse_twice(self, number: int, value: Any, field: LogField) -> None:
        if value in (None, "", _UNREADABLE):
            return
        row = self._first[field].setdefault(value, number)
        if row != number:
            says = f"Row {row} has the {field.name} “{value}” too: give each row one of its own."
            self._problem(number, field.name, f"a {field.name} that no other row has", says)

    def _define(self, number: int, values: Values, owner: Owner, called: Any) -> None:
        """Each field of a yarn or pattern is as the first row that fills it says. What a later row denies is a problem."""
        if called is _UNREADABLE:
            return
        own = {f: values[f] for f in self._of_owner[owner] if values[f] is not _UNREADABLE and values[f] != f.empty}
        if not called:
            self._refuse_nameless(number, owner, own)
            return
        before = self._defined[owner].setdefault(called, {})
        for field, value in own.items():
            row, first = before.setdefault(field, (number, value))
            if value != first:
                self._refuse_denial(number, field, row, first, owner)

    def _refuse_nameless(self, number: int, owner: Owner, own: Values) -> None:
        if own:
            name = _NAMES[owner]
            says = f"The cell “{next(iter(own)).name}” is filled, but not “{name.name}”: give {name.expected}."
            self._problem(number, name.name, name.expected, says)

    def _refuse_denial(self, number: int, field: LogField, row: int, first: Any, owner: Owner) -> None:
        shown = f"“{field.shown(first)}”"
        what = "yarn" if owner is Owner.YARN else "stitch pattern"
        says = f"Row {row} has the same {what} with {shown} as its {field.name}: make both the same, or give it another name."
        self._problem(number, field.name, f"{shown}, as in row {row} for the same {what}", says)

    def _problem(self, row: int, column: str, expected: str, says: str) -> None:
        if len(self._problems) == MOST_PROBLEMS:
            first = self._problems[0]
            raise RefusedError(
                f"“{self._sheet.name}” has more than {grouped(MOST_PROBLEMS)} problems, so it seems not to be the log. "
                f"The first, in row {first.row}: {first.says}"
            )
        self._problems.append(SheetProblem(self._sheet.name, row, column, expected, says))
        if row > 1:
            self._bad_rows.add(row)


def missing(values: Mapping[LogField, Any], present: Collection[LogField] | None = None) -> Iterator[tuple[str, str]]:
    """What a swatch must say and ``values`` don't: the column and what was expected there.

    ``present``, for a row that may be an edit: only the fields the sheet has count, the others stay as they are.
    """
    for fields, expected in (
        (tuple(_NAMES.values()), "a yarn or a stitch pattern"),
        ((_HOOK,), "the hook in mm"),
        (tuple(_READINGS), "one reading at least, in any of the columns for readings"),
    ):
        if (present is None or set(fields).issubset(present)) and not any(values.get(field) for field in fields):
            yield fields[0].name, expected
