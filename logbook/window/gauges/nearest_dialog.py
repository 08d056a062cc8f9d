"""Nearest gauge: type one, or look for what is like the swatch in hand."""

import tkinter as tk
from collections.abc import Callable

from logbook.craft.gauges.over_length import over_length
from logbook.craft.swatches.conditions import Condition
from logbook.craft.words.lengths import Units
from logbook.pages.gauges.nearest import EXAMPLE, EXAMPLE_INCHES, NearestGauge
from logbook.window.choices import ChoiceField
from logbook.window.dialog import Dialog
from logbook.window.field import Field
from logbook.window.fitting import FittingColumns
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

CONDITIONS = {condition.words: condition for condition in Condition}
LINES = 10
NEED = ("off", "tag", "across", "up", "stitch", "yarn", "hook")


def columns(units: Units) -> tuple[Column, ...]:
    """Gauges are shown over 10 cm or 4 in."""
    over = over_length(units)[1]
    return (
        Column("off", "Off by", 6, "right"),
        Column("tag", "Tag", 8),
        Column("yarn", "Yarn", 18, grow=True, least=14),
        Column("stitch", "Stitch pattern", 18, grow=True, least=12),
        Column("hook", "Hook", 7, "right"),
        Column("across", f"Across {over}", 12, "right"),
        Column("up", f"Up {over}", 10, "right"),
    )


def show_nearest(
    parent: tk.Misc,
    look: Look,
    nearest: NearestGauge,
    condition: Condition,
    units: Units,
    among: str,
    take: Callable[[str], object],
) -> None:
    """``among`` says which swatches are looked through; ``take`` gets the uid of the one the user takes."""
    NearestDialog(parent, look, nearest, condition, units, among, take).start()


class NearestDialog(Dialog):
    """What is looked for, and the list, nearest first; follows every key typed."""

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        nearest: NearestGauge,
        condition: Condition,
        units: Units,
        among: str,
        take: Callable[[str], object],
    ) -> None:
        super().__init__(parent, look, "Nearest gauge", self.close)
        self._nearest, self._take, self._units = nearest, take, units
        self.wanted = Field(self.inside, look, "&Gauge wanted", width=34, label_width=16)
        self.condition = ChoiceField(self.inside, look, "&Measured", tuple(CONDITIONS), width=18, label_width=16)
        self.condition.text = condition.words
        self.says = Sentence(self.inside)
        self.table = Table(self.inside, look, columns(units))
        FittingColumns(self.table, NEED)
        self.table.tree.configure(height=LINES)
        whence = Sentence(self.inside, among, "Muted.TLabel")
        for row, widget in enumerate((self.wanted, self.condition, self.says, whence)):
            look.grid(widget, row=row, column=0, sticky="ew", pady=(0, 1 if row > 1 else 0.5))
        self.table.grid(row=4, column=0, sticky="nsew")
        self.inside.rowconfigure(4, weight=1)
        for field in (self.wanted, self.condition):
            field.variable.trace_add("write", lambda *_: self._show())
        self.add_button("&Close", self.close)
        self.take_button = self.add_button("&Open swatch", self.take, accent=True)
        self._bind_keys()
        self._show()

    def start(self) -> None:
        """Opens with the keyboard where the gauge is typed."""
        self.open(self.wanted.input)

    def take(self) -> None:
        """Closes and takes the chosen swatch in hand."""
        chosen = self.table.selected
        if chosen:
            self.close()
            self._take(chosen[0])

    def _bind_keys(self) -> None:
        entry, tree = self.wanted.input, self.table.tree
        for key, step in {"Down": 1, "Up": -1, "Next": 10, "Prior": -10}.items():
            entry.bind(f"<{key}>", lambda _, step=step: self._walk(step))  # type: ignore[misc]
        for widget in (entry, tree):
            widget.bind("<Return>", lambda _: self.take())
        self.table.on_double_click(self.take)

    def _walk(self, step: int) -> str:
        self.table.walk(step)
        return "break"

    def _show(self) -> None:
        answer = self._nearest.answer(self.wanted.text, CONDITIONS[self.condition.text])
        example = EXAMPLE if self._units is Units.CM else EXAMPLE_INCHES
        if answer.error:
            self.wanted.show_message(answer.error)
        else:
            self.wanted.show_message(f"like “{example}”; leave empty for one like the swatch shown", "hint")
        self.says.configure(text=answer.says or "—")
        self.table.set_rows(Row(line.uid, line.cells, line.sort_keys) for line in answer.lines)
        self.table.select([line.uid for line in answer.lines[:1]])
        self.take_button.state(["!disabled" if answer.lines else "disabled"])
