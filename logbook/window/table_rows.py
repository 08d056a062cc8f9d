"""The rows of a table: what it lists and in which order, without a widget."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple, Protocol

SortKey = str | float | None
"""Of one kind in a column; None stands for an empty cell, which comes last either way."""


class Row(NamedTuple):
    """A record's key, its cells as shown, and for each cell what it is sorted by."""

    key: str
    cells: tuple[str, ...]
    sort_keys: tuple[SortKey, ...]


class Listed(Protocol):
    """What a table lists. Of many records the keys alone are at hand, and rows are made when they come into sight."""

    @property
    def keys(self) -> Sequence[str]:
        """All keys, in the order they have when nothing is sorted."""

    def sorted_by(self, column: int, down: bool) -> list[str]:
        """All keys in the order of a column; empty cells come last either way."""

    def rows(self, keys: Sequence[str]) -> Iterable[Row]:
        """The rows of these keys, in any order; those that are gone are left out."""

    def __contains__(self, key: object) -> bool:
        """Whether there is such a row."""


class KeptRows:
    """Rows that are all at hand."""

    def __init__(self, rows: Iterable[Row] = ()) -> None:
        self._rows = {row.key: row for row in rows}

    @property
    def keys(self) -> list[str]:
        """All keys in the order in which the rows came."""
        return list(self._rows)

    def sorted_by(self, column: int, down: bool) -> list[str]:
        """All keys in the order of a column."""
        return in_order(((row.key, row.sort_keys[column]) for row in self._rows.values()), down)

    def rows(self, keys: Sequence[str]) -> list[Row]:
        """The rows of these keys."""
        return [self._rows[key] for key in keys if key in self._rows]

    def replace(self, row: Row) -> None:
        """Another row in the place of the one with its key."""
        self._rows[row.key] = row

    def __contains__(self, key: object) -> bool:
        return key in self._rows


def in_order(keys: Iterable[tuple[str, SortKey]], down: bool) -> list[str]:
    """Keys by what they are sorted by; those that are alike stay as they come, and empty ones come last either way."""
    both = list(keys)
    full = sorted((one for one in both if one[1] is not None), key=lambda one: one[1], reverse=down)  # type: ignore[arg-type, return-value]
    return [key for key, _ in full] + [key for key, by in both if by is None]
