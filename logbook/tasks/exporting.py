"""Handing the whole log on as a workbook or a CSV file."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from logbook.book import swatches as stored
from logbook.book.logbook import Logbook
from logbook.sheets.writing import write_log


@dataclass(frozen=True, slots=True)
class ExportResult:
    """How many swatches were written, and where."""

    rows: int
    target: Path


def export(book: Logbook, target: Path, progress: Callable[[int, int], None] | None = None) -> ExportResult:
    """Writes every swatch to ``target``, a workbook or CSV by its suffix; the target is the old file or the whole new one.

    ``progress`` gets (done, total) and may raise to cancel. Raises RefusedError, in one sentence.
    """
    with book.reading() as connection:
        swatches = stored.swatches(connection)
    title = f"Swatches of {book.path.stem}"
    write_log(target, swatches, title, date.today().isoformat(), never=(book.path,), progress=progress)
    return ExportResult(len(swatches), target)
