"""Sizes from a body chart: choose one, edit it, keep it, take its sizes."""

import tkinter as tk
from collections.abc import Callable, Sequence
from tkinter import ttk

from logbook.craft.pieces.planned_piece import SizePlan
from logbook.errors import LogbookError
from logbook.pages.pieces.chart_choice import ENDS, ROUND, ChartChoice
from logbook.pages.pieces.chart_table import SIZE, more_measures, pasted, table_of, text_of
from logbook.pages.session import Session
from logbook.window.cell_grid import CellGrid
from logbook.window.choices import ChoiceField, SuggestionField
from logbook.window.dialog import Dialog
from logbook.window.field import Field
from logbook.window.keys import MnemonicLabel
from logbook.window.look import Look
from logbook.window.scrolled import Scrolled
from logbook.window.sentence import Sentence
from logbook.window.unsaved import ask_of_unsaved

LABEL_LETTERS = 22
SIZE_LETTERS, CELL_LETTERS = 6, 10
HINT = "In cm; a range like 71–76. Cells copied in a spreadsheet can be pasted."
ADD = "add a measure …"
MOST_SHARE = 0.92
"""Of the screen's width that the dialog takes at most."""


Take = Callable[[tuple[SizePlan, ...]], object]


def show_chart(parent: tk.Misc, look: Look, session: Session, choice: ChartChoice, take: Take) -> None:
    """Opens the dialog; ``take`` gets the sizes that are taken."""
    dialog = _ChartDialog(parent, look, session, choice, take)
    dialog.open(dialog.take_button)
    dialog.wait_window()


class _ChartDialog(Dialog):
    def __init__(self, parent: tk.Misc, look: Look, session: Session, choice: ChartChoice, take: Take) -> None:
        super().__init__(parent, look, "Sizes from a body chart", self._give_up, lambda: choice.waits)
        self._session, self._choice, self._take = session, choice, take
        name, text = choice.typed
        scrolled = Scrolled(self.inside, look, 92)
        scrolled.grid(row=0, column=0, sticky="nsew")
        self.inside.rowconfigure(0, weight=1)
        place = scrolled.inside
        place.columnconfigure(0, weight=1)
        self.name = SuggestionField(place, look, "&Chart", lambda: choice.names, width=24, label_width=LABEL_LETTERS)
        self.label = MnemonicLabel(place, text="Its sizes", underline=6)
        self.table = CellGrid(place, look, lambda column: CELL_LETTERS if column else SIZE_LETTERS, self._say, pasted)
        self.fault = Sentence(place, "", "Error.TLabel")
        bar = ttk.Frame(place)
        self.more = ttk.Combobox(bar, state="readonly", width=20, font="TkTextFont")
        self.more.bind("<<ComboboxSelected>>", lambda _: self._add_measure())
        self.clear_button = ttk.Button(bar, text="Empty table", underline=0, command=self._clear)
        look.grid(self.more, row=0, column=0, padx=(0, 2))
        self.clear_button.grid(row=0, column=1)
        self.measure = ChoiceField(place, look, "&Goes round the", ROUND, width=10, label_width=LABEL_LETTERS)
        self.end = ChoiceField(place, look, "Of each &range take", tuple(ENDS), width=14, label_width=LABEL_LETTERS)
        self.deeper = Field(place, look, "&Armholes deeper by", width=8, label_width=LABEL_LETTERS, unit="leave empty for none")
        self.deeper.show_taken_unit(choice.taken_unit)
        self.says = Sentence(place, HINT, "Muted.TLabel")
        widgets = (self.name, self.label, self.table, self.fault, bar, self.measure, self.end, self.deeper, self.says)
        for row, widget in enumerate(widgets):
            look.grid(widget, row=row, column=0, sticky="ew", pady=(0, 1))
        self.add_button("&Delete the chart", self._delete)
        self.add_button("&Save the chart", self._save)
        self.add_button("&Cancel", self.leave)
        self.take_button = self.add_button("Use &these sizes", self._taken, accent=True)
        self.name.text = name
        self._show_table(*table_of(text))
        self._say()
        self.fault.grid_remove()
        self.name.variable.trace_add("write", lambda *_: self._show_chart())
        for field in (self.measure, self.end, self.deeper):
            field.variable.trace_add("write", lambda *_: self._say())
        self.update_idletasks()
        width = min(self.table.winfo_reqwidth() + 2 * look.line, int(self.winfo_screenwidth() * MOST_SHARE))
        height = min(place.winfo_reqheight() + 2 * look.line, self.winfo_screenheight() * 3 // 4)
        scrolled.canvas.configure(width=max(width, scrolled.canvas.winfo_reqwidth()), height=height)

    def _show_chart(self) -> None:
        """A chart that is known is shown; a new name leaves the text to be kept under it."""
        if self.name.text in self._choice.texts:
            self._show_table(*table_of(self._choice.texts[self.name.text]))
        self._say()

    def _show_table(self, headings: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        self.table.show(headings, rows)
        self.label.target = self.table.first

    @property
    def _text(self) -> str:
        return text_of(self.table.headings, self.table.rows)

    def _add_measure(self) -> None:
        """Another column, to be filled in."""
        rows = self.table.rows
        self._show_table([*self.table.headings, self.more.get()], rows)
        self.table.start()
        self._say()

    def _clear(self) -> None:
        """A table of the measure it goes round, for sizes of one's own."""
        self._show_table([SIZE, self.measure.text], [])
        self.table.start()
        self._say()

    def _say(self, said: str = "") -> None:
        self._choice.typed = (self.name.text.strip(), self._text)
        self.more.configure(values=more_measures(self.table.headings))
        self.more.set(ADD)
        chosen = self._choice.sizes(self._text, self.end.text, self.measure.text, self.deeper.text)
        self.fault.configure(text=f"✕ {chosen.error}" if chosen.error else "")
        self.fault.grid() if chosen.error else self.fault.grid_remove()
        self.take_button.state(["disabled" if chosen.error else "!disabled"])
        self.says.configure(text=said or f"{HINT} {chosen.says}")

    def _taken(self) -> None:
        chosen = self._choice.sizes(self._text, self.end.text, self.measure.text, self.deeper.text)
        if chosen.plans and not self._choice.waits:
            self.close()
            self._take(chosen.plans)

    def _give_up(self) -> None:
        if self._choice.is_dirty:
            name = f"the body chart “{self.name.text.strip()}”" if self.name.text.strip() else "the new body chart"
            answer = ask_of_unsaved(self, self.look, self._session, name)
            if answer == "save":
                self._save()
            if answer == "stay" or (answer == "save" and self._choice.is_dirty):
                return
        self.close()

    def _save(self) -> None:
        self._attempt(lambda: self._choice.save(self.name.text, self._text))

    def _delete(self) -> None:
        self._attempt(lambda: self._choice.delete(self.name.text))
        self._show_chart()

    def _attempt(self, action: Callable[[], str]) -> None:
        try:
            said = action()
        except LogbookError as error:
            said = f"✕ {error}"
        self._say(said)
