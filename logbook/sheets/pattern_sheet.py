"""The lines of a pattern as a sheet that prints: a page wide, part by part."""

from collections.abc import Iterable, Sequence

from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import CellLook, Role

WIDTHS = (22, 22, 22, 22)
"""Of the columns that a line lies over: some programs cut one column that is wider than the page, where they shrink several."""
ALIGNED = "  "
"""Between what stands in columns within a line."""


def write_pattern_sheet(book: BookWriter, name: str, title: str, parts: Iterable[tuple[str, Sequence[str]]]) -> None:
    """Each part with its heading ("" for none) and its lines. Raises RefusedError for a text that no sheet can hold."""
    sheet = book.sheet(name, WIDTHS)
    sheet.head(title, "The lines of the pattern.")
    for heading, lines in parts:
        if heading:
            sheet.add((heading, *[""] * (len(WIDTHS) - 1)), CellLook(Role.SECTION), height=21)
        for line in lines:
            sheet.paragraph(line, Role.ALIGNED if ALIGNED in line.strip() else Role.LABEL)
        sheet.skip()
