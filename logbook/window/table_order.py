"""Which rows a table shows and in which order: sorted by a column or as they are listed, all of them or those asked for."""

from collections.abc import Collection, Mapping, Sequence

from logbook.window.table_rows import KeptRows, Listed

NO_RANKS: Mapping[str, int] = {}


class TableOrder:
    """``sorted_by``: the place of the column and whether downwards; None: in the order of the list."""

    def __init__(self) -> None:
        self.listed: Listed = KeptRows()
        self.sorted_by: tuple[int, bool] | None = None
        self._all: Sequence[str] = ()
        self._forget_wanted()

    @property
    def count(self) -> int:
        """How many rows there are, shown or not."""
        return len(self._all)

    def shown(self) -> Sequence[str]:
        """The keys of the rows to show, from top to bottom."""
        if self._wanted is None:
            return self._all
        if self._as_listed and self.sorted_by is None:
            shown = list(self._wanted)
        else:
            wanted = set(self._wanted)
            shown = [key for key in self._all if key in wanted]
        return sorted(shown, key=lambda key: self._ranks.get(key, len(self._ranks))) if self._ranks else shown

    def take(self, listed: Listed) -> None:
        """Another list, of which all rows are shown; it is sorted as the one before."""
        self.listed = listed
        self._forget_wanted()
        self._sort()

    def show_only(self, keys: Collection[str] | None, ranks: Mapping[str, int], *, as_listed: bool) -> None:
        """Shows the rows with these keys alone, or all for None, those of a lesser rank first. ``as_listed``: the keys come in
        the order of the list.
        """
        self._wanted, self._ranks, self._as_listed = keys, ranks, as_listed

    def sort(self, column: int | None) -> None:
        """Sorts by this column, upwards; None: in the order of the list."""
        self.sorted_by = None if column is None else (column, False)
        self._sort()

    def sort_next(self, column: int) -> None:
        """Sorts by this column, upwards first, then downwards, then in the order of the list again."""
        again = self.sorted_by is not None and self.sorted_by[0] == column
        self.sorted_by = (column, False) if not again else (column, True) if self.sorted_by == (column, False) else None
        self._sort()

    def _sort(self) -> None:
        self._all = self.listed.keys if self.sorted_by is None else self.listed.sorted_by(*self.sorted_by)

    def _forget_wanted(self) -> None:
        self.show_only(None, NO_RANKS, as_listed=False)
