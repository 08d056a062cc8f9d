"""Text of several lines in a frame like a field's, with a scroll bar and the ring of what has the keyboard."""

import tkinter as tk
from functools import partial
from tkinter import ttk
from typing import Any

from logbook.window.look import Look
from logbook.window.scroll_bar import show_bar


class TextArea(ttk.Frame):
    """``area`` has the text, with ``gap`` units above and below it; Tab moves on to what is next instead of writing a tab.

    ``options`` are those of Tk's own.
    """

    def __init__(self, parent: tk.Misc, look: Look, gap: float = 1, **options: Any) -> None:
        super().__init__(parent, style="Field.TFrame", padding=2)
        self.area = tk.Text(self, **{"wrap": "word", "font": "TkTextFont", **options})
        bar = ttk.Scrollbar(self, orient="vertical", command=self.area.yview, takefocus=False, style="Card.Vertical.TScrollbar")
        self.area.configure(yscrollcommand=partial(show_bar, bar))
        self.area.grid(row=0, column=0, sticky="nsew")
        bar.grid(row=0, column=1, sticky="ns")
        self.columnconfigure(0, weight=1)
        self.rowconfigure(0, weight=1)
        look.when_changed(self, lambda: self.columnconfigure(1, minsize=bar.winfo_reqwidth()))
        look.when_changed(self.area, lambda: self.area.configure(padx=look.pixels(1.5), pady=look.pixels(gap)))
        self.area.bind("<Tab>", lambda _: self._leave("tk_focusNext"))
        for back in ("<Shift-Tab>", "<<PrevWindow>>"):
            self.area.bind(back, lambda _: self._leave("tk_focusPrev"))
        self.area.bind("<<Paste>>", lambda _: self._paste())
        self.area.bind("<FocusIn>", lambda _: self.state(["focus"]), add="+")
        self.area.bind("<FocusOut>", lambda _: self.state(["!focus"]), add="+")

    def _paste(self) -> str:
        """What is pasted takes the place of what is selected, in one step of undo: under X11 Tk leaves it standing."""
        area = self.area
        try:
            pasted = area.clipboard_get()
        except tk.TclError:  # there is no text to paste
            return "break"
        area.configure(autoseparators=False)
        area.edit_separator()
        if area.tag_ranges("sel"):
            area.delete("sel.first", "sel.last")
        area.insert("insert", pasted)
        area.edit_separator()
        area.configure(autoseparators=True)
        self.after_idle(area.see, "insert")
        return "break"

    def _leave(self, way: str) -> str:
        self.tk.call("focus", self.tk.call(way, str(self.area)))
        return "break"
