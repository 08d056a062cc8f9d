"""All that a logbook holds beside its swatches, for a workbook: pieces with what they come to, made pieces, body charts."""

import sqlite3
from collections.abc import Iterator

from logbook.book import pieces
from logbook.book.assumptions import assumptions
from logbook.book.kept_records import kept_rows
from logbook.book.swatch_lists import tags_of
from logbook.craft.pieces.piece import PieceNumbers
from logbook.craft.pieces.planned_piece import PlannedPiece
from logbook.errors import RefusedError
from logbook.sheets.log import Log, LoggedSwatches, PieceLine
from logbook.tasks.drift import learnt_drift
from logbook.tasks.pieces import basis_in, work_out_piece
from logbook.tasks.size_runs import work_out_run


def log_of(connection: sqlite3.Connection, swatches: LoggedSwatches) -> Log:
    """The whole log."""
    made = list(pieces.made_pieces(connection).values())
    planned = list(pieces.planned_pieces(connection).values())
    return Log(
        swatches=swatches,
        assumptions=assumptions(connection),
        drift=learnt_drift(connection),
        pieces=planned,
        lines=[line for piece in planned for line in _lines(connection, piece)],
        made=made,
        tags=tags_of(connection, [one.swatch for one in made if one.swatch]),
        kept=kept_rows(connection),
    )


def _lines(connection: sqlite3.Connection, piece: PlannedPiece) -> Iterator[PieceLine]:
    """What a piece comes to today, in each of its sizes; or why it can't be worked out."""
    tag = ""
    try:
        basis = basis_in(connection, piece.swatch, piece.edge_swatch)
        tag, is_set = basis.swatch.tag, piece.published is not None
        if piece.sizes:
            for size in work_out_run(basis, piece.plan, piece.sizes, piece.condition).run.sizes:
                yield _line(piece.name, size.name, tag, size.body_mm, size.piece, is_set)
        else:
            numbers = work_out_piece(basis, piece.plan, piece.condition).numbers
            yield _line(piece.name, "", tag, piece.plan.body_mm, numbers, is_set)
    except RefusedError as refused:
        yield PieceLine(piece.name, swatch=tag, trouble=str(refused))


def _line(name: str, size: str, tag: str, body_mm: float | None, numbers: PieceNumbers, is_set: bool) -> PieceLine:
    return PieceLine(
        piece=name,
        size=size,
        swatch=tag,
        body_mm=body_mm,
        chain=numbers.chain,
        stitches=numbers.stitches,
        rows=numbers.rows,
        width_mm=numbers.width.mm,
        length_mm=numbers.length.mm if numbers.length else None,
        give_or_take_mm=numbers.width.give_or_take_mm,
        grams=numbers.yarn.grams if numbers.yarn else None,
        hours=numbers.time.hours if numbers.time else None,
        published=is_set,
    )
