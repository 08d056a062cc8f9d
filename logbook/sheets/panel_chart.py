"""The drawing of a panel as a native chart: its outline to one scale across and up, with its measures and marks as labels."""

from collections.abc import Sequence
from typing import Any

from logbook.craft.sizes.run_numbers import SizeFigures
from logbook.sheets.book_writer import BookWriter
from logbook.sheets.cells import TENTHS, CellLook, Heading, Role
from logbook.sheets.charts import Axes, Series, scatter

NAME = "Drawing"
_WIDTHS = (44, 14, 14, 14)
_SIDE_CM = 16.0
_TALL = 35
"""Rows that a chart is high."""
_HEADINGS = (Heading("line", 44), Heading("across, cm", 12, TENTHS, right=True), Heading("up, cm", 12, TENTHS, right=True))
Point = tuple[float, float]


def write_drawings(book: BookWriter, panels: Sequence[tuple[str, SizeFigures]]) -> None:
    """A sheet with the outline of each panel that has a length, by name (of a size, or "")."""
    drawn = [(name, figures) for name, figures in panels if figures.length("length") is not None]
    if not drawn:
        return
    sheet = book.sheet(NAME, _WIDTHS)
    sheet.head(NAME, "The panel as finished, in cm, to one scale across and up; from its hem at the left below.")
    for place, (name, figures) in enumerate(drawn):
        if place:
            sheet.new_page()
        first = sheet.row + 1
        sheet.add((name or "Panel", *[""] * (len(_WIDTHS) - 1)), CellLook(Role.SECTION), height=21)
        sheet.skip(_TALL)
        sheet.add(
            [*(h.name for h in _HEADINGS), ""],
            [*(CellLook(Role.HEADING, right=h.right) for h in _HEADINGS), CellLook(Role.HEADING)],
        )
        spans = []
        for said, points in _lines(figures):
            begin = sheet.row + 1
            for x, y in points:
                sheet.add((said, x, y), [CellLook(), *[CellLook(numbers=TENTHS, right=True)] * 2])
            spans.append((said, begin, sheet.row))
        sheet.raw.add_chart(_chart(sheet.raw, spans, figures), f"A{first + 1}")


def _lines(figures: SizeFigures) -> list[tuple[str, list[Point]]]:
    """The outline, then a line for each mark, each with what it is called."""
    width, length = figures.length("width") or 0.0, figures.length("length") or 0.0
    w, h = width / 10, length / 10
    neck, armhole, slit = (figures.length(name) for name in ("neck", "armhole", "slit"))
    lines = [(f"{w:.1f} cm wide, {h:.1f} cm long", [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h), (0.0, 0.0)])]
    if neck is not None:
        shoulder = (w - neck / 10) / 2
        lines.append((f"neck {neck / 10:.1f} cm, shoulders {shoulder:.1f} cm", [(shoulder, h - 0.6), (w - shoulder, h - 0.6)]))
    if armhole is not None:
        lines.append((f"armhole {armhole / 10:.1f} cm deep", [(0.0, h - armhole / 10), (w, h - armhole / 10)]))
    if slit is not None:
        lines.append((f"slit {slit / 10:.1f} cm", [(0.0, slit / 10), (w, slit / 10)]))
    return lines


def _chart(raw: Any, spans: Sequence[tuple[str, int, int]], figures: SizeFigures) -> Any:
    reach = max(figures.length("width") or 0.0, figures.length("length") or 0.0) / 10
    across = 5 * (int(reach / 5) + 1)
    axes = Axes("cm", "cm", (0, across), (0, across))
    series = [Series(said, 2, 3, first, last, line=True) for said, first, last in spans]
    return scatter(raw, "", axes, series, (_SIDE_CM, _SIDE_CM + 1.5))
