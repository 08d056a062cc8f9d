"""The drawing of a panel as a native chart: its outline to one scale across and up, with its measures and marks as labels.

It follows the table of sizes: every point is a formula over the numbers there.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from logbook.craft.words.numbers import fixed
from logbook.sheets.book_writer import BookWriter, SheetWriter
from logbook.sheets.cells import TENTHS, CellLook, Content, Formula, Heading, Role
from logbook.sheets.charts import Axes, Series, scatter
from logbook.sheets.live_sizes import LiveSizes

NAME = "Drawing"
_WIDTHS = (44, 14, 14, 14)
_SIDE_CM = 16.0
_TALL = 35
"""Rows that a chart is high."""
_BELOW_TOP_CM = 0.6
"""Where the line of the neck lies, clear of the edge."""
_HEADINGS = (Heading("line", 44), Heading("across, cm", 12, TENTHS, right=True), Heading("up, cm", 12, TENTHS, right=True))
_POINT = [CellLook(), *[CellLook(numbers=TENTHS, right=True)] * 2]


class _Line(NamedTuple):
    """What a line is called, and its points across and up in cm, which a mark that does not fit draws as one point."""

    said: Content
    points: Sequence[tuple[Content, Content]]


def write_drawings(book: BookWriter, live: LiveSizes) -> None:
    """A sheet with the outline of each panel that has a length, by the name of its size."""
    names = [name for name in live.names if live.cell("length", name) is not None]
    if not names:
        return
    sheet = book.sheet(NAME, _WIDTHS)
    sheet.head(NAME, "The panel as finished, in cm, to one scale across and up, from the lower left corner.")
    for place, name in enumerate(names):
        if place:
            sheet.new_page()
        first = sheet.row + 1
        sheet.add((name or "Panel", *[""] * (len(_WIDTHS) - 1)), CellLook(Role.SECTION), height=21)
        sheet.skip(_TALL)
        sheet.add(
            [*(h.name for h in _HEADINGS), ""],
            [*(CellLook(Role.HEADING, right=h.right) for h in _HEADINGS), CellLook(Role.HEADING)],
        )
        series = [_written(sheet, line) for line in _Panel(live, name).lines()]
        axes = Axes("cm", "cm", (0, None), (0, None))
        sheet.raw.add_chart(scatter(sheet.raw, "", axes, series, (_SIDE_CM, _SIDE_CM + 1.5)), f"A{first + 1}")


def _written(sheet: SheetWriter, line: _Line) -> Series:
    begin = sheet.row + 1
    for x, y in line.points:
        sheet.add((line.said, x, y), _POINT)
    return Series("", 2, 3, begin, sheet.row, line=True, name_at=f"'{NAME}'!$A${begin}")


class _Panel:
    """The lines of one size."""

    def __init__(self, live: LiveSizes, name: str) -> None:
        self._cells = {key: live.cell(key, name) for key in ("width", "length", "neck", "armhole", "slit")}

    def lines(self) -> Iterator[_Line]:
        """The outline, then a line for each mark."""
        width, length = self._cells["width"], self._cells["length"]
        assert width is not None
        assert length is not None
        w, h = width.text, length.text
        said = _said([width, " cm wide, ", length, " cm long"])
        corners: list[tuple[Content, Content]] = [(0.0, 0.0), (width, 0.0), (width, length), (0.0, length), (0.0, 0.0)]
        # A point by itself draws nothing: both axes reach as far, so that they are to one scale.
        far = Formula(f"MAX({w},{h})", max(_number(width), _number(length)))
        yield _Line(said, [*corners, (None, None), (far, far)])
        if neck := self._cells["neck"]:
            shoulder = Formula(f"({w}-{neck.text})/2", (_number(width) - _number(neck)) / 2)
            right = Formula(f"{w}-{shoulder.text}", _number(width) - _number(shoulder))
            below = Formula(f"{h}-{_BELOW_TOP_CM}", _number(length) - _BELOW_TOP_CM)
            yield _mark("neck", neck, [" cm, shoulders ", shoulder, " cm"], [(shoulder, below), (right, below)])
        if armhole := self._cells["armhole"]:
            up = Formula(f"{h}-{armhole.text}", _number(length) - _number(armhole))
            yield _mark("armhole", armhole, [" cm deep"], [(0.0, up), (width, up)])
        if slit := self._cells["slit"]:
            yield _mark("slit", slit, [" cm"], [(0.0, slit), (width, slit)])


def _mark(name: str, of: Formula, after: Sequence[str | Formula], points: Sequence[tuple[float | Formula, Formula]]) -> _Line:
    """A line that is there as long as its measure is a number; it is called by its name, its measure and what comes ``after``."""
    there, said = f"ISNUMBER({of.text})", _said([f"{name} ", of, *after])
    words = Formula(f'IF({there},{said.text},"{name} does not fit")', said.value)
    return _Line(words, [(_if(there, x), _if(there, y)) for x, y in points])


def _if(there: str, number: float | Formula) -> Content:
    return Formula(f"IF({there},{number.text},0)", number.value) if isinstance(number, Formula) else number


def _said(parts: Sequence[str | Formula]) -> Formula:
    """Words and numbers to one decimal, joined."""
    words = [f"FIXED({part.text},1,TRUE)" if isinstance(part, Formula) else f'"{part}"' for part in parts]
    shown = [fixed(_number(part), 1) if isinstance(part, Formula) else part for part in parts]
    return Formula("&".join(words), "".join(shown))


def _number(formula: Formula) -> float:
    return float(formula.value)
