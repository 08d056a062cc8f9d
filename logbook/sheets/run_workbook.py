"""A size run as a workbook: its numbers, the measures of its drawing, the lines of the pattern, and a sheet to try it out.

The first three sheets hold values only. The formulas of the last carry their values (see ``formula_values``), so that each
sheet shows what the program said also where nothing calculates.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import BinaryIO

from logbook.craft.sizes.pattern_lines import Written, pattern_parts
from logbook.craft.sizes.run_numbers import NUMBERS, NumberKind, SizeFigures, figures_of
from logbook.craft.sizes.size_run import SizeRun
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import WHOLE, Content, Formula, Look, Role
from logbook.sheets.try_it import FIRST_SIZE, try_it_rows

SHEETS = ("Sizes", "Drawing", "Lines", "Try it")
_MM_PER_CM = 10.0
_MM_PER_INCH = 25.4


@dataclass(frozen=True, slots=True)
class _Layout:
    """How a sheet is set out: its columns' widths in characters, its bold rows, and the number format of a cell."""

    widths: Sequence[int]
    bold: Sequence[int]
    decimals: str = "0.0"


def write_run_workbook(stream: BinaryIO, written: Written, run: SizeRun, said: Sequence[str], date: str) -> None:
    """Writes the workbook; ``said`` stands below the numbers, ``date`` (as shown) stands at the head of each printed page.

    Raises RefusedError, naming the text, for a name that no sheet can hold.
    """
    title = written.plan.name or "Size run"
    sizes = len(written.sizes)
    parts = [(part.heading, part.lines) for part in pattern_parts(written)]
    lines = [line for heading, below in parts for line in (heading, *below, None)]
    bold = [row for row, line in enumerate(lines, start=1) if line in {heading for heading, _ in parts}]
    with BookWriter(title, date) as book:
        _sheet(book, "Sizes", list(_size_rows(written, run, said)), _Layout([34, *[11] * (sizes + 1)], (1, 3)))
        _sheet(book, "Drawing", list(_drawing_rows(written)), _Layout([34, *[11] * sizes], (1, 3)))
        _sheet(book, "Lines", [(line,) for line in lines], _Layout([110], bold))
        _sheet(
            book, "Try it", list(try_it_rows(written)), _Layout([44, 14, 14, 16, 14, 11, 11, 13], (1, FIRST_SIZE - 1), "0.0##")
        )
        book.save(stream)


def _size_rows(written: Written, run: SizeRun, said: Sequence[str]) -> Iterator[tuple[Content, ...]]:
    """A row for each number, a column for each size; all lengths in cm."""
    plan = written.plan
    yield (f"{plan.name or 'Size run'}: lengths in cm, finished sizes {written.gauges.stitches.condition.words}",)
    yield (None,)
    yield "size", *(size.name for size in written.sizes), "all"
    balls = None if run.yarn is None else run.yarn.balls
    grams = None if run.yarn is None else run.yarn.grams
    up, across = ("stitch", "rows") if plan.sideways else ("row", "stitches")
    figures = [figures_of(size) for size in written.sizes]
    for label, name in _NUMBERS:
        cells = [_cell(size, name) for size in figures]
        if any(cell is not None for cell in cells):
            yield label.format(up=up, across=across), *cells, {"yarn, g": grams, "balls, with the reserve": balls}.get(label)
    for sentence in said:
        yield (sentence,)


def _drawing_rows(written: Written) -> Iterator[tuple[Content, ...]]:
    """The measures that stand at the drawing of the panel, in cm and in inches."""
    yield ("Measures of the panel as finished, from its hem and side edges",)
    yield (None,)
    yield "size", *(size.name for size in written.sizes)
    for unit, mm in (("cm", _MM_PER_CM), ("in", _MM_PER_INCH)):
        for label, measure in _MEASURES:
            cells = [measure(figures_of(size)) for size in written.sizes]
            if any(cell is not None for cell in cells):
                yield f"{label}, {unit}", *(None if cell is None else cell / mm for cell in cells)


def _cell(figures: SizeFigures, name: str) -> Content:
    """A number as a cell has it: lengths in cm, and no text for none."""
    if NUMBERS[name].kind in (NumberKind.LENGTH, NumberKind.DIFFERENCE):
        mm = figures.length(name)
        return None if mm is None else mm / _MM_PER_CM
    return None if figures[name] == "" else figures[name]


_NUMBERS = (
    ("body", "body"), ("chain", "chain"), ("base stitches", "stitches"), ("repeats", "repeats"),
    ("edge stitches at each side", "edge stitches"), ("rows", "rows"), ("width of a panel", "width"),
    ("width wanted", "width wanted"), ("give or take, a whole piece", "width give or take"),
    ("width before washing", "width before washing"), ("all round", "all round"), ("ease all round", "ease"),
    ("length", "length"), ("length before washing", "length before washing"), ("slit ends after {up}", "slit at"),
    ("armhole begins after {up}", "armhole at"), ("each shoulder, {across}", "shoulder units"), ("neck, {across}", "neck units"),
    ("yarn, g", "yarn"), ("balls, with the reserve", "balls"), ("same as", "same as"),
)  # fmt: skip
_MEASURES: tuple[tuple[str, Callable[[SizeFigures], float | None]], ...] = (
    ("width", lambda size: size.length("width")),
    ("length", lambda size: size.length("length")),
    ("hem to armhole", lambda size: size.hem_to_armhole_mm),
    ("armhole depth", lambda size: size.length("armhole")),
    ("slit", lambda size: size.length("slit")),
    ("neck", lambda size: size.length("neck")),
    ("each shoulder", lambda size: size.shoulder_mm),
)


def _sheet(book: BookWriter, name: str, rows: Sequence[Sequence[Content]], layout: _Layout) -> None:
    sheet = book.sheet(name, layout.widths, landscape=name != "Lines")
    for row, contents in enumerate(rows, start=1):
        role = Role.HEADING if row in layout.bold and row > 1 else Role.TITLE if row in layout.bold else Role.CELL
        looks = [
            Look(
                role,
                WHOLE if isinstance(c.value if isinstance(c, Formula) else c, int) else layout.decimals,
                right=column > 0,
                wraps=isinstance(c, str) and (column > 0 or name == "Lines"),
            )
            for column, c in enumerate(contents)
        ]
        sheet.add(contents, looks)
