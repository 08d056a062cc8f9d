"""How much of a foreign sheet is taken in, and the raw rows that come of it.

Past a limit the sheet is refused, naming the limit.
"""

import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import BinaryIO

from logbook.craft.words.numbers import grouped
from logbook.errors import RefusedError
from logbook.sheets.progress import Progress

MOST_ZIP_ENTRIES = 1_000
MOST_SHEETS = 50
MOST_COLUMNS = 256
MOST_CELL_CHARACTERS = 32_767
MOST_DEPTH = 64
LONGEST_TAG_BYTES = 300_000


@dataclass(frozen=True, slots=True)
class Limits:
    """The most that is taken: bytes of the file and of what it inflates to, rows, cells, bytes of text, elements of XML."""

    file_bytes: int = 20_000_000
    inflated_bytes: int = 50_000_000
    rows: int = 100_000
    cells: int = 5_000_000
    text_bytes: int = 80_000_000
    elements: int = 2_500_000


FOREIGN = Limits()
"""Those of a sheet that may come from anywhere."""
_MOST_OWN_BYTES = 1_000_000_000
_MOST_OWN_ROWS = 10_000_000
_TIMES_INFLATED = 30
"""A workbook of the log inflates to some 12 times its size; a bomb to a thousand times."""


def limits_of_export(file_bytes: int) -> Limits:
    """Those of an export of the log: in proportion to what lies on the disk, so that a small file can't ask for much."""
    inflated = max(FOREIGN.inflated_bytes, _TIMES_INFLATED * file_bytes)
    return Limits(
        file_bytes=_MOST_OWN_BYTES,
        inflated_bytes=inflated,
        rows=_MOST_OWN_ROWS,
        cells=max(FOREIGN.cells, inflated // 8),
        text_bytes=max(FOREIGN.text_bytes, 3 * inflated),
        elements=max(FOREIGN.elements, inflated // 8),
    )


@dataclass(frozen=True, slots=True)
class Unusable:
    """A cell whose content can't be taken over; ``why`` completes the sentence “The cell holds …”."""

    why: str

    def __str__(self) -> str:
        return self.why


RawCell = str | float | date | Unusable | None


@dataclass(frozen=True, slots=True)
class RawRow:
    """One row that is not blank. ``number`` as a spreadsheet shows it; blank cells at the end are left out."""

    number: int
    cells: tuple[RawCell, ...]


@dataclass(frozen=True, slots=True)
class RawSheet:
    """The rows of one sheet as they were found, with no meaning given to them yet."""

    name: str
    rows: tuple[RawRow, ...]


_OFTEN_THE_SAME = 1_000
_TOLD = 100
_MOST_KNOWN = 50_000


@dataclass(slots=True)
class RowCollector:
    """Gathers raw rows and holds them to the limits; ``progress`` hears of every hundred."""

    limits: Limits = FOREIGN
    progress: Progress | None = None
    rows: list[RawRow] = field(default_factory=list)
    _cells: int = 0
    _text_bytes: int = 0
    _same: dict[str, str] = field(default_factory=dict)

    def add(self, number: int, cells: Sequence[RawCell]) -> None:
        """Takes one row. Raises RefusedError past a limit; a blank row takes no room, whatever its number."""
        used = len(cells)
        while used and _is_blank(cells[used - 1]):
            used -= 1
        if not used:
            return
        if number > self.limits.rows:
            raise RefusedError(
                f"The sheet reaches down to row {grouped(number)}: the most is {grouped(self.limits.rows)} rows. "
                "Split it into several."
            )
        if used > MOST_COLUMNS:
            raise RefusedError(f"Row {grouped(number)} has {used} columns: the most is {MOST_COLUMNS}. Delete those not needed.")
        kept = tuple(self._once(_measured(cell)) for cell in cells[:used])
        self._cells += used
        self._text_bytes += sum(sys.getsizeof(cell) for cell in kept if isinstance(cell, str))
        if self._cells > self.limits.cells or self._text_bytes > self.limits.text_bytes:
            raise RefusedError(
                f"The sheet holds too much to read at once (row {grouped(number)} is too many): split it into several."
            )
        self.rows.append(RawRow(number, kept))
        if self.progress is not None and len(self.rows) % _TOLD == 0:
            self.progress(len(self.rows), 0)

    def _once(self, cell: RawCell) -> RawCell:
        """The same text held once, as yarns and stitches come again and again."""
        if not isinstance(cell, str) or len(cell) > _OFTEN_THE_SAME:
            return cell
        return self._same.setdefault(cell, cell) if len(self._same) < _MOST_KNOWN else self._same.get(cell, cell)


def _is_blank(cell: RawCell) -> bool:
    return cell is None or (isinstance(cell, str) and not cell.strip())


def _measured(cell: RawCell) -> RawCell:
    if isinstance(cell, str) and len(cell) > MOST_CELL_CHARACTERS:
        return Unusable(f"a text of {grouped(len(cell))} characters, where {grouped(MOST_CELL_CHARACTERS)} are the most")
    return cell


def read_bytes(path: Path, limits: Callable[[BinaryIO], Limits] = lambda _: FOREIGN) -> tuple[bytes, Limits]:
    """The whole file, and the limits that hold for it. Raises RefusedError if it is not there, no ordinary file, unreadable, or
    too large."""
    try:
        if not path.exists():
            raise RefusedError(f"“{path.name}” is not there: choose a sheet that is.")
        require_ordinary(path, "a workbook (.xlsx) or a CSV file")
        with path.open("rb") as file:
            its = limits(file)
            content = file.read(its.file_bytes + 1)
    except (OSError, ValueError) as error:
        raise RefusedError(f"“{path.name}” can't be read ({_reason(error)}): close it elsewhere, or choose another.") from error
    if len(content) > its.file_bytes:
        raise RefusedError(f"“{path.name}” is larger than {its.file_bytes // 1_000_000} MB: split it into several sheets.")
    return content, its


def require_ordinary(path: Path, wanted: str) -> None:
    """Raises RefusedError, asking for ``wanted``, if there is something else than a file: a pipe would be waited for, perhaps for
    ever."""
    if path.exists() and not path.is_file():
        raise RefusedError(f"“{path}” is not an ordinary file: choose {wanted}.")


def _reason(error: OSError | ValueError) -> str:
    return (error.strerror if isinstance(error, OSError) else None) or str(error)
