"""What goes into one cell of a workbook, and how it looks there: named looks, so that every workbook looks alike."""

from enum import StrEnum
from typing import NamedTuple

from logbook.craft.swatches.fields import exact


class Formula(NamedTuple):
    """A formula, without its ``=``, and what it comes to."""

    text: str
    value: str | int | float


Content = str | int | float | Formula | None


class Role(StrEnum):
    """What a cell is for; each has one look in all workbooks."""

    CELL = "cell"
    TITLE = "title"
    SUBTITLE = "subtitle"
    SECTION = "section"
    HEADING = "heading"
    LABEL = "label"
    ALIGNED = "aligned"
    INPUT = "input"
    ANSWER = "answer"
    NOTE = "note"
    TROUBLE = "trouble"


class CellLook(NamedTuple):
    """The look of a cell: what it is for, how numbers show, and whether it stands at the right, in the middle, or may wrap."""

    role: Role = Role.CELL
    numbers: str = "General"
    right: bool = False
    wraps: bool = False
    centred: bool = False


class Heading(NamedTuple):
    """One column of a table: heading, width in characters, how numbers show, whether it stands at the right, wraps, is hidden."""

    name: str
    width: float
    numbers: str = "General"
    right: bool = False
    wraps: bool = False
    hidden: bool = False

    @property
    def look(self) -> CellLook:
        """The look of its cells."""
        return CellLook(Role.CELL, self.numbers, self.right, self.wraps)


CELL = CellLook()
WHOLE, TENTHS, HUNDREDTHS, PERCENT, EIGHTHS = "0", "0.0", "0.00", "0.0%", "# ?/?"
"""How numbers show. ``EIGHTHS`` is for inches that are rounded to eighths already: 18 1/4, not 18 2/8."""


def cell_text(content: str | int | float | None) -> str:
    """A cell as text: numbers exact, with the shortest decimals; nothing is ""."""
    if content is None or isinstance(content, str):
        return content or ""
    return exact(content)


def column_letters(number: int) -> str:
    """How a spreadsheet names a column: 1 → ``A``, 28 → ``AB``."""
    letters = ""
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
