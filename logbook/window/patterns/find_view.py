"""What there is: the find field and the list of stitch patterns."""

import tkinter as tk
from collections.abc import Iterator

from logbook.pages.patterns.pattern_list import PatternList, cells, sort_keys
from logbook.window.find_list import FindActions, FindRecords
from logbook.window.fitting import fitting_table
from logbook.window.look import Look
from logbook.window.table import Column, Row

COLUMNS = (
    Column("pattern", "", 8, grow=True, summary=True),
    Column("name", "Stitch pattern", 19, grow=True),
    Column("multiple", "Multiple", 8),
    Column("swatches", "Swatches", 4, "right"),
)
NEED = ("name", "multiple", "swatches")
LEAST = 2
"""With room for fewer columns a line says all of them in two lines of text."""
EMPTY = (
    "No stitch pattern is known yet.",
    "Write one down in the form beside this, or log a swatch: its stitch pattern is listed here too. "
    "The sample (Logbook → Open the sample) holds some.",
)


def find_view(parent: tk.Misc, look: Look, patterns: PatternList, actions: FindActions) -> FindRecords:
    """The list on the page."""

    def rows() -> Iterator[Row]:
        return (Row(line.uid, cells(line), sort_keys(line)) for line in patterns.lines)

    table = fitting_table(look, COLUMNS, actions.select, NEED, LEAST, "pattern")
    return FindRecords(parent, look, table, EMPTY, actions, rows, patterns.find)
