"""Handing the whole log on as a workbook or a CSV file."""

from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import BinaryIO

from logbook.book.logbook import Logbook
from logbook.craft.swatches.picture_names import picture_names
from logbook.craft.words.notation import PLAIN, written_in
from logbook.errors import RefusedError
from logbook.sheets.atomic import write_whole
from logbook.sheets.csv_file import checksum, write_csv
from logbook.sheets.log import Log
from logbook.sheets.progress import Progress
from logbook.sheets.workbook import count_workbook_rows, write_workbook
from logbook.tasks.logged_swatches import StoredSwatches
from logbook.tasks.pictures import along
from logbook.tasks.whole_log import log_of

SUFFIXES = (".xlsx", ".csv")


@dataclass(frozen=True, slots=True)
class ExportResult:
    """How many swatches were written, and where; ``notes``: what the maker should know of it, a sentence each."""

    rows: int
    target: Path
    notes: tuple[str, ...] = ()


@written_in(PLAIN)
def export(book: Logbook, target: Path, progress: Progress | None = None) -> ExportResult:
    """Writes every swatch to ``target``, a workbook or CSV by its suffix, and the pictures beside it; the target is the old file
    or the whole new one.

    ``progress`` gets (done, total) and may raise to cancel. Raises RefusedError, in one sentence.
    """
    suffix = target.suffix.casefold()
    if suffix not in SUFFIXES:
        raise RefusedError(f"“{target.name}” names no kind of sheet: let it end in .xlsx or .csv.")
    swatches = StoredSwatches(book)
    with swatches.reading() as connection:
        log = Log(swatches=swatches) if suffix == ".csv" else log_of(connection, swatches)
    wanted = len(swatches)

    def write(stream: BinaryIO) -> None:
        nonlocal wanted
        if suffix == ".csv":
            wanted = write_csv(stream, swatches, progress)
        else:
            write_workbook(stream, log, f"Swatches of {book.path.stem}", date.today().isoformat(), progress)

    def verify(part: Path) -> None:
        with part.open("rb") as stream:
            found = checksum(stream) if suffix == ".csv" else count_workbook_rows(stream)
        if found != wanted:
            raise RefusedError(f"{target.name} did not reach the disk whole: try again, or choose another folder.")

    write_whole(target, write, verify, never=(book.path,))
    shown = swatches.pictures() + [made.pictures for made in log.made]
    left = along((name for text in shown for name in picture_names(text)), book.path, target)
    return ExportResult(len(swatches), target, tuple(filter(None, (left,))))
