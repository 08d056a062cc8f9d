"""A garment as a workbook: its pieces in all sizes, every row whose count changes, joins, yarn, and the lines of its pattern."""

from collections.abc import Mapping, Sequence
from typing import BinaryIO

from logbook.craft.garments.cloth import Cloth
from logbook.craft.garments.garment import GarmentInSize
from logbook.craft.garments.shaped_piece import ShapedPiece
from logbook.craft.rows.chart import RowsDrawing
from logbook.sheets import garment_joins, garment_yarn
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import TENTHS, WHOLE, CellLook, Content, Heading, Role
from logbook.sheets.garment_joins import RATES, JoinsSheet, write_rates
from logbook.sheets.garment_yarn import YarnSheet
from logbook.sheets.live_garment import LiveGarment, gauge_headings
from logbook.sheets.pattern_sheet import write_pattern_sheet
from logbook.sheets.rows_sheet import write_row_charts

_ROWS = "Every row in which a count changes, and the last, as planned (values, not formulas). Row 0 is the foundation."


def write_garment_workbook(
    stream: BinaryIO,
    title: str,
    sizes: Sequence[GarmentInSize],
    cloths: Mapping[str, Cloth],
    said: Sequence[str],
    parts: Sequence[tuple[str, Sequence[str]]],
    date: str,
    charts: Sequence[RowsDrawing] = (),
    *,
    published: bool = False,
) -> None:
    """Writes the workbook, lengths in cm. ``said``: what stands below the numbers; ``parts``: the whole pattern,
    each part with its heading and its lines; ``charts``: of the written rows; ``published`` on this date: what it says stands
    once more as values beside the live numbers.

    Raises RefusedError, naming the text, for a name that no sheet can hold.
    """
    with BookWriter(title, date) as book:
        live = _pieces(book, title, sizes, cloths, said, date, published=published)
        _rows(book, title, sizes)
        sheet = _listed(book, "Joins", title, "What is joined to what, and whether it fits.", garment_joins.HEADINGS)
        joins = JoinsSheet(sheet, "Joins", sizes, live)
        joins.write()
        note = "Grams without, balls with the reserve; hours and cost of the whole garment are given once for each size."
        yarn = YarnSheet(_listed(book, "Yarn", title, note, garment_yarn.HEADINGS), sizes, cloths, live, joins)
        yarn.write(date if published else "")
        write_pattern_sheet(book, "Pattern", title, parts)
        write_row_charts(book, charts)
        if joins.looks_up_rates:
            write_rates(book.sheet(RATES, (12, 12), hidden=True, last=True))
        book.save(stream)


def _pieces(
    book: BookWriter,
    title: str,
    sizes: Sequence[GarmentInSize],
    cloths: Mapping[str, Cloth],
    said: Sequence[str],
    date: str,
    *,
    published: bool,
) -> LiveGarment:
    columns = max(len(sizes), len(gauge_headings(sizes[0].pieces, cloths)))
    sheet = book.sheet("Pieces", [34, *[11] * columns], landscape=columns > 5)
    sheet.head(title, f"Finished sizes in cm, worked out on {date}; measures include what the seams take.")
    live = LiveGarment(sheet, "Pieces", sizes, cloths)
    if live.live:
        live.write()
    heading = [CellLook(Role.HEADING), *[CellLook(Role.HEADING, right=True)] * len(sizes)]
    values = [place for place, piece in enumerate(sizes[0].pieces) if piece.name not in live.live]
    if values:
        sheet.paragraph("What follows are values: change the plan to change them.")
    for place in values:
        made = [size.pieces[place] for size in sizes]
        planned = made[0].planned
        sheet.add(
            (f"{planned.name}{f' × {planned.alike}' if planned.alike > 1 else ''}", *(size.name for size in sizes)), heading
        )
        for label, said_of, numbers in _numbers(made):
            sheet.add((label, *said_of), [CellLook(Role.LABEL), *[CellLook(numbers=numbers, right=True)] * len(sizes)])
        sheet.skip()
    for sentence in said:
        sheet.paragraph(sentence)
    if published and live.live:
        sheet.new_page()
        live.write_published(date)
    return live


def _numbers(made: Sequence[ShapedPiece]) -> list[tuple[str, list[Content], str]]:
    """The rows of one piece: label, a value for each size, how it shows."""
    rows: list[tuple[str, list[Content], str]] = []
    if any(piece.chain is not None for piece in made):
        rows.append(("chain", [piece.chain for piece in made], WHOLE))
    rows += [
        ("stitches at the start", [piece.foundation for piece in made], WHOLE),
        ("stitches at the end", [piece.counts[-1] for piece in made], WHOLE),
        ("rows or rounds", [piece.rows for piece in made], WHOLE),
        ("width at the start, cm", [piece.widths[0] / 10 for piece in made], TENTHS),
        ("width at the end, cm", [piece.widths[-1] / 10 for piece in made], TENTHS),
        ("give or take of the end, cm", [None if p.give_or_take_mm is None else p.give_or_take_mm / 10 for p in made], TENTHS),
        ("length, cm", [piece.rows * piece.row_mm / 10 for piece in made], TENTHS),
    ]
    for name in made[0].parts:
        rows.append((name.replace("_", " "), [piece.parts.get(name) for piece in made], WHOLE))
    return rows


def _rows(book: BookWriter, title: str, sizes: Sequence[GarmentInSize]) -> None:
    headings = (
        Heading("Piece", 24), Heading("Size", 12), Heading("Row", 9, WHOLE, True), Heading("Stitches", 11, WHOLE, True),
        Heading("Width cm", 11, TENTHS, True),
    )  # fmt: skip
    rows = [
        (piece.name, size.name, level.row, level.stitches, level.width_mm / 10)
        for number in range(len(sizes[0].pieces))
        for size in sizes
        for piece in [size.pieces[number]]
        for level in piece.levels
    ]
    sheet = _listed(book, "Rows", title, _ROWS, headings)
    sheet.table(headings, rows, len(rows))


def _listed(book: BookWriter, name: str, title: str, note: str, headings: Sequence[Heading]) -> SheetWriter:
    sheet = book.sheet(name, headings, landscape=sum(heading.width for heading in headings) > 90)
    sheet.head(title, note)
    return sheet
