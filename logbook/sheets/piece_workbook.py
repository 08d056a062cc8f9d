"""The figures of a piece as a workbook of one sheet, values only."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import BinaryIO

from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import TENTHS, WHOLE, Heading, Look


@dataclass(frozen=True, slots=True)
class Figure:
    """One line: what it is, its figure and unit, give or take and size before washing in the same unit (None: not known)."""

    what: str
    figure: float | str
    unit: str = ""
    give_or_take: float | None = None
    before_washing: float | None = None


_HEADINGS = (
    Heading("what", 34, wraps=True), Heading("figure", 12, right=True), Heading("unit", 10),
    Heading("give or take", 13, right=True),
    Heading("before washing", 13, right=True),
)  # fmt: skip
HEADINGS = tuple(heading.name for heading in _HEADINGS)


def write_piece_workbook(stream: BinaryIO, title: str, figures: Sequence[Figure], notes: Sequence[str]) -> None:
    """Writes ``title``, the figures beneath their headings, then the notes. Text is text, also what looks like a formula."""
    with BookWriter(title, "") as book:
        sheet = book.sheet("Piece", _HEADINGS, top=4)
        sheet.head(title, "As finished.")
        sheet.headings(_HEADINGS, len(figures), filtered=False)
        for line in figures:
            numbers = WHOLE if isinstance(line.figure, int) else TENTHS
            looks = [Look(wraps=True), *(Look(numbers=numbers, right=place != 1) for place in range(4))]
            sheet.add((line.what, line.figure, line.unit, line.give_or_take, line.before_washing), looks)
        sheet.skip()
        for note in notes:
            sheet.paragraph(note)
        book.save(stream)
