"""The sample: a fresh copy to try things on."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

from logbook import sample
from logbook.book.changes import Writing
from logbook.book.garments import put_garment
from logbook.book.pieces import planned_pieces, put_made_piece, put_piece
from logbook.book.plan_text import plan_of
from logbook.book.swatches import swatch_of_tag
from logbook.book.testers import put_tester
from logbook.craft.garments.plan import Garment
from logbook.craft.pieces.planned_piece import PlannedPiece, SizePlan
from logbook.craft.sizes.tester import Tester
from logbook.craft.words.terms import Terms
from logbook.tasks.garments import read_plan
from logbook.tasks.keeping import Logbook, new_book
from logbook.tasks.made_pieces import made_from
from logbook.tasks.pictures import along, names_of
from logbook.tasks.pieces import basis_in
from logbook.tasks.set_runs import with_set_run
from logbook.tasks.size_runs import work_out_run


def new_sample(folder: Path) -> Logbook:
    """A new logbook in ``folder`` that holds the sample; it keeps no backups."""
    from logbook.tasks.importing import carry_out, plan_import  # a window on a logbook of one's own does not wait for sheets

    book = new_book(folder / "sample.logbook", keep_backups=False)
    carry_out(book, plan_import(book, sample.folder() / sample.SWATCHES))
    with book.writing("plan the sample's pieces") as writing:
        _plan_pieces(writing)
        for name in sample.GARMENTS:
            put_garment(writing, Garment(plan=read_plan(sample.folder() / name)))
    along(names_of(book), sample.folder() / sample.SWATCHES, book.path)
    return book


def _plan_pieces(writing: Writing) -> None:
    """Each piece of the file says its name, the tag of its swatch, notes, and of its plan what is not as usual; one that was
    finished also its sizes, the day its run was set, and what was made of it."""
    for piece in json.loads((sample.folder() / sample.PIECES).read_text("utf-8")):
        plan = plan_of(piece["name"], json.dumps(piece["plan"]))
        swatch = swatch_of_tag(writing.connection, piece["swatch"]).uid
        sizes = tuple(SizePlan(**size) for size in piece.get("sizes", ()))
        uid = put_piece(writing, PlannedPiece(plan=plan, swatch=swatch, notes=piece["notes"], sizes=sizes))
        if sizes:
            _finish(writing, planned_pieces(writing.connection)[uid], piece)


def _finish(writing: Writing, planned: PlannedPiece, piece: dict[str, Any]) -> None:
    """Sets the run, and logs what was made of it, as planned but for what the file says, and who tries it."""
    basis = basis_in(writing.connection, planned.swatch)
    answer = work_out_run(basis, planned.plan, planned.sizes)
    put_piece(writing, with_set_run(planned, answer, Terms.US, piece["set"]))
    for made in piece["made"]:
        size = next(size for size in answer.run.sizes if size.name == made["size"])
        begun = made_from(planned, answer.piece(size), size.name, basis.swatch.hook_mm)
        put_made_piece(writing, replace(begun, **made))
    for tester in piece["testers"]:
        put_tester(writing, Tester(piece=planned.uid, **tester))
