"""A table whose cells are typed in: a field each, walked through as in a spreadsheet."""

import tkinter as tk
from collections.abc import Callable, Sequence
from functools import partial
from tkinter import ttk

from logbook.window.look import Look
from logbook.window.scroll_bar import show_bar
from logbook.window.styles import styled


class CellGrid(ttk.Frame):
    """There is always an empty row to type the next in. Return goes to the start of the next row, Up and Down keep the column.

    ``on_change`` is called after every change of a cell; ``pasted`` makes cells of what was copied, None of a text that is one.
    A grid wider than its place is moved sideways, so that the cell with the keyboard is in sight.
    """

    def __init__(
        self,
        parent: tk.Misc,
        look: Look,
        letters: Callable[[int], int],
        on_change: Callable[[], object],
        pasted: Callable[[str], list[list[str]] | None],
    ) -> None:
        super().__init__(parent, style=styled(parent, "TFrame"))
        self.look, self._letters, self._on_change, self._pasted = look, letters, on_change, pasted
        self.headings: list[str] = []
        self._cells: list[list[tk.StringVar]] = []
        self._entries: list[list[ttk.Entry]] = []
        self._quiet = False
        self.columnconfigure(0, weight=1)
        self._canvas = tk.Canvas(self, highlightthickness=0, borderwidth=0, height=2, width=2)
        across = ttk.Scrollbar(self, orient="horizontal", command=self._canvas.xview, takefocus=False)
        self._canvas.configure(xscrollcommand=partial(show_bar, across))
        self._canvas.grid(row=0, column=0, sticky="ew")
        across.grid(row=1, column=0, sticky="ew")
        self._inside = ttk.Frame(self._canvas, style=styled(parent, "TFrame"))
        self._canvas.create_window(0, 0, anchor="nw", window=self._inside)
        self._inside.bind("<Configure>", lambda _: self._fit())
        look.when_changed(self, self._follow_look)

    @property
    def rows(self) -> list[list[str]]:
        """What is typed, without the empty row at the end."""
        return [[cell.get() for cell in row] for row in self._cells[:-1]]

    def show(self, headings: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
        """Shows another table."""
        self._quiet = True
        for widget in self._inside.winfo_children():
            widget.destroy()
        self.headings, self._cells, self._entries = list(headings), [], []
        for column, heading in enumerate(headings):
            letters = self._letters(column)
            words = ttk.Label(self._inside, text=heading, style=styled(self, "TLabel"), width=letters)
            self.look.when_changed(words, partial(self._wrap, words, letters))
            words.grid(row=0, column=column, sticky="sw")
        for row in [*rows, []]:
            self._add_row(row)
        self._quiet = False

    def _wrap(self, words: ttk.Label, letters: int) -> None:
        words.configure(wraplength=letters * self.look.letter)

    def start(self) -> None:
        """Puts the keyboard into the first cell."""
        self._go_to(0, 0)

    @property
    def first(self) -> ttk.Entry:
        """The first cell."""
        return self._entries[0][0]

    def _add_row(self, texts: Sequence[str]) -> None:
        place = len(self._cells)
        cells, entries = [], []
        for column in range(len(self.headings)):
            variable = tk.StringVar(self._inside, texts[column] if column < len(texts) else "")
            entry = ttk.Entry(self._inside, textvariable=variable, width=self._letters(column), font="TkTextFont")
            entry.grid(row=place + 1, column=column, sticky="ew", padx=(0, 2), pady=(0, 1))
            variable.trace_add("write", lambda *_: self._typed())
            entry.bind("<Return>", partial(self._go_to, place + 1, 0))
            for key, step in {"Up": -1, "Down": 1}.items():
                entry.bind(f"<{key}>", partial(self._go_to, place + step, column))
            entry.bind("<<Paste>>", partial(self._paste, place, column))
            entry.bind("<FocusIn>", partial(self._reveal, entry), add="+")
            cells.append(variable)
            entries.append(entry)
        self._cells.append(cells)
        self._entries.append(entries)

    def _typed(self) -> None:
        if self._quiet:
            return
        if any(cell.get().strip() for cell in self._cells[-1]):
            self._add_row(())
        self._on_change()

    def _go_to(self, row: int, column: int, _: object = None) -> str:
        if 0 <= row < len(self._entries):
            entry = self._entries[row][column]
            entry.focus_set()
            entry.selection_range(0, "end")
            entry.icursor("end")
        return "break"

    def _paste(self, row: int, column: int, _: object) -> str | None:
        """Cells copied in a spreadsheet go into this one and those right of it and below."""
        try:
            cells = self._pasted(self.clipboard_get())
        except tk.TclError:
            return None
        if cells is None:
            return None
        if cells[0][0].casefold() == self.headings[0]:
            self.show(cells[0], cells[1:])
            self.start()
        else:
            self._quiet = True
            for down, line in enumerate(cells):
                while len(self._cells) <= row + down + 1:
                    self._add_row(())
                for variable, text in zip(self._cells[row + down][column:], line, strict=False):
                    variable.set(text)
            self._quiet = False
        self._on_change()
        return "break"

    def _reveal(self, entry: ttk.Entry, _: object) -> None:
        width, left = max(1, self._inside.winfo_width()), self._canvas.canvasx(0)
        shown = self._canvas.winfo_width()
        if entry.winfo_x() < left:
            self._canvas.xview_moveto(entry.winfo_x() / width)
        elif entry.winfo_x() + entry.winfo_width() > left + shown:
            self._canvas.xview_moveto((entry.winfo_x() + entry.winfo_width() - shown) / width)

    def _fit(self) -> None:
        width, height = self._inside.winfo_reqwidth(), self._inside.winfo_reqheight()
        self._canvas.configure(scrollregion=(0, 0, width, height), width=width, height=height)

    def _follow_look(self) -> None:
        self._canvas.configure(background=self.look.palette.page, xscrollincrement=1)
