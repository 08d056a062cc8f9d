"""Two to six swatches side by side."""

import tkinter as tk
from collections.abc import Callable, Sequence

from logbook.pages.gauges.comparing import LEGEND, ComparedSwatches
from logbook.window.field import Field
from logbook.window.long_dialog import LongDialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

LETTERS = 116
LEAST = 14
"""Letters of a gauge with its give or take."""
LEAST_LINES, MOST_LINES = 5, 12
Answer = Callable[[str], ComparedSwatches | str]
"""Gets the tags as typed; gives the comparison, or the sentence that says why there is none."""


def show_comparison(parent: tk.Misc, look: Look, tags: Sequence[str], answer: Answer) -> None:
    """Compares the swatches of ``tags``; others can be typed."""
    CompareDialog(parent, look, tags, answer).start()


class CompareDialog(LongDialog):
    """The tags, the table of every field, and what to say of the gauges; follows every key typed."""

    def __init__(self, parent: tk.Misc, look: Look, tags: Sequence[str], answer: Answer) -> None:
        super().__init__(parent, look, "Compare swatches", self.close, LETTERS)
        self._answer = answer
        self.table: Table | None = None
        self.tags = Field(self.body, look, "&Tags", width=40, label_width=6)
        self.tags.text = ", ".join(tags)
        self.says = Sentence(self.body)
        self._legend = Sentence(self.body, LEGEND, "Muted.TLabel")
        for row, widget in {0: self.tags, 2: self._legend, 3: self.says}.items():
            look.grid(widget, row=row, column=0, sticky="ew", padx=(0, 1), pady=(0, 1))
        self.tags.variable.trace_add("write", lambda *_: self._show())
        self.add_button("&Close", self.close, accent=True)
        self._show()

    def start(self) -> None:
        """Opens with the keyboard in the table, or where tags are to be typed."""
        self.open(self.table.tree if self.table is not None else self.tags.input)

    def _show(self) -> None:
        answer = self._answer(self.tags.text)
        if self.table is not None:
            self.table.destroy()
            self.table = None
        if isinstance(answer, str):
            self.tags.show_message(answer, "hint")
            self.says.configure(text=" ")
            self._legend.grid_remove()
            return
        self.tags.show_message("two to six, separated by commas", "hint")
        self.says.configure(text="\n".join(answer.sentences))
        self._legend.grid()
        self._build_table(answer)
        self.grow()

    def _scroll_across(self, step: int) -> str:
        """Six swatches may be wider than the screen."""
        if self.table is not None:
            self.table.tree.xview_scroll(step * 8 * self.look.line, "units")
        return "break"

    def _build_table(self, answer: ComparedSwatches) -> None:
        width = max(LEAST, (LETTERS - 50) // len(answer.tags))
        columns = [Column("mark", "", 2), Column("name", "Field", 28)]
        columns += [Column(f"swatch {place}", tag, width, grow=True, least=LEAST) for place, tag in enumerate(answer.tags)]
        self.table = Table(self.body, self.look, columns)
        lines = self.winfo_screenheight() // (4 * self.look.line)
        self.table.tree.configure(height=min(max(lines, LEAST_LINES), MOST_LINES))
        for key, step in {"Left": -1, "Right": 1}.items():
            self.table.tree.bind(f"<{key}>", lambda _, step=step: self._scroll_across(step))  # type: ignore[misc]
        self.table.set_rows(
            Row(str(place), (line.mark, line.name, *line.values), (line.mark or None, line.name, *line.values))
            for place, line in enumerate(answer.lines)
        )
        self.look.grid(self.table, row=1, column=0, sticky="ew", padx=(0, 1), pady=(0, 1))
        self.table.select(["0"])
