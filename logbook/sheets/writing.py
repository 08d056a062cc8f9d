"""Writing the log out as a workbook or as CSV, told by the ending of the name; whole, checked, or not at all."""

from collections.abc import Sequence
from pathlib import Path

from logbook.craft.swatch import Swatch
from logbook.errors import RefusedError
from logbook.sheets.atomic import write_whole
from logbook.sheets.csv_file import count_csv_rows, write_csv
from logbook.sheets.progress import Progress
from logbook.sheets.workbook import count_workbook_rows, write_workbook


def write_log(
    target: Path,
    swatches: Sequence[Swatch],
    title: str,
    date: str,
    never: Sequence[Path] = (),
    progress: Progress | None = None,
) -> None:
    """Writes ``target`` (.xlsx or .csv), one row a swatch; ``title`` and ``date`` are for the head of printed pages.

    ``never``: the logbooks open in this process. Raises RefusedError if the ending is another, a text can't be held, or the
    file can't be written; what ``progress`` raises passes through. The target is then what it was before.
    """
    ending = target.suffix.casefold()
    if ending not in (".xlsx", ".csv"):
        raise RefusedError(f"“{target.name}” must end in .xlsx or .csv: name it so.")

    def verify(part: Path) -> None:
        with part.open("rb") as file:
            rows = count_csv_rows(file) if ending == ".csv" else count_workbook_rows(file)
        if rows != len(swatches):
            raise RefusedError(f"“{target.name}” came out with {rows} rows for {len(swatches)} swatches: export it again.")

    if ending == ".csv":
        write_whole(target, lambda file: write_csv(file, swatches, progress), verify, never)
    else:
        write_whole(target, lambda file: write_workbook(file, swatches, title, date, progress), verify, never)
