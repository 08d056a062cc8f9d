"""What was published beside what a sheet reckons: values that stay, framed where the live number is another, and counted."""

from collections.abc import Sequence
from math import floor
from typing import NamedTuple

from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import WHOLE, CellLook, Content, Formula, Role, column_letters
from logbook.sheets.looks import difference_rule


class PublishedLine(NamedTuple):
    """One number in all columns: its label, as published, the row of the live one and what that comes to, how it shows."""

    label: str
    was: Sequence[Content]
    row: int
    now: Sequence[object]
    numbers: str


class _Compared(NamedTuple):
    own_row: int
    line: PublishedLine


def published_heading(sheet: SheetWriter, words: str, columns: int) -> None:
    """The heading over what was published; ``words``: when, and from what."""
    sheet.add((f"As published {words}", *[""] * columns), CellLook(Role.SECTION), height=21)


def write_published(sheet: SheetWriter, lines: Sequence[PublishedLine], label: str, missing: Sequence[str]) -> None:
    """The lines from column B on, and below them how many differ in each column, under ``label``; ``missing`` has for each column
    what stands there instead ("": it is counted)."""
    compared = []
    for line in lines:
        look = CellLook(numbers=line.numbers, right=True)
        own_row = sheet.add((line.label, *line.was), [CellLook(Role.LABEL), *[look] * len(line.was)])
        compared.append(_Compared(own_row, line))
        frame_differing(sheet, "B", column_letters(len(line.was) + 1), own_row, line.row)
    counts = [words or _differing(place, compared) for place, words in enumerate(missing)]
    sheet.add((label, *counts), [CellLook(Role.LABEL), *[CellLook(numbers=WHOLE, right=True)] * len(counts)])


def frame_differing(sheet: SheetWriter, first: str, last: str, was: int, now: int, *, rows: int = 1, decimals: int = 1) -> None:
    """Frames the numbers of the columns ``first`` to ``last`` in so many rows from the row ``was`` that differ from those in the
    rows from ``now`` on."""
    before, today = f"{first}{was}", f"{first}{now}"
    differs = f"AND(ISNUMBER({before}),ISNUMBER({today}),ROUND({before},{decimals})<>ROUND({today},{decimals}))"
    sheet.rule(f"{before}:{last}{was + rows - 1}", difference_rule(differs))


def _differing(place: int, compared: Sequence[_Compared]) -> Formula:
    """How many of the published numbers of a column differ from the live ones, to the last digit shown."""
    letter, terms, count = column_letters(place + 2), [], 0
    for own_row, line in compared:
        then, now = f"{letter}{own_row}", f"{letter}{line.row}"
        terms.append(f"IF(AND(ISNUMBER({then}),ISNUMBER({now})),IF(ROUND({then},1)<>ROUND({now},1),1,0),0)")
        before, today = line.was[place], line.now[place]
        if isinstance(before, int | float) and isinstance(today, int | float):
            count += floor(before * 10 + 0.5) != floor(today * 10 + 0.5)
    return Formula("+".join(terms) or "0", count)
