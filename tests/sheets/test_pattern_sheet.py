"""The lines of a pattern as a sheet that prints."""

import io

import openpyxl

from logbook.sheets.book_writer import BookWriter
from logbook.sheets.pattern_sheet import WIDTHS, write_pattern_sheet


def test_every_line_lies_over_several_columns_and_aligned_ones_stay_aligned() -> None:
    stream = io.BytesIO()
    with BookWriter("Vest", "2026-11-27") as book:
        write_pattern_sheet(book, "Lines", "Vest", [("", ["For a warm day."]), ("Back", ["Ch 83.", "S  12  in row 1"])])
        book.save(stream)
    sheet = openpyxl.load_workbook(stream)["Lines"]
    texts = {cell.value: cell for (cell, *_) in sheet.iter_rows() if cell.value}
    assert list(texts)[2:] == ["For a warm day.", "Back", "Ch 83.", "S  12  in row 1"]
    merged = {str(area) for area in sheet.merged_cells.ranges}
    last = openpyxl.utils.get_column_letter(len(WIDTHS))
    assert {f"A{texts[line].row}:{last}{texts[line].row}" for line in ("For a warm day.", "Ch 83.", "S  12  in row 1")} <= merged
    assert texts["S  12  in row 1"].font.name != texts["Ch 83."].font.name
