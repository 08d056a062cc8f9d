"""The chart of the written rows, under them."""

import tkinter as tk
from collections.abc import Callable
from functools import partial
from pathlib import Path
from tkinter import ttk

from logbook.errors import RefusedError
from logbook.pages.patterns.rows_chart import RowsChart, rows_chart
from logbook.pages.session import Session
from logbook.tasks.written_rows import write_chart
from logbook.window.background import Background
from logbook.window.canvas import DrawingCanvas
from logbook.window.file_dialogs import ask_where_to_save
from logbook.window.look import Look
from logbook.window.message import tell
from logbook.window.sentence import Sentence
from logbook.window.styles import styled

PAUSE_MS = 400


class ChartView(ttk.Frame):
    """Follows the rows as they are typed, and shows nothing where there is no chart; ``name`` is what its file is called."""

    def __init__(self, parent: tk.Misc, look: Look, session: Session, name: Callable[[], str]) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look, self._session, self._name = look, session, name
        self._wanted = ("", "")
        self._chart = RowsChart()
        self._pause = ""
        self.columnconfigure(0, weight=1)
        self._why_not = Sentence(self, style="Muted.TLabel")
        self._why_not.grid(row=0, column=0, sticky="ew")
        self.drawing = DrawingCanvas(self, look)
        self.drawing.grid(row=1, column=0, sticky="ew")
        self.save = ttk.Button(self, text="Save as SVG…", command=self._save)
        look.grid(self.save, row=2, column=0, sticky="w", pady=(1, 1.5))
        without_chart = ttk.Frame(self, style=styled(parent, "TFrame"), height=1)  # with nothing shown it would keep its height
        without_chart.grid(row=3, column=0)
        self.bind("<Destroy>", lambda _: self._stop_pause(), add="+")
        self._show(self._wanted, self._chart)

    def follow(self, text: str, terms: str) -> None:
        """Draws these rows, beside the window, when the typing pauses."""
        wanted = (text, terms)
        if wanted == self._wanted:
            return
        self._wanted = wanted
        self._stop_pause()
        if text.strip():
            self._pause = self.after(PAUSE_MS, self._draw)
        else:
            self._show(wanted, RowsChart())

    def _stop_pause(self) -> None:
        if self._pause:
            self.after_cancel(self._pause)
        self._pause = ""

    def _draw(self) -> None:
        self._pause = ""
        wanted = self._wanted
        Background(self, lambda _: rows_chart(*wanted), partial(self._show, wanted), self._not_drawn, lambda *_: None)

    def _not_drawn(self, error: Exception) -> None:
        raise error

    def _show(self, wanted: tuple[str, str], chart: RowsChart) -> None:
        """One of rows that were typed over meanwhile is put aside."""
        if wanted != self._wanted:
            return
        self._chart = chart
        self._why_not.configure(text=chart.why_not)
        self.drawing.show(chart.draw)
        for widget, shown in ((self._why_not, chart.why_not), (self.drawing, chart.draw), (self.save, chart.draw)):
            if shown:
                widget.grid()
            else:
                widget.grid_remove()

    def _save(self) -> None:
        """Asks where to, and writes the chart there."""
        courses, name = self._chart.courses, self._name().strip() or "rows"
        chosen = ask_where_to_save(parent=self, title="Save the chart", kinds=[("Drawing", "*.svg")], name=name)
        if not chosen or courses is None:
            return
        try:
            write_chart(courses, name, Path(chosen), self._session.book)
        except RefusedError as error:
            tell(self, self.look, str(error))
        else:
            self._session.say(f"Written to {chosen}.")
