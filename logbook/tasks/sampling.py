"""The sample: a fresh copy to try things on."""

from pathlib import Path

from logbook import sample
from logbook.tasks.keeping import Logbook, new_book


def new_sample(folder: Path) -> Logbook:
    """A new logbook in ``folder`` that holds the sample; it keeps no backups."""
    from logbook.tasks.importing import carry_out, plan_import  # a window on a logbook of one's own does not wait for sheets

    book = new_book(folder / "sample.logbook", keep_backups=False)
    carry_out(book, plan_import(book, sample.folder() / sample.SWATCHES))
    return book
