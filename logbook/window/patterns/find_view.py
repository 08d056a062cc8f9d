"""What there is: the find field and the list of stitch patterns."""

import tkinter as tk
from collections.abc import Iterator

from logbook.pages.patterns.pattern_list import PatternList, cells, sort_keys
from logbook.window.find_list import FindActions, FindList
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


class FindView(FindList):
    """Stitch patterns by name, multiple and use."""

    def __init__(self, parent: tk.Misc, look: Look, patterns: PatternList, actions: FindActions) -> None:
        self._patterns = patterns
        table = fitting_table(look, COLUMNS, actions.select, NEED, LEAST, "pattern")
        super().__init__(parent, look, table, EMPTY, actions)
        self.reload()

    def rows(self) -> Iterator[Row]:
        """All rows as they are now."""
        return (Row(line.uid, cells(line), sort_keys(line)) for line in self._patterns.lines)

    def found(self) -> tuple[list[str] | None, str]:
        """Which patterns the words find, and how many that is."""
        return self._patterns.find(self.find.text)
