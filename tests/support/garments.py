"""A logbook with the swatches of the three garments of ``cloth``."""

from dataclasses import replace
from pathlib import Path

from logbook.tasks.keeping import Logbook, new_book
from logbook.tasks.logging_swatches import save_swatch
from tests.support.cloth import EDGE_SWATCH, HDC_SWATCH, LACE_SWATCH, RIB_SWATCH


def garment_book(path: Path) -> Logbook:
    """A new logbook at ``path`` with H1 and H2 (half double crochet), L1 (wide lace) and R1 (rib)."""
    book = new_book(path, keep_backups=False)
    for swatch in (HDC_SWATCH, EDGE_SWATCH, LACE_SWATCH, RIB_SWATCH):
        save_swatch(book, replace(swatch, uid=""))
    return book


def uid_of(book: Logbook, tag: str) -> str:
    """The uid of the swatch with that tag."""
    with book.reading() as connection:
        return str(connection.execute("SELECT uid FROM swatch WHERE tag = ?", (tag,)).fetchone()[0])
