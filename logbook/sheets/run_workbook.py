"""A size run as a workbook: its numbers live from a few inputs, what was published beside them, the drawing, the lines."""

from collections.abc import Sequence
from typing import BinaryIO

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.craft.rows.chart import RowsDrawing
from logbook.craft.sizes.pattern_lines import WrittenSizes, pattern_parts
from logbook.craft.sizes.published_run import PublishedRun
from logbook.craft.sizes.run_numbers import NUMBERS, NumberKind, SizeFigures
from logbook.craft.sizes.size_run import SizeRun, plan_for
from logbook.craft.words.counting import counted
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import TENTHS, WHOLE, Content, Role
from logbook.sheets.live_cells import LiveSize
from logbook.sheets.live_sizes import LiveSizes
from logbook.sheets.panel_chart import write_drawings
from logbook.sheets.pattern_sheet import write_pattern_sheet
from logbook.sheets.published_beside import PublishedLine, published_heading, write_published
from logbook.sheets.rows_sheet import write_row_charts

SHEETS = ("Sizes", "Drawing", "Lines")
_PUBLISHED = (
    ("chain", "chain", "chain"), ("base stitches", "stitches", "stitches"), ("rows", "rows", "rows"),
    ("width, cm", "width", "width"),
    ("length, cm", "length", "length"), ("all round, cm", "all round", "around"), ("slit", "slit at", "slit_at"),
    ("armhole", "armhole at", "armhole_at"), ("yarn, g", "yarn", "yarn"), ("balls", "balls", "balls"),
)  # fmt: skip
"""Of each number that is published its label, its name among the figures, and its line among the live ones."""


def write_run_workbook(
    stream: BinaryIO,
    written: WrittenSizes,
    plans: Sequence[SizePlan],
    run: SizeRun,
    said: Sequence[str],
    date: str,
    published: PublishedRun | None = None,
    charts: Sequence[RowsDrawing] = (),
) -> None:
    """Writes the workbook; ``said`` stands below the numbers, ``date`` (as shown) at the foot of each printed page, ``charts`` of
    the written rows behind the rest.

    Raises RefusedError, naming the text, for a name that no sheet can hold.
    """
    plan, title = written.plan, written.plan.name or "Size run"
    by_name = {one.name: one for one in plans}
    sizes = [LiveSize(size.name, plan_for(plan, by_name[size.name]), size.piece) for size in written.sizes]
    with BookWriter(title, date) as book:
        sheet = book.sheet("Sizes", [40, *[11] * len(sizes)], landscape=len(sizes) > 5)
        sheet.head(title, f"Finished sizes {written.gauges.stitches.condition.words}, in cm. {date}")
        live = LiveSizes(sheet, plan, written.gauges, sizes)
        live.write("size")
        if run.yarn is not None:
            sheet.skip()
            balls = "" if run.yarn.balls is None else f", {counted(run.yarn.balls, 'ball')} with the reserve"
            sheet.paragraph(f"One of each size takes {run.yarn.grams:.0f} g{balls}.", Role.LABEL)
        if published is not None:
            _write_published(sheet, live, published)
        sheet.skip()
        for sentence in said:
            sheet.paragraph(sentence)
        write_drawings(book, live)
        write_pattern_sheet(book, "Lines", title, ((part.heading, part.lines) for part in pattern_parts(written)))
        write_row_charts(book, charts)
        book.save(stream)


def _write_published(sheet: SheetWriter, live: LiveSizes, published: PublishedRun) -> None:
    """The numbers as they were set, as values; those that differ from the live ones are framed, and counted for each size."""
    was, names = {str(size["size"]): size for size in published.sizes}, live.names
    sheet.skip()
    published_heading(sheet, f"on {published.date}, from swatch {published.tag}", len(names))
    lines = []
    for label, name, key in _PUBLISHED:
        cells = [_figure(was[own], name) if own in was else None for own in names]
        row = live.row_of(key)
        if row is None or all(cell is None for cell in cells):
            continue
        numbers = TENTHS if NUMBERS[name].kind is NumberKind.LENGTH else WHOLE
        lines.append(PublishedLine(label, cells, row, [live.value(key, own) for own in names], numbers))
    write_published(sheet, lines, "numbers that differ today", ["" if own in was else "not in it" for own in names])


def _figure(figures: SizeFigures, name: str) -> Content:
    if NUMBERS[name].kind is NumberKind.LENGTH:
        mm = figures.length(name)
        return None if mm is None else mm / 10
    return figures.get(name)
