"""A piece as a workbook: its numbers live from gauge, ease and lengths, its drawing, and what is to be said of it."""

from collections.abc import Sequence
from typing import BinaryIO

from logbook.craft.pieces.piece_gauges import PieceGauges
from logbook.craft.rows.chart import RowsDrawing
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.live_cells import LiveSize
from logbook.sheets.live_sizes import LiveSizes
from logbook.sheets.panel_chart import write_drawings
from logbook.sheets.rows_sheet import write_row_charts


def write_piece_workbook(
    stream: BinaryIO,
    title: str,
    piece: LiveSize,
    gauges: PieceGauges,
    notes: Sequence[str],
    date: str,
    charts: Sequence[RowsDrawing] = (),
) -> None:
    """Writes the workbook; ``date`` (as shown) at the foot of each printed page, ``charts`` of the written rows behind the rest.
    Text is text, also what looks like a formula.
    """
    with BookWriter(title, date) as book:
        sheet = book.sheet("Piece", [44, 14, 26])
        sheet.head(title, f"Finished sizes, in cm. {date}")
        live = LiveSizes(sheet, piece.plan, gauges, [piece])
        live.write("number")
        sheet.skip()
        for note in notes:
            sheet.paragraph(note)
        write_drawings(book, live)
        write_row_charts(book, charts)
        book.save(stream)
