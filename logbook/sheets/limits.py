"""How much of a foreign sheet is taken in, and the raw rows that come of it.

Past a limit the sheet is refused, naming the limit.
"""

import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from logbook.errors import RefusedError

MOST_FILE_BYTES = 20_000_000
MOST_ZIP_ENTRIES = 1_000
MOST_INFLATED_BYTES = 50_000_000
MOST_SHEETS = 50
MOST_ROWS = 100_000
MOST_COLUMNS = 256
MOST_CELL_CHARACTERS = 32_767
MOST_CELLS = 5_000_000
MOST_TEXT_BYTES = 80_000_000
MOST_ELEMENTS = 2_500_000
MOST_DEPTH = 64
LONGEST_TAG_BYTES = 300_000


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


@dataclass(slots=True)
class RowCollector:
    """Gathers raw rows and holds them to the limits."""

    rows: list[RawRow] = field(default_factory=list)
    _cells: int = 0
    _text_bytes: int = 0

    def add(self, number: int, cells: Sequence[RawCell]) -> None:
        """Takes one row. Raises RefusedError past a limit; a blank row takes no room, whatever its number."""
        used = len(cells)
        while used and _is_blank(cells[used - 1]):
            used -= 1
        if not used:
            return
        if number > MOST_ROWS:
            raise RefusedError(
                f"The sheet reaches down to row {number:,}: the most is {MOST_ROWS:,} rows. Split it into several."
            )
        if used > MOST_COLUMNS:
            raise RefusedError(f"Row {number:,} has {used} columns: the most is {MOST_COLUMNS}. Delete those not needed.")
        kept = tuple(_measured(cell) for cell in cells[:used])
        self._cells += used
        self._text_bytes += sum(sys.getsizeof(cell) for cell in kept if isinstance(cell, str))
        if self._cells > MOST_CELLS or self._text_bytes > MOST_TEXT_BYTES:
            raise RefusedError(f"The sheet holds too much to read at once (row {number:,} is too many): split it into several.")
        self.rows.append(RawRow(number, kept))


def _is_blank(cell: RawCell) -> bool:
    return cell is None or (isinstance(cell, str) and not cell.strip())


def _measured(cell: RawCell) -> RawCell:
    if isinstance(cell, str) and len(cell) > MOST_CELL_CHARACTERS:
        return Unusable(f"a text of {len(cell):,} characters, where {MOST_CELL_CHARACTERS:,} are the most")
    return cell


def read_bytes(path: Path) -> bytes:
    """The whole file. Raises RefusedError if it is not there, no ordinary file, unreadable, or beyond 20 MB."""
    try:
        if not path.exists():
            raise RefusedError(f"“{path.name}” is not there: choose a sheet that is.")
        require_ordinary(path, "a workbook (.xlsx) or a CSV file")
        with path.open("rb") as file:
            content = file.read(MOST_FILE_BYTES + 1)
    except (OSError, ValueError) as error:
        raise RefusedError(f"“{path.name}” can't be read ({_reason(error)}): close it elsewhere, or choose another.") from error
    if len(content) > MOST_FILE_BYTES:
        raise RefusedError(f"“{path.name}” is larger than {MOST_FILE_BYTES // 1_000_000} MB: split it into several sheets.")
    return content


def require_ordinary(path: Path, wanted: str) -> None:
    """Raises RefusedError, asking for ``wanted``, if there is something else than a file: a pipe would be waited for, perhaps for
    ever."""
    if path.exists() and not path.is_file():
        raise RefusedError(f"“{path}” is not an ordinary file: choose {wanted}.")


def _reason(error: OSError | ValueError) -> str:
    return (error.strerror if isinstance(error, OSError) else None) or str(error)
