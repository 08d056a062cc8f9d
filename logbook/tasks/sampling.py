"""The sample: a fresh copy to try things on."""

import json
from pathlib import Path

from logbook import sample
from logbook.book.pieces import put_piece
from logbook.book.plan_text import plan_of
from logbook.book.swatches import swatch_of_tag
from logbook.craft.planned_piece import PlannedPiece
from logbook.tasks.keeping import Logbook, new_book


def new_sample(folder: Path) -> Logbook:
    """A new logbook in ``folder`` that holds the sample; it keeps no backups."""
    from logbook.tasks.importing import carry_out, plan_import  # a window on a logbook of one's own does not wait for sheets

    book = new_book(folder / "sample.logbook", keep_backups=False)
    carry_out(book, plan_import(book, sample.folder() / sample.SWATCHES))
    _plan_pieces(book)
    return book


def _plan_pieces(book: Logbook) -> None:
    """Each piece of the file says its name, the tag of its swatch, notes, and of its plan what is not as usual."""
    planned = json.loads((sample.folder() / sample.PIECES).read_text("utf-8"))
    with book.writing("plan the sample's pieces") as writing:
        for piece in planned:
            plan = plan_of(piece["name"], json.dumps(piece["plan"]))
            swatch = swatch_of_tag(writing.connection, piece["swatch"]).uid
            put_piece(writing, PlannedPiece(plan=plan, swatch=swatch, notes=piece["notes"]))
