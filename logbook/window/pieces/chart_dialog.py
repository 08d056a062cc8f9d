"""Sizes from a body chart: choose one, edit it, keep it, take its sizes."""

import tkinter as tk
from collections.abc import Callable

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.errors import LogbookError
from logbook.pages.pieces.chart_choice import ENDS, ROUND, ChartChoice
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.dialog import Dialog
from logbook.window.field import Field
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.text_field import TextField

LABEL_LETTERS = 22
HINT = "One line for each size, its figures in cm separated by “;”, a range as 71–76. The first line names the columns."


def show_chart(parent: tk.Misc, look: Look, choice: ChartChoice, take: Callable[[tuple[SizePlan, ...]], object]) -> None:
    """Opens the dialog; ``take`` gets the sizes that are taken."""
    dialog = _ChartDialog(parent, look, choice, take)
    dialog.open(dialog.take_button)
    dialog.wait_window()


class _ChartDialog(Dialog):
    def __init__(self, parent: tk.Misc, look: Look, choice: ChartChoice, take: Callable[[tuple[SizePlan, ...]], object]) -> None:
        super().__init__(parent, look, "Sizes from a body chart", self.close, lambda: choice.waits)
        self._choice, self._take = choice, take
        scrolled = Scrolled(self.inside, look, 92)
        scrolled.grid(row=0, column=0, sticky="nsew")
        self.inside.rowconfigure(0, weight=1)
        place = scrolled.inside
        place.columnconfigure(0, weight=1)
        self.name = SuggestionField(place, look, "&Chart", lambda: choice.names, width=24, label_width=LABEL_LETTERS)
        self.text = TextField(place, look, "Its si&zes", lines=10)
        self.text.area.configure(wrap="none")
        self.measure = ChoiceField(place, look, "&Goes round the", ROUND, width=10, label_width=LABEL_LETTERS)
        self.end = ChoiceField(place, look, "Of a &range take", tuple(ENDS), width=14, label_width=LABEL_LETTERS)
        self.deeper = Field(place, look, "&Armholes deeper by", width=8, label_width=LABEL_LETTERS, unit="leave empty for none")
        self.says = Sentence(place, HINT, "Muted.TLabel")
        for row, widget in enumerate((self.name, self.text, self.measure, self.end, self.deeper, self.says)):
            widget.grid(row=row, column=0, sticky="ew")
        self.add_button("&Delete the chart", self._delete)
        self.add_button("&Save the chart", self._save)
        self.add_button("&Cancel", self.leave)
        self.take_button = self.add_button("&Take these sizes", self._taken, accent=True)
        self.name.text = choice.names[0]
        self._show_chart()
        self.name.variable.trace_add("write", lambda *_: self._show_chart())
        for field in (self.text, self.measure, self.end, self.deeper):
            field.variable.trace_add("write", lambda *_: self._say())
        self.update_idletasks()
        scrolled.canvas.configure(height=min(place.winfo_reqheight(), self.winfo_screenheight() * 3 // 4))

    def _show_chart(self) -> None:
        """A chart that is known is shown; a new name leaves the text to be kept under it."""
        if self.name.text in self._choice.texts:
            self.text.text = self._choice.texts[self.name.text]
        self._say()

    def _say(self, said: str = "") -> None:
        chosen = self._choice.sizes(self.text.text, self.end.text, self.measure.text, self.deeper.text)
        self.text.show_message(chosen.error or None)
        self.take_button.state(["disabled" if chosen.error else "!disabled"])
        self.says.configure(text=said or f"{HINT} {chosen.says}")

    def _taken(self) -> None:
        chosen = self._choice.sizes(self.text.text, self.end.text, self.measure.text, self.deeper.text)
        if chosen.plans and not self._choice.waits:
            self.close()
            self._take(chosen.plans)

    def _save(self) -> None:
        self._attempt(lambda: self._choice.save(self.name.text, self.text.text))

    def _delete(self) -> None:
        self._attempt(lambda: self._choice.delete(self.name.text))
        self._show_chart()

    def _attempt(self, action: Callable[[], str]) -> None:
        try:
            said = action()
        except LogbookError as error:
            said = f"✕ {error}"
        self._say(said)
