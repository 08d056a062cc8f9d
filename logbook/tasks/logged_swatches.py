"""All swatches of a logbook for a sheet, a few at a time: memory does not grow with them, and nobody who wants to write waits."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from sqlite3 import Connection

from logbook.book import swatch_lists
from logbook.book import swatches as stored
from logbook.book.backups import state_of
from logbook.book.log_rows import Row, has_pictures, log_rows, picture_texts
from logbook.book.logbook import Logbook
from logbook.craft.swatches.swatch import Swatch
from logbook.errors import RefusedError
from logbook.sheets.columns import COLUMNS, LogColumn

_AT_ONCE = 500


class StoredSwatches:
    """The ``LoggedSwatches`` of an open logbook. Raises RefusedError where another window or program writes to it meanwhile."""

    def __init__(self, book: Logbook) -> None:
        self._book = book
        with book.reading() as connection:
            self._state = state_of(connection)
            self._many, self._readings = (
                int(connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0]) for table in ("swatch", "reading")
            )
            self._columns = COLUMNS if has_pictures(connection) else COLUMNS[:-1]

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A view of the logbook, which is that of before."""
        with self._book.reading() as connection:
            if state_of(connection) != self._state:
                raise RefusedError(f"{self._book.path.name} was changed while it was written out: export it again.")
            yield connection

    @property
    def columns(self) -> Sequence[LogColumn]:
        """That of pictures, the last, only where there is one."""
        return self._columns

    @property
    def readings(self) -> int:
        """How many there are."""
        return self._readings

    def __len__(self) -> int:
        return self._many

    def rows(self) -> Iterator[Row]:
        """A cell for each column."""
        after, columns = 0, len(self._columns)
        while True:
            with self.reading() as connection:
                after, some = log_rows(connection, after, _AT_ONCE)
            if not some:
                return
            yield from some if columns == len(COLUMNS) else (row[:columns] for row in some)

    def __iter__(self) -> Iterator[Swatch]:
        with self.reading() as connection:
            uids = swatch_lists.as_logged(connection)
        yield from (swatch for some in self._whole(uids) for swatch in some)

    def by_yarn(self) -> Iterator[Sequence[Swatch]]:
        """Those of one yarn together."""
        with self.reading() as connection:
            yarns = swatch_lists.by_yarn(connection)
        for yarn, uids in yarns.items():
            some = self._whole(uids)
            yield from some if yarn is None else ([swatch for part in some for swatch in part],)

    def newest_first(self) -> Sequence[str]:
        """The uids."""
        with self.reading() as connection:
            return swatch_lists.newest_first(connection)

    def pictures(self) -> list[str]:
        """What names the pictures of each swatch that has any."""
        with self.reading() as connection:
            return list(picture_texts(connection))

    def _whole(self, uids: Sequence[str]) -> Iterator[list[Swatch]]:
        for start in range(0, len(uids), _AT_ONCE):
            with self.reading() as connection:
                some = stored.swatches(connection, uids[start : start + _AT_ONCE])
            yield some
