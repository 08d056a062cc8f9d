"""Where everything stands in the sheet "Starting chain": what is filled in, the answers, and what they are worked out from."""

from logbook.sheets.book_writer import SheetWriter
from logbook.sheets.cells import CellLook, Role
from logbook.sheets.gauges_sheet import LETTER

COLUMNS = (40, 10.5, 10.5, 10.5, 10.5, 10.5, 10.5, 11, 11, 11)
"""How wide the columns are."""
WIDTH_CM = 46
"""The width the sheet begins with."""
SWATCH, REPEATS, REACH, MULTIPLE, PLUS, EXTRA, ROWS, ROWS_REACH = (f"B{row}" for row in (5, 7, 8, 9, 10, 11, 12, 13))
UNITS, WIDTH, BODY, EASE, PANELS, LENGTH = (f"B{row}" for row in range(16, 22))
CHAIN = "B24"
FIRST_OPTION, ROW_OPTION = 27, 34
LINE, UNIT_MM, STITCH_MM, STITCH_SURE, STITCH_BEFORE, MULTIPLE_USED, PLUS_USED, EXTRA_USED = (
    f"$B${row}" for row in range(38, 46)
)
ROW_MM, ROW_SURE, ROW_BEFORE, SET_UP, IN_REPEAT, CLOSING = (f"$B${row}" for row in range(46, 52))
DRIFT, ROW_DRIFT, VARIATION, TAPE, TARGET, ROWS_TARGET = (f"$B${row}" for row in range(52, 58))


def of_line(column: str, last: int) -> str:
    """What the line of the swatch says in a column of the gauges."""
    letter = LETTER[column]
    return f"INDEX(Gauges!${letter}$1:${letter}${last},{LINE})"


def section(sheet: SheetWriter, words: str) -> None:
    """A heading across the sheet."""
    sheet.add((words, *[""] * (len(COLUMNS) - 1)), CellLook(Role.SECTION), height=21)


def or_blank(value: float | None) -> float | str:
    """What a cell shows of it."""
    return "" if value is None else value
