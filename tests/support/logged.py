"""Swatches that are in memory as a log for a sheet."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from logbook.craft.swatches.fields import FIELDS, FieldKind, LogField
from logbook.craft.swatches.swatch import Swatch
from logbook.craft.swatches.swatch_fields import values_of
from logbook.sheets.columns import COLUMNS, Cell, LogColumn
from logbook.sheets.log import Log


@dataclass(frozen=True)
class Listed:
    """The ``LoggedSwatches`` of a list."""

    swatches: Sequence[Swatch]

    @property
    def columns(self) -> Sequence[LogColumn]:
        return COLUMNS if any(swatch.pictures for swatch in self.swatches) else COLUMNS[:-1]

    @property
    def readings(self) -> int:
        return sum(len(swatch.readings) for swatch in self.swatches)

    def __len__(self) -> int:
        return len(self.swatches)

    def __iter__(self) -> Iterator[Swatch]:
        return iter(self.swatches)

    def rows(self) -> Iterator[Sequence[Cell]]:
        columns = len(self.columns)
        return (cells_of(swatch)[:columns] for swatch in self.swatches)

    def by_yarn(self) -> Iterator[Sequence[Swatch]]:
        found: dict[str | None, list[Swatch]] = defaultdict(list)
        for swatch in self.swatches:
            found[swatch.yarn.uid if swatch.yarn else None].append(swatch)
        yield from found.values()

    def newest_first(self) -> Sequence[str]:
        latest = reversed(self.swatches)
        return [swatch.uid for swatch in sorted(latest, key=lambda swatch: swatch.date, reverse=True)]


def log_of(swatches: Sequence[Swatch]) -> Log:
    """A log of these swatches and nothing else."""
    return Log(swatches=Listed(swatches))


def cells_of(swatch: Swatch) -> tuple[Cell, ...]:
    """One cell for each of ``COLUMNS``: text for text, numbers for numbers (a clip in cm), None where a number is not known."""
    return tuple(_cell(value, field) for value, field in zip(values_of(swatch), FIELDS, strict=True))


def _cell(value: Any, field: LogField) -> Cell:
    if field.kind is FieldKind.TEXT:
        return field.shown(value)
    if value is None:
        return None
    number: int | float = value / 10 if field.in_cm else value
    return number
