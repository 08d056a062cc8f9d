"""The columns of the log in a sheet: their order, widths and units, and what a person would have typed in a cell."""

from dataclasses import dataclass
from datetime import date

from logbook.craft.swatches.fields import FIELDS, FieldKind, LogField, Owner
from logbook.errors import UnreadableError
from logbook.sheets.cells import cell_text
from logbook.sheets.limits import RawCell, Unusable

Cell = str | int | float | None
"""What a swatch says in one cell: text, a number, or nothing."""


@dataclass(frozen=True, slots=True)
class LogColumn:
    """A column of the log: its field, its width in characters of a sheet, and the unit its numbers are in ("" if none)."""

    field: LogField
    width: int
    unit: str

    @property
    def name(self) -> str:
        """The heading."""
        return self.field.name

    @property
    def is_number(self) -> bool:
        """Whether its cells are numbers."""
        return self.field.kind is FieldKind.NUMBER

    @property
    def wraps(self) -> bool:
        """Whether its text may run over several lines."""
        return self.field.kind is FieldKind.TEXT and self.name not in ("uid", "tag", "date", "terms", "worked", "currency")


_WIDTHS = {
    "uid": 12, "tag": 12, "date": 11, "yarn": 24, "fibre": 20, "colour": 14, "hook note": 18, "stitch pattern": 24,
    "worked by": 14, "way of washing": 22, "notes": 48, "written rows": 64,
}  # fmt: skip
_UNITS = {"grams": "g", "metres": "m", "mm": "mm", "cm": "cm"}


def _column(field: LogField) -> LogColumn:
    usual = 30 if field.owner is Owner.READINGS else 10
    return LogColumn(field, _WIDTHS.get(field.name, usual), _UNITS.get(field.name.split()[-1], ""))


COLUMNS: tuple[LogColumn, ...] = tuple(_column(field) for field in FIELDS)


def typed_text(field: LogField, cell: RawCell) -> str:
    """What a person would have typed for ``cell``: dates in ISO, numbers exact. Raises UnreadableError if it can't be used."""
    if isinstance(cell, Unusable):
        raise UnreadableError(f"The cell holds {cell.why}: type {field.expected}.")
    if isinstance(cell, date):
        if field.name != "date":
            raise UnreadableError(f"The cell holds the date {cell.isoformat()}: type {field.expected}.")
        return cell.isoformat()
    return cell_text(cell)
