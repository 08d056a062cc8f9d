"""A logbook with the swatches of the three garments of ``cloth``."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from logbook.craft.pieces.piece import PiecePlan
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.pages.session import Session
from logbook.settings import Settings
from logbook.tasks.keeping import Logbook, new_book
from logbook.tasks.logging_swatches import save_swatch
from logbook.tasks.pieces import save_piece
from tests.support.cloth import EDGE_SWATCH, HDC_SWATCH, LACE_SWATCH, RIB_SWATCH, RIBBED, VEST


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


def planned(book: Logbook, tag: str, plan: PiecePlan, name: str) -> str:
    """Saves a piece of that name from the swatch with that tag, and returns its uid."""
    return save_piece(book, PlannedPiece(plan=replace(plan, name=name), swatch=uid_of(book, tag)))


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    """A session on ``garment_book`` with two pieces: “Rib top” of R1 and “Vest” of H1."""
    with garment_book(tmp_path / "a.logbook") as book:
        planned(book, "H1", VEST, "Vest")
        planned(book, "R1", RIBBED, "Rib top")
        yield Session(book, Settings())
