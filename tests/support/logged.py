"""Swatches that are in memory as a log for a sheet."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from logbook.craft.swatches.swatch import Swatch
from logbook.sheets.columns import Cell, LogColumn, cells_of, columns_for
from logbook.sheets.log import Log


@dataclass(frozen=True)
class Listed:
    """The ``LoggedSwatches`` of a list."""

    swatches: Sequence[Swatch]

    @property
    def columns(self) -> Sequence[LogColumn]:
        return columns_for(self.swatches)

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
        tagged = sorted(self.swatches, key=lambda swatch: swatch.tag)
        return [swatch.uid for swatch in sorted(tagged, key=lambda swatch: swatch.date, reverse=True)]


def log_of(swatches: Sequence[Swatch]) -> Log:
    """A log of these swatches and nothing else."""
    return Log(swatches=Listed(swatches))
