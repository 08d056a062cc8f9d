"""Which hook: the chart, the table over the trade's hooks, and the hook for a wanted gauge."""

import tkinter as tk
from collections.abc import Callable

from logbook.craft.swatches.conditions import Condition
from logbook.pages.gauges.hook_card import HookCard
from logbook.pages.gauges.hook_drawing import hook_drawing
from logbook.window.canvas import DrawingCanvas
from logbook.window.choices import ChoiceField
from logbook.window.field import Field
from logbook.window.fitting import FittingColumns
from logbook.window.long_dialog import LongDialog
from logbook.window.look import Look
from logbook.window.sentence import Sentence
from logbook.window.table import Column, Row, Table

CONDITIONS = {condition.words: condition for condition in Condition}
LETTERS = 84
LINES = 7
NEED = ("hook", "tried", "width", "gauge", "names")


def show_hooks(
    parent: tk.Misc, look: Look, title: str, condition: Condition, card_of: Callable[[Condition, str], HookCard]
) -> None:
    """``card_of`` makes the card for a condition and a wanted gauge as typed."""
    HookDialog(parent, look, title, condition, card_of).start()


class HookDialog(LongDialog):
    """The wanted gauge and its hook, the chart, the table; follows every key typed."""

    def __init__(
        self, parent: tk.Misc, look: Look, title: str, condition: Condition, card_of: Callable[[Condition, str], HookCard]
    ) -> None:
        super().__init__(parent, look, title, self.close, LETTERS)
        self._card_of = card_of
        self.wanted = Field(self.body, look, "Gauge &wanted", width=24, label_width=14)
        self.condition = ChoiceField(self.body, look, "&Measured", tuple(CONDITIONS), width=18, label_width=14)
        self.condition.text = condition.words
        self.answer = Sentence(self.body, style="Section.TLabel")
        self.drawing = DrawingCanvas(self.body, look)
        self.table = Table(self.body, look, _columns(card_of(condition, "").multiple))
        self.notes = Sentence(self.body, style="Muted.TLabel")
        FittingColumns(self.table, NEED)
        self.table.tree.configure(height=LINES)
        for row, widget in enumerate((self.wanted, self.condition, self.answer, self.drawing, self.table, self.notes)):
            look.grid(widget, row=row, column=0, sticky="ew", padx=(0, 1), pady=(0, 1.5 if row > 1 else 0))
        for field in (self.wanted, self.condition):
            field.variable.trace_add("write", lambda *_: self._show())
        self.add_button("&Close", self.close, accent=True)
        self._show()

    def start(self) -> None:
        """Opens with the keyboard where the wanted gauge is typed."""
        self.open(self.wanted.input)

    def _show(self) -> None:
        card = self._card_of(CONDITIONS[self.condition.text], self.wanted.text)
        if card.error:
            self.wanted.show_message(card.error)
        else:
            self.wanted.show_message("like “2.6 repeats in 10 cm” or “16 sts in 10 cm”", "hint")
        self.answer.configure(text=card.missing or card.answer or " ")
        self.drawing.show(hook_drawing(card))
        self.notes.configure(text="\n".join(card.notes))
        self.table.set_rows(Row(cells[0], cells, (place,) * len(cells)) for place, cells in enumerate(card.cells))
        self.table.select([cells[0] for cells in card.cells[card.place : card.place + 1]])
        for widget, shown in ((self.drawing, card.trials), (self.table, card.cells), (self.notes, card.notes)):
            if shown:
                widget.grid()
            else:
                widget.grid_remove()


def _columns(multiple: int) -> tuple[Column, ...]:
    return (
        Column("hook", "Hook", 8, "right"),
        Column("names", "Names", 18, grow=True),
        Column("tried", "", 5),
        Column("gauge", "Gauge", 20, "right", grow=True),
        Column("width", "One repeat" if multiple > 1 else "One stitch", 17, "right", grow=True),
    )
