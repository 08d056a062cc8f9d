"""A body chart as a table to type in: the lines of its text as cells, and back."""

import re
from collections.abc import Sequence

from logbook.craft.sizes.body_chart import MEASURES

SIZE = "size"
Cells = list[list[str]]
"""The rows under the heading, each as long as that."""


def table_of(text: str) -> tuple[list[str], Cells]:
    """The heading and the rows of a chart's text: lines of cells parted by ``;`` or tabs, the heading first."""
    lines = [[cell.strip() for cell in re.split("[;\t]", line)] for line in text.splitlines() if line.strip(";\t ")]
    if not lines:
        return [SIZE], []
    headings, *rows = lines
    return headings, [(row + [""] * len(headings))[: len(headings)] for row in rows]


def text_of(headings: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """The text again; empty rows are left out, and a sign that parts cells becomes a blank inside one."""
    lines = [[" ".join(re.sub("[;\t]", " ", cell).split()) for cell in row] for row in (headings, *rows)]
    return "\n".join("; ".join(line) for place, line in enumerate(lines) if not place or any(line))


def pasted(text: str) -> list[list[str]] | None:
    """Cells that were copied in a spreadsheet; None for a text that is one cell."""
    lines = [re.split("[;\t]", line) for line in text.rstrip("\r\n").splitlines()]
    return [[cell.strip() for cell in line] for line in lines] if len(lines) > 1 or len(lines[0]) > 1 else None


def more_measures(headings: Sequence[str]) -> tuple[str, ...]:
    """The measures that the chart does not have yet."""
    return tuple(measure for measure in MEASURES if measure not in headings)
