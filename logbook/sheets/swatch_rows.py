"""From the raw rows of a sheet to swatches, and to all that stands in the way of taking them in, at once.

Whether a uid or tag is known already is for the logbook to say, not for the sheet.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from logbook.craft.swatches.fields import FIELDS, Field, Owner
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.swatch_fields import swatch_of
from logbook.craft.words.numbers import grouped
from logbook.errors import RefusedError, UnreadableError
from logbook.sheets.cells import column_letters
from logbook.sheets.columns import typed_text
from logbook.sheets.limits import RawCell, RawRow, RawSheet

MOST_PROBLEMS = 10_000
_HEADING = "the names of columns, such as tag, yarn and hook mm"
_BY_NAME = {field.name: field for field in FIELDS}
_NAMES = {Owner.YARN: _BY_NAME["yarn"], Owner.PATTERN: _BY_NAME["stitch pattern"]}
_READINGS = [field for field in FIELDS if field.owner is Owner.READINGS]
_UID, _TAG, _HOOK = _BY_NAME["uid"], _BY_NAME["tag"], _BY_NAME["hook mm"]

Values = dict[Field, Any]
_UNREADABLE = object()


@dataclass(frozen=True, slots=True)
class Problem:
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
    problems: tuple[Problem, ...]
    columns: frozenset[str]


def swatches_of(sheet: RawSheet) -> SheetSwatches:
    """Reads every row and names every problem, in the order of rows.

    Raises RefusedError only if there are more than 10,000 problems: such a sheet is not the log.
    """
    if not sheet.rows or sheet.rows[0].number != 1:
        return _without_heading(sheet, "", "The first row is empty")
    names = _names(sheet.rows[0])
    if not any(name.casefold() in _BY_NAME for name in names):
        return _without_heading(sheet, names[0][:40] if names else "", "The first row names no column of the log")
    return _Reader(sheet).read()


def _without_heading(sheet: RawSheet, column: str, what: str) -> SheetSwatches:
    return SheetSwatches((), (Problem(sheet.name, 1, column, _HEADING, f"{what}: it must hold {_HEADING}."),), frozenset())


def _names(heading: RawRow) -> list[str]:
    return ["" if cell is None else " ".join(str(cell).split()) for cell in heading.cells]


class _Reader:
    """One pass over one sheet."""

    def __init__(self, sheet: RawSheet) -> None:
        self._sheet = sheet
        self._problems: list[Problem] = []
        self._bad_rows: set[int] = set()
        self._fields = self._headings(sheet.rows[0])
        self._present = frozenset(field for field in self._fields if field is not None)
        self._read_before: dict[tuple[Field, str], Any] = {}

    def read(self) -> SheetSwatches:
        """The whole sheet."""
        rows = [(row.number, self._values(row)) for row in self._sheet.rows[1:]]
        for unique in (_UID, _TAG):
            self._refuse_twice(rows, unique)
        records = {owner: self._records(rows, owner) for owner in _NAMES}
        good = []
        for number, values in rows:
            for owner, name in _NAMES.items():
                values |= records[owner].get(values.get(name), {})
            swatch = self._swatch(number, values)
            if swatch is not None and number not in self._bad_rows:
                good.append(SheetSwatch(number, swatch))
        order = sorted(self._problems, key=lambda problem: problem.row)
        return SheetSwatches(tuple(good), tuple(order), frozenset(field.name for field in self._present))

    def _headings(self, heading: RawRow) -> tuple[Field | None, ...]:
        """The field of each column, None where it has none."""
        names = _names(heading)
        found = [_BY_NAME.get(name.casefold()) for name in names]
        for place, (name, field) in enumerate(zip(names, found, strict=True)):
            if name and field is None:
                says = f"There is no column “{name[:40]}” in the log: rename it, or take it out."
                self._problem(1, name[:40], "a column of the log", says)
            elif field is not None and field in found[:place]:
                says = f"The column “{field.name}” is there twice: take one out."
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
                self._problem(row.number, column, "an empty cell, as no heading stands above it", says)
        return values

    def _headed(self, place: int) -> bool:
        return self._sheet.rows[0].cells[place] not in (None, "")

    def _value(self, row: int, field: Field, cell: RawCell) -> Any:
        try:
            text = typed_text(field, cell)
            known = (field, text)
            if known not in self._read_before:
                self._read_before[known] = field.value(text)
            return self._read_before[known]
        except UnreadableError as error:
            self._problem(row, field.name, field.expected, str(error))
            return _UNREADABLE

    def _refuse_twice(self, rows: Sequence[tuple[int, Values]], field: Field) -> None:
        first: dict[Any, int] = {}
        for number, values in rows:
            value = values.get(field)
            if value in (None, "", _UNREADABLE):
                continue
            if value in first:
                says = f"Row {first[value]} has the {field.name} “{value}” too: give each row one of its own."
                self._problem(number, field.name, f"a {field.name} that no other row has", says)
            first.setdefault(value, number)

    def _records(self, rows: Sequence[tuple[int, Values]], owner: Owner) -> dict[Any, Values]:
        """Each yarn or pattern by name, each field as the first row that fills it says. What a later row denies is a problem."""
        name = _NAMES[owner]
        defined: dict[Any, dict[Field, tuple[int, Any]]] = {}
        for number, values in rows:
            called = values.get(name)
            own = {f: value for f, value in values.items() if f.owner is owner and value not in (_UNREADABLE, f.empty)}
            if not called:
                self._refuse_nameless(number, owner, own)
            elif called is not _UNREADABLE:
                before = defined.setdefault(called, {})
                for field, value in own.items():
                    row, first = before.setdefault(field, (number, value))
                    if value != first:
                        self._refuse_denial(number, field, row, first, owner)
        return {called: {field: value for field, (_, value) in record.items()} for called, record in defined.items()}

    def _refuse_nameless(self, number: int, owner: Owner, own: Values) -> None:
        if own:
            name = _NAMES[owner]
            says = f"The cell “{next(iter(own)).name}” is filled, but not “{name.name}”: give {name.expected}."
            self._problem(number, name.name, name.expected, says)

    def _refuse_denial(self, number: int, field: Field, row: int, first: Any, owner: Owner) -> None:
        shown = f"“{field.shown(first)}”"
        what = "yarn" if owner is Owner.YARN else "stitch pattern"
        says = f"Row {row} has the same {what} with {shown} as its {field.name}: make both the same, or give it another name."
        self._problem(number, field.name, f"{shown}, as in row {row} for the same {what}", says)

    def _swatch(self, number: int, values: Values) -> Swatch | None:
        """The row's swatch, if nothing in the row is unreadable and it says all it must."""
        for column, expected in missing(values, self._present if values.get(_UID) else None):
            self._problem(number, column, expected, f"The row needs {expected}.")
        if number in self._bad_rows:
            return None
        swatch = swatch_of(values)
        if swatch.pattern is not None:
            try:
                swatch.pattern.extra()
            except RefusedError as error:
                self._problem(number, "extra chains", "chains that agree with the first stitch and skipped chains", str(error))
        return swatch

    def _problem(self, row: int, column: str, expected: str, says: str) -> None:
        if len(self._problems) == MOST_PROBLEMS:
            first = self._problems[0]
            raise RefusedError(
                f"“{self._sheet.name}” has more than {grouped(MOST_PROBLEMS)} problems, so it seems not to be the log. "
                f"The first, in row {first.row}: {first.says}"
            )
        self._problems.append(Problem(self._sheet.name, row, column, expected, says))
        if row > 1:
            self._bad_rows.add(row)


def missing(values: Mapping[Field, Any], present: Collection[Field] | None = None) -> Iterator[tuple[str, str]]:
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
